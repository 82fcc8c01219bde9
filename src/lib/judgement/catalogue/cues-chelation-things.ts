import type { Cue } from './fault';
import { cueOf, unknown } from './make-cue';
import { chelation } from './make-fault';
import { REAL_CHANGE } from './water-causes';

const judged = 'Judgement: how often people would answer so; not counted anywhere.';

/** Questions about base, buffer, fillings, what was taken off, and the salt of the water. */
export const chelationThingCues: readonly Cue[] = [
	cueOf({
		id: 'baseBottle',
		question: 'How old is the bottle of base, and was it left open?',
		because: 'Base takes up carbon dioxide from the air and grows weak.',
		analytes: chelation,
		needs: { reagent: 'base' },
		answers: [
			['fresh', 'Opened within some months, always closed'],
			['old', 'A year or more, nearly empty, or left open'],
			['crust', 'There is a white crust or haze'],
			unknown
		],
		otherwise: [0.62, 0.2, 0.05, 0.13],
		byFault: { baseOld: [0.08, 0.5, 0.29, 0.13] },
		seconds: 10,
		origin:
			'Judgement. Three tenths of the base have to be carbonate before the value moves (computed on the practice bench): a closed bottle of some months has not come to that, and one that has mostly shows it.'
	}),
	cueOf({
		id: 'baseCounted',
		question: 'How many drops of base went in?',
		because: 'With too little of it, magnesium is titrated along with calcium.',
		analytes: chelation,
		needs: { reagent: 'base' },
		answers: [
			['asSaid', 'Counted, as the leaflet says'],
			['fewer', 'Fewer, or drops that went beside'],
			['notCounted', 'Not counted'],
			unknown
		],
		otherwise: [0.74, 0.05, 0.1, 0.11],
		byFault: { baseShort: [0.17, 0.46, 0.26, 0.11] },
		seconds: 5,
		origin: judged
	}),
	cueOf({
		id: 'bufferBottle',
		question: 'How is it with the bottle of buffer?',
		because: 'Ammonia leaves it, and the dye then turns early or late.',
		analytes: chelation,
		needs: { reagent: 'buffer' },
		answers: [
			['strong', 'In date, always closed, and it smells of ammonia'],
			['weak', 'Old or left open, or the smell is gone'],
			unknown
		],
		otherwise: [0.68, 0.18, 0.14],
		byFault: { bufferOff: [0.22, 0.64, 0.14] },
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'fillings',
		question: 'How many fillings did it take, and are all of them in the value?',
		because: 'The first filling counts in full; the mark shows the last one only.',
		needs: { isFilledAgain: true },
		answers: [
			['all', 'I noted each, and all are in it'],
			['one', 'The value is of the last filling only'],
			['unsure', 'I did not note them'],
			unknown
		],
		otherwise: [0.72, 0.03, 0.14, 0.11],
		byFault: { fillingForgotten: [0.17, 0.4, 0.32, 0.11] },
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'whichCalcium',
		question: 'Was calcium taken off, and which?',
		because:
			'The test finds both together. Each mg/L of calcium too much takes 0.61 mg/L off magnesium, and what is not taken off stays in it.',
		analytes: chelation,
		needs: { isDifference: true },
		answers: [
			['today', 'Measured today, in this water'],
			['before', 'Measured some time ago'],
			['usual', 'Not measured: a usual value'],
			['none', 'None: the number is what was titrated'],
			unknown
		],
		otherwise: [0.55, 0.17, 0.16, 0.02, 0.1],
		byFault: {
			calciumTakenOff: [0.18, 0.28, 0.42, 0.02, 0.1],
			calciumLeftIn: [0.07, 0.06, 0.07, 0.7, 0.1]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'saltToday',
		question: 'What does the salinity measure today, against what it was?',
		because: 'All that is dissolved goes with it: 4 less of 35 is a ninth less of everything.',
		analytes: chelation,
		answers: [
			['same', 'The same, within one'],
			['lower', 'Lower by more than one'],
			['higher', 'Higher by more than one'],
			unknown
		],
		otherwise: [0.66, 0.04, 0.04, 0.26],
		byFault: { [REAL_CHANGE]: [0.46, 0.17, 0.11, 0.26] },
		seconds: 180,
		origin: judged
	}),
	cueOf({
		id: 'metalEvents',
		question: 'What happened to the tank since the last reading?',
		because: 'A water change with other salt, or a dose, moves calcium and magnesium.',
		analytes: chelation,
		answers: [
			['nothing', 'Nothing out of the ordinary'],
			['waterChange', 'A large water change, or another salt'],
			['haze', 'Haze or a white film'],
			['growth', 'Many new corals, or growth that speeds up'],
			unknown
		],
		otherwise: [0.62, 0.14, 0.03, 0.09, 0.12],
		byFault: { [REAL_CHANGE]: [0.36, 0.26, 0.08, 0.18, 0.12] },
		seconds: 20,
		origin: judged
	})
];
