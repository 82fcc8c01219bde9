import type { Mistake } from './mistake';

const odd = { isOdd: true, clings: 'slip' } as const;

/** Things on nobody's list of causes. Sizes and weights: judgement. */
export const oddMistakes: readonly Mistake[] = [
	{
		...odd,
		id: 'tableReadOneRowOff',
		class: 'technique',
		weight: 4,
		unit: 'dKH',
		// Rows of a leaflet's table: two or five hundredths of a millilitre.
		size: (c, { kit }) => c.sign() * kit.dkhPerMl * c.pick([0.02, 0.05]),
		bend: (size) => ({ valueDkh: size }),
		facts: () => ({ valueFrom: 'the table, by eye' })
	},
	{
		...odd,
		id: 'valueTakenForAnotherUnit',
		class: 'technique',
		weight: 2,
		unit: 'factor',
		size: (c) => c.pick([1 / 2.804, 1.22, 1.25, 2.804]),
		bend: (size) => ({ valueFactor: size }),
		facts: () => ({ unitSure: 'no' })
	},
	{
		...odd,
		id: 'rowOfTheOtherSampleSize',
		class: 'technique',
		weight: 2,
		unit: 'factor',
		size: (c) => c.pick([0.5, 2]),
		bend: (size) => ({ valueFactor: size }),
		facts: () => ({ valueFrom: 'the table, by eye' })
	},
	{
		id: 'coldBottle',
		isOdd: true,
		class: 'reagent',
		alsoFair: ['method', 'technique'],
		clings: 'kit',
		weight: 3,
		unit: 'share',
		// Stiffer drops and a stiffer plunger in the cold: either way, and wider apart.
		size: (c) => c.sign() * c.between(0.03, 0.08),
		bend: (size, doing) => ({
			strengthFactor: doing.strengthFactor * (1 - size),
			scatter: doing.scatter * 1.8
		}),
		facts: () => ({ bottleKept: 'in the cold' })
	},
	{
		id: 'detergentInVial',
		isOdd: true,
		class: 'ware',
		alsoFair: ['technique'],
		clings: 'vial',
		weight: 3,
		unit: 'dKH',
		size: (c) => c.between(0.4, 1.2),
		bend: (size, doing) => ({ strayDkh: doing.strayDkh + size }),
		facts: () => ({ vialCleaned: 'dishwasher' })
	},
	{
		...odd,
		id: 'writtenDownFromMemory',
		class: 'technique',
		weight: 2,
		unit: 'dKH',
		size: (c) => c.normal(0.8),
		bend: (size) => ({ valueDkh: size }),
		facts: () => ({ writtenDown: 'later, from memory' })
	},
	{
		id: 'titrantMouldy',
		isOdd: true,
		class: 'reagent',
		weight: 2,
		unit: 'share',
		size: (c) => c.sign() * c.between(0.1, 0.2),
		change: (size, { lot }) => ({ lot: { strength: lot.strength * (1 - size) } }),
		facts: () => ({ bottleLooks: 'flakes' })
	},
	{
		id: 'kitMadeForFreshWater',
		isOdd: true,
		class: 'method',
		clings: 'kit',
		weight: 2,
		unit: 'dKH',
		size: (c) => c.between(-0.6, -0.2),
		bend: (size, doing) => ({ endDkh: doing.endDkh + size }),
		facts: () => ({ leafletFor: 'fresh water' })
	}
];
