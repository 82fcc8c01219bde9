import { referenceReading, type DropTest } from '../../chemistry';
import { convertValue, unitsOf } from '../../kits';
import { metalMatrixEffect, type MetalValue } from '../catalogue/matrix-effect-metals';
import { SALT_G_PER_L, type RecipeMatrix } from './recipe-water';
import type { Content, Recipe } from './recipe';
import { substanceOf, type Substance } from './recipe-substance';

/**
 * By how much a sound kit reads more than a solution holds, because it is no seawater: with a
 * standard uncertainty, or anywhere between two values where the kit's own end colour and the
 * swirling are not known. In the unit of the content.
 */
export type ReadingEffect =
	{ value: number; standardUncertainty: number } | { low: number; high: number };

/** What a kit should read on a solution. */
export type ExpectedReading = {
	value: number;
	standardUncertainty: number;
	/** k = 2, about 95 %. The scatter of a test is not in it. */
	expandedUncertainty: number;
	/** Value less and plus its expanded uncertainty. */
	low: number;
	high: number;
	/** The effect that was taken, as a value with its standard uncertainty. */
	effect: { value: number; standardUncertainty: number };
};

/**
 * What a sound kit should read on a solution of known content: its content and the effect of water
 * that is no seawater; any value of a range alike.
 *
 * @throws RangeError when a range is the wrong way round
 */
export function expectedReadingOf(
	content: Pick<Content, 'value' | 'standardUncertainty'>,
	effect: ReadingEffect
): ExpectedReading {
	const taken = 'low' in effect ? middleOf(effect) : effect;
	const value = content.value + taken.value;
	const standardUncertainty = Math.hypot(content.standardUncertainty, taken.standardUncertainty);
	return {
		value,
		standardUncertainty,
		expandedUncertainty: 2 * standardUncertainty,
		low: value - 2 * standardUncertainty,
		high: value + 2 * standardUncertainty,
		effect: taken
	};
}

function middleOf({ low, high }: { low: number; high: number }) {
	if (!(low <= high)) throw new RangeError(`low must not be above high; found ${low} and ${high}`);
	return { value: (low + high) / 2, standardUncertainty: (high - low) / Math.sqrt(12) };
}

/** Between which contents the effect is worked out, dKH; beyond them that of the nearer end is taken. */
const WORKED_OUT_DKH = { low: 0.5, high: 40 };

/**
 * The effect of water that is no seawater, worked out by chemistry, in the unit of the content. Of metals it
 * is that of an ordinary kit with EDTA, the same as the diagnosis takes; solutions with magnesium alone read
 * like those with both metals within its ± (0.2 mmol/L lower in purified water, 0.4 higher with salt).
 *
 * @param test the kit's own end, indicator and sample as far as they are known; what is left out is
 *   anything that people do with an ordinary kit, and is in the uncertainty. For a test with acid only
 */
export function waterEffectOf(
	{ matrix, substance, temperatureC }: Pick<Recipe, 'matrix' | 'substance' | 'temperatureC'>,
	content: Pick<Content, 'value' | 'unit'>,
	test: DropTest = {}
): { value: number; standardUncertainty: number } {
	const { analyte, dissolvesAs }: Substance = substanceOf(substance);
	const [customary = content.unit] = unitsOf(analyte);
	const nominal = convertValue(content.value, content.unit, customary, analyte);
	const { value, standardUncertainty } =
		dissolvesAs === null
			? ofMetal(analyte, matrix, nominal)
			: ofAcid(dissolvesAs, { matrix, temperatureC }, nominal, test);
	const inUnit = (each: number) => convertValue(each, customary, content.unit, analyte);
	return { value: inUnit(value), standardUncertainty: inUnit(standardUncertainty) };
}

function ofAcid(
	madeWith: 'bicarbonate' | 'carbonate',
	{ matrix, temperatureC }: Pick<Recipe, 'matrix' | 'temperatureC'>,
	dkh: number,
	test: DropTest
) {
	const { differenceDkh, standardUncertaintyDkh } = referenceReading(
		{
			alkalinityDkh: Math.min(WORKED_OUT_DKH.high, Math.max(WORKED_OUT_DKH.low, dkh)),
			matrix,
			// g in a litre where g in a kilogram are asked for: 2 % of the salt, nothing of the effect.
			salinity: matrix === 'purified' ? 0 : SALT_G_PER_L,
			temperatureC,
			madeWith
		},
		test
	);
	return { value: differenceDkh, standardUncertainty: standardUncertaintyDkh };
}

function ofMetal(metal: MetalValue, matrix: RecipeMatrix, nominal: number) {
	const { mean, standardDeviation } = metalMatrixEffect(metal, matrix, nominal);
	return { value: mean, standardUncertainty: standardDeviation };
}
