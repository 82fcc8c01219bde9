import {
	addAmmoniaBuffer,
	addBase,
	addEdta,
	addMetalDye,
	addPlainWater,
	type Base
} from './chelation-additions';
import { colourOfMetalDyes } from './chelation-colour';
import { requireTitration } from './chelation-required';
import { settlePrecipitate } from './chelation-settle';
import { chelationStateOf, type ChelationState } from './chelation-state';
import {
	fillChelationVessel,
	type ChelationSample,
	type ChelationVessel
} from './chelation-vessel';
import { requireWithin } from './require-within';
import type { SeenColour } from './vessel-colour';
import type { Titrant } from './vial-contents';

/** A titration with EDTA from the measured sample on. Volumes in mL, strengths in mol/L. */
export type EdtaTitration = ChelationSample & {
	/** EDTA in water, up to 2 mol/L. */
	edtaMolPerL: number;
	/** Hydroxide in the bottle for each mol of EDTA: 0, disodium salt, unless said; 2, tetrasodium salt. */
	edtaHydroxidePerMol?: number;
	/** Water added to dilute; it may be hard. */
	water?: Parameters<typeof addPlainWater>[1];
	/** EDTA put in before base and buffer, mL; it does not count as `addedMl`. */
	edtaBeforeMl?: number;
	base?: Base & { volumeMl: number };
	ammoniaBuffer?: { volumeMl: number; ammoniaMolPerL: number; ammoniumMolPerL: number };
	/** Dose of indicator. */
	indicator?: Parameters<typeof addMetalDye>[1];
	/**
	 * Wait after the base and again at each point, s; 60 unless said, as hands do. Infinity: until nothing
	 * changes. 0: nothing forms and nothing dissolves, as tables of pM in textbooks have it.
	 */
	waitSeconds?: number;
	/** Light's way through the vial, cm; 2 unless said. */
	pathCm?: number;
};

export type EdtaPoint = ChelationState & {
	addedMl: number;
	/** −log10 of free calcium and magnesium, mol/L; Infinity where there is none. */
	pCa: number;
	pMg: number;
	/** Share of all magnesium that is solid, 0 to 1. */
	precipitatedShare: number;
	/** Under white light; without indicator that of water. */
	colour: Omit<SeenColour, 'ph'>;
};

const titrantOf = (titration: EdtaTitration, volumeMl: number): Titrant => ({
	volumeMl,
	molPerL: titration.edtaMolPerL,
	hydroxidePerMol: titration.edtaHydroxidePerMol ?? 0
});

/**
 * The vial before the first drop counts: sample, water, EDTA put in before, indicator, base, buffer, and
 * the wait after.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function preparedVessel(titration: EdtaTitration): ChelationVessel {
	requireTitration(titration);
	let vessel = fillChelationVessel(titration);
	const { water, edtaBeforeMl, base, ammoniaBuffer, indicator } = titration;
	if (water) vessel = addPlainWater(vessel, water);
	if (edtaBeforeMl !== undefined) vessel = addEdta(vessel, titrantOf(titration, edtaBeforeMl));
	if (ammoniaBuffer) vessel = addAmmoniaBuffer(vessel, ammoniaBuffer);
	if (base) vessel = addBase(vessel, base);
	if (indicator) vessel = addMetalDye(vessel, indicator);
	return settlePrecipitate(vessel, titration.waitSeconds ?? 60);
}

/** The vial some EDTA later, from where `preparedVessel` left it, and the wait after. */
export const titratedVessel = (
	prepared: ChelationVessel,
	titration: EdtaTitration,
	volumeMl: number
): ChelationVessel =>
	settlePrecipitate(addEdta(prepared, titrantOf(titration, volumeMl)), titration.waitSeconds ?? 60);

/**
 * What is in the vial after each amount of EDTA: pCa, pMg, what is free and what is bound (mol/L), pH
 * (total scale in seawater), solid magnesium hydroxide (mol/L and share), colour.
 *
 * The sample is seawater of a salinity (Ca, Mg and Sr in its proportions) or holds what is given in
 * mol/kg; base and buffer decide the pH, or it is held (`heldPh`). Valid for salinity 0 to 45 and 0 to
 * 40 °C with constants of 25 °C; where pH runs short of what base should give, forming and dissolving
 * of the solid rest on judgement (precipitation.ts).
 *
 * Time passes in it: left to itself each point has waited 60 s, in which magnesium hydroxide forms wherever the
 * pH is past its onset, at a held pH of 10 as well: without buffer, of 0.05 mol/L of magnesium in purified
 * water four fifths are solid by then, of seawater 1 %. Whoever wants equilibrium without a solid, as
 * textbooks tabulate pM, says `waitSeconds: 0`.
 *
 * Sodium, of the salt, of base and of the EDTA itself, holds a little of the free EDTA (`constants.edta.logKSodium`).
 * A table of pM worked out without it stands higher past the end: by 0.04 to 0.3 in purified water, the more the
 * stronger the solutions, by 0.7 to 0.9 in seawater. `logKSodium: null` leaves it out.
 *
 * 60 points with their colours take 2 to 4 ms on one core once compiled (tests/benchmarks/chelation.bench.ts),
 * with base and its solid little more than at a held pH; the first call of a process some times as long.
 *
 * @example Calcium of seawater, 5 mL, with 0.6 mL of sodium hydroxide, 2 mol/L, by 0.05 mol/L of EDTA
 * ```ts
 * const points = titrateWithEdta(
 * 	{
 * 		salinity: 35,
 * 		temperatureC: 25,
 * 		volumeMl: 5,
 * 		edtaMolPerL: 0.05,
 * 		base: { volumeMl: 0.6, hydroxideMolPerL: 2, carbonateMolPerL: 0 },
 * 		indicator: { dyeId: 'hydroxynaphtholBlue', mol: 1e-7 }
 * 	},
 * 	[1, 1.5]
 * );
 * points.map(({ ph, pCa }) => [ph, pCa]); // about [[12.20, 3.61], [12.17, 8.32]]: red before, blue after
 * ```
 *
 * @param titration volumes in mL, strengths in mol/L, waits in s
 * @param addedMl EDTA added in all at each point, mL, 0 to 1e6; any order, any fineness: each point
 *   stands for itself
 * @throws RangeError naming the field as it stands in the titration, 'base.volumeMl' or 'constants.ammoniumPKa',
 *   with its range and what was found
 * Sources: `EdtaConstants`, `MetalDye`, `PrecipitationConstants`, each number with its own.
 */
export function titrateWithEdta(titration: EdtaTitration, addedMl: readonly number[]): EdtaPoint[] {
	const start = preparedVessel(titration);
	const pathCm = requireWithin('pathCm', titration.pathCm ?? 2, 0, 1000);
	if (!Array.isArray(addedMl))
		throw new RangeError(`addedMl must be a list of volumes; found ${String(addedMl)}`);
	return addedMl.map((volumeMl: number, i) => {
		requireWithin(`addedMl[${i}]`, volumeMl, 0, 1e6);
		const vessel = titratedVessel(start, titration, volumeMl);
		const state = chelationStateOf(vessel);
		return {
			...state,
			addedMl: volumeMl,
			pCa: -Math.log10(state.free.calcium),
			pMg: -Math.log10(state.free.magnesium),
			precipitatedShare:
				vessel.magnesiumMol > 0 ? vessel.solidMagnesiumMol / vessel.magnesiumMol : 0,
			colour: colourOfMetalDyes(state.dyes, pathCm, 'white')
		};
	});
}
