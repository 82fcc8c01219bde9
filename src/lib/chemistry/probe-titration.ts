import { densityKgPerL } from './density';
import type { Constants } from './constants';
import type { Matrix } from './matrix';
import { requireWithin } from './require-within';
import type { Totals } from './totals';

/** One reading of a titration with a pH meter: acid added in all so far, mL, and what the meter shows. */
export type ProbePoint = { addedMl: number; ph: number };

/** What was titrated, and with which acid. */
export type ProbeTitration = {
	/** Volume of the sample, mL, 0.1 to 10 000; or its mass. One of the two. */
	sampleVolumeMl?: number;
	/** Mass of the sample, g, 0.1 to 10 000, corrected for the buoyancy of air if that matters. */
	sampleMassG?: number;
	/** Standard uncertainty of the sample as a share of it: 0.005 is half a per cent. 0 when left out. */
	sampleRelativeStandardUncertainty?: number;
	/** Strength of the acid, mol of hydrogen ion per litre, 0.0001 to 12. */
	acidMolPerL: number;
	/** Standard uncertainty of that strength, mol/L; 0 when left out. */
	acidStandardUncertaintyMolPerL?: number;
	/**
	 * Standard uncertainty of the scale of what delivers the acid, as a share of the volume, the same
	 * at every point: 0.01 for a syringe that gives one per cent too much or too little. 0 when left out.
	 */
	deliveryRelativeStandardUncertainty?: number;
	/**
	 * In what the acid is made up. 'water' (when left out): the sample is diluted with plain water.
	 * 'sodiumChloride': of about the sample's ionic strength, so that constants on the free scale stay.
	 */
	acidMatrix?: 'water' | 'sodiumChloride';
	/** Density of the acid, kg/L; that of water or of the sample, after `acidMatrix`, when left out. */
	acidDensityKgPerL?: number;
	/** The sample's water; seawater when left out. */
	matrix?: Matrix;
	/** Practical salinity, or g of NaCl per kg, 0 to 45; left out of account in purified water. */
	salinity: number;
	/** 0 to 40 °C, during the titration. */
	temperatureC: number;
	/**
	 * Other constants and totals of the undiluted sample than those of its salinity and temperature:
	 * k1, k2, kB and kW on the total scale, kS and kF on the free scale, mol/kg. Dilution changes them
	 * in the same proportion as it changes the usual ones.
	 */
	sampleChemistry?: { constants?: Partial<Constants>; totals?: Partial<Totals> };
};

/** Random error of a reading that the weights go by: most meters' last digit (judgement). */
export const USUAL_READING_SD = 0.01;
/** Random error of an added volume over the largest (judgement). */
export const USUAL_ADDED_SHARE = 0.002;

/** Salinity that the density and the constants go by. */
export const saltOf = ({ matrix, salinity }: ProbeTitration): number =>
	matrix === 'purified' ? 0 : salinity;

/** Density of the sample, kg/L. */
export const sampleDensity = (titration: ProbeTitration): number =>
	densityKgPerL(saltOf(titration), titration.temperatureC);

/** Mass of the sample, kg. */
export function sampleKg(titration: ProbeTitration): number {
	const { sampleVolumeMl, sampleMassG } = titration;
	return sampleMassG === undefined
		? ((sampleVolumeMl ?? Number.NaN) / 1000) * sampleDensity(titration)
		: sampleMassG / 1000;
}

/**
 * Checks what was handed in.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function requireTitration(titration: ProbeTitration): void {
	const t = titration;
	if ((t.sampleVolumeMl === undefined) === (t.sampleMassG === undefined))
		throw new RangeError(
			`sampleVolumeMl or sampleMassG must be given, one of the two; found ${t.sampleVolumeMl} and ${t.sampleMassG}`
		);
	if (t.sampleVolumeMl !== undefined) requireWithin('sampleVolumeMl', t.sampleVolumeMl, 0.1, 1e4);
	if (t.sampleMassG !== undefined) requireWithin('sampleMassG', t.sampleMassG, 0.1, 1e4);
	requireWithin('acidMolPerL', t.acidMolPerL, 1e-4, 12);
	requireWithin('salinity', t.salinity, 0, 45);
	requireWithin('temperatureC', t.temperatureC, 0, 40);
	requireWithin(
		'acidStandardUncertaintyMolPerL',
		t.acidStandardUncertaintyMolPerL ?? 0,
		0,
		t.acidMolPerL
	);
	requireWithin(
		'sampleRelativeStandardUncertainty',
		t.sampleRelativeStandardUncertainty ?? 0,
		0,
		1
	);
	requireWithin(
		'deliveryRelativeStandardUncertainty',
		t.deliveryRelativeStandardUncertainty ?? 0,
		0,
		1
	);
	if (t.acidDensityKgPerL !== undefined)
		requireWithin('acidDensityKgPerL', t.acidDensityKgPerL, 0.9, 1.3);
}

/**
 * Checks the readings.
 *
 * @throws RangeError naming the reading and the field that lies outside its range
 */
export function requirePoints(points: readonly ProbePoint[]): void {
	points.forEach(({ addedMl, ph }, i) => {
		requireWithin(`points[${i}].addedMl`, addedMl, 0, 1e5);
		requireWithin(`points[${i}].ph`, ph, -1, 15);
	});
}

/** Relative standard uncertainty of everything that stretches or shrinks the whole result. */
export function proportionalUncertainty(titration: ProbeTitration): number {
	return Math.hypot(
		(titration.acidStandardUncertaintyMolPerL ?? 0) / titration.acidMolPerL,
		titration.sampleRelativeStandardUncertainty ?? 0,
		titration.deliveryRelativeStandardUncertainty ?? 0
	);
}

/** Last digit that the readings are given to, pH: 0.01 where the longest has two decimals. */
export function lastDigitOfPh(points: readonly ProbePoint[]): number {
	for (let decimals = 0; decimals < 6; decimals++) {
		const scale = 10 ** decimals;
		if (points.every(({ ph }) => Math.abs(ph * scale - Math.round(ph * scale)) < 1e-6))
			return 1 / scale;
	}
	return 1e-6;
}
