import { colourOfDyes, labFromXyz, type Lab, type Rgb, type Xyz } from './colour';
import { densityKgPerL } from './density';
import type { LampSpectrum } from './lamps';
import { requireWithin } from './require-within';
import { dyeShares, phAtAlkalinity } from './speciation';
import { compositionOf, type Vessel } from './vessel';

export type SeenColour = { ph: number; xyz: Xyz; rgb: Rgb; lab: Lab };

/**
 * Colour of what is in the vessel.
 *
 * @param pathCm way of the light through it; the mean chord of a round vial is 0.785 of its width
 * @param options.extraAcidMolPerKg acid that has not mixed in yet, for the place where a drop fell
 * @param options.startPh where to look for the pH first
 * @throws RangeError naming the field that lies outside its range
 */
export function colourOf(
	vessel: Vessel,
	pathCm: number,
	lamp: LampSpectrum,
	options: { extraAcidMolPerKg?: number; startPh?: number } = {}
): SeenColour {
	requireWithin('pathCm', pathCm, 0, 1000);
	requireWithin('extraAcidMolPerKg', options.extraAcidMolPerKg ?? 0, -12, 12);
	const composition = compositionOf(vessel);
	const alkalinityMolPerKg =
		vessel.alkalinityMol / vessel.massKg - (options.extraAcidMolPerKg ?? 0);
	const ph = phAtAlkalinity(alkalinityMolPerKg, composition, options.startPh);
	const h = 10 ** -ph;
	const density = densityKgPerL(composition.medium.salinity, vessel.temperatureC);
	const dyes = composition.dyes.map((dye) => ({
		dyeId: dye.dyeId,
		formsMolPerL: dyeShares(h, dye.k).map((share) => share * dye.molPerKg * density)
	}));
	const { xyz, rgb } = colourOfDyes(dyes, pathCm, lamp);
	return { ph, xyz, rgb, lab: labFromXyz(xyz) };
}
