import type { DropTest } from '$lib/chemistry';
import { convertValue, type Kit } from '$lib/kits';
import { methodFiguresOf } from '$lib/metrology';

/** The usual indicator takes up so much of the sample: 0.05 mL in 5 mL. */
const USUAL_INDICATOR_SHARE = 0.01;
/** Half of the hues about its end colour at which people stop; judgement, as for an ordinary kit. */
const HALF_WIDTH_DEGREES = 15;
/** As far as the chemistry of the end is worked out. */
const SAMPLE_ML = { low: 0.5, high: 100 };
const ACID_MOL_PER_L = { low: 0.001, high: 1 };

const within = (value: number, { low, high }: { low: number; high: number }) =>
	value >= low && value <= high;

/** What is known of a kit's end. */
export type KitAtEnd = {
	test: DropTest;
	/** The bottles' contents and the end colour are known, and not only what a leaflet says. */
	isAllKnown: boolean;
};

/**
 * A kit as the chemistry of its end needs it: sample and strength of the titrant follow from the leaflet;
 * dyes and end colour are known of kits whose bottles are known, and are those of an ordinary kit
 * otherwise. What lies beyond what the chemistry is worked out for is left out.
 */
export function kitAtEnd(kit: Kit): KitAtEnd {
	const { valuePerMl, sampleVolumeMl } = methodFiguresOf(kit);
	// 1 mL of titrant takes up as much as the leaflet makes of it, from the whole sample.
	const acidMolPerL =
		(convertValue(valuePerMl, kit.unit, 'meq/L', kit.analyte) * sampleVolumeMl) / 1000;
	const isSampleKnown = within(sampleVolumeMl, SAMPLE_ML);
	const dyed = dyedBy(kit);
	const { hueDegrees } = kit.endPoint;
	return {
		test: {
			...(isSampleKnown ? { sampleVolumeMl } : {}),
			...(within(acidMolPerL, ACID_MOL_PER_L) ? { acidMolPerL } : {}),
			...(dyed ? { indicator: dyed } : {}),
			...(dyed && hueDegrees !== undefined
				? { end: { hueDegrees, halfWidthDegrees: HALF_WIDTH_DEGREES } }
				: {})
		},
		isAllKnown: dyed !== null && hueDegrees !== undefined
	};
}

/** The indicator, where the leaflet says how much and somebody what is in it. */
function dyedBy({ reagents, contents, sample }: Kit): NonNullable<DropTest['indicator']> | null {
	const reagent = reagents.find(({ role }) => role === 'indicator');
	const dyes = reagent && contents?.dyes[reagent.id];
	if (!dyes || dyes.length === 0) return null;
	const { amount, unit, unitMl } = reagent.dose;
	const eachMl = unitMl ?? (unit === 'mL' ? 1 : null);
	const usualMl = USUAL_INDICATOR_SHARE * (sample.volumes[0]?.volumeMl ?? 0);
	return { volumeMl: eachMl === null ? usualMl : amount * eachMl, dyes };
}
