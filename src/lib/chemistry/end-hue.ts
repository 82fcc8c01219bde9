import { colourOfDyes, labFromXyz } from './colour';
import { densityKgPerL } from './density';
import { dyeShares, phAtAlkalinity } from './speciation';
import { addAcid, compositionOf, type Vessel } from './vessel';

/** Light's way through an ordinary vial, cm. */
export const VIAL_PATH_CM = 2;

/** By how much the pK of dyes is taken otherwise than in their records: a question of 'what if'. */
export type DyeShifts = Readonly<Record<string, number>>;

/** What counts as the end: a colour by its hue under white light, or a pH on the scale of the water. */
export type End =
	| {
			/**
			 * CIELAB hue angle as far as the colour has come: teal 197, blue 270, violet 310, mauve 340,
			 * rose beyond 360.
			 */
			hueDegrees: number;
	  }
	| { ph: number };

/**
 * How far what is in the vessel has come towards its end: its hue as an angle that only grows, or how
 * far its pH has fallen, as −pH.
 */
export function placeOnTheWay(vessel: Vessel, by: 'hue' | 'ph', shifts: DyeShifts = {}): number {
	const usual = compositionOf(vessel);
	const composition = {
		...usual,
		dyes: usual.dyes.map((dye) => {
			const factor = 10 ** -(shifts[dye.dyeId] ?? 0);
			return { ...dye, k: dye.k.map((k) => k * factor) };
		})
	};
	const ph = phAtAlkalinity(vessel.alkalinityMol / vessel.massKg, composition);
	if (by === 'ph') return -ph;
	const density = densityKgPerL(composition.medium.salinity, vessel.temperatureC);
	const dyes = composition.dyes.map((dye) => ({
		dyeId: dye.dyeId,
		formsMolPerL: dyeShares(10 ** -ph, dye.k).map((share) => share * dye.molPerKg * density)
	}));
	const { hueDegrees } = labFromXyz(colourOfDyes(dyes, VIAL_PATH_CM, 'white').xyz);
	return hueDegrees < 120 ? hueDegrees + 360 : hueDegrees;
}

/**
 * Acid that brings a sample, all mixed, to its end, mL; null when it never comes there within ten times
 * what its alkalinity needs.
 *
 * @param sample what is in the vial before any acid, indicator included
 * @param carbonKept share of its inorganic carbon that is still there at the end, 0 to 1
 */
export function acidToEndMl(
	sample: Vessel,
	carbonKept: number,
	acidMolPerL: number,
	end: End,
	shifts: DyeShifts = {}
): number | null {
	const kept = { ...sample, dicMol: sample.dicMol * carbonKept };
	const [by, goal] = 'ph' in end ? (['ph', -end.ph] as const) : (['hue', end.hueDegrees] as const);
	if (by === 'hue' && !sample.dyes.some(({ mol }) => mol > 0)) return null;
	const isPast = (volumeMl: number) =>
		placeOnTheWay(addAcid(kept, { volumeMl, molPerL: acidMolPerL }), by, shifts) >= goal;
	const needMl = ((Math.abs(sample.alkalinityMol) + 1e-6) / acidMolPerL) * 1000;
	let low = 0;
	let high = needMl;
	while (!isPast(high)) {
		if (high > 10 * needMl) return null;
		low = high;
		high *= 2;
	}
	for (let i = 0; i < 50 && high - low > 1e-6 * needMl; i++) {
		const middle = (low + high) / 2;
		if (isPast(middle)) high = middle;
		else low = middle;
	}
	return (low + high) / 2;
}
