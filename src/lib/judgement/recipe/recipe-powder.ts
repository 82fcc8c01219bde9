import type { Recipe, Stage } from './recipe';
import { contentOf, volumeMlAfter } from './recipe-content';
import { substanceOf } from './recipe-substance';

/**
 * With the mass of powder that the target asks for, to a division of the scale; null where that is
 * less than one, or clearly more than dissolves.
 */
export function withPowder(recipe: Recipe): Recipe | null {
	const [first, ...rest] = recipe.stages;
	if (!first || first.portion.measure.by !== 'scale') return null;
	const weighing = (amount: number): Recipe => ({
		...recipe,
		stages: [{ ...first, portion: { ...first.portion, amount } }, ...rest]
	});
	const { divisionG } = first.portion.measure.scale;
	// Beyond half as much again densities are no longer those of the record, and no round can bring it back.
	const mostG = (1.5 * substanceOf(recipe.substance).mostGPerL * first.total.amount) / 1000;
	// All but proportional (a stock is denser the more is in it, by up to 4 %): six rounds bring it home.
	let massG = 1;
	for (let round = 0; round < 6; round++) {
		const { value } = contentOf(weighing(massG));
		massG *= (recipe.target - recipe.waterHolds.value) / (value - recipe.waterHolds.value);
		if (massG > mostG) return null;
	}
	const divisions = Math.round(massG / divisionG);
	// In divisions of a power of ten, so that 0.24 is not 0.24000000000000002.
	return divisions < 1 ? null : weighing(Number((divisions * divisionG).toPrecision(8)));
}

/** No scale over its capacity, and all of the powder dissolves. */
export function canBeMade(recipe: Recipe): boolean {
	const first = recipe.stages[0];
	if (!first) return false;
	const gPerL = (1000 * first.portion.amount) / volumeMlAfter(recipe, 0);
	const fits = ({ amount, measure }: Stage['portion']) =>
		measure.by !== 'scale' || amount <= measure.scale.capacityG;
	return (
		gPerL <= substanceOf(recipe.substance).mostGPerL &&
		recipe.stages.every(({ portion, total }) => fits(portion) && fits(total))
	);
}
