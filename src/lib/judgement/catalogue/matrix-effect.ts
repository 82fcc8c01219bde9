import { interpolated } from './interpolated';

/** In what a known solution was made, and from what. */
export type SolutionMatrix = 'seawater' | 'purified' | 'sodiumChloride';
export type MadeWith = 'bicarbonate' | 'carbonate';

/** Contents at which the effect was worked out, dKH. */
export const workedOutAtDkh: readonly number[] = [5, 8, 12];

/**
 * What a drop test that is right in seawater reads more on a known solution than it holds, with its
 * standard uncertainty, dKH: worked out by the chemistry of the end (`referenceReading`, an ordinary
 * kit whose end colour and swirling are not known), 25 °C, salt as in seawater of salinity 35. A study
 * works it out again; that of clean hands on the practice bench lies within its uncertainty.
 */
export const workedOutEffects: Record<
	'purified' | 'sodiumChloride',
	Record<MadeWith, { value: readonly number[]; standardUncertainty: readonly number[] }>
> = {
	purified: {
		bicarbonate: { value: [-0.146, -0.169, -0.201], standardUncertainty: [0.042, 0.055, 0.073] },
		carbonate: { value: [-0.08, -0.063, -0.041], standardUncertainty: [0.039, 0.049, 0.063] }
	},
	sodiumChloride: {
		bicarbonate: { value: [0.007, 0.018, 0.032], standardUncertainty: [0.028, 0.035, 0.045] },
		carbonate: { value: [0.047, 0.082, 0.128], standardUncertainty: [0.028, 0.037, 0.05] }
	}
};

/**
 * By how much a sound kit reads more on a known solution than it holds, dKH, because it is no
 * seawater: interpolated between the contents at which it was worked out, flat beyond them.
 *
 * @param nominalDkh content of the solution, dKH
 * @param madeWith what it was made from; bicarbonate when left out
 * @throws RangeError naming `nominalDkh` when it is no number
 */
export function matrixEffectOf(
	matrix: SolutionMatrix,
	nominalDkh: number,
	madeWith: MadeWith = 'bicarbonate'
): { value: number; standardUncertainty: number } {
	if (!Number.isFinite(nominalDkh))
		throw new RangeError(`nominalDkh must be a number; found ${nominalDkh}`);
	if (matrix === 'seawater') return { value: 0, standardUncertainty: 0 };
	const effect = workedOutEffects[matrix][madeWith];
	const between = (row: readonly number[]) => interpolated(workedOutAtDkh, row, nominalDkh);
	return {
		value: between(effect.value),
		standardUncertainty: between(effect.standardUncertainty)
	};
}
