import { convertValue } from '$lib/kits';
import { compareReadings, type ReadingChange } from '$lib/metrology';
import type { TestSummary } from '$lib/observation';
import type { TestResult, TestState } from '$lib/procedure';

/** The reading before this one. */
export type LastReading = TestSummary & { kitId: string; testedAtEpochMs: number };

/** The change since the last reading, in the kit's unit. */
export function changeSince(
	result: TestResult,
	{ kit, circumstances }: Pick<TestState, 'kit' | 'circumstances'>,
	last: LastReading
): ReadingChange {
	const own = (value: number) => convertValue(value, last.unit, kit.unit, kit.analyte);
	const { tester, lot } = circumstances;
	return compareReadings(
		{
			value: result.value,
			standardUncertainty: result.standardUncertainty,
			repeatabilitySd: result.repeatabilitySd,
			values: result.counted.map(({ value }) => value),
			degreesOfFreedom: result.degreesOfFreedom,
			unit: kit.unit,
			kitId: kit.id,
			tester,
			lot
		},
		{
			value: own(last.value),
			standardUncertainty: own(last.standardUncertainty),
			repeatabilitySd: own(last.repeatabilitySd),
			values: last.values.map(own),
			unit: kit.unit,
			kitId: last.kitId,
			tester: last.tester,
			lot: last.lot
		}
	);
}

/** By how long one test was before another, in round words: 'a day before', '5 days before'. */
export function earlierWords(thenEpochMs: number, testEpochMs: number): string {
	const days = Math.floor((testEpochMs - thenEpochMs) / 86_400_000);
	if (days < 1) return 'less than a day before';
	if (days === 1) return 'a day before';
	return days < 60 ? `${days} days before` : `${Math.round(days / 30.4)} months before`;
}
