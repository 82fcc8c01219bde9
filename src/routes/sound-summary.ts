import type { Analyte, Unit } from '$lib/kits';
// The small door: the first page shows summaries too, and must load little.
import { unitsOf } from '$lib/kits/units';
import type { TestSummary } from '$lib/observation';

/** The chosen unit where this analyte is measured in it, else the analyte's customary one. */
export function unitFor(analyte: Analyte, preferred: Unit): Unit {
	const known = unitsOf(analyte);
	return known.includes(preferred) ? preferred : (known[0] ?? preferred);
}

/** A summary as stored, when it can be read: storage may hold anything. */
export function soundSummary(summary: unknown): TestSummary | null {
	if (typeof summary !== 'object' || summary === null) return null;
	const { value, unit, expandedUncertainty, standardUncertainty } = summary as TestSummary;
	const isSound =
		Number.isFinite(value) &&
		Number.isFinite(expandedUncertainty) &&
		Number.isFinite(standardUncertainty) &&
		(unitsOf('alkalinity') as string[]).includes(unit);
	return isSound ? (summary as TestSummary) : null;
}
