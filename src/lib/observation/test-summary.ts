import type { Analyte, Unit } from '../kits';
import type { Circumstances, KnownSolution, WaterTested } from './circumstances';

/** What is left of a test's value once another is taken off, as lists and pictures need it. */
export type DifferenceSummary = Pick<
	TestSummary,
	'value' | 'unit' | 'standardUncertainty' | 'expandedUncertainty' | 'repeatabilitySd' | 'isSuspect'
> & {
	/** Whose value it is. */
	analyte: Analyte;
	/** What was taken off is an assumption, and no measurement. */
	isAssumed: boolean;
};

/**
 * What a list or a picture needs to know of a test, without playing its log. It follows from the log
 * and the leaflet and can be made again at any time.
 */
export type TestSummary = {
	value: number;
	unit: Unit;
	standardUncertainty: number;
	/** About 95 %. */
	expandedUncertainty: number;
	/** The part that falls anew at each test: standard deviation of one titration. */
	repeatabilitySd: number;
	/** Values of the titrations that count, one by one, for the scatter of these hands. */
	values: number[];
	/** Volume of the sample, mL; scatter is pooled for the same volume only. */
	sampleVolumeMl: number;
	/** Who tested, where it was said. */
	tester?: string;
	lot?: string;
	/** What was in the vial, where it was said: only 'tank' speaks of the tank. */
	water?: WaterTested;
	/** What a known solution holds, where the test was of one. */
	reference?: KnownSolution;
	/** Somebody has doubts: a slip was found, or marks and drops disagree. */
	isSuspect: boolean;
	/** What was dosed in the days before, as far as it was said. */
	dosed?: string;
	/** Of the value; infinite where left out. */
	degreesOfFreedom?: number;
	/**
	 * What lasting causes make of it, by line of the budget: standard uncertainties, in `unit`. There
	 * where the value can be taken off another.
	 */
	shared?: Record<string, number>;
	/** Of the water, as its instrument shows it; there where `shared` is. */
	salinity?: Circumstances['salinity'];
	/** What is left once another value was taken off. */
	difference?: DifferenceSummary;
	/** Version of the leaflet that the value rests on, when it is not the one of that day. */
	valuedAnewByVersion?: number;
};

/** A test of the tank's water, as far as it was said: it counts as one where nobody said. */
export function isOfTank({ water = 'tank' }: Pick<TestSummary, 'water'>): boolean {
	return water === 'tank';
}

/**
 * What a test says of an analyte: of its own, or of the one that is left by difference. Null where it
 * says nothing of it.
 *
 * @param measured what the test itself measures
 */
export function summaryFor(
	summary: TestSummary,
	measured: string,
	asked: string
): TestSummary | null {
	if (measured === asked) return summary;
	const { difference, shared: _shared, salinity: _salinity, ...rest } = summary;
	if (difference?.analyte !== asked) return null;
	const { analyte: _analyte, isAssumed: _isAssumed, ...left } = difference;
	const { degreesOfFreedom: _degrees, ...kept } = rest;
	// The scatter of a difference is that of both means; single titrations are of another analyte.
	return { ...kept, ...left, values: [left.value] };
}
