import type { Analyte, Kit, Unit } from './kit';
import { analyteUnits, unitOf } from './units';

type Difference = NonNullable<Kit['byDifference']>;

/**
 * What the value of an analyte can be made into when another is taken off, counted in moles: a kit
 * that says so gives it (`Kit.byDifference`).
 */
export const differenceOfAnalyte: Partial<Record<Analyte, Difference>> = {
	hardness: { gives: 'magnesium', less: 'calcium' }
};

/** Analytes whose tests may hold a value of this one: its own, and those that it can be taken from. */
export function analytesGiving(analyte: Analyte): Analyte[] {
	const others = (Object.keys(differenceOfAnalyte) as Analyte[]).filter(
		(other) => differenceOfAnalyte[other]?.gives === analyte
	);
	return [analyte, ...others];
}

/** Analytes whose value can be taken off another. */
export function canBeTakenOff(analyte: Analyte): boolean {
	return Object.values(differenceOfAnalyte).some(({ less }) => less === analyte);
}

/**
 * A value, or an uncertainty of one, as an amount in the base unit that two analytes share: moles in a
 * litre, where one is taken off the other.
 *
 * @throws RangeError naming the analyte when its base unit is another
 */
export function amountOf(value: number, unit: Unit, analyte: Analyte, base: string): number {
	const own = analyteUnits[analyte].base;
	if (own !== base)
		throw new RangeError(`${analyte} must be counted in ${base} to be taken off; found ${own}`);
	return value * unitOf(unit, analyte).size;
}
