import {
	mistakenContents,
	type Content,
	type ContentPart,
	type ExpectedReading,
	type Recipe,
	type RecipeRoute
} from '$lib/judgement';
import { unitOf } from '$lib/kits';
import { plain } from '../charts/numbers';
import { abouts } from './about';
import { readingRange } from './numbers';

export const routeNames: Record<RecipeRoute, string> = {
	direct: 'powder straight into the water',
	stockWeighed: 'through a stock, a portion of it weighed',
	stockSyringe: 'through a stock, a portion of it by syringe',
	twoDilutions: 'through a stock, diluted twice by weight'
};

const partNames: Record<ContentPart['of'], string> = {
	powder: 'weighing the powder',
	'stock portion': 'measuring the portion of stock',
	'stock water': 'measuring the water of the stock',
	water: 'measuring the water',
	purity: 'how pure the powder is',
	'water itself': 'what the water itself may hold'
};

/** Shares of the uncertainty by what was measured, the largest first: shares of its square, summing to 1. */
export function dominantParts(content: Content): { name: string; share: number }[] {
	// Lines of one vessel are off alike and add up before they are squared.
	const ofLines = content.parts
		.filter(({ kind }) => kind === 'line')
		.reduce((sum, { standardUncertainty }) => sum + standardUncertainty, 0);
	const sums = new Map<ContentPart['of'], number>();
	for (const { of, kind, standardUncertainty: u } of content.parts)
		sums.set(of, (sums.get(of) ?? 0) + u * (kind === 'line' ? ofLines : u));
	return [...sums]
		.map(([of, square]) => ({
			name: partNames[of],
			share: square / content.standardUncertainty ** 2
		}))
		.sort((a, b) => b.share - a.share);
}

/** Why the kit should not read just what it holds. */
export function whyRead(recipe: Recipe, expected: ExpectedReading, content: Content): string {
	const { decimals, name } = unitOf(content.unit, content.analyte);
	const { value, standardUncertainty } = expected.effect;
	const size = Math.abs(value);
	const isSeen = Number(size.toFixed(decimals)) > 0 && size > standardUncertainty / 2;
	if (!isSeen)
		return 'because in salt water of this strength the colour turns as it does in water from the tank.';
	const { late, early } = abouts[content.analyte].turns;
	const than = value > 0 ? 'more' : 'less';
	const where =
		recipe.matrix === 'purified' ? 'in water without sea salt' : 'in water with plain salt only';
	return `because ${where} ${value > 0 ? late : early}: about ${plain(size, decimals)} ${name} ${than} than it holds. That is no fault of the kit.`;
}

const mistakenWords: Record<string, string> = {
	partlyCarbonated: 'the baking soda had turned partly into carbonate',
	monohydrate: 'the carbonate had taken up water',
	decahydrate: 'it was washing soda in crystals',
	stillBicarbonate: 'the carbonate was still partly bicarbonate',
	anhydrousCalcium: 'it was calcium chloride without water',
	hexahydrateCalcium: 'it was calcium chloride with six waters',
	drewWater: 'the powder had drawn water',
	driedEpsom: 'it was dried Epsom salt',
	lostWater: 'the crystals had lost water',
	anhydrousMagnesium: 'it was magnesium chloride without water'
};

/** 'up to 12.5 dKH' where it may be so in part, 'about 2.9 dKH' where it is so or not. */
function mistakenReading(
	low: number,
	high: number,
	{ value, unit, analyte }: Content,
	{ effect }: ExpectedReading
): string {
	const farther = Math.abs(high - value) > Math.abs(low - value) ? high : low;
	const word = low === high ? 'About' : farther > value ? 'Up to' : 'Down to';
	return `${word}\u00a0${readingRange(farther + effect.value, farther + effect.value, unit, analyte)}`;
}

/** What the kit would read if the powder was not what it was taken for. */
export function mistakenLines(
	recipe: Recipe,
	content: Content,
	expected: ExpectedReading
): { id: string; reading: string; words: string }[] {
	return mistakenContents(recipe, content).map(({ id, low, high }) => ({
		id,
		reading: mistakenReading(low, high, content, expected),
		words: mistakenWords[id] ?? id
	}));
}
