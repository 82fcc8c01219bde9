import type { Cue } from './fault';
import { bothOf, cueOf, unknown } from './make-cue';
import { chelation } from './make-fault';

const judged = 'Judgement: how often people would answer so; not counted anywhere.';

/** Questions about the colours and the pace of a titration with EDTA. */
export const chelationCues: readonly Cue[] = [
	cueOf({
		id: 'blueHeld',
		question: 'What did the blue do in the minute after the last drop?',
		because: 'A blue that turns back was too early, and one that never stays wants base.',
		analytes: chelation,
		answers: [
			['stayed', 'It stayed'],
			['turnedBack', 'Red came back, and I left it at that'],
			['followed', 'Red came back again and again, and I added more'],
			['notSeen', 'I did not look'],
			unknown
		],
		otherwise: [0.6, 0.07, 0.06, 0.17, 0.1],
		byFault: {
			...bothOf('blueTurnedBack', [0.08, 0.54, 0.03, 0.25, 0.1]),
			baseOld: [0.12, 0.22, 0.42, 0.14, 0.1],
			baseShort: [0.12, 0.22, 0.42, 0.14, 0.1],
			...bothOf('coldOrFast', [0.48, 0.11, 0.16, 0.15, 0.1]),
			dyeBlocked: [0.28, 0.1, 0.4, 0.12, 0.1]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'colourAtStop',
		question: 'At which colour did you stop?',
		because: 'The end is blue with no purple left in it.',
		analytes: chelation,
		answers: [
			['blue', 'A blue without purple'],
			['purple', 'The first purple or violet'],
			['never', 'It never became a clean blue'],
			unknown
		],
		otherwise: [0.72, 0.1, 0.06, 0.12],
		byFault: {
			...bothOf('firstPurple', [0.17, 0.64, 0.07, 0.12]),
			otherLightChelation: [0.42, 0.26, 0.2, 0.12],
			bufferOff: [0.5, 0.2, 0.18, 0.12],
			baseOld: [0.52, 0.16, 0.2, 0.12],
			indicatorTired: [0.46, 0.2, 0.22, 0.12],
			dyeBlocked: [0.12, 0.16, 0.6, 0.12]
		},
		seconds: 5,
		origin: judged
	}),
	cueOf({
		id: 'warmth',
		question: 'How warm was the sample, and how fast did the last drops follow?',
		because: 'EDTA takes its time, the more so in the cold; the blue comes late then.',
		analytes: chelation,
		answers: [
			['slowWarm', 'Room temperature, some seconds between drops'],
			['cold', 'Cold from a refrigerator, a cellar or a winter room'],
			['fast', 'Drop upon drop'],
			unknown
		],
		otherwise: [0.66, 0.07, 0.15, 0.12],
		byFault: bothOf('coldOrFast', [0.16, 0.34, 0.38, 0.12]),
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'copper',
		question: 'Was the tank treated with copper, or is metal or old pipework in its water?',
		because: 'Copper and iron hold the dye, and the blue does not come.',
		analytes: chelation,
		answers: [['no', 'No'], ['yes', 'Yes, or it may be'], unknown],
		otherwise: [0.8, 0.06, 0.14],
		byFault: { dyeBlocked: [0.3, 0.56, 0.14] },
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'stoodHowLong',
		question: 'How long did the sample stand between the base and the first drops?',
		because: 'What falls out with the base carries some calcium down.',
		analytes: chelation,
		needs: { reagent: 'base' },
		answers: [
			['asSaid', 'As the leaflet says, or a minute or two'],
			['long', 'Much longer'],
			unknown
		],
		otherwise: [0.76, 0.1, 0.14],
		byFault: { stoodWithBase: [0.2, 0.66, 0.14] },
		seconds: 5,
		origin: judged
	})
];
