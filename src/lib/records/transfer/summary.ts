import {
	checkVerdicts,
	type CheckVerdict,
	type DifferenceSummary,
	type TestSummary
} from '../../observation';

const numbers = [
	'value',
	'standardUncertainty',
	'expandedUncertainty',
	'repeatabilitySd',
	'sampleVolumeMl'
] as const;

/** A summary as a file gives it; null when it has not the form of one. It can be made again. */
export function readSummary(raw: unknown): TestSummary | null {
	if (typeof raw !== 'object' || raw === null) return null;
	const summary = raw as Partial<Record<keyof TestSummary, unknown>>;
	const hasNumbers = numbers.every((name) => Number.isFinite(summary[name]));
	const { values, unit, isSuspect } = summary;
	const hasRest =
		Array.isArray(values) &&
		values.every(Number.isFinite) &&
		typeof unit === 'string' &&
		typeof isSuspect === 'boolean';
	if (!hasNumbers || !hasRest) return null;
	const { difference, ...rest } = raw as TestSummary;
	return difference === undefined || isDifference(difference) ? (raw as TestSummary) : rest;
}

const numbersLeft = [
	'value',
	'standardUncertainty',
	'expandedUncertainty',
	'repeatabilitySd'
] as const;

/** What is left by difference, as a file gives it. */
function isDifference(raw: unknown): boolean {
	if (typeof raw !== 'object' || raw === null) return false;
	const left = raw as Partial<Record<keyof DifferenceSummary, unknown>>;
	return (
		numbersLeft.every((name) => Number.isFinite(left[name])) &&
		typeof left.analyte === 'string' &&
		typeof left.unit === 'string' &&
		typeof left.isSuspect === 'boolean' &&
		typeof left.isAssumed === 'boolean'
	);
}

/** What a summary of a check says was advised; undefined when it says nothing that is known here. */
export function readVerdict(raw: unknown): CheckVerdict | undefined {
	if (typeof raw !== 'object' || raw === null || !('verdict' in raw)) return undefined;
	return checkVerdicts.find((verdict) => verdict === raw.verdict);
}
