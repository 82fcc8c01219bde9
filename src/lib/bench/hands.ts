import { lineMl } from '../glassware';
import { numeralAt, type Kit, type SyringeDelivery } from '../kits';
import type { Marks } from '../observation';
import type { BenchAction } from './action';
import { advance } from './advance';
import { askedDosesOf } from './dosing';
import { hasTurned } from './end-point';
import type { Plan } from './plan';
import { reduce } from './reduce';
import { chosenVolumeMl, type BenchState } from './state';
import { kindOf } from './titration-kind';

export type TimedAction = { at: number; action: BenchAction };

/** A test done by a plan on this bench: every deed with its time, the bench at the end, and what was read. */
export type HandsRun = {
	actions: TimedAction[];
	state: BenchState;
	/** The colour came to the kit's end. Where it never did, what is read then is no reading. */
	isEndFound: boolean;
	/** As the hands would write it down, rounded to what an eye can read. */
	marks: Marks;
	/** Drawn in again on the way, mL, as these hands reckon it: from the mark that stood to the full one. */
	refilledMl: number;
	/** The sample that the conversion is asked for. */
	sampleVolumeMl: number;
};

/** More drops than any sample on this bench needs: after as many, hands know that no end will come. */
const MOST_DROPS = 400;

/** A run that is being written: the bench and the deeds so far. */
class Writer {
	actions: TimedAction[] = [];
	refilledMl = 0;
	constructor(public state: BenchState) {}
	do(action: BenchAction, waitMs = 500): void {
		const at = this.state.at + waitMs;
		this.state = reduce(this.state, action, at);
		this.actions.push({ at, action });
	}
	wait(ms: number): void {
		this.state = advance(this.state, this.state.at + ms);
	}
	swirl(ms: number): void {
		if (ms <= 0) return;
		this.do({ type: 'swirl.start' }, 200);
		this.do({ type: 'swirl.stop' }, ms);
	}
}

/**
 * Does a whole test on a fresh bench by a plan, deed by deed, through the same reducer as a person.
 *
 * @returns the run, with `state` as it stands after the last deed
 */
export function runHands(bench: BenchState, plan: Plan): HandsRun {
	const writer = new Writer(bench);
	const { kit } = bench;
	if (plan.volumeId) writer.do({ type: 'sample.choose', volumeId: plan.volumeId });
	measure(writer, plan);
	doseAll(writer, plan);
	fill(writer, plan);
	const isEndFound = titrate(writer, plan);
	return {
		actions: writer.actions,
		state: writer.state,
		isEndFound,
		marks: read(writer.state, plan),
		refilledMl: plan.refillsForgotten ? 0 : writer.refilledMl,
		sampleVolumeMl: chosenVolumeMl(writer.state) || (kit.sample.volumes[0]?.volumeMl ?? 0)
	};
}

/** Parts of a test in their order, each done by the same plan. */
const parts = { measure, dose: doseAll, fill, titrate };
export type TestPart = keyof typeof parts | 'read';

/**
 * A bench on which hands have done everything before a part, for practising that part alone. Its time
 * is that of the bench handed in: what was done was done before.
 */
export function benchReadyFor(bench: BenchState, part: TestPart, plan: Plan): BenchState {
	const writer = new Writer(bench);
	for (const [name, doPart] of Object.entries(parts)) {
		if (name === part) break;
		doPart(writer, plan);
	}
	const { state } = writer;
	const earlier = state.at - bench.at;
	return {
		...state,
		at: bench.at,
		from: null,
		lastSwirlEndedAt: state.lastSwirlEndedAt === null ? null : state.lastSwirlEndedAt - earlier,
		drops: state.drops.map((drop) => ({ ...drop, at: drop.at - earlier }))
	};
}

function measure(writer: Writer, plan: Plan): void {
	const { kit } = writer.state;
	const inSyringe = kit.sample.measuredIn === 'syringe';
	if (inSyringe && plan.rinseSampler !== 'none')
		writer.do({ type: 'ware.rinse', ware: 'sampler', with: plan.rinseSampler });
	if (plan.rinseVial !== 'none')
		writer.do({ type: 'ware.rinse', ware: 'vial', with: plan.rinseVial });
	const toMl = chosenVolumeMl(writer.state) + plan.sampleOffMl;
	if (!inSyringe) {
		writer.do({ type: 'sample.fillToLine', levelMl: toMl });
		return;
	}
	if (plan.sampleAirMl > 0)
		writer.do({ type: 'sample.draw', toMl: plan.sampleAirMl, nose: 'inAir' });
	writer.do({ type: 'sample.draw', toMl });
	writer.do({ type: 'sample.pour' });
}

function doseAll(writer: Writer, plan: Plan): void {
	for (const reagent of writer.state.kit.reagents) {
		const extra = reagent.role === 'indicator' ? plan.extraIndicator : plan.extraPhReagent;
		for (let i = 0; i < askedDosesOf(reagent) + extra; i++)
			writer.do({ type: 'reagent.dose', reagentId: reagent.id });
		writer.swirl(reagent.mixSeconds * 1000);
		writer.wait(reagent.waitSeconds * plan.waitShare * 1000);
	}
}

function fill(writer: Writer, plan: Plan): void {
	const { delivery } = writer.state.kit;
	if (delivery.by === 'dropper') {
		writer.do({ type: 'dropper.tilt', degrees: plan.tiltDegrees });
		writer.do({ type: 'dropper.squeeze', hard: plan.squeezedHard });
	}
	if (delivery.by === 'burette') {
		writer.do({ type: 'burette.fill', levelMl: -0.3 });
		writer.do({ type: 'burette.runOut', volumeMl: 0.25 });
		writer.do({ type: 'burette.fill', levelMl: plan.fillOffMl });
	}
	if (delivery.by === 'syringe') fillSyringe(writer, delivery, plan);
	if (plan.wiped) writer.do({ type: 'tip.wipe' });
}

function fillSyringe(writer: Writer, delivery: SyringeDelivery, plan: Plan): void {
	if (plan.tipFitted !== 'after') writer.do({ type: 'tip.fit', firm: plan.tipFitted === 'before' });
	drawFull(writer, delivery, plan);
	if (plan.tipFitted === 'after') writer.do({ type: 'tip.fit', firm: true });
}

/** To the full mark, by the seal or by the line. */
function drawFull(writer: Writer, delivery: SyringeDelivery, plan: Plan): void {
	const full = delivery.capacityMl + plan.fillOffMl;
	const liquidTo = full - plan.airDrawnMl;
	writer.do({ type: 'titrant.draw', sealMl: liquidTo, end: 'inTitrant' });
	if (plan.fillBy === 'line') {
		const line = standsAtMl(writer.state, 'line');
		writer.do({ type: 'titrant.draw', sealMl: liquidTo + (full - line), end: 'inTitrant' });
	}
	if (plan.airDrawnMl > 0) writer.do({ type: 'titrant.draw', sealMl: full, end: 'inAir' });
}

const levelMl = ({ delivery }: BenchState) =>
	delivery.by === 'burette' ? (delivery.burette.levelMl ?? 0) : 0;

/** Where seal or line of a syringe stand, mL from the nozzle end. */
function standsAtMl({ delivery }: BenchState, mark: 'seal' | 'line'): number {
	if (delivery.by !== 'syringe') return 0;
	return mark === 'seal' ? delivery.syringe.sealMl : (lineMl(delivery.syringe) ?? 0);
}

/**
 * An empty syringe or burette filled again where the leaflet has it so: what hangs goes in first, the mark that
 * stands is noted by what these hands read, the full one by what they fill by.
 */
function refill(writer: Writer, plan: Plan): boolean {
	const { delivery } = writer.state.kit;
	if (delivery.by === 'dropper' || !delivery.refilled || !isEmpty(writer.state)) return false;
	if (writer.state.delivery.hangingMl > 0) writer.do({ type: 'tip.touchOff' });
	if (delivery.by === 'burette') {
		writer.refilledMl += levelMl(writer.state);
		writer.do({ type: 'burette.fill', levelMl: plan.fillOffMl });
	} else {
		writer.refilledMl += delivery.capacityMl - standsAtMl(writer.state, plan.readBy);
		drawFull(writer, delivery, plan);
	}
	if (plan.wiped) writer.do({ type: 'tip.wipe' });
	return true;
}

/** Mixed colour at this moment has reached the kit's end; seen in the light there is. */
const isTurned = ({ kit, contents }: BenchState) => contents !== null && hasTurned(kit, contents);
/** Still far from the end: drops may follow each other. */
const isFar = ({ kit, contents }: BenchState) => contents !== null && kindOf(kit).isFar(contents);

function oneDrop(writer: Writer): boolean {
	const before = writer.state.drops.length;
	writer.do({ type: 'flow.give', size: 'drop' }, 300);
	writer.wait(900);
	return writer.state.drops.length > before || !isEmpty(writer.state);
}
function isEmpty({ delivery }: BenchState): boolean {
	if (delivery.by === 'syringe') return delivery.syringe.liquidMl <= 1e-6;
	if (delivery.by === 'burette')
		return (delivery.burette.levelMl ?? 0) >= delivery.burette.capacityMl - 1e-6;
	return false;
}

/** @returns whether the end came */
function titrate(writer: Writer, plan: Plan): boolean {
	// A flash is taken for the end so many drops before the end: find the end on a copy first.
	const early = Math.max(0, Math.round(-plan.dropsPastEnd));
	const copy = new Writer(writer.state);
	const stopAfter =
		early > 0 ? Math.max(1, dripUntilTurned(copy, plan, MOST_DROPS) - early) : MOST_DROPS;
	dripUntilTurned(writer, plan, stopAfter);
	const isEndFound = isTurned(early > 0 ? copy.state : writer.state);
	for (let i = 0; i < Math.round(plan.dropsPastEnd); i++) {
		oneDrop(writer);
		writer.swirl(plan.swirlMs);
	}
	chase(writer, plan);
	if (plan.touchedOff && writer.state.delivery.hangingMl > 0) writer.do({ type: 'tip.touchOff' });
	return isEndFound;
}

/** Keeps the vial moving and answers each fading with a drop, though it is only CO2 leaving. */
function chase(writer: Writer, plan: Plan): void {
	const kind = kindOf(writer.state.kit);
	const place = () => (writer.state.contents ? kind.placeOnTheWay(writer.state.contents) : 0);
	let remembered = place();
	for (let round = 0; round < plan.chaseRounds; round++) {
		writer.wait(CHASE_WAIT_MS);
		writer.swirl(Math.max(plan.swirlMs, CHASE_SWIRL_MS));
		if (place() > remembered - kind.fadedBy) continue;
		if (!oneDrop(writer)) return;
		writer.swirl(plan.swirlMs);
		remembered = place();
	}
}
const CHASE_WAIT_MS = 20000;
const CHASE_SWIRL_MS = 4000;

function dripUntilTurned(writer: Writer, plan: Plan, most: number): number {
	let drops = 0;
	while (drops < most && !isTurned(writer.state)) {
		if (!oneDrop(writer) && !refill(writer, plan)) break;
		drops++;
		if (!isFar(writer.state)) writer.swirl(plan.swirlMs);
	}
	return drops;
}

/** The numeral an eye would write down: to half a division, as it stands, plus the plan's misreading. */
function read(state: BenchState, plan: Plan): Marks {
	const { kit, delivery } = state;
	if (delivery.by === 'dropper') return { drops: state.dropsSinceFill + plan.readOff };
	if (delivery.by === 'burette' && kit.delivery.by === 'burette')
		return { levelMl: toHalfDivision(kit, delivery.burette.levelMl ?? 0) + plan.readOff };
	if (delivery.by !== 'syringe' || kit.delivery.by !== 'syringe') return {};
	const from = standsAtMl(state, plan.readBy);
	const numeral = toHalfDivision(kit, numeralAt(kit.delivery, from)) + plan.readOff;
	const written = plan.scaleReversed ? kit.delivery.capacityMl - numeral : numeral;
	const rounded = Number(written.toFixed(4));
	return plan.readBy === 'seal' ? { sealMl: rounded } : { lineMl: rounded };
}

function toHalfDivision(kit: Kit, numeralMl: number): number {
	const division = kit.delivery.by === 'dropper' ? 1 : kit.delivery.graduationMl / 2;
	return Number((Math.round(numeralMl / division) * division).toFixed(4));
}
