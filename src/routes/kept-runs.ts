import type { RunHeader } from '$lib/records';

/** Runs kept in this browser, newest first; read after the page is there, so that it stays small. */
export async function keptRuns(): Promise<RunHeader[]> {
	const { openRecords } = await import('$lib/records');
	const records = await openRecords();
	return records.runs.list();
}

/** What a list says of a scenario, from the runs of it. */
export type Tried =
	{ state: 'not tried' } | { state: 'begun'; where: string } | { state: 'done'; on: string };

const dateWords = new Intl.DateTimeFormat('en-GB', {
	day: 'numeric',
	month: 'short',
	year: 'numeric'
});

/** The newest run decides; a finished one is remembered by its date. */
export function triedOf(runs: readonly RunHeader[], scenarioId: string): Tried {
	const [newest] = runs
		.filter((run) => run.scenarioId === scenarioId)
		.sort((a, b) => b.changedAtEpochMs - a.changedAtEpochMs);
	if (!newest) return { state: 'not tried' };
	return newest.state === 'unfinished'
		? { state: 'begun', where: newest.where }
		: { state: 'done', on: dateWords.format(new Date(newest.changedAtEpochMs)) };
}
