import {
	addAmmoniaBuffer,
	addBase,
	addEdta,
	addMetalDye,
	addPlainWater,
	type Base
} from './chelation-additions';
import { blueShareOf, colourOfMetalDyes } from './chelation-colour';
import { settlePrecipitate } from './chelation-settle';
import { chelationStateOf, type ChelationState } from './chelation-state';
import {
	fillChelationVessel,
	type ChelationSample,
	type ChelationVessel
} from './chelation-vessel';
import { requireWithin } from './require-within';
import type { SeenColour } from './vessel-colour';

/** A titration with EDTA from the measured sample on. Volumes in mL, strengths in mol/L. */
export type EdtaTitration = ChelationSample & {
	/** EDTA, disodium salt in water, up to 2 mol/L. */
	edtaMolPerL: number;
	/** Water added to dilute; it may be hard. */
	water?: Parameters<typeof addPlainWater>[1];
	/** EDTA put in before base and buffer, mL; it does not count as `addedMl`. */
	edtaBeforeMl?: number;
	base?: Base & { volumeMl: number };
	ammoniaBuffer?: { volumeMl: number; ammoniaMolPerL: number; ammoniumMolPerL: number };
	/** Dose of indicator. */
	indicator?: Parameters<typeof addMetalDye>[1];
	/** Wait after the base and again at each point, s; 60 unless said. Infinity: until nothing changes. */
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

/**
 * The vial before the first drop counts: sample, water, EDTA put in before, indicator, base, buffer, and
 * the wait after.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function preparedVessel(titration: EdtaTitration): ChelationVessel {
	let vessel = fillChelationVessel(titration);
	const { water, edtaBeforeMl, base, ammoniaBuffer, indicator, edtaMolPerL } = titration;
	if (water) vessel = addPlainWater(vessel, water);
	if (edtaBeforeMl !== undefined)
		vessel = addEdta(vessel, { volumeMl: edtaBeforeMl, molPerL: edtaMolPerL });
	if (ammoniaBuffer) vessel = addAmmoniaBuffer(vessel, ammoniaBuffer);
	if (base) vessel = addBase(vessel, base);
	if (indicator) vessel = addMetalDye(vessel, indicator);
	return settlePrecipitate(vessel, titration.waitSeconds ?? 60);
}

const atVolume = (start: ChelationVessel, titration: EdtaTitration, volumeMl: number) =>
	settlePrecipitate(
		addEdta(start, { volumeMl, molPerL: titration.edtaMolPerL }),
		titration.waitSeconds ?? 60
	);

/**
 * What is in the vial after each amount of EDTA: pCa, pMg, what is free and what is bound (mol/L), pH,
 * solid magnesium hydroxide, colour.
 *
 * The sample is seawater of a salinity (Ca, Mg and Sr in its proportions) or holds what is given in
 * mol/kg; base and buffer decide the pH, or it is held (`heldPh`).
 *
 * @param addedMl EDTA added in all at each point, mL; any order, any fineness: each point stands for
 *   itself
 * @throws RangeError naming the field that lies outside its range
 */
export function titrateWithEdta(titration: EdtaTitration, addedMl: readonly number[]): EdtaPoint[] {
	const start = preparedVessel(titration);
	const pathCm = requireWithin('pathCm', titration.pathCm ?? 2, 0, 1000);
	return addedMl.map((volumeMl, i) => {
		requireWithin(`addedMl[${i}]`, volumeMl, 0, 1e6);
		const vessel = atVolume(start, titration, volumeMl);
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

/** Steps in which the end is looked for first. */
const STEPS = 64;

/**
 * EDTA that first turns the indicator, mL; null when it never turns within twice what all metals need, be it
 * blocked, missing or of the wrong pH. 0 when it is blue from the start.
 *
 * With strong base this is calcium (and strontium), at pH 10 calcium and magnesium; of purified water
 * with all reagents it is the blank.
 *
 * @param blueShare share of the dye without metal that counts as the end; 0.8, blue to the eye:
 *   judgement. 0.5 is purple, where the dye turns by definition; at pH 10 in seawater 0.8 comes 0.8 % after
 *   it and 0.95 4 %, for sodium makes the end of magnesium shallow.
 */
export function chelationEndVolumeMl(titration: EdtaTitration, blueShare = 0.8): number | null {
	requireWithin('blueShare', blueShare, 0.01, 0.999);
	requireWithin('edtaMolPerL', titration.edtaMolPerL, 1e-6, 2);
	const start = preparedVessel(titration);
	const isPast = (volumeMl: number) => {
		const share = blueShareOf(chelationStateOf(atVolume(start, titration, volumeMl)).dyes);
		return share !== null && share >= blueShare;
	};
	if (isPast(0)) return 0;
	const metalsMol = start.calciumMol + start.magnesiumMol + start.strontiumMol;
	const dyeMol = start.dyes.reduce((sum, { mol }) => sum + mol, 0);
	const mostMl = (2000 * (metalsMol + dyeMol)) / titration.edtaMolPerL;
	// With base short the colour may come, go and come again as EDTA sets acid free: the first counts.
	let step = 1;
	while (step <= STEPS && !isPast((mostMl * step) / STEPS)) step++;
	if (step > STEPS) return null;
	let low = (mostMl * (step - 1)) / STEPS;
	let high = (mostMl * step) / STEPS;
	const width = 1e-7 * mostMl;
	while (high - low > width) {
		const middle = (low + high) / 2;
		if (isPast(middle)) high = middle;
		else low = middle;
	}
	return (low + high) / 2;
}
