import { convertValue, type Analyte } from '$lib/kits';
import { compareReadings, type ReadingChange } from '$lib/metrology';
import type { TestSummary } from '$lib/observation';
import type { TestDifference, TestResult, TestState } from '$lib/procedure';

/** The reading before this one. */
export type LastReading = TestSummary & { kitId: string; testedAtEpochMs: number };

/** A value of this test as far as it is compared: the test's own, or what is left by difference. */
export type NowReading = Pick<
	TestResult,
	'value' | 'unit' | 'standardUncertainty' | 'expandedUncertainty' | 'repeatabilitySd'
> & {
	degreesOfFreedom: number;
	/** Values of the titrations behind it, one by one. */
	values: readonly number[];
};

/** A test's own value. */
export const ownReading = (result: TestResult): NowReading => ({
	...result,
	values: result.counted.map(({ value }) => value)
});

/** What is left by difference: one value, of two tests. */
export const leftReading = (left: TestDifference): NowReading => ({
	...left,
	values: [left.value]
});

/** The change since the last reading of an analyte, in the unit of this one. */
export function changeSince(
	now: NowReading,
	{ kit, circumstances }: Pick<TestState, 'kit' | 'circumstances'>,
	last: LastReading,
	analyte: Analyte
): ReadingChange {
	const own = (value: number) => convertValue(value, last.unit, now.unit, analyte);
	const { tester, lot } = circumstances;
	return compareReadings(
		{ ...now, kitId: kit.id, tester, lot },
		{
			value: own(last.value),
			standardUncertainty: own(last.standardUncertainty),
			repeatabilitySd: own(last.repeatabilitySd),
			values: last.values.map(own),
			unit: now.unit,
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
