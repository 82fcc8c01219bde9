import { densityKgPerL } from '../../chemistry';
import type { Fault } from './fault';
import { about, alkalinity, eitherWay, mixed } from './make-fault';

/** What is written per kilogram of seawater is smaller than what a litre holds. */
const PER_KG_SHARE = 1 / densityKgPerL(35, 25) - 1;

/** What can be wrong with the other way of measuring. */
export const secondMethodFaults: readonly Fault[] = [
	{
		id: 'otherMethodOff',
		name: 'the other method off by itself',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: alkalinity,
		sizes: mixed('customaryUnit', [0.4, 0.6, 0.3], [0.4, -0.6, 0.3], [0.2, 0, 1.5]),
		prior: 0.13,
		remedy: 'Give both methods the same known solution.',
		shownBy: ['referenceBySecondMethod', 'reference'],
		origin: 'Judgement: what can befall this test can befall that one, though nobody doubts it yet.'
	},
	{
		id: 'photometerOff',
		name: 'photometer with a dirty glass, a bubble or an old zero',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: alkalinity,
		methods: ['photometer'],
		sizes: eitherWay(0.5, 0.15, 'customaryUnit'),
		prior: 0.08,
		remedy: 'Wipe the glass, set it the same way round, set zero anew, and measure again.',
		shownBy: ['referenceBySecondMethod', 'secondMethod'],
		origin: 'Size: common practice, no source. Prior: judgement.'
	},
	{
		id: 'laboratorySampleOld',
		name: 'laboratory sample that stood or travelled long',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: alkalinity,
		methods: ['laboratory'],
		sizes: about(-0.04, 0.013, 'share'),
		prior: 0.08,
		remedy: 'Fill the bottle to the brim, keep it cool, and test your own on the day it is taken.',
		shownBy: ['referenceBySecondMethod', 'secondMethod'],
		origin: 'Size: textbook kind, 2 to 6 in a hundred. Prior: judgement.'
	},
	{
		id: 'laboratoryPerKg',
		name: 'report per kilogram, read as per litre',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: alkalinity,
		methods: ['laboratory', 'probe'],
		sizes: about(PER_KG_SHARE, 0.001, 'share'),
		prior: 0.04,
		remedy: 'Look for “per kg” in the report; a litre of seawater holds 2.3 % more.',
		shownBy: ['secondMethod'],
		origin: 'Size: exact, the density of seawater at 35 and 25 °C. Prior: judgement.'
	},
	{
		id: 'carbonateOnly',
		name: 'the other method leaves borate out',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: alkalinity,
		methods: ['laboratory', 'photometer'],
		sizes: about(-0.35, 0.1, 'customaryUnit'),
		prior: 0.06,
		remedy: 'Ask whether it is total or carbonate alkalinity. Borate is the difference.',
		shownBy: ['referenceBySecondMethod'],
		origin: 'Size: computed, borate at salinity 35 and pH 7.9 to 8.3. Prior: judgement.'
	},
	{
		id: 'meterToFixedPh',
		name: 'meter titration stopped at a fixed pH',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: alkalinity,
		methods: ['probe'],
		sizes: about(-0.15, 0.05, 'customaryUnit'),
		prior: 0.12,
		remedy: 'Write down volume and pH well past the end, and let the curve be fitted.',
		shownBy: ['probeTitration'],
		origin: 'Size: computed, closed vial at pH 4.5. Prior: judgement.'
	},
	{
		id: 'meterSlope',
		name: 'meter with a poor slope, or set on old buffers',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: alkalinity,
		methods: ['probe'],
		sizes: eitherWay(0.01, 0.004, 'share'),
		prior: 0.08,
		remedy: 'Set it on two fresh buffers, and measure again.',
		shownBy: ['referenceBySecondMethod', 'probeTitration'],
		origin: 'Size: computed, a slope 3 in a hundred off. Prior: judgement.'
	}
];
