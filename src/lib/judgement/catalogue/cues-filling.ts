import type { Cue } from './fault';
import { bothOf, cueOf, unknown } from './make-cue';

const judged = 'Judgement: how often people would answer so; not counted anywhere.';
const withScale = ['syringe', 'burette'] as const;

/** Questions about syringe and tip. */
export const fillingCues: readonly Cue[] = [
	cueOf({
		id: 'marksUsed',
		question: 'Which mark did you set when you filled, and which did you read at the end?',
		because: 'Either mark is right as long as it is the same both times.',
		deliveries: ['syringe'],
		answers: [
			['sealBoth', 'The seal, both times'],
			['lineBoth', 'The top of the liquid, both times'],
			['lineThenSeal', 'Filled by the liquid, read by the seal'],
			['sealThenLine', 'Filled by the seal, read by the liquid'],
			unknown
		],
		otherwise: [0.6, 0.17, 0.05, 0.03, 0.15],
		byFault: {
			...bothOf('filledByLine', [0.16, 0.1, 0.55, 0.04, 0.15]),
			...bothOf('readByLine', [0.16, 0.1, 0.04, 0.55, 0.15])
		},
		seconds: 20,
		// One row for the habit and the single slip: who slipped once did not see it, or would have filled
		// anew, and answers as they mean to do it. The answer clears today no better than it clears the habit.
		origin: `${judged} The single slip is no better remembered than the habit: judgement.`
	}),
	cueOf({
		id: 'tip',
		question: 'How was it with the tip when you began?',
		because:
			'A dry tip swallows the first stretch of travel, and a loose one gives more than it shows.',
		deliveries: ['syringe'],
		answers: [
			['atOnce', 'On before filling; a drop came with the first push'],
			['late', 'Put on after filling, or no drop came at first'],
			['dripped', 'It dripped by itself'],
			['spat', 'It spat air'],
			unknown
		],
		otherwise: [0.76, 0.03, 0.03, 0.03, 0.15],
		byFault: {
			...bothOf('tipFittedLate', [0.09, 0.71, 0.02, 0.03, 0.15]),
			tipLoose: [0.28, 0.06, 0.48, 0.03, 0.15],
			airLeft: [0.35, 0.06, 0.02, 0.42, 0.15]
		},
		seconds: 15,
		origin: judged
	}),
	cueOf({
		id: 'tipDrop',
		question: 'Did a drop hang at the tip, before the first or when you read?',
		because:
			'A hanging drop has left the syringe and not reached the vial, or the other way round.',
		deliveries: withScale,
		answers: [
			['none', 'No, I looked'],
			['before', 'One hung there before I began'],
			['after', 'One hung there when I read'],
			unknown
		],
		otherwise: [0.52, 0.04, 0.04, 0.4],
		byFault: {
			hangingAtStart: [0.17, 0.39, 0.04, 0.4],
			hangingAtEnd: [0.17, 0.04, 0.39, 0.4]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'titrantWareDry',
		question: 'Was the titrant’s syringe dry inside when you filled it?',
		because: 'Water left in it thins the titrant, and a rest poured back thins the bottle.',
		deliveries: withScale,
		answers: [
			['dry', 'Dry, or rinsed with titrant'],
			['wet', 'Still wet with water'],
			['pouredBack', 'Rests of titrant go back into the bottle'],
			unknown
		],
		otherwise: [0.66, 0.09, 0.06, 0.19],
		byFault: {
			...bothOf('titrantWareWet', [0.17, 0.58, 0.06, 0.19]),
			titrantWatered: [0.2, 0.25, 0.36, 0.19]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'plunger',
		question: 'How did the plunger move, and how did the last drops come?',
		because: 'A drop too many at the end counts in full.',
		deliveries: withScale,
		answers: [
			['singly', 'Smoothly; the last drops one by one'],
			['several', 'Several at once near the end'],
			['jumped', 'It stuck and then jumped'],
			unknown
		],
		otherwise: [0.68, 0.12, 0.06, 0.14],
		byFault: {
			overshot: [0.27, 0.53, 0.06, 0.14],
			sealSticks: [0.16, 0.14, 0.56, 0.14],
			unsteadyHands: [0.42, 0.34, 0.1, 0.14]
		},
		seconds: 10,
		origin: judged
	})
];
