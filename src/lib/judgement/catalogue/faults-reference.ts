import type { Fault } from './fault';
import { molarMasses } from './molar-masses';
import { about, alkalinity, eitherWay, mixed } from './make-fault';

const { sodiumCarbonate, sodiumBicarbonate, water } = molarMasses;
/** Weighed as if it were dry carbonate, so much of it is. */
const hydrateShare = (waters: number) => sodiumCarbonate / (sodiumCarbonate + waters * water) - 1;
/** Bicarbonate that has turned to carbonate altogether holds so much more in the same weight. */
const WHOLLY_CARBONATE = (2 * sodiumBicarbonate) / sodiumCarbonate - 1;

/** What can be wrong with a known solution. */
export const referenceFaults: readonly Fault[] = [
	{
		id: 'referenceMonohydrate',
		name: 'carbonate with one water weighed as dry',
		class: 'reference',
		target: 'reference',
		scope: 'solution',
		analytes: alkalinity,
		sizes: about(hydrateShare(1), 0.01, 'share'),
		prior: 0.025,
		remedy: 'Read the label for the formula, or dry the powder first; then make it anew.',
		shownBy: ['referenceBySecondMethod', 'secondMethod'],
		origin: 'Size: exact, from molar masses. Prior: judgement.'
	},
	{
		id: 'referenceWashingSoda',
		name: 'washing soda weighed as dry carbonate',
		class: 'reference',
		target: 'reference',
		scope: 'solution',
		analytes: alkalinity,
		// Crystals lose water as they lie about: seldom all ten are left.
		sizes: mixed('share', [0.7, hydrateShare(10), 0.015], [0.3, -0.5, 0.08]),
		prior: 0.015,
		remedy: 'Make it anew from dry carbonate or bicarbonate of known purity.',
		shownBy: ['referenceBySecondMethod', 'secondMethod'],
		origin: 'Size: exact for ten waters, from molar masses; the rest and prior: judgement.'
	},
	{
		id: 'referencePartCarbonate',
		name: 'bicarbonate turned partly to carbonate',
		class: 'reference',
		target: 'reference',
		scope: 'solution',
		analytes: alkalinity,
		sizes: mixed('share', [0.6, 0.06, 0.03], [0.3, 0.25, 0.1], [0.1, WHOLLY_CARBONATE, 0.015]),
		prior: 0.025,
		remedy: 'Use fresh bicarbonate that was never heated, or bake it all to carbonate.',
		shownBy: ['referenceBySecondMethod', 'secondMethod'],
		origin:
			'Size: exact for powder that has turned altogether, from molar masses; the rest and prior: judgement.'
	},
	{
		id: 'referenceWeighedOff',
		name: 'known solution weighed or made up to another strength',
		class: 'reference',
		target: 'reference',
		scope: 'solution',
		analytes: alkalinity,
		sizes: eitherWay(0.07, 0.025, 'share'),
		prior: 0.05,
		remedy: 'Weigh more and dilute in two steps, on a scale that shows hundredths of a gram.',
		shownBy: ['referenceBySecondMethod', 'secondMethod'],
		origin: 'Size: common practice, no source, a kitchen scale. Prior: judgement.'
	},
	{
		id: 'referenceWaterImpure',
		name: 'water of the known solution was not pure',
		class: 'reference',
		target: 'reference',
		scope: 'solution',
		analytes: alkalinity,
		sizes: about(0.5, 0.25, 'customaryUnit'),
		prior: 0.03,
		remedy: 'Test the water by itself, or take purified water.',
		shownBy: ['blank', 'referenceBySecondMethod'],
		origin: 'Size: textbook kind, 0.1 to 1 dKH. Prior: judgement.'
	}
];
