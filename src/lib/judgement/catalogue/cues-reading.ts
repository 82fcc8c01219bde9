import type { Cue } from './fault';
import { bothOf, cueOf, unknown } from './make-cue';

const judged = 'Judgement: how often people would answer so; not counted anywhere.';
const withScale = ['syringe', 'burette'] as const;

/** Questions about the mark, the table and the unit. */
export const readingCues: readonly Cue[] = [
	cueOf({
		id: 'readAgain',
		question: 'If the syringe or a photo of it is still there: what do you read now?',
		because: 'A second look finds a line that was counted from another number.',
		deliveries: withScale,
		answers: [['same', 'The same'], ['other', 'Something else'], ['gone', 'It is gone'], unknown],
		otherwise: [0.36, 0.03, 0.51, 0.1],
		byFault: {
			wrongTick: [0.06, 0.33, 0.51, 0.1],
			parallax: [0.27, 0.12, 0.51, 0.1],
			wrongRim: [0.3, 0.09, 0.51, 0.1]
		},
		seconds: 20,
		origin: judged
	}),
	cueOf({
		id: 'sealEdge',
		question: 'Which edge of the seal do you set and read?',
		because: 'The two edges lie apart by several short lines.',
		deliveries: ['syringe'],
		answers: [
			['tipSide', 'The one nearest the tip, always'],
			['otherSide', 'The other one, always'],
			['either', 'Sometimes this, sometimes that'],
			unknown
		],
		otherwise: [0.63, 0.1, 0.05, 0.22],
		byFault: { wrongRim: [0.2, 0.1, 0.48, 0.22] },
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'eyeLevel',
		question: 'Was your eye level with the mark when you read it?',
		because: 'From above or below it seems to stand elsewhere.',
		deliveries: withScale,
		answers: [['level', 'Yes'], ['askew', 'No, or I held it askew'], unknown],
		otherwise: [0.7, 0.15, 0.15],
		byFault: { parallax: [0.3, 0.55, 0.15] },
		seconds: 5,
		origin: judged
	}),
	cueOf({
		id: 'usedOrLeft',
		question:
			'Does your leaflet ask for what was used or for what is left, and which did you take?',
		because: 'Near the middle of the scale the two look alike; away from it they do not.',
		deliveries: ['syringe'],
		answers: [['asAsked', 'The one it asks for, I am sure'], ['other', 'The other one'], unknown],
		otherwise: [0.795, 0.025, 0.18],
		byFault: bothOf('usedForLeft', [0.14, 0.68, 0.18]),
		seconds: 20,
		origin: judged
	}),
	cueOf({
		id: 'unitSeen',
		question: 'Which unit stands beside the number on the leaflet?',
		because: 'One unit taken for another changes the number by a fixed factor.',
		answers: [['same', 'The one I wrote down'], ['other', 'Another one'], unknown],
		otherwise: [0.8, 0.04, 0.16],
		byFault: { unitTaken: [0.22, 0.62, 0.16] },
		seconds: 20,
		origin: judged
	}),
	cueOf({
		id: 'rowSeen',
		question: 'Look it up once more: do mark, row and sample size give the same value?',
		because: 'The table for another sample size gives twice or half the value.',
		answers: [['same', 'Yes, the same'], ['other', 'No, another value'], unknown],
		otherwise: [0.82, 0.04, 0.14],
		byFault: { wrongRow: [0.16, 0.7, 0.14] },
		needs: { isLookedUp: true },
		seconds: 30,
		origin: judged
	}),
	cueOf({
		id: 'figuresSeen',
		question: 'Look at the value you typed, figure by figure: is it the one you found?',
		because: 'A figure too many, or a point misplaced, makes it ten times as large, or a tenth.',
		answers: [['same', 'Yes, as I found it'], ['other', 'No, it is another'], unknown],
		otherwise: [0.9, 0.02, 0.08],
		byFault: { figureSlipped: [0.1, 0.82, 0.08] },
		seconds: 10,
		origin: judged
	})
];
