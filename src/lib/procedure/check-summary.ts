import type { CheckSummary, CheckVerdict } from '../observation';
import type { CheckState } from './check-state';

/**
 * What a list keeps of a check; null while there is no reading in question.
 *
 * @param verdict what was advised last, if it has come to that
 */
export function checkSummaryOf(
	{ inQuestion }: CheckState,
	verdict?: CheckVerdict | null
): CheckSummary | null {
	if (!inQuestion) return null;
	const { value, unit, expandedUncertainty, isUncertaintyTaken } = inQuestion.reading;
	return {
		value,
		unit,
		expandedUncertainty,
		...(isUncertaintyTaken ? { isUncertaintyTaken } : {}),
		...(verdict ? { verdict } : {})
	};
}
