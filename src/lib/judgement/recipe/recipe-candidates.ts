import { requireWithin } from '../../chemistry';
import type { Unit } from '../../kits';
import type { RecipeRoute, Stage } from './recipe';
import { measuredIn, mlPerWeighedG, waterGPerMl, type Measure, type Scale } from './recipe-measure';
import type { Purity, SubstanceId } from './recipe-substance';
import {
	SALT_DENSITY_RISE,
	SALT_G_PER_L,
	type RecipeMatrix,
	type WaterHolds
} from './recipe-water';

export type RecipeInput = {
	substance: SubstanceId;
	/** What the solution shall hold, in `unit`. */
	target: number;
	unit: Unit;
	matrix: RecipeMatrix;
	/** Of the solution to be made, 50 to 20,000 mL. */
	volumeMl: number;
	/** For the powder, and for portions of stock that it can take. */
	scale: Scale;
	/** How the water is measured: a scale for kilograms, or the line of a jug. */
	water: Exclude<Measure, { by: 'syringe' }>;
	/** For a portion of stock; no such route when left out. */
	syringeCapacityMl?: number;
	/** As the label says it; that of the substance's record when left out. */
	purity?: Purity;
	/** In `unit`; distilled or deionised water that nobody measured when left out. */
	waterHolds?: WaterHolds;
	/** Of water and room; 20 when left out. */
	temperatureC?: number;
	/** Of a stock; 1000 when left out. */
	stockVolumeMl?: number;
	/** How many times stronger a stock may be; 10, 20, 50 and 100 when left out. */
	stockFactors?: readonly number[];
};

/** In two dilutions, each takes a tenth, the first into half a litre. */
const TENTH = 10;
const BETWEEN_ML = 500;

/** Chains of dilutions; the powder's mass is still to be found. */
export function candidates(input: RecipeInput): { route: RecipeRoute; stages: Stage[] }[] {
	const { scale, water, syringeCapacityMl } = input;
	const stockMl = input.stockVolumeMl ?? 1000;
	const fine: Measure = { by: 'scale', scale };
	const powder = { amount: scale.divisionG, measure: fine };
	const madeUpTo = (volumeMl: number, isSalted: boolean) => ({
		amount: plannedTotal(input, volumeMl, isSalted),
		measure: water
	});
	const last = madeUpTo(input.volumeMl, input.matrix === 'sodiumChloride');
	const stock = { portion: powder, total: madeUpTo(stockMl, false) };
	/** The finer scale, or the one for the water where that takes more. */
	const weighed = (amountG: number): Measure =>
		amountG > scale.capacityG / 2 && water.by === 'scale' ? water : fine;
	const portionOf = (volumeMl: number, factor: number) => {
		const amount = Number((volumeMl / factor).toPrecision(3));
		return { amount, measure: weighed(amount) };
	};
	const found: { route: RecipeRoute; stages: Stage[] }[] = [
		{ route: 'direct', stages: [{ portion: powder, total: last }] }
	];
	for (const factor of input.stockFactors ?? [10, 20, 50, 100]) {
		requireWithin('stockFactors', factor, 2, 1000);
		const portion = portionOf(input.volumeMl, factor);
		found.push({ route: 'stockWeighed', stages: [stock, { portion, total: last }] });
		if (syringeCapacityMl !== undefined && portion.amount <= syringeCapacityMl) {
			const drawn: Measure = { by: 'syringe', capacityMl: syringeCapacityMl };
			found.push({
				route: 'stockSyringe',
				stages: [stock, { portion: { amount: portion.amount, measure: drawn }, total: last }]
			});
		}
		if (factor === TENTH * TENTH)
			found.push({
				route: 'twoDilutions',
				stages: [
					stock,
					{ portion: portionOf(BETWEEN_ML, TENTH), total: madeUpTo(BETWEEN_ML, false) },
					{ portion: portionOf(input.volumeMl, TENTH), total: last }
				]
			});
	}
	return found;
}

/** A round total: mL to a line, or the grams nearest to it on a scale. */
function plannedTotal(input: RecipeInput, volumeMl: number, isSalted: boolean): number {
	if (measuredIn(input.water) === 'mL') return volumeMl;
	const density =
		waterGPerMl(input.temperatureC ?? 20) +
		(isSalted ? (SALT_DENSITY_RISE * SALT_G_PER_L) / 1000 : 0);
	const step = volumeMl >= 500 ? 10 : 1;
	return step * Math.round(volumeMl / mlPerWeighedG(density) / step);
}
