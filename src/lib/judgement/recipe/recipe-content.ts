import { requireWithin } from '../../chemistry';
import { combineUncertainty, type UncertaintyInput } from '../../metrology';
import type { Content, ContentPart, FoundAmounts, Measured, Recipe } from './recipe';
import { measuredIn, mlPerWeighedG, partsOf, waterGPerMl } from './recipe-measure';
import { contentOfGramPerL, substanceOf } from './recipe-substance';
import { SALT_DENSITY_RISE, SALT_G_PER_L } from './recipe-water';

/** A recipe with what was really measured in it. */
export function recipeAsMade(recipe: Recipe, found: FoundAmounts): Recipe {
	const taken = (measured: Measured, amount: number | undefined, field: string) =>
		amount === undefined
			? measured
			: { ...measured, amount: requireWithin(field, amount, 1e-4, 1e5) };
	return {
		...recipe,
		stages: recipe.stages.map(({ portion, total }, i) => ({
			portion: taken(portion, found[i]?.portion, `portion of stage ${i + 1}`),
			total: taken(total, found[i]?.total, `total of stage ${i + 1}`)
		}))
	};
}

/** Density of the solution of a stage, g/mL: water, the substance, and salt in the last. */
function densityAfter(recipe: Recipe, stage: number, powderG: number): number {
	const total = recipe.stages[stage]?.total;
	if (!total) throw new RangeError(`stage must be one of the recipe's; found ${stage}`);
	const isSalted = recipe.matrix === 'sodiumChloride' && stage === recipe.stages.length - 1;
	const salted =
		waterGPerMl(recipe.temperatureC) + (isSalted ? (SALT_DENSITY_RISE * SALT_G_PER_L) / 1000 : 0);
	const rise = substanceOf(recipe.substance).densityRise;
	const share = powderG / total.amount;
	return measuredIn(total.measure) === 'mL' ? salted + rise * share : salted / (1 - rise * share);
}

/** Grams of powder in the solution of a stage and its volume. */
function dissolvedIn(recipe: Recipe, lastStage: number): { powderG: number; volumeMl: number } {
	let powderG = 0;
	let volumeMl = 0;
	let before: { total: Measured; mlPerG: number } | null = null;
	for (const [i, { portion, total }] of recipe.stages.slice(0, lastStage + 1).entries()) {
		if (before === null) powderG = portion.amount;
		else {
			const inMl = ({ amount, measure }: Measured, mlPerG: number) =>
				measuredIn(measure) === 'mL' ? amount : amount * mlPerG;
			powderG *= inMl(portion, before.mlPerG) / inMl(before.total, before.mlPerG);
		}
		const mlPerG = mlPerWeighedG(densityAfter(recipe, i, powderG));
		volumeMl = measuredIn(total.measure) === 'mL' ? total.amount : total.amount * mlPerG;
		before = { total, mlPerG };
	}
	return { powderG, volumeMl };
}

/** Volume of the solution of a stage, mL. */
export function volumeMlAfter(recipe: Recipe, stage = recipe.stages.length - 1): number {
	return dissolvedIn(recipe, stage).volumeMl;
}

/** Density of the solution of a stage, g/mL. */
export function gPerMlAfter(recipe: Recipe, stage: number): number {
	return densityAfter(recipe, stage, dissolvedIn(recipe, stage).powderG);
}

/**
 * What the solution holds after what was really measured, with every part of its uncertainty.
 * Content follows from mass, purity and volume; every measured amount is an independent factor, but
 * lines of one vessel, which are off alike each time. A few degrees, and the air that the powder
 * displaces, are less than 0.1 % and left out.
 *
 * @param stage which solution: the last when left out; 0 is the stock of a recipe that has one
 */
export function contentOf(
	recipe: Recipe,
	found: FoundAmounts = [],
	stage = recipe.stages.length - 1
): Content {
	const made = recipeAsMade(recipe, found);
	const { powderG, volumeMl } = dissolvedIn(made, stage);
	const { purity, waterHolds, unit } = recipe;
	const fromPowder =
		(contentOfGramPerL(recipe.substance, unit) * purity.share * powderG * 1000) / volumeMl;

	const parts: ContentPart[] = [];
	const inputs: UncertaintyInput[] = [];
	const take = (
		of: ContentPart['of'],
		kind: ContentPart['kind'],
		u: number,
		sensitivity: number
	) => {
		parts.push({ of, kind, standardUncertainty: u * Math.abs(sensitivity) });
		inputs.push({ name: `${of}: ${kind}`, standardUncertainty: u, sensitivity });
	};
	made.stages.slice(0, stage + 1).forEach(({ portion, total }, i) => {
		for (const part of partsOf(portion.measure, portion.amount))
			take(
				i === 0 ? 'powder' : 'stock portion',
				part.kind,
				part.standardUncertainty,
				fromPowder / portion.amount
			);
		for (const part of partsOf(total.measure, total.amount))
			take(
				i < made.stages.length - 1 ? 'stock water' : 'water',
				part.kind,
				part.standardUncertainty,
				-fromPowder / total.amount
			);
	});
	take('purity', 'assumed', purity.halfWidth / Math.sqrt(3), fromPowder / purity.share);
	take('water itself', 'assumed', waterHolds.standardUncertainty, 1);

	const lines = parts.flatMap(({ kind }, i) => (kind === 'line' ? [i] : []));
	const alike = lines.flatMap((i) => lines.flatMap((j) => (i < j ? [{ i, j, r: 1 }] : [])));
	const { standardUncertainty } = combineUncertainty(inputs, alike);
	const value = fromPowder + waterHolds.value;
	return {
		value,
		unit,
		analyte: substanceOf(recipe.substance).analyte,
		standardUncertainty,
		expandedUncertainty: 2 * standardUncertainty,
		relativeStandardUncertainty: standardUncertainty / value,
		parts
	};
}
