import type { Mistake } from './mistake';
import type { World } from './world';

const strengthen = (share: number, { lot }: World) => ({
	lot: { strength: lot.strength * (1 - share) }
});
const isHome = ({ second }: World) => second.method === 'photometer' || second.method === 'kit';

/**
 * What is wrong with reagents, other methods, known solutions, the portion or the tank. Of reagents
 * the size is the share by which the kit reads high. Sizes: common practice, no source; weights:
 * judgement.
 */
export const thingMistakes: readonly Mistake[] = [
	{
		id: 'titrantEvaporated',
		class: 'reagent',
		weight: 9,
		unit: 'share',
		size: (c) => -c.between(0.02, 0.1),
		change: (size, world) => ({
			lot: { strength: world.lot.strength / (1 + size) },
			lotAgeMonths: Math.max(8, world.lotAgeMonths)
		}),
		facts: () => ({ bottleLooks: 'low, or a crust at the cap' })
	},
	{
		id: 'titrantWatered',
		class: 'reagent',
		weight: 3,
		unit: 'share',
		size: (c) => c.between(0.03, 0.05),
		change: strengthen,
		facts: () => ({ titrantSyringe: 'rinsed with water and wet' })
	},
	{
		id: 'badLot',
		class: 'reagent',
		weight: 5,
		unit: 'share',
		size: (c) => c.sign() * c.between(0.03, 0.1),
		change: strengthen
	},
	{
		id: 'indicatorAgedPale',
		class: 'reagent',
		clings: 'kit',
		weight: 2,
		unit: 'dKH',
		size: (c) => c.sign() * c.between(0.1, 0.3),
		bend: (size, doing) => ({ endDkh: doing.endDkh + size, scatter: doing.scatter * 1.5 }),
		facts: () => ({ indicatorLooks: 'pale' })
	},
	{
		id: 'secondMethodUnclean',
		class: 'secondMethod',
		weight: 12,
		unit: 'dKH',
		fits: isHome,
		size: (c) => c.sign() * c.between(0.3, 1),
		change: (size, { second }) => ({
			second: { ...second, offsetDkh: second.offsetDkh + size }
		}),
		facts: () => ({ secondMethodCare: 'dirt, bubble or old reagent' })
	},
	{
		id: 'laboratorySampleOld',
		class: 'secondMethod',
		weight: 7,
		unit: 'share',
		fits: ({ second }) => second.method === 'laboratory',
		size: (c) => -c.between(0.02, 0.06),
		change: (size, { second }) => ({ second: { ...second, share: second.share + size } }),
		facts: () => ({ laboratoryDelay: 'more than four days' })
	},
	{
		id: 'laboratoryLeavesBorateUnsaid',
		class: 'secondMethod',
		weight: 4,
		unit: 'share',
		fits: ({ second }) => second.method === 'laboratory',
		size: () => -0.05,
		change: (_size, { second }) => ({
			second: { ...second, reports: 'carbonate' as const, saysSo: false }
		})
	},
	...(
		[
			['powderWasHydrate', 2, (c) => c.pick([-0.145, -0.63]), 'washing soda'],
			['powderPartlyCarbonate', 2, (c) => c.between(0.05, 0.58), 'baked or old'],
			['kitchenScale', 4, (c) => c.sign() * c.between(0.05, 0.1), 'baking soda']
		] satisfies [string, number, Mistake['size'], string][]
	).map(([id, weight, size, powder]): Mistake => ({
		id,
		class: 'reference',
		weight,
		unit: 'share',
		size,
		change: (share, { solution }) => ({
			solution: {
				...solution,
				water: { ...solution.water, dkh: solution.water.dkh * (1 + share) }
			}
		}),
		facts: () => ({
			powder,
			...(id === 'kitchenScale' ? { scaleShows: 'whole grams' } : {})
		})
	})),
	{
		id: 'referenceWaterNotPure',
		class: 'reference',
		weight: 3,
		unit: 'dKH',
		size: (c) => c.between(0.2, 1),
		change: (size, { solution }) => ({
			solution: {
				...solution,
				water: { ...solution.water, dkh: solution.water.dkh + size }
			}
		}),
		facts: () => ({ waterOfSolution: 'tap or unsure' })
	},
	{
		id: 'sampledSoonAfterDosing',
		class: 'sampling',
		alsoFair: ['water'],
		weight: 7,
		unit: 'dKH',
		size: (c) => 0.3 + 2.7 * c.between(0, 1) ** 2,
		change: (size, { cupDkh }) => ({ cupDkh: cupDkh + size }),
		facts: () => ({ sinceDose: 'less than an hour' })
	},
	{
		id: 'wrongCup',
		class: 'sampling',
		weight: 1,
		unit: 'factor',
		size: (c) => c.between(0.005, 0.05),
		change: (size) => ({ cupShare: size }),
		facts: () => ({ cup: 'other water stood beside it' })
	},
	{
		id: 'tankFellUnnoticed',
		class: 'water',
		weight: 22,
		unit: 'dKH',
		size: (c) => -c.between(0.5, 2.5),
		change: (size, { tank }) => ({
			// Below 3.5 dKH nobody would be asking about a reading any more.
			eventDkh: Math.max(3.5 - tank.dkh, size),
			tank: { ...tank, dkh: Math.max(3.5, tank.dkh + size) }
		}),
		facts: () => ({ dosing: 'stopped or bottle empty' })
	},
	{
		id: 'tankRoseUnnoticed',
		class: 'water',
		weight: 12,
		unit: 'dKH',
		size: (c) => c.between(0.5, 2.5),
		change: (size, { tank }) => ({
			eventDkh: size,
			tank: { ...tank, dkh: tank.dkh + size }
		}),
		facts: () => ({ dosing: 'gave more than it should' })
	},
	{
		id: 'salinityLow',
		class: 'water',
		weight: 3,
		unit: 'share',
		size: (c) => -c.between(0.05, 0.08),
		change: (size, { tank }) => ({
			eventDkh: tank.dkh * size,
			tank: { ...tank, dkh: tank.dkh * (1 + size) }
		}),
		facts: () => ({ salinity: 'low on another instrument' })
	}
];
