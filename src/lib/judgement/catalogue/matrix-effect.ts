import { effectsAtDkh, endPointEffects } from './end-point-effects';

const rows = {
	purified: {
		bicarbonate: endPointEffects.bicarbonateInPurified,
		carbonate: endPointEffects.carbonateInPurified
	},
	sodiumChloride: {
		bicarbonate: endPointEffects.bicarbonateInSodiumChloride,
		carbonate: endPointEffects.carbonateInSodiumChloride
	}
};

/**
 * By how much a sound kit reads more on a known solution than it holds, dKH, because it is no
 * seawater: interpolated between the alkalinities of the study, flat beyond them.
 *
 * @param nominalDkh content of the solution, dKH
 * @param of what it was made from; bicarbonate when left out
 * @returns the effect with its standard uncertainty: the spread over kits
 * @throws RangeError naming `nominalDkh` when it is no number
 */
export function matrixEffectOf(
	matrix: 'seawater' | 'purified' | 'sodiumChloride',
	nominalDkh: number,
	of: 'bicarbonate' | 'carbonate' = 'bicarbonate'
): { value: number; standardUncertainty: number } {
	if (!Number.isFinite(nominalDkh))
		throw new RangeError(`nominalDkh must be a number; found ${nominalDkh}`);
	if (matrix === 'seawater') return { value: 0, standardUncertainty: 0 };
	const { byDkh, sd } = rows[matrix][of];
	const last = effectsAtDkh.length - 1;
	const from = Math.min(
		last - 1,
		Math.max(0, effectsAtDkh.filter((each) => each <= nominalDkh).length - 1)
	);
	const [x0 = 0, x1 = 1] = effectsAtDkh.slice(from);
	const [y0 = 0, y1 = 0] = byDkh.slice(from);
	const share = Math.min(1, Math.max(0, (nominalDkh - x0) / (x1 - x0)));
	return { value: y0 + share * (y1 - y0), standardUncertainty: sd };
}
