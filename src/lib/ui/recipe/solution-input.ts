import { unmeasuredWater, waterByBlank, type MadeAnalyte, type RecipeInput } from '$lib/judgement';
import {
	convertValue,
	numberText,
	unitFor,
	unitOf,
	unitsOf,
	type TypedRange,
	type Unit
} from '$lib/kits';
import { plain } from '../charts/numbers';
import { abouts } from './about';
import type { Blanks, BlanksRead } from './blanks';
import {
	matrices,
	ownScale,
	powdersFor,
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

/** In an analyte's customary unit, in another one. */
const inUnit = (value: number, unit: Unit, analyte: MadeAnalyte) =>
	convertValue(value, unitFor(analyte, undefined), unit, analyte);

/** What an empty target is taken for, in the unit at hand. */
export const usualTarget = (unit: Unit, analyte: MadeAnalyte = 'alkalinity') =>
	plain(inUnit(abouts[analyte].usualTarget, unit, analyte), unitOf(unit, analyte).decimals);
export const USUAL_LITRES = '1';

/** The unit of everything typed: that of the first letter, else what is preferred. */
export function unitOfBlanks(
	blanks: Blanks,
	preferred: Unit,
	analyte: MadeAnalyte = 'alkalinity'
): Unit {
	const kept = blanks['unit'];
	return unitsOf(analyte).find((unit) => unit === kept) ?? unitFor(analyte, preferred);
}

/** Another scale or way to measure water, to see what it would give. */
export type Instead = { scale?: ScaleName; water?: WaterWay };

/** A range given in the customary unit, in another one. */
export function rangeIn(
	unit: Unit,
	customaryLow: number,
	customaryHigh: number,
	analyte: MadeAnalyte = 'alkalinity'
): TypedRange {
	const { decimals, name } = unitOf(unit, analyte);
	const [low, high] = [customaryLow, customaryHigh].map((end) => inUnit(end, unit, analyte)) as [
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
export function plusMinusIn(
	unit: Unit,
	customaryLow: number,
	customaryHigh: number,
	analyte: MadeAnalyte = 'alkalinity'
): TypedRange {
	const [low, high] = [customaryLow, customaryHigh].map((end) =>
		// In the digits of a reading the lower end would be 0, which is refused.
		Number(inUnit(end, unit, analyte).toPrecision(2))
	) as [number, number];
	const why = `A ± is above 0: in ${unitOf(unit, analyte).name} from ${numberText(low)} to ${numberText(high)}`;
	return { low, high, why };
}

/** What the kit read on the water alone, if that was done; null after a problem too. */
export function blankIn(
	read: BlanksRead,
	unit: Unit,
	analyte: MadeAnalyte = 'alkalinity'
): BlankRead | null {
	if (read.choice('water', waters) !== 'blank') return null;
	const { waterAlone, waterAlonePlusMinus } = abouts[analyte];
	const value = read.number(
		'blankReading',
		'what the water alone read',
		rangeIn(unit, ...waterAlone, analyte)
	);
	const expandedUncertainty = read.number(
		'blankPlusMinus',
		'its ±',
		plusMinusIn(unit, ...waterAlonePlusMinus, analyte)
	);
	return value === null || expandedUncertainty === null ? null : { value, expandedUncertainty };
}

/** What is asked for and what is at hand; null after a problem. */
export function inputOf(
	read: BlanksRead,
	unit: Unit,
	analyte: MadeAnalyte = 'alkalinity',
	instead: Instead = {}
): RecipeInput | null {
	const target = read.number(
		'target',
		'what it shall hold',
		rangeIn(unit, ...abouts[analyte].target, analyte),
		usualTarget(unit, analyte)
	);
	const litres = read.number(
		'litres',
		'how much you want',
		{ low: 0.2, high: 4, why: 'From 0.2 to 4 L' },
		USUAL_LITRES
	);
	const water = read.choice('water', waters);
	const matrix = read.choice('matrix', matrices);
	const blank = blankIn(read, unit, analyte);
	const holds =
		water === 'blank'
			? blank && waterByBlank(blank.value, blank.expandedUncertainty)
			: unmeasuredWater(water, matrix, unit, analyte);
	if (target === null || litres === null || holds === null) return null;
	if (target <= 2 * holds.value) {
		read.problems['target'] = 'The water alone holds half of that or more: take purer water.';
		return null;
	}
	const syringe = syringeCapacityMl(read.choice('syringe', syringes));
	return {
		substance: read.choice('powder', powdersFor(analyte)),
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
