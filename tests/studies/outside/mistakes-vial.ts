import type { Mistake } from './mistake';
import type { World } from './world';

const technique = { class: 'technique', clings: 'slip' } as const;
const onBench = ({ kit }: World) => kit.figures.delivery !== 'burette';

/**
 * What goes wrong with the sample, in the vial and at the end. Sizes and signs: common practice, no
 * source; weights: judgement.
 */
export const vialMistakes: readonly Mistake[] = [
	{
		...technique,
		id: 'sampleToWrongSideOfLine',
		weight: 4,
		unit: 'share',
		size: (c) => c.sign() * c.between(0.02, 0.035),
		bend: (size, doing) => ({ sampleFactor: doing.sampleFactor * (1 + size) }),
		facts: (size) => ({ sampleLevel: size > 0 ? 'above the line' : 'below the line' })
	},
	{
		...technique,
		id: 'airInSampleSyringe',
		weight: 3,
		unit: 'share',
		fits: onBench,
		size: (c) => -c.between(0.02, 0.1),
		bend: (size, doing) => ({ sampleFactor: doing.sampleFactor * (1 + size) }),
		facts: () => ({ bubbleInSample: 'yes' })
	},
	{
		...technique,
		id: 'pureWaterLeftInSampleWare',
		weight: 3,
		unit: 'share',
		size: (c) => -c.between(0.02, 0.04),
		bend: (size, doing) => ({ sampleFactor: doing.sampleFactor * (1 + size) }),
		facts: () => ({ rinsedWith: 'pure water' })
	},
	{
		id: 'sampleWareScaleOff',
		class: 'ware',
		clings: 'sampleWare',
		weight: 3,
		unit: 'share',
		size: (c) => c.sign() * c.between(0.04, 0.09),
		change: (size, { sampleWare }) => ({ sampleWare: { scale: sampleWare.scale * (1 + size) } })
	},
	{
		id: 'titrantWareScaleOff',
		class: 'ware',
		clings: 'titrantWare',
		weight: 3,
		unit: 'share',
		size: (c) => c.sign() * c.between(0.04, 0.1),
		change: (size, { titrantWare }) => ({ titrantWare: { scale: titrantWare.scale * (1 + size) } })
	},
	{
		id: 'limescaleInVial',
		class: 'ware',
		alsoFair: ['technique'],
		clings: 'vial',
		weight: 3,
		unit: 'dKH',
		size: (c) => c.between(0.1, 0.5),
		bend: (size, doing) => ({ strayDkh: doing.strayDkh + size }),
		facts: () => ({ vialLooks: 'film on the glass' })
	},
	{
		id: 'traceOfBaseInVial',
		class: 'ware',
		alsoFair: ['technique'],
		clings: 'vial',
		weight: 2,
		unit: 'dKH',
		size: (c) => c.between(0.3, 2),
		bend: (size, doing) => ({ strayDkh: doing.strayDkh + size }),
		facts: () => ({ vialShared: 'with another test', startColour: 'odd' })
	},
	{
		id: 'traceOfVinegarInVial',
		class: 'ware',
		alsoFair: ['technique'],
		clings: 'vial',
		weight: 1,
		unit: 'dKH',
		size: (c) => -c.between(0.3, 2),
		bend: (size, doing) => ({ strayDkh: doing.strayDkh + size }),
		facts: () => ({ vialCleaned: 'with vinegar lately' })
	},
	{
		id: 'grainsInSample',
		class: 'sampling',
		alsoFair: ['technique'],
		clings: 'cup',
		weight: 4,
		unit: 'dKH',
		size: (c) => c.between(0.3, 2),
		bend: (size, doing) => ({ strayDkh: doing.strayDkh + size, scatter: doing.scatter * 2 }),
		facts: () => ({
			sampleLooks: 'grains or haze',
			colourAfterMinute: 'comes back again and again'
		})
	},
	{
		...technique,
		id: 'flashTakenForEnd',
		weight: 7,
		unit: 'dKH',
		size: (c) => -c.between(0.3, 1.5),
		bend: (size, doing) => ({ endDkh: doing.endDkh + size }),
		facts: () => ({ colourAfterMinute: 'went within seconds' })
	},
	{
		...technique,
		id: 'wentPastTheEnd',
		weight: 5,
		unit: 'dKH',
		size: (c, { kit }) => kit.dkhPerMl * kit.figures.dropMl * c.pick([1, 1, 2, 3]),
		bend: (size, doing) => ({ endDkh: doing.endDkh + size }),
		facts: () => ({ lastSteps: 'several drops at once' })
	},
	{
		...technique,
		id: 'laterColourChosen',
		weight: 5,
		unit: 'pH',
		size: (c) => -c.between(0.15, 0.4),
		bend: (size, doing) => ({ endPh: doing.endPh + size }),
		facts: () => ({ endColour: 'deeper than the leaflet shows' })
	},
	{
		...technique,
		id: 'chasedReturningColour',
		weight: 4,
		unit: 'dKH',
		size: (c) => c.between(0.2, 0.7),
		bend: (size, doing) => ({ endDkh: doing.endDkh + size }),
		facts: () => ({ colourAfterMinute: 'came back, went on dripping' })
	},
	{
		...technique,
		id: 'hardlySwirled',
		weight: 2,
		unit: 'share',
		size: (c) => c.between(0.3, 0.5),
		bend: (size) => ({ co2Left: size }),
		facts: () => ({ swirled: 'hardly' })
	},
	{
		...technique,
		id: 'judgedInBlueOrDimLight',
		weight: 6,
		unit: 'dKH',
		size: (c) => c.sign() * c.between(0.3, 1),
		bend: (size, doing) => ({ endDkh: doing.endDkh + size, scatter: doing.scatter * 1.7 }),
		facts: () => ({ light: 'blue or dim' })
	},
	{
		...technique,
		id: 'indicatorNotOnce',
		weight: 2,
		unit: 'dKH',
		size: (c) => c.sign() * c.between(0.05, 0.2),
		bend: (size, doing) => ({ endDkh: doing.endDkh + size }),
		facts: () => ({ startColour: 'odd', indicatorDose: 'not sure' })
	}
];
