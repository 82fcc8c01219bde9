import type { Fault } from './fault';
import { about, alkalinity, eitherWay } from './make-fault';

/** What can be wrong in the bottles. */
export const reagentFaults: readonly Fault[] = [
	{
		id: 'titrantStronger',
		name: 'titrant grown stronger as water evaporated',
		class: 'reagent',
		target: 'gain',
		scope: 'lot',
		analytes: alkalinity,
		sizes: about(-0.06, 0.025, 'share'),
		prior: 0.045,
		remedy: 'Open a fresh bottle, and close it at once after use.',
		shownBy: ['freshLot', 'reference'],
		origin: 'Direction: textbook. Size 2 to 10 in a hundred and prior: judgement.'
	},
	{
		id: 'titrantWatered',
		name: 'water or sample got into the bottle of titrant',
		class: 'reagent',
		target: 'gain',
		scope: 'lot',
		analytes: alkalinity,
		sizes: about(0.05, 0.025, 'share'),
		prior: 0.012,
		remedy: 'Open a fresh bottle, and never pour a rest back.',
		shownBy: ['freshLot', 'reference'],
		origin: 'Direction: textbook. Size and prior: judgement.'
	},
	{
		id: 'lotOff',
		name: 'titrant of another strength from the start',
		class: 'reagent',
		target: 'gain',
		scope: 'lot',
		analytes: alkalinity,
		sizes: eitherWay(0.06, 0.02, 'share'),
		prior: 0.03,
		remedy: 'Use another lot; test one water with both before the old one runs out.',
		shownBy: ['freshLot', 'reference'],
		origin: 'Size: common practice, no source, 3 to 10 in a hundred. Prior: judgement.'
	},
	{
		id: 'bottlesSwapped',
		name: 'caps or bottles swapped',
		class: 'reagent',
		target: 'gain',
		scope: 'lot',
		analytes: alkalinity,
		sizes: eitherWay(0.35, 0.15, 'share', 0.65),
		prior: 0.004,
		remedy: 'Put these bottles aside and open fresh ones.',
		shownBy: ['freshLot'],
		origin: 'That it makes nonsense: common practice, no source. Size and prior: judgement.'
	},
	{
		id: 'indicatorPale',
		name: 'indicator grown pale',
		class: 'reagent',
		target: 'endPoint',
		scope: 'lot',
		analytes: alkalinity,
		sizes: about(0, 0.2, 'customaryUnit'),
		prior: 0.015,
		remedy: 'Open a fresh indicator.',
		shownBy: ['freshLot', 'reference'],
		origin: 'Judgement: a pale colour is judged up to 0.3 dKH late or early.'
	}
];
