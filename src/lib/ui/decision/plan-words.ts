import { measured, type CorrectionPlan, type PlanDay } from '$lib/judgement';
import { signed } from '../charts/numbers';

/** A change of pH below this is not told. */
const TOLD_FROM = 0.015;

/**
 * Change of pH at once in words: 'about +0.09', 'hardly any'. The pH and salinity it is worked out
 * from leave about a fifth of it open, so that hundredths are as fine as it can be told.
 */
export function phChangeWords(phChange: number): string {
	return Math.abs(phChange) < TOLD_FROM ? 'hardly any' : `about ${signed(phChange, 2)}`;
}

/**
 * What a retest may read on its day, where the plan says, and what follows: after the last nothing is
 * planned. Null on other days.
 */
export function retestWords(
	{ day, isRetest, expected, retestExpandedUncertainty }: PlanDay,
	{ days, unit, analyte }: Pick<CorrectionPlan, 'days' | 'unit' | 'analyte'>
): string | null {
	if (!isRetest) return null;
	const isLast = day === days.at(-1)?.day;
	if (retestExpandedUncertainty === undefined) return isLast ? 'Test' : 'Test, then go on';
	const reads = measured(expected, retestExpandedUncertainty, unit, analyte).replaceAll(
		' ',
		'\u00a0'
	);
	return `Test: it should read ${reads}${isLast ? '' : '; then go on'}`;
}

/** Where a day shall have brought it: '6.8 ± 0.4 dKH'. */
export function expectedWords(
	day: PlanDay,
	{ unit, analyte }: Pick<CorrectionPlan, 'unit' | 'analyte'>
): string {
	return measured(day.expected, day.expectedExpandedUncertainty, unit, analyte);
}
