import fc from 'fast-check';
import {
	houseBuretteKit,
	houseDropperKit,
	houseSyringeKit,
	loadKit,
	unitsOf,
	type Analyte,
	type Kit
} from '$lib/kits';

/** Two reagents, one a base measured by the spoon and left to stand; made up. */
export const baseKit: Kit = {
	...houseSyringeKit,
	id: 'made-up-base',
	reagents: [
		{
			id: 'base',
			name: 'base',
			role: 'base',
			dose: { amount: 2, unit: 'spoon' },
			mixSeconds: 10,
			waitSeconds: 60
		},
		...houseSyringeKit.reagents
	]
};
/** Nothing to add but the titrant, which brings its own colour; made up. */
export const bareKit: Kit = { ...houseDropperKit, id: 'made-up-bare', reagents: [] };
/** Calcium: a base that stands, a spoon of dye, a syringe that is filled again on the way; made up. */
export const calciumKit: Kit = {
	...houseSyringeKit,
	id: 'made-up-calcium',
	name: 'Made-up calcium kit',
	analyte: 'calcium',
	unit: 'mg/L',
	sample: { volumes: [{ id: 'only', name: '5 mL', volumeMl: 5 }], measuredIn: 'syringe' },
	reagents: [
		{
			id: 'base',
			name: 'base',
			role: 'base',
			dose: { amount: 6, unit: 'drop' },
			mixSeconds: 10,
			waitSeconds: 60
		},
		{
			id: 'dye',
			name: 'dye powder',
			role: 'indicator',
			dose: { amount: 1, unit: 'spoon' },
			mixSeconds: 15,
			waitSeconds: 0
		}
	],
	delivery: { ...houseSyringeKit.delivery, refilled: true } as Kit['delivery'],
	conversion: { kind: 'perMl', valuePerMl: 200, offset: 0 },
	endPoint: { startColour: 'wine red', endColour: 'blue', holdsSeconds: 30 },
	statedAccuracy: 20
};
delete calciumKit.contents;
/** Calcium and magnesium together at pH 10, for magnesium by difference; made up. */
export const hardnessKit: Kit = loadKit({
	...calciumKit,
	id: 'made-up-hardness',
	name: 'Made-up kit for both',
	analyte: 'hardness',
	unit: 'mmol/L',
	reagents: [
		{
			id: 'buffer',
			name: 'buffer',
			role: 'buffer',
			dose: { amount: 0.5, unit: 'mL' },
			mixSeconds: 10,
			waitSeconds: 0
		},
		...calciumKit.reagents.slice(1)
	],
	conversion: { kind: 'perMl', valuePerMl: 40, offset: 0 },
	byDifference: { gives: 'magnesium', less: 'calcium' },
	statedAccuracy: 2
});

/** 0 stands at the full mark. The barrel ends soon after it; made up. */
export const upKit: Kit = {
	...houseSyringeKit,
	id: 'made-up-up',
	delivery: { ...houseSyringeKit.delivery, scale: 'up', barrelEndMl: 1.1 } as Kit['delivery'],
	conversion: { kind: 'perMl', valuePerMl: 16, offset: -0.3 }
};

export const tankKits: [string, Kit][] = [
	houseSyringeKit,
	houseDropperKit,
	houseBuretteKit,
	baseKit,
	bareKit,
	calciumKit,
	hardnessKit,
	upKit
].map((kit) => [kit.id, kit]);

const name = fc.stringMatching(/^[a-z]{3,9}( [a-z]{2,9}){0,9}$/);
const mL = (min: number, max: number) =>
	fc.integer({ min: min * 100, max: max * 100 }).map((hundredths) => hundredths / 100);

const reagent = fc.record({
	id: fc.constantFrom('base', 'buffer', 'indicator'),
	name,
	role: fc.constantFrom('indicator' as const, 'base' as const, 'buffer' as const),
	dose: fc.record({
		amount: fc.constantFrom(1, 2, 3, 0.5),
		unit: fc.constantFrom('drop' as const, 'mL' as const, 'spoon' as const)
	}),
	mixSeconds: fc.constantFrom(0, 5, 20),
	waitSeconds: fc.constantFrom(0, 60, 300)
});

const delivery = fc.oneof(
	fc
		.record({
			capacityMl: fc.constantFrom(1, 2, 3),
			graduationMl: fc.constantFrom(0.01, 0.02, 0.05),
			beyondMl: mL(0, 0.3),
			tipVolumeMl: fc.option(mL(0.05, 0.2)),
			scale: fc.constantFrom('down' as const, 'up' as const),
			counts: fc.constantFrom('used' as const, 'left' as const),
			dropMl: mL(0.01, 0.05)
		})
		.map(({ beyondMl, ...rest }) => ({
			...rest,
			by: 'syringe' as const,
			numeralEveryMl: 0.1,
			barrelEndMl: rest.capacityMl + beyondMl
		})),
	mL(0.02, 0.06).map((dropMl) => ({ by: 'dropper' as const, dropMl })),
	fc.record({
		by: fc.constant('burette' as const),
		capacityMl: fc.constantFrom(5, 10),
		graduationMl: fc.constantFrom(0.02, 0.05),
		numeralEveryMl: fc.constant(1),
		dropMl: mL(0.02, 0.05)
	})
);

/** Kits as people may type them in. */
export const anyKit: fc.Arbitrary<Kit> = fc
	.record({
		measured: fc
			.constantFrom<Analyte>('alkalinity', 'calcium', 'hardness')
			.chain((analyte) => fc.constantFrom(...unitsOf(analyte)).map((unit) => ({ analyte, unit }))),
		volumes: fc.uniqueArray(fc.constantFrom(2, 5, 10, 20), { minLength: 1, maxLength: 3 }),
		measuredIn: fc.constantFrom('syringe' as const, 'vialLine' as const),
		reagents: fc.uniqueArray(reagent, { maxLength: 3, selector: ({ id }) => id }),
		delivery,
		valuePerMl: mL(0.5, 30),
		offset: fc.constantFrom(0, -0.2, 0.1),
		isTable: fc.boolean(),
		startColour: name,
		endColour: name,
		holdsSeconds: fc.constantFrom(10, 25, 60)
	})
	.map(({ valuePerMl, offset, isTable, volumes, measuredIn, startColour, ...kit }): Kit => {
		const { endColour, holdsSeconds, measured, ...rest } = kit;
		const usedMl = rest.delivery.by === 'dropper' ? 2 : rest.delivery.capacityMl;
		return {
			format: 1,
			id: 'generated',
			name: 'generated',
			invented: true,
			...measured,
			...rest,
			sample: {
				volumes: volumes.map((volumeMl) => ({ id: `v${volumeMl}`, name: 'sample', volumeMl })),
				measuredIn
			},
			conversion: isTable
				? {
						kind: 'rows',
						column: rest.delivery.by === 'dropper' ? 'drops' : 'usedMl',
						rows: [0, 0.4, 1].map((share) => ({
							at:
								rest.delivery.by === 'dropper'
									? (share * usedMl) / rest.delivery.dropMl
									: share * usedMl,
							value: share * usedMl * valuePerMl + offset
						}))
					}
				: { kind: 'perMl', valuePerMl, offset },
			endPoint: { startColour, endColour, holdsSeconds },
			hazards: []
		};
	});
