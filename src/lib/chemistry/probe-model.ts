import type { Mixture } from './probe-mixture';
import type { ProbePoint } from './probe-titration';
import { alkalinityAt, phAtAlkalinity } from './speciation';

/**
 * What decides a reading, in sizes near one so that a solver finds them alike: alkalinity and carbon
 * of the undiluted sample in mmol/kg; the meter's offset at the pivot, pH; its slope, 1 for an ideal
 * electrode.
 */
export type ProbeParameters = readonly [
	alkalinityMmolPerKg: number,
	dicMmolPerKg: number,
	offsetPh: number,
	slope: number
];

/** pH on the free scale about which the electrode's slope turns: near the readings that decide the end. */
export const PIVOT_PH = 4;

/** Reading of the meter at one point, and its derivatives. */
export type ModelReading = {
	ph: number;
	/** By alkalinity, carbon, offset and slope. */
	byParameter: [number, number, number, number];
	/** By acid, per mol/kg of mixture. */
	byAcid: number;
};

/** A reading and what was in the beaker. */
export type MixedPoint = ProbePoint & { index: number; mixture: Mixture };

/**
 * What a meter shows in a mixture. The electrode follows free hydrogen ion: reading = pivot + offset +
 * slope · (pH_free − pivot). That the offset is the same all along is what a fit rests on.
 *
 * @param startPh where to look for the pH first; nearness saves time and changes nothing else
 */
export function modelReading(
	mixture: Mixture,
	[alkalinity, dic, offset, slope]: ProbeParameters,
	startPh: number
): ModelReading {
	const { sampleShare, acidMolPerKg, medium, freeShift } = mixture;
	const composition = { medium, dicMolPerKg: (dic / 1000) * sampleShare, dyes: [] };
	const mixedAlkalinity = (alkalinity / 1000) * sampleShare - acidMolPerKg;
	const mediumPh = phAtAlkalinity(mixedAlkalinity, composition, startPh);
	const h = 10 ** -mediumPh;
	const out = { value: 0, slope: 0 };
	alkalinityAt(h, composition, out);
	const { k1, k2 } = medium.constants;
	// So much alkalinity a mol of carbon is at this pH; at one alkalinity, more carbon lowers the pH.
	const perCarbon = (k1 * h + 2 * k1 * k2) / (h * h + k1 * h + k1 * k2);
	const freePh = mediumPh + freeShift;
	const byAlkalinity = slope / out.slope;
	return {
		ph: PIVOT_PH + offset + slope * (freePh - PIVOT_PH),
		byParameter: [
			(byAlkalinity * sampleShare) / 1000,
			(-byAlkalinity * sampleShare * perCarbon) / 1000,
			1,
			freePh - PIVOT_PH
		],
		byAcid: -byAlkalinity
	};
}

/** The model at many points; each remembers where its pH was found last. */
export function modelOf(points: readonly MixedPoint[]) {
	const places = points.map(({ ph }) => ph);
	return (parameters: ProbeParameters): ModelReading[] =>
		points.map(({ mixture }, i) => {
			const found = modelReading(mixture, parameters, places[i]!);
			places[i] = found.ph;
			return found;
		});
}
