import type { TitrationFit } from './fit-options';
import type { LeftOverCause } from './fit-left-over';
import { LIMITS } from './probe-flag';

/** What a fit has found of the meter. */
export type FitOfMeter = Pick<
	TitrationFit,
	| 'isSlopeFitted'
	| 'offsetPh'
	| 'offsetTotalPh'
	| 'offsetStandardUncertaintyPh'
	| 'slope'
	| 'slopeStandardUncertainty'
	| 'leftOver'
>;

/**
 * 'buffers': two of the usual ones, of pH 4, 7 or 10; 'seawaterBuffers': made up in seawater, on the total
 * scale.
 */
export type MeterSetOn = keyof typeof LIMITS.asSet.offsetPh;

/** A meter that is not as it was set, or seems so. */
export type Moved = {
	/** Offset less that of a meter that was set, pH. */
	offPh: number;
	/** How far off both are, in squared standard deviations. */
	chiSquare: number;
	/** The slope alone explains it. */
	isSlopeAlone: boolean;
	/** What each cause would have to be, as if it were the only one, to move offset and slope as they are. */
	sizes: Readonly<Record<keyof TitrationFit['leftOver'], number>>;
	/** What the residuals ask for as well; null where nothing stands out. */
	likeliest: 'driftPh' | 'acidLog' | null;
};

/**
 * Whether offset and slope, as the fit finds them, are those of a meter that was set on two buffers the same
 * day. In an open vessel no reading tells the slope, and the offset stands alone. An acid that is weaker
 * than was typed moves both as well, which is how it shows, if it does.
 *
 * @returns null where they are, but once in 100 by chance
 */
export function movedFromSetting(fit: FitOfMeter, on: MeterSetOn): Moved | null {
	const { asSet } = LIMITS;
	const offPh = (on === 'buffers' ? fit.offsetPh : fit.offsetTotalPh) - asSet.offsetPh[on];
	const slopeOff = fit.slope - asSet.slope;
	const byOffset = 1 / (asSet.offsetSdPh ** 2 + fit.offsetStandardUncertaintyPh ** 2);
	const bySlope = fit.isSlopeFitted
		? 1 / (asSet.slopeSd ** 2 + fit.slopeStandardUncertainty ** 2)
		: 0;
	const chiSquare = byOffset * offPh ** 2 + bySlope * slopeOff ** 2;
	if (chiSquare <= asSet.chiSquare[fit.isSlopeFitted ? 'two' : 'one']) return null;
	const alone = (cause: LeftOverCause | null) => {
		const { offsetPhPerUnit: a, slopePerUnit: b } = cause ?? {
			offsetPhPerUnit: 0,
			slopePerUnit: 0
		};
		const own = byOffset * a * a + bySlope * b * b;
		const size = own > 0 ? (byOffset * a * offPh + bySlope * b * slopeOff) / own : 0;
		return { size, rest: chiSquare - size * size * own };
	};
	const drift = alone(fit.leftOver.driftPh);
	const acid = alone(fit.leftOver.acidLog);
	const offset = byOffset * offPh ** 2;
	const sizes = {
		driftPh: drift.size,
		acidLog: acid.size,
		slope: alone(fit.leftOver.slope).size
	};
	const likeliest = likeliestCause(fit, sizes);
	// An offset that is odd by itself goes with the slope only where no other cause explains the two.
	const noOther = Math.min(drift.rest, acid.rest) > asSet.chiSquare.two;
	const isSlopeAlone =
		fit.isSlopeFitted &&
		likeliest === null &&
		(offset <= asSet.chiSquare.byChance || (noOther && offset <= asSet.chiSquare.one));
	return { offPh, chiSquare, isSlopeAlone, sizes, likeliest };
}

/**
 * The cause of which the residuals too ask for a size like the one that offset and slope ask for; null
 * where none stands out.
 */
function likeliestCause(
	{ leftOver, isSlopeFitted }: FitOfMeter,
	sizes: Moved['sizes']
): Moved['likeliest'] {
	// The few readings of an open vessel leave nothing over that could be told apart.
	if (!isSlopeFitted) return null;
	const t = (cause: 'driftPh' | 'acidLog') => {
		const found = leftOver[cause];
		const ratio = (found?.size ?? 0) / sizes[cause];
		return found && ratio > 0.5 && ratio < 2 ? Math.abs(found.t) : 0;
	};
	const [drift, acid] = [t('driftPh'), t('acidLog')];
	if (Math.max(drift, acid) < LIMITS.asSet.likelyT) return null;
	return drift > acid ? 'driftPh' : 'acidLog';
}
