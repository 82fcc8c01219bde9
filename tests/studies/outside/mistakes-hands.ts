import type { Mistake } from './mistake';
import type { World } from './world';

const isSyringe = ({ kit }: World) => kit.figures.delivery === 'syringe';
const isDropper = ({ kit }: World) => kit.figures.delivery === 'dropper';
const hasScale = ({ kit }: World) => kit.figures.graduationMl !== null;
const technique = { class: 'technique', clings: 'slip' } as const;

/**
 * What goes wrong in filling, delivering and reading. Sizes and signs: common practice, no source;
 * weights: judgement.
 */
export const handMistakes: readonly Mistake[] = [
	{
		...technique,
		id: 'filledByLineReadBySeal',
		weight: 8,
		unit: 'mL',
		fits: isSyringe,
		// The barrel stops near 1.1: a line at 1.00 is not always reached.
		size: (c, { kit }) => -Math.min(kit.tipMl, c.between(0.1, 0.25)),
		bend: (size) => ({ perFillingMl: size, readsLine: false }),
		facts: () => ({ filledBy: 'line', readBy: 'seal' })
	},
	{
		...technique,
		id: 'filledBySealReadByLine',
		weight: 6,
		unit: 'mL',
		fits: isSyringe,
		size: (_c, { kit }) => kit.tipMl,
		bend: (size) => ({ perFillingMl: size, readsLine: true }),
		facts: () => ({ filledBy: 'seal', readBy: 'line' })
	},
	{
		...technique,
		id: 'tipFittedAfterFilling',
		weight: 4,
		unit: 'mL',
		fits: isSyringe,
		size: (_c, { kit }) => kit.tipMl,
		bend: (size) => ({ readMl: size }),
		facts: () => ({ tipFitted: 'after filling', firstPush: 'no drop at first' })
	},
	{
		...technique,
		id: 'dropFromTipFellInAtStart',
		weight: 3,
		unit: 'drops',
		size: () => -1,
		bend: (_size, doing) => ({ uncountedMl: doing.uncountedMl + 0.025 }),
		facts: () => ({ dropAtStart: 'hanging' })
	},
	{
		...technique,
		id: 'dropLeftHangingAtEnd',
		weight: 4,
		unit: 'mL',
		fits: hasScale,
		size: (c) => c.between(0.012, 0.03),
		bend: (size) => ({ readMl: size }),
		facts: () => ({ dropAtEnd: 'hanging' })
	},
	{
		...technique,
		id: 'otherEdgeOfSealAtEnd',
		weight: 3,
		unit: 'mL',
		fits: isSyringe,
		size: (c) => c.sign() * c.between(0.03, 0.08),
		bend: (size) => ({ perFillingMl: size, readsLine: false }),
		facts: () => ({ edgeOfSeal: 'not the same both times', filledBy: 'seal', readBy: 'seal' })
	},
	{
		...technique,
		id: 'marksCountedFromWrongNumeral',
		weight: 4,
		unit: 'mL',
		fits: hasScale,
		size: (c) => c.sign() * c.pick([0.05, 0.1]),
		bend: (size) => ({ readMl: size })
	},
	{
		...technique,
		id: 'leftTakenForUsed',
		weight: 3,
		unit: 'factor',
		fits: isSyringe,
		size: () => -1,
		bend: () => ({ isReversed: true }),
		facts: () => ({ countedWhat: 'what was left' })
	},
	{
		...technique,
		id: 'readFromAslant',
		weight: 3,
		unit: 'mL',
		fits: hasScale,
		size: (c) => c.sign() * c.between(0.006, 0.02),
		bend: (size) => ({ readMl: size }),
		facts: () => ({ eyeLevel: 'no' })
	},
	{
		id: 'sealSticksAndJumps',
		class: 'ware',
		alsoFair: ['technique'],
		clings: 'titrantWare',
		weight: 3,
		unit: 'mL',
		fits: isSyringe,
		size: (c) => c.between(0.02, 0.08),
		bend: (size, doing) => ({ readMl: doing.readMl + size, scatter: doing.scatter * 2 }),
		facts: () => ({ plunger: 'jerks' })
	},
	{
		...technique,
		id: 'airLeftThroughTheTip',
		weight: 2,
		unit: 'mL',
		fits: isSyringe,
		size: (c) => c.between(0.013, 0.05),
		bend: (size) => ({ readMl: size }),
		facts: () => ({ airInTip: 'spat once' })
	},
	{
		...technique,
		id: 'dropsMiscounted',
		weight: 5,
		unit: 'drops',
		fits: isDropper,
		size: (c) => c.pick([-2, -1, -1, 1, 1, 2]),
		bend: (size) => ({ readMl: size * 0.045 }),
		facts: () => ({ countSure: 'not quite' })
	},
	{
		...technique,
		id: 'dropperTilted',
		weight: 5,
		unit: 'share',
		fits: isDropper,
		// A tilted nozzle gives smaller drops: more of them are counted.
		size: (c) => c.between(0.05, 0.15),
		bend: (size, doing) => ({ dropFactor: doing.dropFactor / (1 + size) }),
		facts: () => ({ dropperHeld: 'slanting' })
	},
	{
		...technique,
		id: 'dropperSqueezedHard',
		weight: 4,
		unit: 'share',
		fits: isDropper,
		size: (c) => -c.between(0.05, 0.1),
		bend: (size, doing) => ({ dropFactor: doing.dropFactor / (1 + size) }),
		facts: () => ({ squeezed: 'hard' })
	},
	{
		...technique,
		id: 'tipLoose',
		class: 'ware',
		alsoFair: ['technique'],
		weight: 2,
		unit: 'mL',
		fits: isSyringe,
		size: (c) => -c.between(0.02, 0.12),
		// What drips into the vial before the count begins is never counted.
		bend: (size, doing) => ({ uncountedMl: doing.uncountedMl - size }),
		facts: () => ({ dripsUnaided: 'yes' })
	}
];
