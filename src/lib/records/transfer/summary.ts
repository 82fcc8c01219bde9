import { checkVerdicts, type CheckVerdict, type TestSummary } from '../../observation';

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
	return hasNumbers && hasRest ? (raw as TestSummary) : null;
}

/** What a summary of a check says was advised; undefined when it says nothing that is known here. */
export function readVerdict(raw: unknown): CheckVerdict | undefined {
	if (typeof raw !== 'object' || raw === null || !('verdict' in raw)) return undefined;
	return checkVerdicts.find((verdict) => verdict === raw.verdict);
}
