import { chelationEndVolumeMl } from './chelation-end';
import type { EdtaTitration } from './chelation-titration';
import { chelationVolumeMl, fillChelationVessel } from './chelation-vessel';
import { requireWithin } from './require-within';
import { CALCIUM_G_PER_MOL, MAGNESIUM_G_PER_MOL } from './units';

/** g per mol; IUPAC 2021. */
const molarMass = { calcium: CALCIUM_G_PER_MOL, magnesium: MAGNESIUM_G_PER_MOL } as const;

/** What EDTA of a kit is worth, near one water. Concentrations in each litre of the sample. */
export type EdtaSlope = {
	/** EDTA to the end of this water, mL. */
	endMl: number;
	/** More of the metal for each mL more to the end. */
	molPerLPerMl: number;
	mgPerLPerMl: number;
	/** What the metal would be at an end of 0 mL by this slope: the blank of dye and colour, strontium, the other metal. */
	offsetMolPerL: number;
	offsetMgPerL: number;
};

/**
 * End and slope of a kit by its doses: how many mg/L a mL is worth where it is used, which stoichiometry
 * (EDTA mol/L over sample mL, times 1000 and the molar mass) meets but for what the solid carries down
 * and what the dye keeps.
 *
 * With 5 mL of seawater, 0.05 mol/L and strong base enough a mL is worth 408 mg/L of calcium where
 * stoichiometry says 401, for the solid keeps 2 % of it.
 *
 * @param metal whose concentration moves; at pH 10 either, with one slope in mol/L
 * @param step share of the metal to both sides, 0.001 to 0.5
 * @returns null when no end comes at one of the three
 * @throws RangeError naming the field out of range; `${metal}MolPerKg` when there is none of it
 */
export function edtaSlope(
	titration: EdtaTitration,
	metal: 'calcium' | 'magnesium',
	{ blueShare = 0.8, step = 0.05 }: { blueShare?: number; step?: number } = {}
): EdtaSlope | null {
	requireWithin('step', step, 0.001, 0.5);
	const sample = fillChelationVessel(titration);
	const field = `${metal}MolPerKg` as const;
	const molPerKg = sample[`${metal}Mol`] / sample.water.massKg;
	requireWithin(field, molPerKg, 1e-9, 2);
	const molPerL = (1000 * sample[`${metal}Mol`]) / chelationVolumeMl(sample);
	const endAt = (share: number) =>
		chelationEndVolumeMl({ ...titration, [field]: molPerKg * share }, blueShare);
	const [less, endMl, more] = [endAt(1 - step), endAt(1), endAt(1 + step)];
	if (less === null || endMl === null || more === null || more === less) return null;
	const molPerLPerMl = (2 * step * molPerL) / (more - less);
	const offsetMolPerL = molPerL - molPerLPerMl * endMl;
	const mg = 1000 * molarMass[metal];
	return {
		endMl,
		molPerLPerMl,
		mgPerLPerMl: molPerLPerMl * mg,
		offsetMolPerL,
		offsetMgPerL: offsetMolPerL * mg
	};
}
