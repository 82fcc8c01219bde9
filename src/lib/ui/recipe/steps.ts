import {
	SALT_G_PER_L,
	substanceOf,
	trapsOf,
	volumeMlAfter,
	type Content,
	type Measured,
	type Recipe,
	type RecipeTrap,
	type TrapMoment
} from '$lib/judgement';
import { plain } from '../charts/numbers';
import { amountText, valueText } from './numbers';
import { foundName } from './solution';

/** One thing to do, and what to write down of it. */
export type Step = {
	id: string;
	/** A sentence in parts: what is measured stands out. */
	words: readonly (string | { amount: string })[];
	/** The blank for what it really was. */
	blank: { name: string; label: string; unit: string; planned: string } | null;
	traps: readonly RecipeTrap[];
};

/** It lies at a step of its own. */
const SALT_TRAP = 'notPlainSalt';

const lastOf = (recipe: Recipe) => recipe.stages.length - 1;

/** What the vessel of a stage is called. */
function vesselName(recipe: Recipe, stage: number): string {
	if (stage === lastOf(recipe)) return 'the solution';
	return stage === 0 ? 'the stock' : 'the weaker stock';
}

function portionWords(recipe: Recipe, stage: number, portion: Measured): Step['words'] {
	const amount = { amount: amountText(portion) };
	if (stage === 0)
		return ['Weigh ', amount, ` of ${substanceOf(recipe.substance).name} in a small dry cup.`];
	const from = vesselName(recipe, stage - 1);
	return portion.measure.by === 'syringe'
		? ['Draw ', amount, ` of ${from} into a clean, dry syringe, without air.`]
		: ['Weigh ', amount, ` of ${from} in a clean cup.`];
}

/** Into which vessel a stage is filled, and how it is made ready. */
function vesselOf({ measure }: Measured): { name: string; ready: string } {
	return measure.by === 'scale'
		? { name: 'the bottle', ready: 'Set a clean, empty bottle to zero on the kitchen scale. ' }
		: { name: 'the vessel', ready: '' };
}

/**
 * The salt is part of what the scale shows in the end: it goes in once the empty bottle stands at zero.
 * Before that the solution would come out weaker by as much as the salt weighs.
 */
function saltWords(recipe: Recipe, total: Measured): Step['words'] {
	const { name, ready } = vesselOf(total);
	const saltG = (SALT_G_PER_L * volumeMlAfter(recipe)) / 1000;
	return [
		`${ready}Put `,
		{ amount: `${plain(saltG, 0)}\u00a0g` },
		` of plain salt into ${name}. One gram more or less does not matter${ready ? '; leave the zero as it is' : ''}.`
	];
}

function totalWords(
	recipe: Recipe,
	stage: number,
	total: Measured,
	isSaltIn: boolean
): Step['words'] {
	const amount = { amount: amountText(total) };
	const what = stage === 0 ? 'the powder' : vesselName(recipe, stage - 1);
	const { name, ready } = vesselOf(total);
	if (stage === 0 && substanceOf(recipe.substance).growsHot)
		return [
			`${isSaltIn ? '' : ready}Put most of the water into ${name}, then the powder a little at a time: it grows warm. Rinse the cup into it, let it cool, and fill up to ${total.measure.by === 'scale' ? '' : 'the line of '}`,
			amount,
			`${total.measure.by !== 'scale' ? '' : isSaltIn ? ' in all, the salt included' : ' in all'}.`
		];
	if (total.measure.by === 'scale')
		return [
			isSaltIn
				? `Rinse ${what} into ${name} with the water and fill up to `
				: `${ready}Rinse ${what} into it with the water and fill up to `,
			amount,
			` in all${isSaltIn ? ', the salt included' : ''}.`
		];
	// Grains of salt take more room than the salt does once it is dissolved.
	const fill = isSaltIn
		? 'most of the water, swirl until the salt is dissolved, and fill up'
		: 'the water and fill up';
	return [`Rinse ${what} into ${name} with ${fill} to the line of `, amount, '.'];
}

/** The recipe as numbered steps, each trap at the step where it lies. */
export function stepsOf(recipe: Recipe, stockContent: (stage: number) => Content): Step[] {
	const traps = trapsOf(recipe);
	const used = new Set<TrapMoment>();
	/** Once each, at the first step of its moment. */
	const trapsAt = (...moments: TrapMoment[]) => {
		const fresh = moments.filter((moment) => !used.has(moment));
		fresh.forEach((moment) => used.add(moment));
		return traps.filter(({ when, id }) => fresh.includes(when) && id !== SALT_TRAP);
	};
	const steps: Step[] = [];
	recipe.stages.forEach(({ portion, total }, stage) => {
		const isLast = stage === lastOf(recipe);
		const blank = (part: 'portion' | 'total', measured: Measured, label: string) => {
			const [planned = '', unit = ''] = amountText(measured).split('\u00a0');
			return { name: foundName(recipe, stage, part), label, unit, planned };
		};
		steps.push({
			id: `portion-${stage}`,
			words: portionWords(recipe, stage, portion),
			blank: blank(
				'portion',
				portion,
				portion.measure.by === 'syringe' ? 'Really drawn' : 'Really weighed'
			),
			traps: stage === 0 ? trapsAt('powder', 'weighing') : []
		});
		const hasSalt = isLast && recipe.matrix === 'sodiumChloride';
		if (hasSalt)
			steps.push({
				id: 'salt',
				words: saltWords(recipe, total),
				blank: null,
				traps: traps.filter(({ id }) => id === SALT_TRAP)
			});
		steps.push({
			id: `total-${stage}`,
			words: totalWords(recipe, stage, total, hasSalt),
			// A line is a line: there is nothing to read off it.
			blank: total.measure.by === 'line' ? null : blank('total', total, 'Really in all'),
			traps: trapsAt('water')
		});
		steps.push({
			id: `mix-${stage}`,
			words: [
				'Close it and turn it over twenty times. Label it: ',
				isLast ? 'known solution' : vesselName(recipe, stage).replace('the ', ''),
				...(isLast ? [' with what it holds (below)'] : [`, ${valueOf(stockContent(stage))}`]),
				', the date, “not to drink”.'
			],
			blank: null,
			traps: isLast ? trapsAt('dissolving', 'keeping') : trapsAt('dissolving')
		});
	});
	return steps;
}

function valueOf({ value, expandedUncertainty, unit, analyte }: Content): string {
	return valueText(value, expandedUncertainty, unit, analyte);
}
