import type { Chance } from './chance';
import type { Facts, World } from './world';

/** A plain question, what could be answered, what was so, and what the person says. */
export type Answer = {
	question: string;
	options: readonly string[];
	wasSo: string;
	/** 'not known' where the person cannot say. */
	said: string;
};
/** Of the answers given, so many are not what was so. */
export const WRONG_SHARE = 0.1;
export const NOT_KNOWN_SHARE = 0.08;

/** Usual answer first: it is what was so where nothing was the matter. */
const questions: Readonly<Record<string, readonly string[]>> = {
	filledBy: ['seal', 'line'],
	readBy: ['seal', 'line'],
	tipFitted: ['before filling', 'after filling'],
	firstPush: ['a drop at once', 'no drop at first'],
	edgeOfSeal: ['the same both times', 'not the same both times'],
	plunger: ['runs evenly', 'jerks'],
	airInTip: ['none seen', 'spat once'],
	dripsUnaided: ['no', 'yes'],
	dropAtStart: ['wiped', 'hanging'],
	dropAtEnd: ['none', 'hanging'],
	countedWhat: ['what was used', 'what was left'],
	eyeLevel: ['yes', 'no'],
	countSure: ['sure', 'not quite'],
	dropperHeld: ['upright', 'slanting'],
	squeezed: ['gently', 'hard'],
	sampleLevel: ['at the line', 'above the line', 'below the line'],
	bubbleInSample: ['no', 'yes'],
	rinsedWith: ['tank water', 'pure water'],
	vialLooks: ['clear', 'film on the glass'],
	vialShared: ['kept for this test', 'with another test'],
	vialCleaned: ['rinsed with water', 'with vinegar lately', 'dishwasher'],
	startColour: ['as always', 'odd'],
	sampleLooks: ['clear', 'grains or haze'],
	colourAfterMinute: [
		'stayed',
		'went within seconds',
		'came back, went on dripping',
		'comes back again and again'
	],
	lastSteps: ['single drops', 'several drops at once'],
	endColour: ['as the leaflet shows', 'deeper than the leaflet shows'],
	swirled: ['each time', 'hardly'],
	light: ['white', 'blue or dim'],
	indicatorDose: ['as the leaflet says', 'not sure'],
	indicatorLooks: ['as always', 'pale'],
	bottleLooks: ['as always', 'low, or a crust at the cap', 'flakes'],
	bottleKept: ['in the room', 'in the cold'],
	titrantSyringe: ['dry', 'rinsed with water and wet'],
	sinceDose: ['more than an hour', 'less than an hour'],
	cup: ['only tank water about', 'other water stood beside it'],
	dosing: ['as usual', 'stopped or bottle empty', 'gave more than it should'],
	salinity: ['as usual', 'low on another instrument'],
	secondMethodCare: ['clean and fresh', 'dirt, bubble or old reagent'],
	laboratoryDelay: ['within four days', 'more than four days'],
	powder: ['fresh baking soda', 'baking soda', 'washing soda', 'baked or old'],
	scaleShows: ['hundredths of a gram', 'whole grams'],
	waterOfSolution: ['purified', 'tap or unsure'],
	valueFrom: ['counted', 'the table, by eye'],
	unitSure: ['yes', 'no'],
	writtenDown: ['at once', 'later, from memory'],
	leafletFor: ['seawater', 'fresh water']
};

/** Unusual things that are so now and then although they did no harm. */
const harmless: readonly (readonly [keyof Facts & string, string, number])[] = [
	['startColour', 'odd', 0.03],
	['vialLooks', 'film on the glass', 0.06],
	['bottleLooks', 'low, or a crust at the cap', 0.1],
	['sinceDose', 'less than an hour', 0.08],
	['vialShared', 'with another test', 0.15],
	['valueFrom', 'the table, by eye', 0.4],
	['indicatorLooks', 'pale', 0.04],
	['dosing', 'stopped or bottle empty', 0.02],
	['bottleKept', 'in the cold', 0.05],
	['powder', 'baking soda', 0.3]
];

const askedOnlyOf: Partial<Record<string, (world: World) => boolean>> = {
	...Object.fromEntries(
		[
			'filledBy',
			'readBy',
			'tipFitted',
			'firstPush',
			'edgeOfSeal',
			'plunger',
			'airInTip',
			'dripsUnaided',
			'countedWhat',
			'titrantSyringe'
		].map((question) => [question, ({ kit }: World) => kit.figures.delivery === 'syringe'])
	),
	...Object.fromEntries(
		['countSure', 'dropperHeld', 'squeezed'].map((question) => [
			question,
			({ kit }: World) => kit.figures.delivery === 'dropper'
		])
	),
	eyeLevel: ({ kit }) => kit.figures.graduationMl !== null,
	laboratoryDelay: ({ second }) => second.method === 'laboratory'
};

/** What the person says to each plain question: about one answer in ten is not what was so. */
export function answersIn(world: World, c: Chance): Answer[] {
	// The second method and the known solution can be asked about whether or not they were used.
	const facts: Facts = {};
	for (const [question, odd, share] of harmless) if (c.happens(share)) facts[question] = odd;
	Object.assign(facts, world.facts);
	return Object.entries(questions)
		.filter(([question]) => askedOnlyOf[question]?.(world) ?? true)
		.map(([question, options]) => {
			const wasSo = facts[question] ?? options[0] ?? '';
			const wrong = c.pick(options.filter((option) => option !== wasSo));
			const isWrong = c.happens(WRONG_SHARE);
			const said = c.happens(NOT_KNOWN_SHARE) ? 'not known' : isWrong ? wrong : wasSo;
			return { question, options, wasSo, said };
		});
}
