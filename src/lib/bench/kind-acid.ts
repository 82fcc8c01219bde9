import {
	VIAL_PATH_CM,
	acidVial,
	addAcid,
	addAlkalinity,
	alkalinityAt,
	colourOf,
	compositionOf,
	fillVessel,
	phOf,
	type Vessel
} from '../chemistry';
import type { TitrationKind } from './titration-kind';
import type { VialContents } from './vial-contents';
import { carbonOf } from './water-carbon';

/** Above this pH the colour stays put. */
const NEAR_END_PH = 5.6;

/** Acid over what brings the water to pH 6: what a grain of carbonate can still take up, mol. */
function acidForGrainsMol(vessel: Vessel): number {
	const out = { value: 0, slope: 0 };
	alkalinityAt(1e-6, compositionOf(vessel), out);
	return Math.max(0, out.value * vessel.massKg - vessel.alkalinityMol);
}
/** Share of that acid taken up each second by grains, still and swirled; this project's choice: minutes. */
const GRAINS_STILL_PER_S = 0.01;
const GRAINS_SWIRLED_PER_S = 0.04;

const withDissolvedGrains = (vessel: Vessel, grainsMol: number): Vessel =>
	addAlkalinity(vessel, { alkalinityMol: 2 * grainsMol, dicMol: grainsMol });

/** pH from the first drop to well past any end. */
const FIRST_PH = 7;
const LAST_PH = 3.6;

/** The vessel brought to a pH with strong acid. */
function atPh(start: Vessel, ph: number): Vessel {
	const molPerL = 0.1;
	const at = (volumeMl: number) => addAcid(start, { volumeMl, molPerL });
	let low = 0;
	let high = (Math.max(0, start.alkalinityMol) / molPerL) * 1000 + 1;
	for (let i = 0; i < 30; i++) {
		const middle = (low + high) / 2;
		if (phOf(at(middle)) > ph) low = middle;
		else high = middle;
	}
	return at(low);
}

/** Alkalinity with strong acid: carbon dioxide leaves at each swirl, grains of carbonate go on taking acid. */
const kind: TitrationKind<Vessel> = {
	...acidVial,
	settle: (vessel, passing) =>
		passing.carbonDioxideShare === 0 ? vessel : acidVial.settle(vessel, passing),
	fill: (water, volumeMl) => {
		const { matrix, salinity, temperatureC } = water;
		return fillVessel({ matrix, salinity, temperatureC, ...carbonOf(water), volumeMl });
	},
	massKgOf: ({ massKg }) => massKg,
	pass(vessel, { seconds, isSwirled, carbonDioxideShare, grainsMol }) {
		const contents = acidVial.settle(vessel, { seconds, carbonDioxideShare });
		if (grainsMol <= 0) return { contents, grainsMol };
		const rate = isSwirled ? GRAINS_SWIRLED_PER_S : GRAINS_STILL_PER_S;
		const takenMol =
			Math.min(2 * grainsMol, acidForGrainsMol(vessel)) * (1 - Math.exp(-rate * seconds));
		return {
			contents: withDissolvedGrains(contents, takenMol / 2),
			grainsMol: grainsMol - takenMol / 2
		};
	},
	withDissolvedGrains,
	titratedTo: addAcid,
	/** A hue angle that only grows: teal 197, blue, violet, mauve 340, rose beyond 360. */
	placeOnTheWay(vessel) {
		const hue = colourOf(vessel, VIAL_PATH_CM, 'white').lab.hueDegrees;
		return hue < 120 ? hue + 360 : hue;
	},
	endPlaceOf: ({ endPoint }) => endPoint.hueDegrees ?? 340,
	showsInSeconds: () => 0,
	fadedBy: 6,
	looksForEndAt: [1, 2, 4, 8, 16, 32],
	isFar: (vessel) => phOf(vessel) > NEAR_END_PH,
	/** Share of the sample's carbon that is still there: what the swirling left. */
	passedBetween: (start, stop) => ({
		carbonKept: start && stop && start.dicMol > 0 ? Math.min(1.2, stop.dicMol / start.dicMol) : 1
	}),
	passedFollowsDoses: false,
	withPassed: (start, { carbonKept = 1 }) => ({ ...start, dicMol: start.dicMol * carbonKept }),
	/** In proportion to the titrant; carbon that grains brought is left out. */
	onTheWay: (start, { carbonKept = 1 }, share) => ({
		...start,
		dicMol: start.dicMol * (1 - (1 - Math.min(1, carbonKept)) * share)
	}),
	readout: { name: 'pH', of: (vessel) => phOf(vessel) },
	wayOf: (start, _titrant, points) =>
		Array.from({ length: points }, (_, i) =>
			atPh(start, FIRST_PH + ((LAST_PH - FIRST_PH) * i) / (points - 1))
		)
};

export const acidKind = kind as unknown as TitrationKind<VialContents>;
