import type { Cue } from './fault';
import { cueOf, unknown } from './make-cue';

const judged = 'Judgement: how often people would answer so; not counted anywhere.';

/** Questions about the second method. */
export const secondMethodCues: readonly Cue[] = [
	cueOf({
		id: 'photometerCare',
		question:
			'Before the photometer measured: was the glass wiped, without a bubble, and zero set anew?',
		because: 'A fingerprint or a bubble looks like colour to it.',
		about: 'secondMethod',
		methods: ['photometer'],
		answers: [
			['all', 'All of it'],
			['notAll', 'Not all of it'],
			['differs', 'When turned, it shows something else'],
			unknown
		],
		otherwise: [0.62, 0.2, 0.06, 0.12],
		byFault: { photometerOff: [0.18, 0.4, 0.3, 0.12] },
		seconds: 20,
		origin: judged
	}),
	cueOf({
		id: 'laboratoryReport',
		question: 'What does the report say it measured?',
		because: 'Per kilogram is 2.3 % less than per litre, and carbonate alone leaves borate out.',
		about: 'secondMethod',
		methods: ['laboratory'],
		answers: [
			['totalPerL', 'Total alkalinity, per litre'],
			['perKg', 'Something per kilogram'],
			['carbonate', 'Carbonate or bicarbonate alone'],
			unknown
		],
		otherwise: [0.56, 0.08, 0.06, 0.3],
		byFault: {
			laboratoryPerKg: [0.06, 0.59, 0.05, 0.3],
			carbonateOnly: [0.12, 0.05, 0.53, 0.3]
		},
		seconds: 30,
		origin: judged
	}),
	cueOf({
		id: 'laboratoryDelay',
		question: 'How long lay between taking the water and the laboratory’s work?',
		because: 'On the way, carbonate may settle out and the value falls.',
		about: 'secondMethod',
		methods: ['laboratory'],
		answers: [
			['short', 'A day or two, or kept cold and full'],
			['long', 'A week or more, or it got warm'],
			unknown
		],
		otherwise: [0.5, 0.24, 0.26],
		byFault: { laboratorySampleOld: [0.14, 0.6, 0.26] },
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'probeEnd',
		question: 'How was the end of the meter’s titration found?',
		because:
			'Stopping at a fixed pH leaves carbon dioxide and the meter’s own offset in the value.',
		about: 'secondMethod',
		methods: ['probe'],
		answers: [
			['fixed', 'Acid until the meter showed 4.5 or so'],
			['curve', 'From the whole curve'],
			unknown
		],
		otherwise: [0.25, 0.55, 0.2],
		byFault: { meterToFixedPh: [0.75, 0.05, 0.2] },
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'probeBuffers',
		question: 'When was the meter last set on two fresh buffers?',
		because: 'An old electrode gives too small a change for each step of pH.',
		about: 'secondMethod',
		methods: ['probe'],
		answers: [
			['today', 'This day, and it took both'],
			['long', 'Longer ago, or on old buffers'],
			unknown
		],
		otherwise: [0.52, 0.34, 0.14],
		byFault: { meterSlope: [0.16, 0.7, 0.14] },
		seconds: 10,
		origin: judged
	})
];

/** Questions about the known solution. */
export const referenceCues: readonly Cue[] = [
	cueOf({
		id: 'referencePowder',
		question: 'From which powder was the known solution made?',
		because: 'Powders of one name may hold water, or have turned to another.',
		about: 'reference',
		answers: [
			['pure', 'Dried carbonate, or fresh bicarbonate'],
			['asBought', 'Carbonate as it was bought'],
			['washingSoda', 'Washing soda'],
			['oldBicarbonate', 'Bicarbonate that was old, warm or baked for a while'],
			unknown
		],
		otherwise: [0.56, 0.12, 0.03, 0.09, 0.2],
		byFault: {
			referenceMonohydrate: [0.14, 0.47, 0.14, 0.05, 0.2],
			referenceWashingSoda: [0.05, 0.2, 0.52, 0.03, 0.2],
			referencePartCarbonate: [0.24, 0.05, 0.03, 0.48, 0.2]
		},
		seconds: 20,
		origin: judged
	}),
	cueOf({
		id: 'referenceScale',
		question: 'How was it weighed and made up?',
		because: 'A scale that shows tenths of a gram cannot weigh half a gram.',
		about: 'reference',
		answers: [
			['fine', 'A scale with hundredths, or gram amounts and a dilution'],
			['coarse', 'A kitchen scale, spoons, or rough volumes'],
			['bought', 'It was bought ready'],
			unknown
		],
		otherwise: [0.54, 0.12, 0.22, 0.12],
		byFault: { referenceWeighedOff: [0.28, 0.51, 0.09, 0.12] },
		seconds: 10,
		origin: judged
	}),
	cueOf({
		id: 'referenceWater',
		question: 'What water was it made with?',
		because: 'Tap water and tired filters bring alkalinity of their own.',
		about: 'reference',
		answers: [
			['pure', 'Purified water that reads about nothing'],
			['untested', 'Filtered or bottled water that nobody tested'],
			['tap', 'Tap water'],
			unknown
		],
		otherwise: [0.6, 0.22, 0.04, 0.14],
		byFault: { referenceWaterImpure: [0.14, 0.44, 0.28, 0.14] },
		seconds: 10,
		origin: judged
	})
];
