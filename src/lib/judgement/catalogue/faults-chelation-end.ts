import type { Fault } from './fault';
import { about, chelation, eitherWay, habitAndOnce, mixed } from './make-fault';

const technique = { class: 'technique', target: 'endPoint', analytes: chelation } as const;
const told =
	'Size: common practice, no source, and computed on the practice bench. Prior: judgement.';

/** What can go astray between the first drop of EDTA and the colour that is called the end. */
export const chelationEndFaults: readonly Fault[] = [
	...habitAndOnce(
		{
			...technique,
			id: 'firstPurple',
			name: 'stopped at the first purple',
			// The dye of both metals goes through purple for some drops, that of calcium within one.
			sizes: mixed('drops', [0.6, -2.4, 0.9], [0.4, -0.7, 0.4]),
			remedy: 'Go on, drop by drop, until no red is left. The end is a blue without purple.',
			shownBy: ['repeatFull', 'otherHands', 'reference'],
			origin: told
		},
		{ habit: 0.025, once: 0.025 }
	),
	...habitAndOnce(
		{
			...technique,
			id: 'blueTurnedBack',
			name: 'stopped at a blue that turned back',
			sizes: about(-2, 0.9, 'drops'),
			remedy: 'Swirl for half a minute. Where red comes back, go on until the blue stays.',
			shownBy: ['repeatFull', 'otherHands', 'warmSlow'],
			origin: told
		},
		{ habit: 0.02, once: 0.03 }
	),
	...habitAndOnce(
		{
			...technique,
			id: 'coldOrFast',
			name: 'cold water, or drops that followed each other fast',
			sizes: about(1.4, 0.5, 'drops'),
			undoneBy: ['warmSlow'],
			remedy: 'Let the sample come to room temperature, and wait some seconds between last drops.',
			shownBy: ['warmSlow', 'reference'],
			origin: told
		},
		{ habit: 0.025, once: 0.025 }
	),
	{
		...technique,
		id: 'otherLightChelation',
		name: 'blue and purple judged in blue or dim light',
		scope: 'hands',
		sizes: eitherWay(1.8, 0.8, 'drops', 0.5),
		prior: 0.04,
		remedy: 'White light and a white card, away from the tank’s own lamps.',
		shownBy: ['repeatFull', 'reference'],
		origin: 'Judgement: under blue light purple and blue look alike.'
	},
	{
		...technique,
		id: 'stoodWithBase',
		name: 'sample stood long with its base',
		target: 'gain',
		scope: 'hands',
		needs: { reagent: 'base' },
		sizes: about(-0.02, 0.006, 'share'),
		undoneBy: ['thinnedSample'],
		prior: 0.025,
		remedy: 'Begin when the leaflet says. Most of the titrant before the base helps as well.',
		shownBy: ['thinnedSample', 'repeatFull'],
		origin:
			'Size: common practice, no source, 1 to 3 in a hundred; on the practice bench 0.9 in ten minutes and 2.7 in thirty. Prior: judgement.'
	},
	{
		...technique,
		id: 'dyeBlocked',
		name: 'copper or iron that holds the dye',
		class: 'method',
		scope: 'kit',
		// It holds the dye of the tank’s water; a known solution has none of it.
		undoneBy: ['reference', 'blank', 'thinnedSample'],
		sizes: about(4, 2.5, 'drops'),
		prior: 0.008,
		remedy: 'Thin the sample with purified water, or ask another method. Ask what was treated.',
		shownBy: ['thinnedSample', 'reference', 'secondMethod'],
		origin: 'Judgement: the blue does not come, or late.'
	},
	{
		id: 'vialTraces',
		name: 'hard tap water, lime or another test left in the vial',
		class: 'ware',
		target: 'constant',
		scope: 'sampleWare',
		analytes: chelation,
		sizes: mixed('drops', [0.7, 1.5, 0.8], [0.3, -1.2, 0.7]),
		prior: 0.015,
		remedy: 'Keep a vial of its own for each test, and rinse it with the sample before use.',
		shownBy: ['blank', 'repeatFull'],
		origin: 'Judgement, size and prior.'
	}
];
