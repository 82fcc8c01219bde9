import { fallingRoot } from './bracketed-root';
import { dyeOf } from './dyes';
import type { Medium } from './matrix';

/** A dye in solution: how much, with which constants, and the form that counts as no alkalinity. */
export type DissolvedDye = {
	dyeId: string;
	molPerKg: number;
	/** Step constants on the pH scale of the medium, most acid first. */
	k: readonly number[];
	/** Hydrogen ions held by the form that was added, counted from the least protonated form. */
	protonsWhenAdded: number;
};

/** Everything that decides the pH, once alkalinity is given. */
export type Composition = {
	medium: Medium;
	dicMolPerKg: number;
	dyes: readonly DissolvedDye[];
};

/**
 * Step constants of a dye in a medium, on the pH scale of that medium.
 *
 * Without sea salt the constant moves with the square root of ionic strength from its value in fresh
 * water to that in NaCl, as a salt effect of Debye and Hückel does; for bromocresol green this meets
 * 4.70 at 0.05 and 4.66 at 0.1 (from memory, salt-effect table of Kolthoff) within 0.03.
 */
export function dyeConstants(dyeId: string, medium: Medium): number[] {
	const dye = dyeOf(dyeId);
	if (medium.matrix === 'seawater')
		return dye.pKSeawater(medium.salinity).map((value) => 10 ** -value);
	const salted = (Math.sqrt(medium.ionicStrength) - FRESH_ROOT) / (SALTED_ROOT - FRESH_ROOT);
	const share = Math.min(1, Math.max(0, salted));
	return dye.pKFresh.map((fresh, i) => {
		const pK = fresh + share * ((dye.pKSodiumChloride[i] ?? fresh) - fresh);
		return 10 ** -(pK - medium.dyePhShift);
	});
}

const FRESH_ROOT = Math.sqrt(0.01);
const SALTED_ROOT = Math.sqrt(0.5);

/** Shares of a dye's forms, from the most protonated to the least; they add up to 1. */
export function dyeShares(h: number, k: readonly number[]): number[] {
	const terms = [1];
	let term = 1;
	for (const constant of k) {
		term *= constant / h;
		terms.push(term);
	}
	const sum = terms.reduce((a, b) => a + b, 0);
	return terms.map((value) => value / sum);
}

/**
 * Alkalinity of a solution at hydrogen ion `h`, mol per kg, and its derivative with respect to pH.
 *
 * Source: Dickson 1981 (Deep-Sea Res. 28A:609): bicarbonate, carbonate, borate and hydroxide less
 * free hydrogen ion, hydrogen sulfate and hydrogen fluoride; with a dye counted against the form in
 * which it was added. Free hydrogen ion is h / (1 + ST/KS) in seawater, h itself in plain water.
 */
export function alkalinityAt(
	h: number,
	composition: Composition,
	out: { value: number; slope: number }
): void {
	const { constants, totals } = composition.medium;
	const { k1, k2, kB, kW, kS, kF } = constants;
	const { borateMolPerKg, sulfateMolPerKg, fluorideMolPerKg } = totals;
	const free = h / (1 + sulfateMolPerKg / kS);
	const k1h = k1 * h;
	const k1k2 = k1 * k2;
	const d = h * h + k1h + k1k2;
	const hydroxide = kW / h;
	let value =
		(composition.dicMolPerKg * (k1h + 2 * k1k2)) / d +
		(borateMolPerKg * kB) / (kB + h) +
		hydroxide -
		free -
		(sulfateMolPerKg * free) / (kS + free) -
		(fluorideMolPerKg * free) / (kF + free);
	let slope =
		(composition.dicMolPerKg * k1h * (h * h + 4 * k2 * h + k1k2)) / (d * d) +
		(borateMolPerKg * kB * h) / ((kB + h) * (kB + h)) +
		hydroxide +
		free +
		(sulfateMolPerKg * kS * free) / ((kS + free) * (kS + free)) +
		(fluorideMolPerKg * kF * free) / ((kF + free) * (kF + free));
	for (const dye of composition.dyes) {
		if (dye.k.length === 1) {
			const k = dye.k[0] ?? 0;
			const protonated = h / (k + h);
			value += dye.molPerKg * (dye.protonsWhenAdded - protonated);
			slope += dye.molPerKg * protonated * (1 - protonated);
		} else {
			const shares = dyeShares(h, dye.k);
			let protons = 0;
			let squares = 0;
			shares.forEach((share, i) => {
				const held = dye.k.length - i;
				protons += share * held;
				squares += share * held * held;
			});
			value += dye.molPerKg * (dye.protonsWhenAdded - protons);
			slope += dye.molPerKg * (squares - protons * protons);
		}
	}
	out.value = value;
	out.slope = slope * Math.LN10;
}

const LOWEST_PH = -2;
const HIGHEST_PH = 16;

/**
 * pH at which a solution has this alkalinity, on the scale of its medium.
 *
 * Alkalinity rises with pH throughout, so there is exactly one; it lies in the bracket for any
 * solution of less than about 10 mol/kg of acid or base.
 *
 * @param startPh where to look first; nearness saves time and changes nothing else
 */
export function phAtAlkalinity(
	alkalinityMolPerKg: number,
	composition: Composition,
	startPh = 7
): number {
	return fallingRoot(
		(ph, out) => {
			alkalinityAt(10 ** -ph, composition, out);
			out.value = alkalinityMolPerKg - out.value;
			out.slope = -out.slope;
		},
		LOWEST_PH,
		HIGHEST_PH,
		startPh,
		1e-10
	);
}

/** Inorganic carbon of a solution of this alkalinity and pH, mol per kg; explicit. Negative when no carbon can give it. */
export function dicAtAlkalinityAndPh(
	alkalinityMolPerKg: number,
	ph: number,
	composition: Omit<Composition, 'dicMolPerKg'>
): number {
	const h = 10 ** -ph;
	const { k1, k2 } = composition.medium.constants;
	const out = { value: 0, slope: 0 };
	alkalinityAt(h, { ...composition, dicMolPerKg: 0 }, out);
	const d = h * h + k1 * h + k1 * k2;
	return ((alkalinityMolPerKg - out.value) * d) / (k1 * h + 2 * k1 * k2);
}

/** Dissolved CO2 (with carbonic acid), mol per kg. */
export function carbonDioxideMolPerKg(h: number, composition: Composition): number {
	const { k1, k2 } = composition.medium.constants;
	return (composition.dicMolPerKg * h * h) / (h * h + k1 * h + k1 * k2);
}
