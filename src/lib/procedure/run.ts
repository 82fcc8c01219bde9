import type { Scenario } from '../bench';
import type { Kit } from '../kits';
import { liveEntries, relatedQuantities, type PracticeCheckId } from '../observation';
import { declaredOf } from './declared-value';
import { startInquiry, stepInquiry, type InquiryEvent, type InquirySnapshot } from './inquiry';
import type { RunEntry, RunEvent, RunLog } from './run-log';
import { afterAction, beginTitration, declared, type TitrationRun } from './titration-run';

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

/** Checks whose result is simply asked for; the others are titrations at the bench. */
const asked: ReadonlySet<PracticeCheckId> = new Set([
	'repeatQuick',
	'secondMethod',
	...relatedQuantities
]);

const isOver = (titration: TitrationRun | undefined) => titration?.walk.status === 'done';
const hasValue = (titration: TitrationRun | undefined) =>
	titration !== undefined && declaredOf(titration) !== null;

/** What an inquiry event needs of the run around it. */
function isTimely({ scenario, titrations }: RunState, event: InquiryEvent): boolean {
	const offers = (check: PracticeCheckId) => scenario.checks.some((offer) => offer.check === check);
	const first = titrations[0];
	switch (event.type) {
		case 'reading.given':
			return scenario.inQuestion === 'earlier' || (isOver(first) && hasValue(first));
		case 'check.begun':
			return (
				offers(event.check) &&
				!asked.has(event.check) &&
				titrations.every(({ number }) => number !== event.titration)
			);
		case 'check.done':
			return isOver(titrations.find(({ number }) => number === event.titration));
		case 'result.asked':
			return (
				offers(event.check) &&
				asked.has(event.check) &&
				(event.check !== 'repeatQuick' || hasValue(first))
			);
		case 'conclusion.given':
		case 'drill.ended':
			return true;
	}
}

function inquired(run: RunState, event: InquiryEvent, at: number): RunState | null {
	const inquiry = isTimely(run, event) ? stepInquiry(run.inquiry, event) : null;
	if (!inquiry) return null;
	const titrations =
		event.type === 'check.begun'
			? [...run.titrations, beginTitration(run, event.titration, event.check, at)]
			: run.titrations;
	return { ...run, at, inquiry, titrations };
}

/** The run after one entry of its log; null when the entry does not belong there. */
function stepEvent(run: RunState, id: string, at: number, event: RunEvent): RunState | null {
	if (!(at >= run.at)) return null;
	if (event.in === 'inquiry') return inquired(run, event.event, at);
	const titration = run.titrations.find((each) => each.number === event.titration);
	if (!titration) return null;
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

/**
 * What follows by itself when the titration on the bench is over: its check is done, its reading is
 * given, or, where there is no reading to check, the run has ended. Null while nothing follows.
 */
export function whatFollows(run: RunState): InquiryEvent | null {
	const last = run.titrations.at(-1);
	if (!last || !isOver(last)) return null;
	if (run.inquiry.matches('testing')) return { type: 'check.done', titration: last.number };
	if (!run.inquiry.matches('working')) return null;
	const given: InquiryEvent = { type: 'reading.given' };
	return run.scenario.checks.length > 0 && isTimely(run, given) ? given : { type: 'drill.ended' };
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
