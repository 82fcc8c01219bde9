import type { Unit } from '$lib/kits';
import type { Evidence } from '$lib/observation';
import { openRecords } from '$lib/records';
import { unitFor } from '../sound-summary';
import { CheckRun } from './check-run.svelte';
import { storedCheck } from './open-check';

const inOrder = (_: string, value: unknown): unknown =>
	typeof value === 'object' && value !== null && !Array.isArray(value)
		? Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)))
		: value;

/** What a piece says, without the id of its reading, which each gets anew. */
const contentOf = (evidence: Evidence): string =>
	JSON.stringify(
		'reading' in evidence ? { ...evidence, reading: { ...evidence.reading, id: '' } } : evidence,
		inOrder
	);

/**
 * Puts a piece of evidence at the end of a stored check, from another page. What is there already is
 * not given twice: the same numbers once more are no second measurement.
 *
 * @returns what went wrong in a sentence; null once it is kept
 */
export async function giveToCheck(
	id: string,
	evidenceOf: (readingId: string) => Evidence | null,
	unit: Unit
): Promise<string | null> {
	const records = await openRecords();
	const opened = await storedCheck(records, id);
	if (!opened) return 'This browser has no check of that address.';
	const run = new CheckRun(
		opened,
		records.checks,
		(analyte) => unitFor(analyte, unit),
		() => Date.now()
	);
	try {
		const evidence = evidenceOf(`given-${run.log.entries.length}`);
		const isThere =
			evidence !== null &&
			run.state.evidence.some((given) => contentOf(given.evidence) === contentOf(evidence));
		if (isThere) return null;
		if (!evidence || !run.give(evidence)) return 'The check could not take this.';
		await run.kept.settled();
		return run.storage === 'elsewhere'
			? 'The check was gone on with in another window meanwhile. Try once more.'
			: null;
	} finally {
		run.leave();
	}
}
