import type { Analyte } from '../../kits';
import type { Cue } from './fault';
import { cueOf, unknown } from './make-cue';

/** What the water itself did, for the words when a change is real. */
export type WaterCause = {
	id: string;
	name: string;
	/** Values that it moves; all when left out. */
	analytes?: readonly Analyte[];
	/** Which way the value goes. */
	direction: 'falls' | 'rises' | 'either';
	/** How it shows itself, beside the value. */
	shownBy: readonly string[];
	/** What to do, one or two plain sentences. */
	remedy: string;
	/** It needs no number, and does not wait for one. */
	isUrgent: boolean;
	/** Answers that speak for it, by question. */
	spokenForBy?: Readonly<Record<string, readonly string[]>>;
	/** Answers with which it cannot be. */
	ruledOutBy?: Readonly<Record<string, readonly string[]>>;
	origin: string;
};

/** The name under which a real change of the water stands among explanations and in cues. */
export const REAL_CHANGE = 'realChange';

/** Calcium that goes with 1 dKH of calcium carbonate: 40.078 g/mol for two equivalents. */
export const CALCIUM_MG_PER_L_PER_DKH = 7.15;

export const waterCauses: readonly WaterCause[] = [
	{
		id: 'calcification',
		name: 'corals and algae built more than was dosed',
		analytes: ['alkalinity', 'calcium'],
		direction: 'falls',
		shownBy: ['calcium fell by 7.15 mg/L for each dKH', 'it falls by about as much each day'],
		remedy: 'Raise the daily dose by what is missing each day; make up what is lost slowly.',
		isUrgent: false,
		spokenForBy: { tankEvents: ['growth'], otherValues: ['together'] },
		origin: 'Textbook: one calcium for two equivalents.'
	},
	{
		id: 'precipitation',
		name: 'calcium carbonate fell out at once',
		analytes: ['alkalinity', 'calcium'],
		direction: 'falls',
		shownBy: [
			'haze or a white film within hours',
			'calcium fell by 7.15 mg/L for each dKH',
			'a dose went in fast, or two parts met'
		],
		remedy: 'Stop all dosing, aerate, and test again in an hour or two.',
		isUrgent: true,
		spokenForBy: { tankEvents: ['haze'], dosing: ['more'], otherValues: ['together'] },
		origin: 'Textbook for the ratio; common practice, no source, for the rest.'
	},
	{
		id: 'nitrification',
		name: 'food turned to nitrate',
		analytes: ['alkalinity'],
		direction: 'falls',
		shownBy: ['nitrate rose by about 50 mg/L for 2.3 dKH', 'calcium stayed'],
		remedy: 'Feed less or take more out; a matched water change brings both back.',
		isUrgent: false,
		spokenForBy: { otherValues: ['nitrate'] },
		origin: 'Textbook: one equivalent for each nitrate made; 50 mg/L are 0.81 meq/L.'
	},
	{
		id: 'doserStopped',
		name: 'doser stopped, bottle empty or tube clogged',
		direction: 'falls',
		shownBy: ['as much is left in the bottle as days ago', 'nothing drips when it should run'],
		remedy: 'Get it running at its usual dose. No double doses to catch up.',
		isUrgent: false,
		spokenForBy: { dosing: ['stopped'] },
		ruledOutBy: { dosing: ['noDosing'] },
		origin: 'Common practice, no source.'
	},
	{
		id: 'onePartOnly',
		name: 'one part of two is missing',
		analytes: ['alkalinity', 'calcium'],
		direction: 'either',
		shownBy: ['alkalinity and calcium go opposite ways', 'one bottle is emptier than the other'],
		remedy: 'Start the missing part again at its usual dose.',
		isUrgent: false,
		spokenForBy: { dosing: ['stopped'] },
		ruledOutBy: { dosing: ['noDosing'] },
		origin: 'Common practice, no source.'
	},
	{
		id: 'doserStuck',
		name: 'doser stuck, or dosed twice',
		direction: 'rises',
		shownBy: ['the bottle is emptier than it should be', 'pH is high, or there is haze'],
		remedy: 'Stop all dosing, aerate, check pH, and test again in an hour or two. No acid.',
		isUrgent: true,
		spokenForBy: { dosing: ['more'] },
		ruledOutBy: { dosing: ['noDosing'] },
		origin: 'Common practice, no source.'
	},
	{
		id: 'newWater',
		name: 'a water change with another water',
		direction: 'either',
		shownBy: ['a water change since the last reading', 'the new water by itself reads otherwise'],
		remedy: 'Test the new mix when it is clear, before it goes in.',
		isUrgent: false,
		spokenForBy: { tankEvents: ['waterChange'] },
		origin: 'Arithmetic of mixing.'
	},
	{
		id: 'salinityChanged',
		name: 'salinity went up or down',
		direction: 'either',
		shownBy: [
			'alkalinity, calcium and magnesium moved by the same share',
			'salinity differs: 2 in 35 are 6 in a hundred of all three'
		],
		remedy:
			'Check the instrument in a solution of 35, and bring salinity right first; dose nothing.',
		isUrgent: false,
		spokenForBy: { tankEvents: ['waterChange'] },
		origin: 'Arithmetic of dilution.'
	}
];

/** Questions that speak for or against a real change. */
export const waterCues: readonly Cue[] = [
	cueOf({
		id: 'dosing',
		question: 'What has the dosing done since the last reading?',
		because: 'A stopped or stuck doser changes the water within a day.',
		answers: [
			['asAlways', 'As always, as far as I can see'],
			['stopped', 'An empty bottle, a clogged tube, or it was off'],
			['more', 'More than usual went in'],
			['noDosing', 'Nothing is dosed'],
			unknown
		],
		otherwise: [0.62, 0.06, 0.05, 0.17, 0.1],
		byFault: { [REAL_CHANGE]: [0.29, 0.28, 0.16, 0.17, 0.1] },
		seconds: 30,
		origin: 'Judgement: how often people would answer so; not counted anywhere.'
	}),
	cueOf({
		id: 'tankEvents',
		question: 'Did anything else happen to the tank since then?',
		because: 'A water change, haze or another salinity changes alkalinity as well.',
		answers: [
			['nothing', 'Nothing'],
			['waterChange', 'A water change or much top-off'],
			['haze', 'Haze or a white film'],
			['growth', 'Many new corals, or growth that speeds up'],
			unknown
		],
		otherwise: [0.6, 0.16, 0.03, 0.09, 0.12],
		byFault: { [REAL_CHANGE]: [0.36, 0.24, 0.09, 0.19, 0.12] },
		seconds: 20,
		origin: 'Judgement: how often people would answer so; not counted anywhere.'
	}),
	cueOf({
		id: 'otherValues',
		question: 'If you also tested calcium or nitrate: what did they do?',
		because: 'Corals take 7.15 mg/L of calcium with each dKH; nitrate made from food takes none.',
		answers: [
			['together', 'Calcium moved with alkalinity, about 7 mg/L for each dKH'],
			['nitrate', 'Nitrate rose clearly, calcium stayed'],
			['still', 'They stayed where they were'],
			unknown
		],
		otherwise: [0.06, 0.06, 0.26, 0.62],
		byFault: { [REAL_CHANGE]: [0.16, 0.11, 0.11, 0.62] },
		seconds: 20,
		origin:
			'Judgement: weak on purpose, as calcium is known to 10 to 15 mg/L and tells little below 4 dKH.'
	})
];
