import type { Marks } from '../../../src/lib/observation';
import type { Chance } from './chance';
import type { OutsideKit } from './kits';

/** What lasts longer than one test: a person, a bottle, a piece of ware. */
export type Hands = {
	/** pH by which this person sees the end later (below 0) or earlier. */
	endPh: number;
	co2Left: number;
	/** Share by which the sample is set above its mark, and marks misread, mL. */
	sampleShare: number;
	parallaxMl: number;
	/** Scatter of the pH where the end is called, test by test. */
	endPhSd: number;
};
export type Lot = { strength: number };
export type Ware = { scale: number };

/** What is in the vial: alkalinity, and the carbon that makes CO2 on the way. */
export type Water = {
	dkh: number;
	matrix: 'seawater' | 'purified' | 'sodiumChloride';
	/** Dissolved inorganic carbon over alkalinity, mol/eq: 1 for bicarbonate, 0.5 for carbonate. */
	carbonPerAlkalinity: number;
};

/** How one titration was done, as departures from doing it right; mistakes bend these. */
export type Doing = {
	/** Added to the volume that was really delivered, to get the volume that was read, mL. */
	readMl: number;
	/** Readings start at one sort of edge and end at the other: by this, once for every filling. */
	perFillingMl: number;
	/** Titrant that reached the vial without being counted, mL. */
	uncountedMl: number;
	dropFactor: number;
	sampleFactor: number;
	/** Alkalinity brought into the vial, as it shows in a sample of usual size, dKH. */
	strayDkh: number;
	strengthFactor: number;
	endPh: number;
	co2Left: number;
	/** Further shift of the end that grows with the sample, dKH. */
	endDkh: number;
	isReversed: boolean;
	/** The mark written down is that of the liquid line, not of the seal. */
	readsLine: boolean;
	/** Applied to the value after all sums. */
	valueFactor: number;
	valueDkh: number;
	scatter: number;
};
export const doneRight: Readonly<Doing> = {
	readMl: 0,
	perFillingMl: 0,
	uncountedMl: 0,
	dropFactor: 1,
	sampleFactor: 1,
	strayDkh: 0,
	strengthFactor: 1,
	endPh: 0,
	co2Left: 0,
	endDkh: 0,
	isReversed: false,
	readsLine: false,
	valueFactor: 1,
	valueDkh: 0,
	scatter: 1
};

/**
 * First dissociation of carbonic acid near 25 °C: 6.35 in pure water (textbook), about 5.85 in
 * seawater and 6.0 in plain salt water. The dye turns about half a pH unit higher in pure water.
 */
const pkOf = { seawater: 5.85, purified: 6.35, sodiumChloride: 6 } as const;
const hueShiftOf = { seawater: 0, purified: 0.5, sodiumChloride: 0.05 } as const;
const MEQ_PER_DKH = 0.35665;

/** Acid beyond the equivalence point when the vial stands at `ph`, as alkalinity, dKH. */
export function excessAcidDkh(water: Water, ph: number, co2Left: number): number {
	const hydrogenMeq = 10 ** (3 - ph);
	const carbonMeq = Math.max(0, water.dkh) * MEQ_PER_DKH * water.carbonPerAlkalinity * co2Left;
	const bicarbonateMeq = carbonMeq / (1 + 10 ** (pkOf[water.matrix] - ph));
	return (hydrogenMeq - bicarbonateMeq) / MEQ_PER_DKH;
}

export type Tested = {
	kit: OutsideKit;
	hands: Hands;
	lot: Lot;
	sampleWare: Ware;
	titrantWare: Ware;
	water: Water;
	doing: Doing;
	/** Sample over the usual sample. */
	sampleRatio: number;
};

const roundTo = (value: number, step: number) => Math.round(value / step) * step;
const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/** Volume that must be delivered before this person calls the end, mL. */
function wantedMl({ kit, hands, lot, sampleWare, water, doing, sampleRatio }: Tested, c: Chance) {
	const ph =
		kit.endPh +
		hueShiftOf[water.matrix] +
		hands.endPh +
		doing.endPh +
		c.normal(hands.endPhSd * doing.scatter);
	const left = clamp(hands.co2Left + doing.co2Left + c.normal(0.05), 0, 1);
	const usual: Water = { dkh: 8, matrix: 'seawater', carbonPerAlkalinity: 0.9 };
	const setByMaker = excessAcidDkh(usual, kit.endPh, kit.co2Left);
	const demandDkh =
		water.dkh +
		doing.strayDkh / sampleRatio +
		excessAcidDkh(water, ph, left) -
		setByMaker +
		doing.endDkh;
	const settingShare = hands.sampleShare + c.normal(0.008 / Math.sqrt(sampleRatio));
	const sample = sampleRatio * sampleWare.scale * doing.sampleFactor * (1 + settingShare);
	return (demandDkh * sample) / (kit.dkhPerMl * lot.strength * doing.strengthFactor);
}

/** Volume read off a scale for a volume that really reached the vial, mL, with the marks. */
function readScale(tested: Tested, deliveredMl: number, graduationMl: number, c: Chance) {
	const { kit, hands, titrantWare, doing } = tested;
	const travelMl = deliveredMl / titrantWare.scale;
	const fillings = Math.max(1, Math.ceil(travelMl / kit.fillMl - 1e-9));
	const misread = hands.parallaxMl + c.normal(0.3 * graduationMl * Math.sqrt(2 * fillings));
	const shownMl = travelMl + doing.readMl + fillings * doing.perFillingMl + misread;
	const readMl = Math.max(0, roundTo(shownMl, graduationMl));
	const left = Number((fillings * kit.fillMl - readMl).toFixed(3));
	const isBurette = kit.figures.delivery === 'burette';
	const marks: Marks = isBurette
		? { levelMl: Number(readMl.toFixed(3)) }
		: { [doing.readsLine ? 'lineMl' : 'sealMl']: left };
	return { readMl: doing.isReversed ? Math.max(0, left) : readMl, marks };
}

/** One titration from filling to the value before it is written down, in dKH. */
export function titrate(tested: Tested, c: Chance): { dkh: number; marks: Marks } {
	const { kit, doing, sampleRatio, titrantWare } = tested;
	const { dropMl, graduationMl } = kit.figures;
	const isDropper = graduationMl === null;
	const stepMl = isDropper
		? dropMl * titrantWare.scale * doing.dropFactor * (1 + c.normal(0.015))
		: dropMl;
	const half = kit.setsHalfStep ? dropMl / 2 : 0;
	const wanted = Math.max(0, wantedMl(tested, c) - half - doing.uncountedMl);
	// Drops fall whole: the end is seen after the first one that carries the vial past it. A scale
	// need not start at a whole drop.
	const phase = isDropper ? 0 : c.between(0, 1);
	const steps = Math.max(isDropper ? 1 : phase, Math.ceil(wanted / stepMl - phase) + phase);
	const drops = Math.max(0, Math.round(steps + doing.readMl / dropMl));
	const { readMl, marks } = isDropper
		? { readMl: drops * dropMl, marks: { drops } }
		: readScale(tested, steps * stepMl, graduationMl, c);
	const dkh = ((readMl * kit.dkhPerMl) / sampleRatio) * doing.valueFactor + doing.valueDkh;
	return { dkh: Math.max(0, dkh), marks };
}
