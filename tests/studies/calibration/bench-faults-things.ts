import type { BenchFault } from './bench-faults';
import { between, sign } from './seeds';

/** Bottles, ware, portions, known solutions and other methods. Sizes: common practice, no source. */
export const thingFaults: readonly BenchFault[] = [
	{
		id: 'titrantStronger',
		class: 'reagent',
		keeps: 'lot',
		draw: (chance) => ({ strength: between(chance, 1.02, 1.1) })
	},
	{
		id: 'titrantWatered',
		class: 'reagent',
		keeps: 'lot',
		draw: (chance) => ({ strength: 1 / between(chance, 1.02, 1.09) })
	},
	{
		id: 'lotOff',
		class: 'reagent',
		keeps: 'lot',
		draw: (chance) => ({ strength: 1 + sign(chance) * between(chance, 0.03, 0.1) })
	},
	{
		id: 'indicatorPale',
		class: 'reagent',
		keeps: 'lot',
		draw: (chance) => ({
			indicator: between(chance, 0.3, 0.6),
			household: { colourDrops: sign(chance) * between(chance, 0.3, 0.8) }
		})
	},
	{
		id: 'sealSticks',
		class: 'ware',
		alsoFair: ['technique'],
		keeps: 'titrantWare',
		deliveries: ['syringe'],
		draw: (chance) => ({ ware: { stickyJumpMl: between(chance, 0.05, 0.12) } })
	},
	{
		id: 'titrantScaleOff',
		class: 'ware',
		keeps: 'titrantWare',
		// More titrant than the mark says is a stronger titrant.
		draw: (chance, { delivery }) => {
			const factor = 1 + sign(chance) * between(chance, 0.03, 0.1);
			return delivery.by === 'dropper' ? { drop: factor } : { strength: factor };
		}
	},
	{
		id: 'sampleScaleOff',
		class: 'ware',
		keeps: 'sampleWare',
		draw: (chance) => ({ sample: 1 + sign(chance) * between(chance, 0.03, 0.08) })
	},
	{
		id: 'hardFilm',
		class: 'ware',
		keeps: 'sampleWare',
		draw: () => ({ plan: { rinseVial: 'tap' } })
	},
	{
		id: 'baseTrace',
		class: 'ware',
		keeps: 'sampleWare',
		draw: (chance) => ({
			plan: { rinseVial: 'none' },
			ware: { vialLeftMl: between(chance, 0.0001, 0.0006), vialLeftMeqPerL: 8000 }
		})
	},
	{
		id: 'acidTrace',
		class: 'ware',
		keeps: 'sampleWare',
		draw: (chance) => ({
			plan: { rinseVial: 'none' },
			ware: { vialLeftMl: between(chance, 0.0005, 0.004), vialLeftMeqPerL: -1000 }
		})
	},
	// The first test takes it up; what comes after is free of it.
	{
		id: 'baseTraceOnce',
		class: 'ware',
		keeps: 'once',
		draw: (chance) => ({
			plan: { rinseVial: 'none' },
			ware: { vialLeftMl: between(chance, 0.0001, 0.0006), vialLeftMeqPerL: 8000 }
		})
	},
	{
		id: 'acidTraceOnce',
		class: 'ware',
		keeps: 'once',
		draw: (chance) => ({
			plan: { rinseVial: 'none' },
			ware: { vialLeftMl: between(chance, 0.0005, 0.004), vialLeftMeqPerL: -1000 }
		})
	},
	{
		id: 'sampledAfterDosing',
		class: 'sampling',
		alsoFair: ['water'],
		keeps: 'portion',
		draw: (chance) => {
			const dkh = 0.3 + 2.5 * chance.uniform() ** 2;
			return { water: (water) => ({ ...water, alkalinityDkh: water.alkalinityDkh + dkh }) };
		}
	},
	{
		id: 'grainsInSample',
		class: 'sampling',
		keeps: 'portion',
		draw: (chance) => {
			const mg = between(chance, 0.03, 0.2);
			return { water: (water) => ({ ...water, carbonateGrainsMg: mg }), plan: { chaseRounds: 12 } };
		}
	},
	{
		id: 'otherMethodOff',
		class: 'secondMethod',
		keeps: 'second',
		draw: (chance) => ({ secondDkh: sign(chance) * between(chance, 0.3, 1.2) })
	},
	{
		id: 'referenceMonohydrate',
		class: 'reference',
		keeps: 'solution',
		draw: () => ({ solutionShare: -0.145 })
	},
	{
		id: 'referencePartCarbonate',
		class: 'reference',
		keeps: 'solution',
		draw: (chance) => ({ solutionShare: between(chance, 0.03, 0.35) })
	},
	{
		id: 'referenceWeighedOff',
		class: 'reference',
		keeps: 'solution',
		draw: (chance) => ({ solutionShare: sign(chance) * between(chance, 0.04, 0.1) })
	},
	{
		id: 'referenceWaterImpure',
		class: 'reference',
		keeps: 'solution',
		draw: (chance) => ({ solutionDkh: between(chance, 0.2, 1) })
	}
];
