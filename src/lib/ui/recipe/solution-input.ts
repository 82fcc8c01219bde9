import { unmeasuredWater, waterByBlank, type RecipeInput } from '$lib/judgement';
import { convertValue, numberText, unitOf, type TypedRange, type Unit } from '$lib/kits';
import { plain } from '../charts/numbers';
import type { Blanks, BlanksRead } from './blanks';
import {
	matrices,
	ownScale,
	powders,
	scales,
	syringeCapacityMl,
	syringes,
	waterMeasureOf,
	waters,
	waterWays,
	type ScaleName,
	type WaterWay
} from './owned';

/** What a kit read on the water alone. */
export type BlankRead = { value: number; expandedUncertainty: number };

/** What an empty target is taken for: 8 dKH, in the unit at hand. */
export const usualTarget = (unit: Unit) => {
	const { decimals } = unitOf(unit);
	return plain(convertValue(8, 'dKH', unit), decimals);
};
export const USUAL_LITRES = '1';

/** The unit of everything typed: that of the first letter, else what is preferred. */
export function unitOfBlanks(blanks: Blanks, preferred: Unit): Unit {
	const kept = blanks['unit'];
	return (
		(['dKH', 'meq/L', 'ppm CaCO3', 'mmol/L'] as const).find((unit) => unit === kept) ?? preferred
	);
}

/** Another scale or way to measure water, to see what it would give. */
export type Instead = { scale?: ScaleName; water?: WaterWay };

/** A range given in dKH, in another unit of alkalinity. */
export function rangeIn(unit: Unit, lowDkh: number, highDkh: number): TypedRange {
	const { decimals, name } = unitOf(unit);
	const [low, high] = [lowDkh, highDkh].map((dkh) => convertValue(dkh, 'dKH', unit)) as [
		number,
		number
	];
	return {
		low,
		high,
		why: `In ${name} from ${plain(low, Math.max(1, decimals))} to ${plain(high, decimals)}`
	};
}

/** The range of a ±, which nothing measured is without; its ends are as they are said. */
export function plusMinusIn(unit: Unit, lowDkh: number, highDkh: number): TypedRange {
	const [low, high] = [lowDkh, highDkh].map((dkh) =>
		// In the digits of a reading the lower end would be 0, which is refused.
		Number(convertValue(dkh, 'dKH', unit).toPrecision(2))
	) as [number, number];
	const why = `A ± is above 0: in ${unitOf(unit).name} from ${numberText(low)} to ${numberText(high)}`;
	return { low, high, why };
}

/** What the kit read on the water alone, if that was done; null after a problem too. */
export function blankIn(read: BlanksRead, unit: Unit): BlankRead | null {
	if (read.choice('water', waters) !== 'blank') return null;
	const value = read.number('blankReading', 'what the water alone read', rangeIn(unit, 0, 5));
	const expandedUncertainty = read.number('blankPlusMinus', 'its ±', plusMinusIn(unit, 0.05, 3));
	return value === null || expandedUncertainty === null ? null : { value, expandedUncertainty };
}

/** What is asked for and what is at hand; null after a problem. */
export function inputOf(read: BlanksRead, unit: Unit, instead: Instead = {}): RecipeInput | null {
	const between = (low: number, high: number) => rangeIn(unit, low, high);
	const target = read.number('target', 'what it shall hold', between(1, 30), usualTarget(unit));
	const litres = read.number(
		'litres',
		'how much you want',
		{ low: 0.2, high: 4, why: 'From 0.2 to 4 L' },
		USUAL_LITRES
	);
	const water = read.choice('water', waters);
	const matrix = read.choice('matrix', matrices);
	const blank = blankIn(read, unit);
	const holds =
		water === 'blank'
			? blank && waterByBlank(blank.value, blank.expandedUncertainty)
			: unmeasuredWater(water, matrix, unit);
	if (target === null || litres === null || holds === null) return null;
	if (target <= 2 * holds.value) {
		read.problems['target'] = 'The water alone holds half of that or more: take purer water.';
		return null;
	}
	const syringe = syringeCapacityMl(read.choice('syringe', syringes));
	return {
		substance: read.choice('powder', powders),
		target,
		unit,
		matrix,
		volumeMl: 1000 * litres,
		scale: ownScale(instead.scale ?? read.choice('scale', scales)),
		water: waterMeasureOf(instead.water ?? read.choice('waterWay', waterWays)),
		waterHolds: holds,
		...(syringe === null ? {} : { syringeCapacityMl: syringe })
	};
}
