import {
	densityKgPerL,
	dicFromAlkalinityAndPh,
	fillVessel,
	mediumOf,
	molPerKgFromDkh,
	titrateInTheOpen,
	type ProbePoint
} from '../../src/lib/chemistry';

/** Water, acid and beaker of the titrations that tests make up. */
export const salinity = 35;
export const temperatureC = 25;
export const sampleVolumeMl = 50;
export const acidMolPerL = 0.1;
export const titration = { sampleVolumeMl, acidMolPerL, salinity, temperatureC };
export const density = densityKgPerL(salinity, temperatureC);

export type Simulated = {
	alkalinityDkh: number;
	ph?: number;
	readings?: number;
	/** Last volume over that of the end. */
	reach?: number;
	/** Of the meter: what it shows too much at pH 4, and its slope. */
	offsetPh?: number;
	slope?: number;
	/** What it has shifted by at the end, and how much of the way to the next pH it has not gone yet. */
	driftPh?: number;
	lag?: number;
	/** Share of the excess CO2 that leaves at each addition. */
	loss?: number;
	/** Strength of the acid over what is written on it. */
	acidFactor?: number;
	phSd?: number;
	/** Random error of a volume, mL. */
	addedSdMl?: number;
	decimals?: number;
	normal?: () => number;
};

/** Alkalinity, carbon and end of a made-up seawater. */
export function waterOf({ alkalinityDkh, ph = 8.1 }: Simulated) {
	const alkalinityMolPerKg = molPerKgFromDkh(alkalinityDkh, density);
	return {
		alkalinityMolPerKg,
		dicMolPerKg: dicFromAlkalinityAndPh({ salinity, temperatureC, alkalinityMolPerKg, ph }),
		endMl: (alkalinityMolPerKg * density * sampleVolumeMl) / acidMolPerL
	};
}

/**
 * A titration with a pH meter, worked out by the vessel's bookkeeping and the pH solver: the meter
 * follows free hydrogen ion, and shows it with its own offset, slope and noise.
 */
export function simulatedReadings(simulated: Simulated): ProbePoint[] {
	const { readings = 28, reach = 1.45, offsetPh = 0, slope = 1, loss = 0 } = simulated;
	const { driftPh = 0, lag = 0, phSd = 0, addedSdMl = 0, decimals = 9 } = simulated;
	const { normal = () => 0, acidFactor = 1 } = simulated;
	const { alkalinityMolPerKg, dicMolPerKg, endMl } = waterOf(simulated);
	const marks = Array.from({ length: readings }, (_, i) => (endMl * reach * i) / (readings - 1));
	let inBeakerMl = 0;
	const steps = marks.flatMap((mark) => {
		const addMl = Math.max(0, mark + addedSdMl * normal() - inBeakerMl);
		inBeakerMl += addMl;
		return [{ addMl }, { swirlLoss: loss }];
	});
	const start = fillVessel({
		matrix: 'seawater',
		salinity,
		temperatureC,
		alkalinityMolPerKg,
		dicMolPerKg,
		volumeMl: sampleVolumeMl
	});
	const states = titrateInTheOpen(start, acidMolPerL * acidFactor, steps);
	let shown: number | null = null;
	return marks.map((addedMl, i) => {
		const { vessel, ph } = states[2 * i + 1]!;
		const { totals, constants } = mediumOf(
			'seawater',
			(1000 * vessel.saltKg) / vessel.massKg,
			temperatureC,
			0
		);
		const freePh = ph + Math.log10(1 + totals.sulfateMolPerKg / constants.kS);
		const drift = (driftPh * i) / (readings - 1);
		const settled: number = 4 + offsetPh + drift + slope * (freePh - 4);
		shown = shown === null ? settled : settled + lag * (shown - settled);
		return { addedMl, ph: Number((shown + phSd * normal()).toFixed(decimals)) };
	});
}
