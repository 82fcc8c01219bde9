import { lineMl } from '../glassware';
import { numeralAt, type Kit, type SyringeDelivery } from '../kits';
import type { Marks } from '../observation';
import type { BenchAction } from './action';
import { advance } from './advance';
import { NEAR_END_PH } from './calibrate';
import { hueOnTheWay, hasDye } from './end-point';
import { colourOf } from '../chemistry';
import { VIAL_PATH_CM } from './observe';
import type { Plan } from './plan';
import { reduce } from './reduce';
import { chosenVolumeMl, type BenchState } from './state';

export type TimedAction = { at: number; action: BenchAction };

/** A test done by a plan on this bench: every deed with its time, the bench at the end, and what was read. */
export type HandsRun = {
	actions: TimedAction[];
	state: BenchState;
	/** As the hands would write it down, rounded to what an eye can read. */
	marks: Marks;
	/** The mark that the conversion takes, and what it starts from. */
	sampleVolumeMl: number;
};

/** More drops than any sample on this bench needs. */
const MOST_DROPS = 400;

/** A run that is being written: the bench and the deeds so far. */
class Writer {
	actions: TimedAction[] = [];
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
	titrate(writer, plan);
	return {
		actions: writer.actions,
		state: writer.state,
		marks: read(writer.state, plan),
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
		const doses = reagent.dose.unit === 'mL' ? 1 : reagent.dose.amount;
		for (let i = 0; i < doses + plan.extraIndicator; i++)
			writer.do({ type: 'reagent.dose', reagentId: reagent.id });
		writer.swirl(reagent.mixSeconds * 1000);
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
	const full = delivery.capacityMl + plan.fillOffMl;
	const liquidTo = full - plan.airDrawnMl;
	writer.do({ type: 'titrant.draw', sealMl: liquidTo, end: 'inTitrant' });
	if (plan.fillBy === 'line') {
		const bench = writer.state.delivery;
		const line = bench.by === 'syringe' ? (lineMl(bench.syringe) ?? 0) : 0;
		writer.do({ type: 'titrant.draw', sealMl: liquidTo + (full - line), end: 'inTitrant' });
	}
	if (plan.airDrawnMl > 0) writer.do({ type: 'titrant.draw', sealMl: full, end: 'inAir' });
	if (plan.tipFitted === 'after') writer.do({ type: 'tip.fit', firm: true });
}

/** Mixed colour at this moment has reached the kit's end; seen in the light there is. */
function hasTurned(state: BenchState): boolean {
	const hue = state.kit.endPoint.hueDegrees ?? 340;
	if (!state.vessel || !hasDye(state.vessel)) return false;
	return hueOnTheWay(state.vessel) >= hue;
}
/** Still far from the end: drops may follow each other. pH and hue stay put there. */
function isFar(state: BenchState): boolean {
	return state.vessel !== null && colourOf(state.vessel, VIAL_PATH_CM, 'white').ph > NEAR_END_PH;
}

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

function titrate(writer: Writer, plan: Plan): void {
	// A flash is taken for the end so many drops before the end: find the end on a copy first.
	const early = Math.max(0, Math.round(-plan.dropsPastEnd));
	const stopAfter = early > 0 ? Math.max(1, dropsToEnd(writer.state, plan) - early) : MOST_DROPS;
	let drops = dripUntilTurned(writer, plan, stopAfter);
	for (let i = 0; i < Math.round(plan.dropsPastEnd); i++, drops++) {
		oneDrop(writer);
		writer.swirl(plan.swirlMs);
	}
	chase(writer, plan);
	if (plan.touchedOff && writer.state.delivery.hangingMl > 0) writer.do({ type: 'tip.touchOff' });
}

/** A fall of hue that an eye sees beside what it remembers, degrees. */
const FADED_DEGREES = 6;

/** Keeps the vial moving and answers each fading with a drop, though it is only CO2 leaving. */
function chase(writer: Writer, plan: Plan): void {
	const hue = () => (writer.state.vessel ? hueOnTheWay(writer.state.vessel) : 0);
	let remembered = hue();
	for (let round = 0; round < plan.chaseRounds; round++) {
		writer.wait(CHASE_WAIT_MS);
		writer.swirl(Math.max(plan.swirlMs, CHASE_SWIRL_MS));
		if (hue() > remembered - FADED_DEGREES) continue;
		if (!oneDrop(writer)) return;
		writer.swirl(plan.swirlMs);
		remembered = hue();
	}
}
const CHASE_WAIT_MS = 20000;
const CHASE_SWIRL_MS = 4000;

function dropsToEnd(bench: BenchState, plan: Plan): number {
	const copy = new Writer(bench);
	return dripUntilTurned(copy, plan, MOST_DROPS);
}

function dripUntilTurned(writer: Writer, plan: Plan, most: number): number {
	let drops = 0;
	while (drops < most && !hasTurned(writer.state)) {
		if (!oneDrop(writer)) break;
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
	const { syringe } = delivery;
	const from = plan.readBy === 'seal' ? syringe.sealMl : (lineMl(syringe) ?? 0);
	const numeral = toHalfDivision(kit, numeralAt(kit.delivery, from)) + plan.readOff;
	const written = plan.scaleReversed ? kit.delivery.capacityMl - numeral : numeral;
	const rounded = Number(written.toFixed(4));
	return plan.readBy === 'seal' ? { sealMl: rounded } : { lineMl: rounded };
}

function toHalfDivision(kit: Kit, numeralMl: number): number {
	const division = kit.delivery.by === 'dropper' ? 1 : kit.delivery.graduationMl / 2;
	return Number((Math.round(numeralMl / division) * division).toFixed(4));
}
