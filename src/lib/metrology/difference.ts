import { studentTQuantile } from './distributions';
import { combineUncertainty, type UncertaintyInput } from './uncertainty';

/** One of the two values of a difference. All numbers of both in one unit: amounts, moles in a litre. */
export type DifferenceTerm = {
	value: number;
	/** Of all of it, 0 or above. */
	standardUncertainty: number;
	/** Infinite when left out. */
	degreesOfFreedom?: number;
	/**
	 * Of it, what lasting causes make, each by a name: standard uncertainties, 0 or above. A cause that
	 * makes one value high makes the other high where both have it in common.
	 */
	shared?: Readonly<Record<string, number>>;
};

/** A cause that both values have in common: the same syringe, the same bottle. */
export type InCommon = {
	/** Name of the cause, as in `shared`. */
	cause: string;
	/** How far its two errors go together, 0 to 1. */
	correlation: number;
};

export type ValueOfDifference = {
	value: number;
	standardUncertainty: number;
	/** About 95 %. */
	expandedUncertainty: number;
	coverageFactor: number;
	degreesOfFreedom: number;
	/** What the standard uncertainty would be, had the two nothing in common. */
	separateUncertainty: number;
};

function requireTerm(name: string, { value, standardUncertainty: u, shared }: DifferenceTerm) {
	if (!Number.isFinite(value))
		throw new RangeError(`${name}.value must be a number; found ${value}`);
	if (!(u >= 0 && Number.isFinite(u)))
		throw new RangeError(`${name}.standardUncertainty must be 0 or above; found ${u}`);
	for (const [cause, part] of Object.entries(shared ?? {}))
		if (!(part >= 0 && Number.isFinite(part)))
			throw new RangeError(`${name}.shared.${cause} must be 0 or above; found ${part}`);
}

/** What of a term no cause in common explains, and the parts that the causes make. */
function partsOf({ standardUncertainty: u, shared = {} }: DifferenceTerm, causes: string[]) {
	const common = causes.map((cause) => shared[cause] ?? 0);
	// Parts larger than the whole, by rounding or by hand, are the whole.
	const size = Math.hypot(...common);
	const scale = size > u && size > 0 ? u / size : 1;
	return {
		common: common.map((part) => part * scale),
		rest: Math.sqrt(Math.max(0, u ** 2 - (size * scale) ** 2))
	};
}

/**
 * A value that is what is left when one is taken off another, with the uncertainty of both: magnesium
 * as calcium and magnesium together less calcium. What both have in common partly takes itself out,
 * so that it is surer than two separate values would make it; what is not known to be in common is
 * taken as separate, the cautious side.
 *
 * Source: JCGM 100:2008, eq. 16; degrees of freedom by its eq. G.2b of the two values as they stand,
 * which holds strictly for separate ones only.
 *
 * @param whole and `less` in one unit of amount, as moles in a litre
 * @param inCommon causes that both share; one that either has no part of counts for nothing
 * @throws RangeError naming the field that is no number or out of range
 */
export function differenceOf(
	whole: DifferenceTerm,
	less: DifferenceTerm,
	inCommon: readonly InCommon[] = []
): ValueOfDifference {
	requireTerm('whole', whole);
	requireTerm('less', less);
	for (const { cause, correlation } of inCommon)
		if (!(correlation >= 0 && correlation <= 1))
			throw new RangeError(`correlation of ${cause} must be between 0 and 1; found ${correlation}`);
	const causes = inCommon.map(({ cause }) => cause);
	const of = { whole: partsOf(whole, causes), less: partsOf(less, causes) };
	const input = (name: string, standardUncertainty: number, sign: 1 | -1): UncertaintyInput => ({
		name,
		standardUncertainty,
		sensitivity: sign
	});
	const inputs = [
		input('whole', of.whole.rest, 1),
		input('less', of.less.rest, -1),
		...of.whole.common.map((part, i) => input(`whole: ${causes[i]}`, part, 1)),
		...of.less.common.map((part, i) => input(`less: ${causes[i]}`, part, -1))
	];
	const correlations = inCommon.map(({ correlation: r }, k) => ({
		i: 2 + k,
		j: 2 + causes.length + k,
		r
	}));
	const { standardUncertainty } = combineUncertainty(inputs, correlations);
	const separateUncertainty = Math.hypot(whole.standardUncertainty, less.standardUncertainty);
	const degreesOfFreedom = degreesOf(whole, less);
	const coverageFactor = studentTQuantile(0.975, Math.max(1, degreesOfFreedom));
	return {
		value: whole.value - less.value,
		standardUncertainty,
		expandedUncertainty: coverageFactor * standardUncertainty,
		coverageFactor,
		degreesOfFreedom,
		separateUncertainty
	};
}

function degreesOf(...terms: DifferenceTerm[]): number {
	const total = Math.hypot(...terms.map(({ standardUncertainty }) => standardUncertainty)) ** 4;
	const sum = terms.reduce(
		(all, { standardUncertainty: u, degreesOfFreedom = Number.POSITIVE_INFINITY }) =>
			all + u ** 4 / degreesOfFreedom,
		0
	);
	return sum === 0 ? Number.POSITIVE_INFINITY : total / sum;
}
