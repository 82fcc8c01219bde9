import type { Constants } from './constants';
import { densityKgPerL } from './density';
import { mediumOf, type Medium } from './matrix';
import { sampleDensity, sampleKg, saltOf, type ProbeTitration } from './probe-titration';
import type { Totals } from './totals';

/** Sample and acid together at one point of a titration: everything but alkalinity and carbon. */
export type Mixture = {
	massKg: number;
	/** Sample's share of that mass. */
	sampleShare: number;
	/** Acid brought in, mol per kg of the mixture. */
	acidMolPerKg: number;
	medium: Medium;
	/** pH on the free scale less pH on the scale of the medium; what an electrode follows is the former. */
	freeShift: number;
};

const carbonicAndBoric = ['k1', 'k2', 'kB', 'kW'] as const;

/** Factors between the chemistry that was asked for and the usual one, in the undiluted sample. */
function factorsOf(titration: ProbeTitration, usual: Medium) {
	const { constants = {}, totals = {} } = titration.sampleChemistry ?? {};
	const ratio = (wanted: number | undefined, own: number) =>
		wanted === undefined || own === 0 ? 1 : wanted / own;
	const each = <T extends Constants | Totals>(own: T, wanted: Partial<T>) =>
		Object.fromEntries(
			Object.entries(own).map(([name, value]) => [
				name,
				ratio(wanted[name as keyof T] as number | undefined, value as number)
			])
		) as Record<keyof T, number>;
	return {
		constants: each(usual.constants, constants),
		totals: each(usual.totals, totals)
	};
}

const times = <T extends Constants | Totals>(own: T, factors: Record<keyof T, number>): T =>
	Object.fromEntries(
		Object.entries(own).map(([name, value]) => [name, (value as number) * factors[name as keyof T]])
	) as T;

const totalOverFree = ({ constants, totals }: Pick<Medium, 'constants' | 'totals'>) =>
	1 + totals.sulfateMolPerKg / constants.kS;

/**
 * What a sample becomes with acid in it. Two models of the constants, see `acidMatrix`: with acid in
 * plain water they are those of the lower salinity; with acid in sodium chloride they stay as they
 * are on the free scale, the totals thinned out, and the total scale follows from both.
 *
 * @param saltMolPerKg ionic strength of a sample in purified water: its alkalinity
 */
export function mixer(
	titration: ProbeTitration,
	saltMolPerKg: number
): (addedMl: number) => Mixture {
	const { acidMolPerL, temperatureC, matrix = 'seawater', acidMatrix = 'water' } = titration;
	const salinity = saltOf(titration);
	const startKg = sampleKg(titration);
	const inSalt = acidMatrix === 'sodiumChloride';
	const acidDensity =
		titration.acidDensityKgPerL ??
		(inSalt ? sampleDensity(titration) : densityKgPerL(0, temperatureC));
	const usual = mediumOf(matrix, salinity, temperatureC, saltMolPerKg);
	const factors = factorsOf(titration, usual);
	const adjusted = (medium: Medium): Medium => ({
		...medium,
		constants: times(medium.constants, factors.constants),
		totals: times(medium.totals, factors.totals)
	});
	const whole = adjusted(usual);
	const wholeTotalOverFree = totalOverFree(whole);

	const inWater = (share: number): Medium =>
		adjusted(mediumOf(matrix, salinity * share, temperatureC, saltMolPerKg * share));
	const inSodiumChloride = (share: number): Medium => {
		const totals = Object.fromEntries(
			Object.entries(whole.totals).map(([name, value]) => [name, value * share])
		) as Totals;
		const change = totalOverFree({ constants: whole.constants, totals }) / wholeTotalOverFree;
		const constants = { ...whole.constants };
		for (const name of carbonicAndBoric) constants[name] *= change;
		return { ...whole, totals, constants };
	};

	return (addedMl) => {
		const massKg = startKg + (addedMl / 1000) * acidDensity;
		const sampleShare = startKg / massKg;
		const medium = inSalt ? inSodiumChloride(sampleShare) : inWater(sampleShare);
		return {
			massKg,
			sampleShare,
			acidMolPerKg: (acidMolPerL * addedMl) / 1000 / massKg,
			medium,
			freeShift: Math.log10(totalOverFree(medium))
		};
	};
}
