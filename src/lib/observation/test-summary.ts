import type { Unit } from '../kits';
import type { KnownSolution, WaterTested } from './circumstances';

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
	/** Version of the leaflet that the value rests on, when it is not the one of that day. */
	valuedAnewByVersion?: number;
};

/** A test of the tank's water, as far as it was said: it counts as one where nobody said. */
export function isOfTank({ water = 'tank' }: Pick<TestSummary, 'water'>): boolean {
	return water === 'tank';
}
