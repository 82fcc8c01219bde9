import { interpolated } from './interpolated';
import type { SolutionMatrix } from './matrix-effect';

/** Which value a titration of metals gives. */
export type MetalValue = 'calcium' | 'magnesium' | 'hardness';
type Effect = { value: readonly number[]; standardUncertainty: number };

/** Contents at which the effect was worked out: mg/L, but for hardness, mmol/L. */
export const workedOutAtMetals: Record<MetalValue, readonly number[]> = {
	calcium: [300, 420, 500],
	magnesium: [1100, 1300, 1500],
	hardness: [55.7, 64, 72.2]
};

/**
 * What a test with EDTA that is right in seawater reads more on a known solution than it holds: calcium
 * without any magnesium (nothing falls out with the base that could carry calcium down, and there is no
 * strontium), calcium and magnesium in purified water (without the sea’s sodium the end is sharper, and
 * comes earlier). Worked out by the chemistry of the end for an ordinary kit; a test works it out again.
 * How far kits differ in it is judgement.
 */
export const metalEffects: Record<MetalValue, Record<'purified' | 'sodiumChloride', Effect>> = {
	calcium: {
		purified: { value: [2.6, 5, 6.7], standardUncertainty: 4 },
		sodiumChloride: { value: [2.6, 5, 6.7], standardUncertainty: 4 }
	},
	magnesium: {
		purified: { value: [-29, -33, -37], standardUncertainty: 16 },
		sodiumChloride: { value: [-2.2, -2.2, -2.2], standardUncertainty: 8 }
	},
	hardness: {
		purified: { value: [-1.19, -1.37, -1.53], standardUncertainty: 0.66 },
		sodiumChloride: { value: [-0.09, -0.09, -0.09], standardUncertainty: 0.33 }
	}
};

/** Known solutions made to the salt of the sea differ a little from it; judgement, shares of the ± in salt water. */
const SEAWATER_SHARE = 0.35;

/**
 * By how much a sound kit reads more on a known solution of a metal than it holds, in its customary unit:
 * interpolated between the contents at which it was worked out, flat beyond them.
 *
 * @throws RangeError naming `nominal` when it is no number
 */
export function metalMatrixEffect(
	metal: MetalValue,
	matrix: SolutionMatrix,
	nominal: number
): { mean: number; standardDeviation: number } {
	if (!Number.isFinite(nominal)) throw new RangeError(`nominal must be a number; found ${nominal}`);
	const { sodiumChloride } = metalEffects[metal];
	if (matrix === 'seawater')
		return { mean: 0, standardDeviation: SEAWATER_SHARE * sodiumChloride.standardUncertainty };
	const { value, standardUncertainty } = metalEffects[metal][matrix];
	return {
		mean: interpolated(workedOutAtMetals[metal], value, nominal),
		standardDeviation: standardUncertainty
	};
}
