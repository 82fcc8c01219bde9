import { studentTQuantile } from './distributions';
import { markSdMl } from './scatter-inputs';

/** One value of the log, as far as comparing needs it. */
export type ComparableReading = {
	value: number;
	standardUncertainty: number;
	/** Scatter of one titration; left out, all of the uncertainty is taken for scatter. */
	repeatabilitySd?: number;
	/** Values of the titrations behind it, one by one. */
	values?: readonly number[];
	degreesOfFreedom?: number;
	unit?: string;
	kitId?: string;
	lot?: string;
	tester?: string;
};

/** One step of the sum, for the screen. */
export type ArithmeticLine = {
	id: 'now' | 'last' | 'difference' | 'scatterNow' | 'scatterLast' | 'sharedLeft' | 'expanded';
	name: string;
	/** In the kit's unit. */
	amount: number;
};

export type ReadingChange = {
	/** Now less last, in the kit's unit. */
	difference: number;
	standardUncertainty: number;
	/** About 95 %. */
	expandedUncertainty: number;
	verdict: 'tooSmallToTell' | 'likelyReal';
	/** How much of what ware, bottle and hands do to both is taken as the same, 0 to 1, and why. */
	sharedShare: number;
	because: string;
	lines: ArithmeticLine[];
};

/**
 * How far the lasting errors of two tests by one kit go together (a correlation); this project's
 * choice. A tenth is kept for what changes unnoticed: strength with age, temperature, habit. Another
 * lot or other hands each bring an error of their own, of the size that those parts have in a budget.
 */
const SAME_KIT = 0.9;
const OTHER_LOT = 0.15;
const OTHER_HANDS = 0.15;

const differ = (a: string | undefined, b: string | undefined) =>
	a !== undefined && b !== undefined && a !== b;

function sharedShareOf(
	now: ComparableReading,
	last: ComparableReading
): { sharedShare: number; because: string } {
	if (differ(now.kitId, last.kitId)) return { sharedShare: 0, because: 'two kits share nothing' };
	const lot = differ(now.lot, last.lot);
	const tester = differ(now.tester, last.tester);
	const sharedShare = SAME_KIT - (lot ? OTHER_LOT : 0) - (tester ? OTHER_HANDS : 0);
	const other = [...(lot ? ['another lot'] : []), ...(tester ? ['other hands'] : [])];
	return {
		sharedShare,
		because: other.length === 0 ? 'same kit, lot and hands' : `same kit, but ${other.join(' and ')}`
	};
}

/** What a value scatters by itself, and what lasts: standard uncertainties, in the kit's unit. */
function partsOf(reading: ComparableReading, name: string): { scatter: number; shared: number } {
	const { standardUncertainty: u, repeatabilitySd, values } = reading;
	if (!Number.isFinite(reading.value))
		throw new RangeError(`${name}.value must be a number; found ${reading.value}`);
	if (!(u >= 0 && Number.isFinite(u)))
		throw new RangeError(`${name}.standardUncertainty must be 0 or above; found ${u}`);
	if (repeatabilitySd === undefined) return { scatter: u, shared: 0 };
	if (!(repeatabilitySd >= 0))
		throw new RangeError(`${name}.repeatabilitySd must be 0 or above; found ${repeatabilitySd}`);
	const scatter = Math.min(u, repeatabilitySd / Math.sqrt(Math.max(1, values?.length ?? 1)));
	return { scatter, shared: Math.sqrt(Math.max(0, u ** 2 - scatter ** 2)) };
}

/**
 * Change between two values by the same kit: too small to tell, or likely real. Errors that ware,
 * bottle and hands make alike in both take each other out, so a change can be told that is smaller
 * than the ± of either. 'Likely real' says that the readings differ, not that no slip was made.
 *
 * Source: JCGM 100:2008, eq. 16, for a difference of correlated values.
 *
 * @param now and `last` in one unit
 * @throws RangeError naming the field; also when the two have different units
 */
export function compareReadings(now: ComparableReading, last: ComparableReading): ReadingChange {
	if (differ(now.unit, last.unit))
		throw new RangeError(`unit must be the same for both; found ${now.unit} and ${last.unit}`);
	const a = partsOf(now, 'now');
	const b = partsOf(last, 'last');
	const { sharedShare, because } = sharedShareOf(now, last);
	const sharedLeft = Math.sqrt(
		Math.max(0, a.shared ** 2 + b.shared ** 2 - 2 * sharedShare * a.shared * b.shared)
	);
	const standardUncertainty = Math.hypot(a.scatter, b.scatter, sharedLeft);
	const degreesOfFreedom = Math.min(
		now.degreesOfFreedom ?? Number.POSITIVE_INFINITY,
		last.degreesOfFreedom ?? Number.POSITIVE_INFINITY
	);
	const expandedUncertainty =
		studentTQuantile(0.975, Math.max(1, degreesOfFreedom)) * standardUncertainty;
	const difference = now.value - last.value;
	return {
		difference,
		standardUncertainty,
		expandedUncertainty,
		verdict: Math.abs(difference) > expandedUncertainty ? 'likelyReal' : 'tooSmallToTell',
		sharedShare,
		because,
		lines: [
			{ id: 'now', name: 'now', amount: now.value },
			{ id: 'last', name: 'last time', amount: last.value },
			{ id: 'difference', name: 'change', amount: difference },
			{ id: 'scatterNow', name: 'scatter now', amount: a.scatter },
			{ id: 'scatterLast', name: 'scatter last time', amount: b.scatter },
			{ id: 'sharedLeft', name: 'left of what both share', amount: sharedLeft },
			{ id: 'expanded', name: 'a change must be above', amount: expandedUncertainty }
		]
	};
}

export type MarksCompared = {
	/** Second less first, mL, and in divisions of the scale. */
	differenceMl: number;
	divisions: number;
	/** What two careful eyes stay within, about 95 %, mL. */
	expandedUncertaintyMl: number;
	agrees: boolean;
	mean: number;
};

/**
 * One mark read by two people, neither knowing what the other found. Within the resolution of reading
 * their mean is the better mark; beyond it somebody read another edge, or counted from another numeral.
 *
 * @param a and `b`: numerals of the scale, mL
 * @throws RangeError naming the field that is no number or, for the graduation, not above 0
 */
export function compareMarks(a: number, b: number, graduationMl: number): MarksCompared {
	if (!Number.isFinite(a)) throw new RangeError(`a must be a number; found ${a}`);
	if (!Number.isFinite(b)) throw new RangeError(`b must be a number; found ${b}`);
	const expandedUncertaintyMl =
		studentTQuantile(0.975, Number.POSITIVE_INFINITY) * Math.SQRT2 * markSdMl(graduationMl);
	const differenceMl = b - a;
	return {
		differenceMl,
		divisions: differenceMl / graduationMl,
		expandedUncertaintyMl,
		agrees: Math.abs(differenceMl) <= expandedUncertaintyMl,
		mean: (a + b) / 2
	};
}
