import type { Conclusion } from '$lib/observation';

/**
 * What each conclusion is called, in the one order of every screen, what it means when it is
 * chosen, and what it is called afterwards.
 */
export const conclusionWords = {
	stands: {
		name: 'The reading stands',
		means: 'I would act on this number.',
		was: 'a reading that stands'
	},
	technique: {
		name: 'My technique',
		means: 'Something in how the test was done.',
		was: 'technique'
	},
	reagent: {
		name: 'The reagent',
		means: 'A bottle of the kit is not what it should be.',
		was: 'the reagent'
	},
	secondMethod: {
		name: 'The second method',
		means: 'The other way of measuring is off, not mine.',
		was: 'the second method'
	},
	waterChanged: {
		name: 'The water changed',
		means: 'The tank is not what it was.',
		was: 'a real change of the water'
	},
	salinity: {
		name: 'The salinity',
		means: 'All that is dissolved moved alike. See to the salt first.',
		was: 'the salinity'
	},
	carriedOver: {
		name: 'What was taken off',
		means: 'The test is fine; the other value it was reckoned with is not.',
		was: 'the value that was taken off'
	},
	cantTellYet: {
		name: 'Can’t tell yet',
		means: 'What is known does not decide it.',
		was: 'something that could not be told'
	}
} satisfies Record<Conclusion, { name: string; means: string; was: string }>;

/** Five answers to 'how sure?', as per cent. */
export const sureness = [
	{ sure: 20, words: 'A guess', odds: '2 in 10' },
	{ sure: 40, words: 'Rather unsure', odds: '4 in 10' },
	{ sure: 60, words: 'Leaning yes', odds: '6 in 10' },
	{ sure: 80, words: 'Fairly sure', odds: '8 in 10' },
	{ sure: 95, words: 'Very sure', odds: '19 in 20' }
] as const;

/** The words for a sureness, by the nearest of the five answers. */
export function surenessWords(sure: number): { words: string; odds: string } {
	const [first, ...rest] = sureness;
	return rest.reduce<(typeof sureness)[number]>(
		(best, each) => (Math.abs(each.sure - sure) < Math.abs(best.sure - sure) ? each : best),
		first
	);
}
