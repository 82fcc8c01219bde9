import {
	VIAL_PATH_CM,
	addEdta,
	chelationStateOf,
	chelationVial,
	fillChelationVessel,
	type ChelationVessel,
	type VialChemistry
} from '../chemistry';
import type { Passed, TitrationKind } from './titration-kind';
import type { VialContents } from './vial-contents';
import { carbonOf, densityOfWater } from './water-carbon';
import { metalsMmolPerL } from './water-metals';

/** The vessel, and what of its EDTA has not yet come to the dye: the last of it exchanges slowly. */
type Contents = {
	vessel: ChelationVessel;
	unexchangedMol: number;
};

/**
 * EDTA takes the metal from its dye with a time constant of so much at 25 °C, and so many times as
 * slowly for each 10 °C less. Judgement: warm and swirled the lag is a tenth of a drop, at 10 °C about one,
 * and one for drops that follow each other (common practice, no source: cold or fast gives 1 to 2 drops).
 */
const EXCHANGE_SECONDS = 1.5;
const SLOWER_PER_10_DEGREES = 2.5;
const exchangeSeconds = ({ water }: ChelationVessel) =>
	EXCHANGE_SECONDS * SLOWER_PER_10_DEGREES ** ((25 - water.temperatureC) / 10);

const around = (vessel: ChelationVessel): Contents => ({ vessel, unexchangedMol: 0 });
const withVessel = (contents: Contents, vessel: ChelationVessel): Contents => ({
	...contents,
	vessel
});

const shareOf = (part: number, whole: number) => (whole > 0 ? part / whole : 0);

function withPrecipitate(
	contents: Contents,
	{ solidShare = 0, carriedShare = 0 }: Passed
): Contents {
	const { vessel } = contents;
	return withVessel(contents, {
		...vessel,
		solidMagnesiumMol: vessel.magnesiumMol * solidShare,
		occludedCalciumMol: vessel.calciumMol * carriedShare
	});
}

/** Share of what EDTA takes from which on each drop's blue begins to last: judgement. */
const NEAR_SHARE = 0.85;

/** Metals in solution that EDTA takes, mol. */
const openMetalsMol = (vessel: ChelationVessel) =>
	vessel.calciumMol -
	vessel.occludedCalciumMol +
	vessel.magnesiumMol -
	vessel.solidMagnesiumMol +
	vessel.strontiumMol;

const vial: VialChemistry<Contents> = {
	addWater: (contents, water) =>
		withVessel(contents, chelationVial.addWater(contents.vessel, water)),
	addReagent: (contents, reagent) =>
		withVessel(contents, chelationVial.addReagent(contents.vessel, reagent)),
	addIndicator: (contents, dose) =>
		withVessel(contents, chelationVial.addIndicator(contents.vessel, dose)),
	addTitrant: (contents, titrant) => ({
		...withVessel(contents, addEdta(contents.vessel, titrant)),
		unexchangedMol: contents.unexchangedMol + (titrant.volumeMl / 1000) * titrant.molPerL
	}),
	settle: (contents, passing) => ({
		...withVessel(contents, chelationVial.settle(contents.vessel, passing)),
		unexchangedMol:
			contents.unexchangedMol * Math.exp(-passing.seconds / exchangeSeconds(contents.vessel))
	}),
	/** Where a drop fell there is plenty, and plenty exchanges fast; the rest has not more than came to it. */
	colourOf({ vessel, unexchangedMol }, pathCm, lamp, unmixedMolPerKg = 0) {
		const lackMolPerKg = unexchangedMol / vessel.water.massKg;
		const extra = unmixedMolPerKg > 0 ? unmixedMolPerKg : Math.min(unmixedMolPerKg, -lackMolPerKg);
		return chelationVial.colourOf(vessel, pathCm, lamp, extra);
	},
	volumeMlOf: ({ vessel }) => chelationVial.volumeMlOf(vessel),
	hazeMolPerL: ({ vessel }) => chelationVial.hazeMolPerL(vessel),
	hasDye: ({ vessel }) => chelationVial.hasDye(vessel),
	mostTitrantMol: ({ vessel }) => chelationVial.mostTitrantMol(vessel)
};

/** From red over purple to blue, as a number that grows: the hue angle backwards, red at about 0. */
function placeOnTheWay(contents: Contents): number {
	const hue = vial.colourOf(contents, VIAL_PATH_CM, 'white').lab.hueDegrees;
	return hue < 120 ? -hue : 360 - hue;
}

/**
 * Calcium and magnesium with EDTA: magnesium hydroxide forms and carries calcium down, the last EDTA
 * exchanges slowly. Grains of carbonate stay as they are in the minutes of a test.
 */
const kind: TitrationKind<Contents> = {
	...vial,
	fill(water, volumeMl) {
		const { matrix, salinity, temperatureC } = water;
		const molPerKg = (mmolPerL: number) => mmolPerL / 1000 / densityOfWater(water);
		const { calcium, magnesium } = metalsMmolPerL(water);
		return around(
			fillChelationVessel({
				matrix,
				salinity,
				temperatureC,
				volumeMl,
				...carbonOf(water),
				calciumMolPerKg: molPerKg(calcium),
				magnesiumMolPerKg: molPerKg(magnesium),
				blockingMolPerKg: molPerKg(water.blockingMicromolPerL / 1000)
			})
		);
	},
	massKgOf: ({ vessel }) => vessel.water.massKg,
	pass: (contents, passage) => ({
		contents: vial.settle(contents, passage),
		grainsMol: passage.grainsMol
	}),
	withDissolvedGrains: (contents) => contents,
	/** The precipitate stays as it is: what forms and dissolves meanwhile, `withPassed` says. */
	titratedTo: ({ vessel }, titrant) => around(addEdta(vessel, titrant)),
	placeOnTheWay,
	endPlaceOf: ({ endPoint }) => 360 - (endPoint.hueDegrees ?? 280),
	showsInSeconds: ({ vessel }) => exchangeSeconds(vessel),
	fadedBy: 6,
	// Where the pH is short the colour may come, go, and come again: the first counts.
	looksForEndAt: Array.from({ length: 16 }, (_, i) => (i + 1) / 8),
	isFar: ({ vessel }) => vessel.edtaMol < NEAR_SHARE * openMetalsMol(vessel),
	/** Solid as a share of the magnesium, and the share of the calcium that it carried down. */
	passedBetween: (_start, stop): Passed => {
		if (!stop) return {};
		const { solidMagnesiumMol, magnesiumMol, occludedCalciumMol, calciumMol } = stop.vessel;
		return {
			solidShare: shareOf(solidMagnesiumMol, magnesiumMol),
			carriedShare: shareOf(occludedCalciumMol, calciumMol)
		};
	},
	passedFollowsDoses: true,
	withPassed: withPrecipitate,
	/** The precipitate is there before the first drop. */
	onTheWay: withPrecipitate,
	readout: {
		name: 'pM',
		of({ vessel }) {
			const { free } = chelationStateOf(vessel);
			return -Math.log10(Math.max(1e-12, free.calcium + free.magnesium));
		}
	},
	wayOf(start, titrant, points) {
		const settled = vial.settle(start, { seconds: 60, carbonDioxideShare: 0 });
		const mostMl = (2000 * vial.mostTitrantMol(start)) / titrant.molPerL;
		const at = (volumeMl: number) => around(addEdta(settled.vessel, { ...titrant, volumeMl }));
		const half = { low: 0, high: mostMl };
		for (let i = 0; i < 20; i++) {
			const middle = (half.low + half.high) / 2;
			if (placeOnTheWay(at(middle)) > PURPLE_PLACE) half.high = middle;
			else half.low = middle;
		}
		// Close together where the colour turns, far apart elsewhere.
		return Array.from({ length: points }, (_, i) =>
			at(half.high * Math.max(0, 1 + 0.3 * ((2 * i) / (points - 1) - 1) ** 3))
		);
	}
};
/** Half-way between red and blue. */
const PURPLE_PLACE = 45;

export const edtaKind = kind as unknown as TitrationKind<VialContents>;
