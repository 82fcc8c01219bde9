import { convertValue } from '../../kits';
import type { Fault } from './fault';
import { about, chelation, mixed } from './make-fault';

/** mg/L of magnesium that one mg/L of calcium makes up for, mole for mole: 24.305 / 40.078. */
const MAGNESIUM_PER_CALCIUM = convertValue(
	convertValue(1, 'mg/L', 'mmol/L', 'calcium'),
	'mmol/L',
	'mg/L',
	'magnesium'
);

/**
 * Base that does not suffice: magnesium stays in solution and is titrated too, mg/L of calcium. With a
 * titrant that sets acid free the dye turns early instead, and the value is far too low.
 */
const withoutBase = mixed('customaryUnit', [0.5, 40, 20], [0.3, 120, 45], [0.2, -90, 50]);
const ofBase =
	'Size: 20 to 200 mg/L more, common practice, no source; the false early blue was found on the practice bench. Shares and prior: judgement.';

/** What can be wrong in the bottles of a titration with EDTA, and with their doses. */
export const chelationReagentFaults: readonly Fault[] = [
	{
		id: 'baseOld',
		name: 'base grown weak, as it took up carbon dioxide',
		class: 'reagent',
		target: 'endPoint',
		scope: 'lot',
		analytes: ['calcium'],
		needs: { reagent: 'base' },
		sizes: withoutBase,
		undoneBy: ['moreBase'],
		prior: 0.05,
		remedy: 'Open a fresh base, and close it at once after use.',
		shownBy: ['moreBase', 'freshLot'],
		origin: ofBase
	},
	{
		id: 'baseShort',
		name: 'too few drops of base',
		class: 'technique',
		target: 'endPoint',
		scope: 'oneTest',
		analytes: ['calcium'],
		needs: { reagent: 'base' },
		sizes: withoutBase,
		undoneBy: ['moreBase'],
		prior: 0.025,
		remedy: 'Count the drops of base aloud. Two too many do no harm, four too few do.',
		shownBy: ['moreBase', 'repeatFull'],
		origin: ofBase
	},
	{
		id: 'bufferOff',
		name: 'buffer that no longer holds its pH',
		class: 'reagent',
		target: 'endPoint',
		scope: 'lot',
		analytes: chelation,
		needs: { reagent: 'buffer' },
		sizes: mixed('drops', [0.5, -1.8, 0.8], [0.2, -5, 2], [0.3, 1.4, 0.5]),
		prior: 0.035,
		remedy: 'Open a fresh buffer, and close it at once: ammonia leaves it.',
		shownBy: ['freshLot', 'reference'],
		origin:
			'Size: computed on the practice bench for a pH off by 1; −50 to −200 mg/L of magnesium, vague, is common practice, no source. Prior: judgement.'
	},
	{
		id: 'indicatorTired',
		name: 'indicator of metals grown pale or brown',
		class: 'reagent',
		target: 'endPoint',
		scope: 'lot',
		analytes: chelation,
		sizes: about(0, 1.3, 'drops'),
		prior: 0.015,
		remedy: 'Open a fresh indicator, and keep it dry and dark.',
		shownBy: ['freshLot', 'reference'],
		origin: 'Judgement, size and prior.'
	},
	{
		id: 'strontiumCounted',
		name: 'strontium counted as calcium',
		class: 'method',
		target: 'gain',
		scope: 'kit',
		analytes: ['calcium'],
		needs: { titrant: 'edta' },
		sizes: about(0.0088, 0.001, 'share'),
		prior: 0.01,
		remedy: 'It is less than a drop. Leaflets mostly have taken it off already.',
		shownBy: ['secondMethod'],
		origin:
			'Size: 0.0907 of strontium to 10.28 mmol/kg of calcium in seawater, textbook. Prior: judgement.'
	},
	{
		id: 'calciumTakenOff',
		name: 'calcium taken off was not that of this water',
		class: 'method',
		target: 'endPoint',
		scope: 'takenOff',
		analytes: chelation,
		needs: { isDifference: true },
		sizes: mixed(
			'customaryUnit',
			[0.5, MAGNESIUM_PER_CALCIUM * 50, 16],
			[0.5, -MAGNESIUM_PER_CALCIUM * 50, 16]
		),
		undoneBy: ['takenOffAnew'],
		prior: 0.08,
		remedy: 'Measure calcium of the same water, and take that off.',
		shownBy: ['takenOffAnew', 'secondMethod'],
		origin:
			'Size: exact per mg/L of calcium, from molar masses; that calcium is 25 to 75 mg/L off, and prior: judgement.'
	},
	{
		id: 'calciumLeftIn',
		name: 'calcium never taken off: the number is that of both together',
		class: 'method',
		target: 'endPoint',
		scope: 'takenOff',
		analytes: chelation,
		needs: { isDifference: true },
		sizes: about(MAGNESIUM_PER_CALCIUM * 420, MAGNESIUM_PER_CALCIUM * 45, 'customaryUnit'),
		undoneBy: ['takenOffAnew'],
		prior: 0.04,
		remedy: 'Measure calcium of the same water, and take it off what was titrated.',
		shownBy: ['takenOffAnew', 'secondMethod'],
		origin:
			'Size: exact per mg/L of calcium, from molar masses; of 420 ± 45 mg/L, about that of the sea at salinity 35 (Millero and others 2008, from memory). Prior: judgement.'
	}
];
