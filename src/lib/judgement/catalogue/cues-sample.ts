import type { Cue } from './fault';
import { bothOf, cueOf, unknown } from './make-cue';

const judged = 'Judgement: how often people would answer so; not counted anywhere.';

/** Questions about the water in the vial, the ware and the bottles. */
export const sampleCues: readonly Cue[] = [
	cueOf({
		id: 'whereTaken',
		question: 'When and where was the water taken?',
		because: 'Soon after a dose, or at an outlet, it is not the water of the tank.',
		answers: [
			['mixed', 'From the middle of the tank, an hour or more after a dose'],
			['soon', 'Within an hour after a dose'],
			['outlet', 'Beside an outlet or a dosing tube'],
			['unsureCup', 'I am not sure which cup it was'],
			unknown
		],
		otherwise: [0.68, 0.1, 0.05, 0.03, 0.14],
		byFault: {
			sampledAfterDosing: [0.14, 0.48, 0.21, 0.03, 0.14],
			wrongCup: [0.31, 0.06, 0.03, 0.46, 0.14]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'grains',
		question: 'Was the water in the vial clear?',
		because: 'A grain of sand or snow takes up acid as it dissolves.',
		answers: [['clear', 'Clear'], ['grains', 'There was a grain, or it was cloudy'], unknown],
		otherwise: [0.82, 0.04, 0.14],
		byFault: { grainsInSample: [0.42, 0.44, 0.14] },
		seconds: 5,
		origin: judged
	}),
	cueOf({
		id: 'sampleMeasured',
		question: 'How was the sample measured?',
		because: 'Too little or too much water counts in full.',
		answers: [
			['exact', 'To the mark at eye level, no bubble'],
			['roughly', 'Roughly to the mark'],
			['bubble', 'There was a bubble in it'],
			unknown
		],
		otherwise: [0.66, 0.15, 0.06, 0.13],
		byFault: {
			...bothOf('sampleBesideMark', [0.32, 0.49, 0.06, 0.13]),
			sampleAir: [0.31, 0.16, 0.4, 0.13]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'sampleWareRinsed',
		question: 'What was in vial and sample syringe before the sample?',
		because: 'Other water thins the sample, and a trace of something else adds to it.',
		answers: [
			['sample', 'Rinsed with the water that was tested'],
			['dry', 'Clean and dry'],
			['water', 'Wet with other water'],
			['traces', 'A film, or used for another test or for acid'],
			unknown
		],
		otherwise: [0.47, 0.23, 0.14, 0.04, 0.12],
		byFault: {
			sampleWareWet: [0.12, 0.08, 0.62, 0.06, 0.12],
			hardFilm: [0.14, 0.12, 0.16, 0.46, 0.12],
			...bothOf('baseTrace', [0.12, 0.12, 0.1, 0.54, 0.12]),
			...bothOf('acidTrace', [0.12, 0.1, 0.12, 0.54, 0.12])
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'titrantBottle',
		question: 'How is it with the bottle of titrant?',
		because: 'Water evaporates from an open bottle, and what is left is stronger.',
		answers: [
			['inUse', 'In use for some weeks, mostly full'],
			['old', 'Old, nearly empty, left open, or with a crust'],
			['new', 'Just begun'],
			['mixedUp', 'Caps or bottles may have been swapped'],
			unknown
		],
		otherwise: [0.47, 0.2, 0.18, 0.03, 0.12],
		byFault: {
			titrantStronger: [0.2, 0.62, 0.03, 0.03, 0.12],
			lotOff: [0.4, 0.13, 0.32, 0.03, 0.12],
			titrantWatered: [0.5, 0.22, 0.13, 0.03, 0.12],
			bottlesSwapped: [0.28, 0.17, 0.12, 0.31, 0.12],
			indicatorPale: [0.34, 0.42, 0.09, 0.03, 0.12]
		},
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'wareChanged',
		question: 'Is any syringe, vial or dropper a new one since the readings before?',
		because: 'Pieces differ; only weighing says by how much.',
		answers: [['same', 'All the same as before'], ['new', 'One is new or was exchanged'], unknown],
		otherwise: [0.76, 0.1, 0.14],
		byFault: {
			titrantScaleOff: [0.5, 0.36, 0.14],
			sampleScaleOff: [0.5, 0.36, 0.14]
		},
		seconds: 5,
		origin: judged
	})
];
