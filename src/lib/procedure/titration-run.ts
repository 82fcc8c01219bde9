import {
	advance,
	benchReadyFor,
	cleanPlan,
	createBench,
	factsOf,
	reduce,
	type BenchAction,
	type BenchState,
	type CheckOffer,
	type Scenario,
	type TestPart,
	type Truth
} from '../bench';
import { stepsOf, type Kit, type Step, type StepKind } from '../kits';
import type { BenchCheckId, WalkEvent } from '../observation';
import type { WalkSnapshot } from './walk';
import { startWalk, stepWalk, type TimedEvent } from './walk-log';
import { standingMarks, witness, witnessIdle } from './witness';

/** One titration of a run: its bench, its walk, and all that happened in the words of the walk. */
export type TitrationRun = {
	number: number;
	/** Why it is done. */
	purpose: 'first' | BenchCheckId;
	steps: readonly Step[];
	bench: BenchState;
	walk: WalkSnapshot;
	events: readonly TimedEvent[];
};

const partOf: Record<StepKind, TestPart> = {
	choose: 'measure',
	rinse: 'measure',
	measure: 'measure',
	dose: 'dose',
	mix: 'dose',
	wait: 'dose',
	fill: 'fill',
	titrate: 'titrate',
	read: 'read'
};
const partOrder: readonly TestPart[] = ['measure', 'dose', 'fill', 'titrate', 'read'];

/** The steps that a scenario asks for: a drill may be a part of the leaflet. */
export function stepsFor(scenario: Scenario, kit: Kit): Step[] {
	const from = partOrder.indexOf(scenario.from ?? 'measure');
	const until = partOrder.indexOf(scenario.until ?? 'read');
	return stepsOf(kit).filter((step) => {
		const part = partOrder.indexOf(partOf[step.kind]);
		return part >= from && part <= until;
	});
}

/** The hidden truth that a check meets: other water, another bottle. */
export function truthFor(scenario: Scenario, purpose: 'first' | BenchCheckId): Truth {
	const { truth, checks } = scenario;
	const offer = checks.find((each): each is CheckOffer => each.check === purpose);
	if (offer?.check === 'reference' || offer?.check === 'freshSample')
		return { ...truth, water: offer.water };
	if (offer?.check === 'freshLot')
		return {
			...truth,
			titrant: undefined,
			...(offer.opens === 'allBottles' ? { indicator: undefined, reagents: undefined } : {})
		};
	return truth;
}

/** A titration that begins: everything clean and put down, or ready for the part that a drill is about. */
export function beginTitration(
	run: { kit: Kit; scenario: Scenario; seed: number },
	number: number,
	purpose: 'first' | BenchCheckId,
	at: number
): TitrationRun {
	const { kit, scenario, seed } = run;
	const steps = stepsFor(scenario, kit);
	const fresh = createBench({
		kit,
		truth: truthFor(scenario, purpose),
		seed,
		titration: number,
		at
	});
	const bench = scenario.from ? { ...benchReadyFor(fresh, scenario.from, cleanPlan), at } : fresh;
	return {
		number,
		purpose,
		steps,
		bench,
		walk: startWalk({ kit, steps, startedAt: at }),
		events: []
	};
}

/**
 * The titration after things that happened at its bench. The walk takes what belongs to its step;
 * the rest happened all the same and stays among the events, so that a deed out of turn is not lost
 * to whoever looks for slips.
 */
function happened(titration: TitrationRun, timed: readonly TimedEvent[]): TitrationRun {
	return timed.reduce<TitrationRun>(
		(each, one) => ({
			...each,
			walk: stepWalk(each.walk, one) ?? each.walk,
			events: [...each.events, one]
		}),
		titration
	);
}

const timed = (events: readonly WalkEvent[], id: string, at: number): TimedEvent[] =>
	events.map((event, i) => ({ id: `${id}.${i}`, at, event }));

/** The titration after a deed at its bench; null when its glass does not know such a deed. */
export function afterAction(
	titration: TitrationRun,
	action: BenchAction,
	at: number,
	id: string
): TitrationRun | null {
	try {
		const bench = reduce(titration.bench, action, at);
		const events = witness(titration.bench, action, bench);
		return happened({ ...titration, bench }, timed(events, id, at));
	} catch (error) {
		// An action from a damaged log or link that this bench has no glass for.
		if (error instanceof RangeError) return null;
		throw error;
	}
}

/** A declaration with what the bench knows about the moment, for judging it later. */
function witnessed(bench: BenchState, event: WalkEvent): WalkEvent {
	const facts = factsOf(bench);
	if (event.type === 'colour.stayed')
		return {
			...event,
			secondsSinceDrop: facts.secondsSinceDrop ?? undefined,
			swirledSince: facts.swirledSinceDropS > 0.4,
			hangingMl: facts.hangingMl,
			lamp: bench.lamp
		};
	if (event.type === 'marks.read')
		return { ...event, stood: standingMarks(bench), eyeDegrees: bench.eyeDegrees };
	return event;
}

/** Is this end of a step only late, its step being over already? It is then taken and does nothing. */
function isLate({ walk }: TitrationRun, event: WalkEvent): boolean {
	if (event.type !== 'step.done' && event.type !== 'step.skipped') return false;
	return walk.context.steps
		.slice(0, walk.context.stepIndex)
		.some((step) => step.id === event.stepId);
}

/** The titration after something that the person said; null when it does not belong there. */
export function declared(
	titration: TitrationRun,
	event: WalkEvent,
	at: number,
	id: string
): TitrationRun | null {
	// Drops that fell since the last deed belong before the words about them.
	const bench = advance(titration.bench, at);
	const meanwhile = timed(witnessIdle(titration.bench, bench), `${id}.before`, at);
	const now = happened({ ...titration, bench }, meanwhile);
	if (isLate(now, event)) return now;
	const said = { id, at, event: witnessed(bench, event) };
	const walk = stepWalk(now.walk, said);
	return walk && { ...now, walk, events: [...now.events, said] };
}
