import type { CheckVerdict } from '$lib/observation';
import { checkSummaryOf, type CheckLog, type CheckState } from '$lib/procedure';
import type { CheckHeader, Whole } from '$lib/records';

/** Where a check stands, for a list: '3 things known'. */
export function whereOfCheck(state: CheckState): string {
	if (state.isClosed) return 'done';
	if (state.isEmergency) return 'something that needs no number';
	if (!state.inQuestion) return 'no reading yet';
	const known = state.evidence.length;
	return known === 1 ? '1 thing known' : `${known} things known`;
}

/**
 * The header under which a check is kept.
 *
 * @param about.now ms since 1970
 * @param about.verdict what is advised now; null where it has not come to that
 * @param about.stored the header it was loaded with, if any
 */
export function checkHeaderOf(
	{ entries: _, ...head }: CheckLog,
	state: CheckState,
	about: { now: number; verdict: CheckVerdict | null; stored: CheckHeader | null }
): Whole<CheckHeader> {
	// What was advised last stays until something else is: it is worked out anew after each opening.
	const verdict = about.verdict ?? about.stored?.summary?.verdict;
	const origin = about.stored?.origin;
	return {
		id: head.id,
		kitId: head.kit?.id ?? null,
		analyte: head.analyte,
		startedAtEpochMs: head.startedAtEpochMs,
		changedAtEpochMs: about.now,
		state: state.isRemoved ? 'removed' : state.isClosed ? 'kept' : 'unfinished',
		where: whereOfCheck(state),
		summary: checkSummaryOf(state, verdict),
		...(origin ? { origin } : {}),
		head
	};
}
