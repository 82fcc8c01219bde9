import type { Cue } from './fault';
import { bothOf, cueOf, unknown } from './make-cue';

const judged = 'Judgement: how often people would answer so; not counted anywhere.';

/** Questions about colour, light and drops. */
export const endCues: readonly Cue[] = [
	cueOf({
		id: 'light',
		question: 'In what light did you judge the colour?',
		because: 'Blue light hides the turn; it is the commonest cause of all.',
		answers: [
			['white', 'White lamp or daylight'],
			['tank', 'The tank’s own blue light, or near it'],
			['dim', 'Dim or yellow light'],
			unknown
		],
		otherwise: [0.78, 0.06, 0.08, 0.08],
		byFault: { otherLight: [0.06, 0.52, 0.34, 0.08] },
		seconds: 5,
		origin: judged
	}),
	cueOf({
		id: 'endHeld',
		question: 'What did the end colour do after the last drop?',
		because: 'The end is the first colour that lasts about half a minute.',
		answers: [
			['stayed', 'It stayed for half a minute; I stopped there'],
			['faded', 'It was gone within seconds, or I did not wait'],
			['followed', 'It faded slowly, and I added more'],
			['returned', 'The first colour came back again and again'],
			unknown
		],
		otherwise: [0.72, 0.08, 0.03, 0.03, 0.14],
		byFault: {
			...bothOf('stoppedAtFlash', [0.25, 0.55, 0.04, 0.02, 0.14]),
			chasedColour: [0.12, 0.03, 0.65, 0.06, 0.14],
			grainsInSample: [0.24, 0.04, 0.18, 0.4, 0.14],
			bottlesSwapped: [0.4, 0.18, 0.05, 0.23, 0.14]
		},
		seconds: 15,
		origin: judged
	}),
	cueOf({
		id: 'startColour',
		question: 'What was the colour before the first drop of titrant?',
		because: 'It tells what else was in the vial, and how much indicator.',
		answers: [
			['usual', 'As always'],
			['odd', 'Another colour than usual, or none'],
			['pale', 'Paler than usual'],
			['deep', 'Deeper than usual'],
			unknown
		],
		otherwise: [0.64, 0.04, 0.06, 0.06, 0.2],
		byFault: {
			...bothOf('baseTrace', [0.44, 0.26, 0.04, 0.06, 0.2]),
			...bothOf('acidTrace', [0.44, 0.26, 0.04, 0.06, 0.2]),
			indicatorDose: [0.3, 0.03, 0.22, 0.25, 0.2],
			indicatorPale: [0.22, 0.05, 0.51, 0.02, 0.2],
			bottlesSwapped: [0.28, 0.4, 0.07, 0.05, 0.2],
			otherLight: [0.46, 0.2, 0.07, 0.07, 0.2]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'endCompared',
		question: 'What did you hold the end colour against?',
		because: 'Without something beside it, people differ by a drop or two in where they stop.',
		answers: [
			['vial', 'A vial kept at the end colour'],
			['words', 'The leaflet’s words or picture'],
			['memory', 'My memory of it'],
			unknown
		],
		otherwise: [0.2, 0.44, 0.26, 0.1],
		byFault: {
			otherShade: [0.05, 0.48, 0.37, 0.1],
			redGreenSight: [0.16, 0.45, 0.29, 0.1]
		},
		seconds: 5,
		origin: judged
	}),
	cueOf({
		id: 'sight',
		question: 'Are red and green hard for you to tell apart?',
		because: 'The turn is harder to see then; a red lamp or other eyes help.',
		answers: [['no', 'No'], ['yes', 'Yes, or I was told so'], unknown],
		otherwise: [0.86, 0.05, 0.09],
		byFault: { redGreenSight: [0.16, 0.75, 0.09] },
		seconds: 5,
		origin: 'About 1 in 20 of all people: textbook. The rest: judgement.'
	}),
	cueOf({
		id: 'swirl',
		question: 'How was the vial moved between the last drops?',
		because: 'Swirling drives carbon dioxide out, and that moves the colour a little.',
		answers: [
			['gently', 'A gentle swirl after each drop'],
			['hardly', 'Hardly or not at all'],
			['hard', 'Shaken hard or for long'],
			unknown
		],
		otherwise: [0.74, 0.08, 0.08, 0.1],
		byFault: {
			swirledOddly: [0.2, 0.42, 0.28, 0.1],
			...bothOf('stoppedAtFlash', [0.58, 0.26, 0.06, 0.1]),
			chasedColour: [0.62, 0.05, 0.23, 0.1]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'dropperHeld',
		question: 'How did you hold the bottle while the drops fell?',
		because: 'Slanted drops are small, and drops pressed out or from a wet nozzle are large.',
		deliveries: ['dropper'],
		answers: [
			['upright', 'Straight down, drop by drop'],
			['slanted', 'At a slant'],
			['pressed', 'Pressed hard, or the nozzle was wet'],
			unknown
		],
		otherwise: [0.62, 0.14, 0.12, 0.12],
		byFault: {
			dropperTilted: [0.22, 0.61, 0.05, 0.12],
			dropperSqueezed: [0.24, 0.06, 0.58, 0.12]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'dropsCounted',
		question: 'How did you count the drops?',
		because: 'One drop more or less is a whole step of this test.',
		deliveries: ['dropper'],
		answers: [
			['tallied', 'Aloud or with strokes, without a break'],
			['inHead', 'In my head'],
			['interrupted', 'I was interrupted, or two fell together'],
			unknown
		],
		otherwise: [0.38, 0.42, 0.08, 0.12],
		byFault: {
			dropsMiscounted: [0.1, 0.4, 0.38, 0.12],
			overshot: [0.36, 0.34, 0.18, 0.12]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'ownRepeats',
		question: 'When you test the same water twice, how far apart do you usually come out?',
		because: 'What your hands usually do says how far one test can be trusted.',
		answers: [
			['close', 'Within a drop or a line'],
			['apart', 'Often several drops apart'],
			['never', 'I never tried'],
			unknown
		],
		otherwise: [0.4, 0.08, 0.42, 0.1],
		byFault: {
			unsteadyHands: [0.1, 0.42, 0.38, 0.1],
			sealSticks: [0.2, 0.29, 0.41, 0.1]
		},
		seconds: 10,
		origin: judged
	})
];
