import type { RunHeader } from '$lib/records';
import { scenarioIdNow } from './former-scenarios';

/** Runs kept in this browser, newest first; read after the page is there, so that it stays small. */
export async function keptRuns(): Promise<RunHeader[]> {
	const { openRecords } = await import('$lib/records');
	const records = await openRecords();
	const runs = await records.runs.list();
	return runs.map((run) => ({ ...run, scenarioId: scenarioIdNow(run.scenarioId) }));
}

/** What a list says of a scenario, from the runs of it. */
export type Tried =
	{ state: 'not tried' } | { state: 'begun'; where: string } | { state: 'done'; on: string };

const dateWords = new Intl.DateTimeFormat('en-GB', {
	day: 'numeric',
	month: 'short',
	year: 'numeric'
});

/** The day of a run, for a list or a line. */
export const dayOf = (epochMs: number): string => dateWords.format(new Date(epochMs));

/** The newest run decides; a finished one is remembered by its date. */
export function triedOf(runs: readonly RunHeader[], scenarioId: string): Tried {
	const [newest] = runs
		.filter((run) => run.scenarioId === scenarioId)
		.sort((a, b) => b.changedAtEpochMs - a.changedAtEpochMs);
	if (!newest) return { state: 'not tried' };
	return newest.state === 'unfinished'
		? { state: 'begun', where: newest.where }
		: { state: 'done', on: dayOf(newest.changedAtEpochMs) };
}
