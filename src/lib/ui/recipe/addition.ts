import {
	additionAsMade,
	contentOf,
	gPerMlAfter,
	recipeAsMade,
	smallestShareShown,
	standardAddition,
	type Addition,
	type AdditionInput,
	type AdditionMade
} from '$lib/judgement';
import { convertValue } from '$lib/kits';
import { abouts } from './about';
import { BlanksRead, chosenOf, type Blanks } from './blanks';
import { amountText, valueText } from './numbers';
import { doseWays, ownScale, scales, stocks, waterMeasureOf, waterWays } from './owned';
import type { Solution } from './solution';
import { plusMinusIn, rangeIn } from './solution-input';

/** A standard addition, as far as the page tells it. */
export type AdditionShown = {
	addition: Addition | null;
	made: AdditionMade | null;
	/** The smallest fault in proportion that it shows, as a share. */
	smallestShare: number | null;
	/** The stock made above, in words; null where there is none. */
	ownStock: string | null;
	/** Nothing was said of the tank yet. */
	isEmpty: boolean;
	problems: Readonly<Record<string, string>>;
};

const noAddition: AdditionShown = {
	addition: null,
	made: null,
	smallestShare: null,
	ownStock: null,
	isEmpty: true,
	problems: {}
};

/** Scatter of one ordinary drop test, dKH; judgement. */
export const USUAL_SCATTER_DKH = 0.15;
export const USUAL_WATER_ML = '200';

function ownStockOf({ recipe, found }: Solution) {
	if (!recipe || recipe.stages.length < 2) return null;
	const { value, expandedUncertainty, standardUncertainty, unit } = contentOf(recipe, found, 0);
	return {
		words: valueText(value, expandedUncertainty, unit),
		stock: { value, standardUncertainty, gPerMl: gPerMlAfter(recipeAsMade(recipe, found), 0) }
	};
}

/** Where the stock is: made above if there is one, unless another was chosen. */
export function stockChosen(blanks: Blanks, solution: Solution): keyof typeof stocks {
	return ownStockOf(solution) ? chosenOf(blanks, 'stock', stocks) : 'other';
}

function inputOf(read: BlanksRead, blanks: Blanks, solution: Solution): AdditionInput | null {
	const { unit } = solution;
	const between = (low: number, high: number) => rangeIn(unit, low, high);
	const tank = read.number('tank', 'what your tank reads', between(1, 30));
	const plusMinus = read.number('tankPlusMinus', 'its ±', plusMinusIn(unit, 0.02, 5));
	const waterMl = read.number(
		'tankWater',
		'how much water from the tank you take',
		{ low: 20, high: 1000, why: 'From 20 to 1000 mL' },
		USUAL_WATER_ML
	);
	const top = read.optional('top', 'the top of the kit’s scale', between(2, 100));
	const own = ownStockOf(solution);
	let stock: AdditionInput['stock'] | null = own?.stock ?? null;
	if (stockChosen(blanks, solution) === 'other') {
		const value = read.number('stockValue', 'how strong the stock is', between(40, 20_000));
		const u = read.number('stockPlusMinus', 'its ±', plusMinusIn(unit, 0.1, 2000));
		stock =
			value === null || u === null
				? null
				: {
						value,
						standardUncertainty: u / 2,
						// As bicarbonate: 0.03 g in a litre for each dKH.
						gPerMl: 0.998 + 0.73 * 3e-5 * convertValue(value, unit, 'dKH')
					};
	}
	if (tank === null || plusMinus === null || waterMl === null || top === null || stock === null)
		return null;
	const scale = ownScale(read.choice('scale', scales));
	return {
		unit,
		stock,
		tank: { value: tank, standardUncertainty: plusMinus / 2 },
		waterMl,
		water: waterMeasureOf(read.choice('tankWay', waterWays)),
		dose:
			read.choice('doseWay', doseWays) === 'scale'
				? { by: 'scale', scale }
				: { by: 'syringe', capacityMl: 1 },
		...(top === undefined ? {} : { fullScale: top })
	};
}

/** Everything about the addition that follows from what is typed and chosen. */
export function additionOf(blanks: Blanks, solution: Solution): AdditionShown {
	if (abouts[solution.analyte].noAddition !== null) return noAddition;
	const read = new BlanksRead(blanks);
	const isEmpty = read.isEmpty('tank');
	const input = inputOf(read, blanks, solution);
	let addition: Addition | null = null;
	if (input) {
		const { stock, tank, fullScale } = input;
		if (stock.value < 10 * tank.value)
			read.problems['stockValue'] = 'It must be ten times as strong as your tank, or stronger.';
		else if (fullScale !== undefined && fullScale < 1.3 * tank.value)
			read.problems['top'] = 'The scale ends too near to what your tank reads: no room for a rise.';
		else addition = standardAddition(input);
	}
	let made: AdditionMade | null = null;
	if (addition) {
		const found: { water?: number; dose?: number } = {};
		let isSound = true;
		for (const part of ['water', 'dose'] as const) {
			const planned = addition[part];
			const value = read.optional(`found.addition.${part}`, 'what it really was', {
				low: planned.amount / 3,
				high: planned.amount * 3,
				why: `Planned were ${amountText(planned)}; take a third to three times that`
			});
			if (value === null) isSound = false;
			else if (value !== undefined) found[part] = value;
		}
		if (isSound) made = additionAsMade(addition, found);
	}
	const scatter = convertValue(USUAL_SCATTER_DKH, 'dKH', solution.unit);
	return {
		addition,
		made,
		smallestShare: made && smallestShareShown(made, scatter),
		ownStock: ownStockOf(solution)?.words ?? null,
		isEmpty,
		problems: read.problems
	};
}
