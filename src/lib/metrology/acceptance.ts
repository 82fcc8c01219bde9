import { criticalRange, mean } from './replicates';
import { requireData } from './require-data';
import { median } from './spread';

export type AcceptanceOptions = {
	/**
	 * 'cheap': two results that lie too far apart are followed by two more. 'costly': by one more, and
	 * by a fourth only then. 'cheap' when left out.
	 */
	cost?: 'cheap' | 'costly';
	/** No more results can be had (no reagent, no water left); false when left out. */
	isLast?: boolean;
	/** Finest step of the results, in their unit: those one step apart agree, whatever the scatter says. */
	resolution?: number;
};

export type Acceptance = {
	/** Largest less smallest. */
	range: number;
	/** What n results stay within in 19 of 20 cases. */
	criticalRange: number;
	agrees: boolean;
	/** 'done': report `value`. */
	toDo: 'done' | 'takeOneMore' | 'takeTwoMore';
	/** What to report as things stand, in the unit of the results. */
	value: number;
	of: 'mean' | 'median';
	/**
	 * Place of the one result, from 0, without which all the others agree; null where they agree anyway, where
	 * there are fewer than four, or where more than one could be it.
	 */
	standsApart: number | null;
};

/** Most that the table of critical ranges knows. */
const MOST = 10;
/** Of three, two that agree may be so by chance (judgement). */
const FEWEST_TO_STAND_APART = 4;

/**
 * Which value to report of repeats by the same hands on the same water, and whether more are needed.
 *
 * Source: ISO 5725-6:1994, 5.2 (from memory): 2 results within r: their mean. Else two more, 4 within
 * CR(4): their mean, else their median; or, where tests are costly, one more, 3 within CR(3): their
 * mean, else the median, or a fourth. Beyond four it goes on in the same way, to ten.
 *
 * @param results 2 to 10, in one unit
 * @param repeatabilitySd of one result by these hands, from other tests; above 0
 * @throws RangeError for too few or too many results, or a number that is out of range
 */
export function acceptRepeats(
	results: readonly number[],
	repeatabilitySd: number,
	{ cost = 'cheap', isLast = false, resolution = 0 }: AcceptanceOptions = {}
): Acceptance {
	requireData(results, 2, 'acceptRepeats');
	const n = results.length;
	if (n > MOST) throw new RangeError(`acceptRepeats requires 2 to ${MOST} results; found ${n}`);
	if (!(repeatabilitySd > 0 && Number.isFinite(repeatabilitySd)))
		throw new RangeError(`repeatabilitySd must be above 0; found ${repeatabilitySd}`);
	if (!(resolution >= 0 && Number.isFinite(resolution)))
		throw new RangeError(`resolution must be 0 or above; found ${resolution}`);
	const range = Math.max(...results) - Math.min(...results);
	const critical = criticalRange(n, repeatabilitySd);
	// 8.4 − 8.1 is not 0.3 in binary.
	const agree = (some: readonly number[]) => {
		const apart = Math.max(...some) - Math.min(...some);
		const within = Math.max(criticalRange(some.length, repeatabilitySd), resolution);
		return apart <= within + 1e-9 * Math.max(1, range);
	};
	const agrees = agree(results);
	const apart = agrees || n < FEWEST_TO_STAND_APART ? [] : results.map((_, i) => i);
	const able = apart.filter((i) => agree(results.filter((_, other) => other !== i)));
	const isDone = agrees || isLast || n >= 4;
	return {
		range,
		criticalRange: critical,
		agrees,
		toDo: isDone ? 'done' : n === 2 && cost === 'cheap' ? 'takeTwoMore' : 'takeOneMore',
		value: agrees ? mean(results) : median(results),
		of: agrees ? 'mean' : 'median',
		standsApart: able.length === 1 ? able[0]! : null
	};
}

/**
 * By how much the mean of n results of one place may differ from a reference value in 19 of 20 cases.
 *
 * Source: ISO 5725-6:1994, 4.2.3 (from memory): (1/√2) √((2.8 s_R)² − (2.8 s_r)² (n − 1)/n).
 *
 * @param reproducibilitySd between places, hands and ware, not below the repeatability
 * @throws RangeError naming the field that is out of range
 */
export function criticalDifferenceToReference(
	n: number,
	repeatabilitySd: number,
	reproducibilitySd: number
): number {
	if (!(Number.isInteger(n) && n >= 1))
		throw new RangeError(`n must be a whole number from 1; found ${n}`);
	if (!(repeatabilitySd >= 0 && Number.isFinite(repeatabilitySd)))
		throw new RangeError(`repeatabilitySd must be 0 or above; found ${repeatabilitySd}`);
	if (!(reproducibilitySd >= repeatabilitySd && Number.isFinite(reproducibilitySd)))
		throw new RangeError(
			`reproducibilitySd must be at least repeatabilitySd, ${repeatabilitySd}; found ${reproducibilitySd}`
		);
	const share = (n - 1) / n;
	return (2.8 / Math.SQRT2) * Math.sqrt(reproducibilitySd ** 2 - repeatabilitySd ** 2 * share);
}
