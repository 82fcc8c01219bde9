import type { Analyte, Kit } from './kit';

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
