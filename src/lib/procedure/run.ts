import {
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
import { liveEntries, type CheckId, type WalkEvent } from '../observation';
import { startInquiry, stepInquiry, type InquirySnapshot } from './inquiry';
import type { RunEntry, RunEvent, RunLog } from './run-log';
import { startWalk, stepWalk, type TimedEvent } from './walk-log';
import type { WalkSnapshot } from './walk';
import { standingMarks, witness } from './witness';

/** One titration of a run: its bench, its walk, and all that happened in the words of the walk. */
export type TitrationRun = {
	number: number;
	/** Why it is done. */
	purpose: 'first' | CheckId;
	steps: readonly Step[];
	bench: BenchState;
	walk: WalkSnapshot;
	events: readonly TimedEvent[];
};

/** A practice run as its log makes it. Plain data, replaced whole at each step. */
export type RunState = {
	kit: Kit;
	scenario: Scenario;
	seed: number;
	titrations: readonly TitrationRun[];
	inquiry: InquirySnapshot;
	/** Bench time of the last entry, ms since the run began. */
	at: number;
	/** The first entry that did not belong; it and what follows are kept aside. */
	refused: RunEntry | null;
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
export function truthFor(scenario: Scenario, purpose: 'first' | CheckId): Truth {
	const { truth, checks } = scenario;
	const offer = checks.find((each): each is CheckOffer => each.check === purpose);
	if (offer?.check === 'reference' || offer?.check === 'freshSample')
		return { ...truth, water: offer.water };
	if (offer?.check === 'freshLot') return { ...truth, titrant: undefined };
	return truth;
}

function beginTitration(
	run: Pick<RunState, 'kit' | 'scenario' | 'seed'>,
	number: number,
	purpose: 'first' | CheckId,
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

/** A run in which nothing has happened: the first titration lies ready. */
export function startRun(log: Pick<RunLog, 'kit' | 'seed'>, scenario: Scenario): RunState {
	const run = { kit: log.kit, seed: log.seed, scenario };
	return {
		...run,
		titrations: [beginTitration(run, 0, 'first', 0)],
		inquiry: startInquiry(),
		at: 0,
		refused: null
	};
}

/** The titration with one more thing in its walk; what does not belong there changes nothing. */
function heard(titration: TitrationRun, timed: TimedEvent): TitrationRun | null {
	const walk = stepWalk(titration.walk, timed);
	return walk && { ...titration, walk, events: [...titration.events, timed] };
}

function afterAction(
	titration: TitrationRun,
	action: BenchAction,
	at: number,
	id: string
): TitrationRun {
	const bench = reduce(titration.bench, action, at);
	return witness(titration.bench, action, bench).reduce<TitrationRun>(
		(each, event, i) => heard(each, { id: `${id}.${i}`, at, event }) ?? each,
		{ ...titration, bench }
	);
}

/** A declaration with what the bench knows about the moment, for judging it later. */
function witnessed(bench: BenchState, event: WalkEvent): WalkEvent {
	const facts = factsOf(bench);
	if (event.type === 'colour.stayed')
		return {
			...event,
			secondsSinceDrop: facts.secondsSinceDrop ?? 0,
			swirledSince: facts.swirledSinceDropS > 0.4,
			hangingMl: facts.hangingMl,
			lamp: bench.lamp
		};
	if (event.type === 'marks.read')
		return { ...event, stood: standingMarks(bench), eyeDegrees: bench.eyeDegrees };
	return event;
}

/** The run after one entry of its log; null when the entry does not belong there. */
function stepEvent(run: RunState, id: string, at: number, event: RunEvent): RunState | null {
	if (event.in === 'inquiry') {
		const inquiry = stepInquiry(run.inquiry, event.event);
		if (!inquiry) return null;
		const begun = event.event.type === 'check.begun' ? event.event : null;
		return {
			...run,
			at,
			inquiry,
			titrations: begun
				? [...run.titrations, beginTitration(run, begun.titration, begun.check, at)]
				: run.titrations
		};
	}
	const titration = run.titrations.find((each) => each.number === event.titration);
	if (!titration || at < titration.bench.at) return null;
	const next =
		event.in === 'bench'
			? afterAction(titration, event.action, at, id)
			: declared(titration, event.event, at, id);
	return (
		next && {
			...run,
			at,
			titrations: run.titrations.map((each) => (each === titration ? next : each))
		}
	);
}

function declared(
	titration: TitrationRun,
	event: WalkEvent,
	at: number,
	id: string
): TitrationRun | null {
	// Drops that fell since the last deed belong before the words about them.
	const idle: BenchAction = { type: 'eye.move', degrees: titration.bench.eyeDegrees };
	const now = afterAction(titration, idle, at, `${id}.before`);
	return heard(now, { id, at, event: witnessed(now.bench, event) });
}

/** The run after one plain entry, without playing the log again. */
export function stepRun(
	run: RunState,
	entry: { id: string; at: number; event: RunEvent }
): RunState {
	if (run.refused) return run;
	return stepEvent(run, entry.id, entry.at, entry.event) ?? { ...run, refused: entry };
}

/** Plays a log through from the start. */
export function replayRun(log: RunLog, scenario: Scenario): RunState {
	return liveEntries(log.entries).reduce(stepRun, startRun(log, scenario));
}

/** Would this be taken now? Screens ask before they append. */
export function wouldTake(run: RunState, at: number, event: RunEvent): boolean {
	return stepEvent(run, 'asked', at, event) !== null;
}
