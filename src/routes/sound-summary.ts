import type { Analyte } from '$lib/kits';
// The small door: the first page shows summaries too, and must load little.
import { analyteUnits, unitFor, unitsOf } from '$lib/kits/units';
import type { DifferenceSummary, TestSummary } from '$lib/observation';

export { unitFor };

/** Whether this is the name of something that is measured here: storage may hold anything. */
export function isAnalyte(name: unknown): name is Analyte {
	return typeof name === 'string' && Object.hasOwn(analyteUnits, name);
}

/** Value, unit and uncertainties that can be shown. */
function isReading(reading: unknown, analyte: unknown): boolean {
	if (typeof reading !== 'object' || reading === null || !isAnalyte(analyte)) return false;
	const { value, unit, expandedUncertainty, standardUncertainty } = reading as TestSummary;
	return (
		Number.isFinite(value) &&
		Number.isFinite(expandedUncertainty) &&
		Number.isFinite(standardUncertainty) &&
		unitsOf(analyte).includes(unit)
	);
}

/**
 * A summary as stored, when it can be read: storage may hold anything. What is left by difference is
 * dropped alone where only that is damaged.
 *
 * @param analyte what the test measures
 */
export function soundSummary(summary: unknown, analyte: string): TestSummary | null {
	if (!isReading(summary, analyte)) return null;
	const { difference, ...rest } = summary as TestSummary & { difference?: DifferenceSummary };
	return difference && isReading(difference, difference.analyte) ? (summary as TestSummary) : rest;
}

/** What is read first of a test: what is left by difference where that is there, else its own. */
export function readFirst(summary: TestSummary, analyte: Analyte): Analyte {
	return summary.difference?.analyte ?? analyte;
}
