import { chelationStateOf, type DyeState } from './chelation-state';
import type { ChelationVessel } from './chelation-vessel';
import { colourOfAbsorbance, labFromXyz, spectrumOfBands } from './colour';
import type { LampSpectrum } from './lamps';
import { metalDyeOf } from './metal-dyes';
import { requireWithin } from './require-within';
import type { SeenColour } from './vessel-colour';

const COUNT = spectrumOfBands([]).length;
const formSpectra = new Map<string, Float64Array[]>();
/** H2In−, HIn2−, In3−, with metal. */
function spectraOf(dyeId: string): Float64Array[] {
	let spectra = formSpectra.get(dyeId);
	if (!spectra) {
		const { freeForms, metalForm } = metalDyeOf(dyeId);
		spectra = [...freeForms, metalForm].map(spectrumOfBands);
		formSpectra.set(dyeId, spectra);
	}
	return spectra;
}

/** Colour of dyes in their states, in a clear solution: the haze of the solid is not in it. */
export function colourOfMetalDyes(
	dyes: readonly DyeState[],
	pathCm: number,
	lamp: LampSpectrum
): Omit<SeenColour, 'ph'> {
	const absorbance = new Float64Array(COUNT);
	for (const dye of dyes) {
		const withMetal = dye.calciumMolPerL + dye.magnesiumMolPerL + dye.blockedMolPerL;
		spectraOf(dye.dyeId).forEach((spectrum, form) => {
			const amount = (dye.freeMolPerL[form] ?? withMetal) * pathCm;
			for (let i = 0; i < spectrum.length; i++) absorbance[i]! += amount * spectrum[i]!;
		});
	}
	const { xyz, rgb } = colourOfAbsorbance(absorbance, lamp);
	return { xyz, rgb, lab: labFromXyz(xyz) };
}

/**
 * Colour of what is in the vessel.
 *
 * @param pathCm way of the light through it; the mean chord of a round vial is 0.785 of its width
 * @param options.extraEdtaMolPerKg EDTA more than is mixed in, for the place where a drop fell; below 0
 *   for what has not come to the rest yet, at most as much as there is
 * @throws RangeError naming the field that lies outside its range
 */
export function chelationColourOf(
	vessel: ChelationVessel,
	pathCm: number,
	lamp: LampSpectrum,
	options: { extraEdtaMolPerKg?: number } = {}
): SeenColour {
	requireWithin('pathCm', pathCm, 0, 1000);
	const extra = requireWithin('extraEdtaMolPerKg', options.extraEdtaMolPerKg ?? 0, -2, 2);
	const extraMol = Math.max(-vessel.edtaMol, extra * vessel.water.massKg);
	const seen = extraMol === 0 ? vessel : { ...vessel, edtaMol: vessel.edtaMol + extraMol };
	const state = chelationStateOf(seen);
	return { ph: state.ph, ...colourOfMetalDyes(state.dyes, pathCm, lamp) };
}

/** Share of the dye, as it is seen, that holds no metal: 0 red, 1 blue. Null without dye. */
export function blueShareOf(dyes: readonly DyeState[]): number | null {
	let free = 0;
	let all = 0;
	for (const dye of dyes) {
		const bare = dye.freeMolPerL[0] + dye.freeMolPerL[1] + dye.freeMolPerL[2];
		free += bare;
		all += bare + dye.calciumMolPerL + dye.magnesiumMolPerL + dye.blockedMolPerL;
	}
	return all > 0 ? free / all : null;
}
