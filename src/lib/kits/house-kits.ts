import { houseCalciumKit, houseHardnessKit } from './house-kits-edta';
import type { Analyte, Contents, Kit } from './kit';

/**
 * The kits that come with the project. They are made up: their volumes, strengths and tables are
 * like those of no kit on sale. Each conversion was found on the practice bench with a clean hand in
 * ordinary seawater (salinity 35, 25 °C, pH 8.1) at the kit's own end colour, as a maker would; a
 * test repeats that.
 */

/** Bromocresol green and methyl red, 5 to 1 by weight, as sodium salts in water. */
const mixedIndicator = (reagentId: string): Contents['dyes'] => ({
	[reagentId]: [
		{ dyeId: 'bromocresolGreen', molPerL: 1.433e-3, addedAs: 'salt' },
		{ dyeId: 'methylRed', molPerL: 0.743e-3, addedAs: 'salt' }
	]
});

/** Rows of a printed table, to the second decimal as print has it. */
const straightTable = (
	at: readonly number[],
	row: (at: number) => { value: number }
): { at: number; value: number }[] =>
	at.map((each) => ({ at: each, value: Number(row(each).value.toFixed(2)) }));

const hazards = [
	'The titrant is dilute acid: keep it off eyes and skin; rinse an eye at once with water and get help.',
	'The indicator stains skin and cloth.',
	'Keep both from children and animals. Never pour a tested sample back into the tank.'
];

const endPoint = {
	startColour: 'teal',
	endColour: 'mauve',
	holdsSeconds: 25,
	hueDegrees: 340
};

export const houseSyringeKit: Kit = {
	format: 1,
	id: 'house-syringe',
	name: 'House syringe kit',
	invented: true,
	analyte: 'alkalinity',
	unit: 'dKH',
	sample: {
		volumes: [
			{ id: 'normal', name: 'Normal, 6 mL', volumeMl: 6 },
			{ id: 'fine', name: 'Fine, 10 mL', volumeMl: 10 }
		],
		measuredIn: 'syringe'
	},
	reagents: [
		{
			id: 'indicator',
			name: 'indicator',
			role: 'indicator',
			dose: { amount: 3, unit: 'drop', unitMl: 0.02 },
			mixSeconds: 5,
			waitSeconds: 0
		}
	],
	delivery: {
		by: 'syringe',
		capacityMl: 1,
		graduationMl: 0.02,
		numeralEveryMl: 0.1,
		barrelEndMl: 1.24,
		tipVolumeMl: 0.17,
		scale: 'down',
		counts: 'used',
		dropMl: 0.021
	},
	conversion: {
		kind: 'rows',
		column: 'mark',
		rows: straightTable([1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0], (mark) => ({
			value: 16 * (1 - mark) - 0.3
		}))
	},
	endPoint,
	statedAccuracy: 0.4,
	hazards,
	contents: {
		titrant: { kind: 'strongAcid', molPerL: 0.03404 },
		dyes: mixedIndicator('indicator')
	}
};

export const houseDropperKit: Kit = {
	format: 1,
	id: 'house-dropper',
	name: 'House dropper kit',
	invented: true,
	analyte: 'alkalinity',
	unit: 'dKH',
	sample: {
		volumes: [{ id: 'normal', name: 'To the line, 7 mL', volumeMl: 7 }],
		measuredIn: 'vialLine'
	},
	reagents: [
		{
			id: 'indicator',
			name: 'indicator',
			role: 'indicator',
			dose: { amount: 2, unit: 'drop', unitMl: 0.035 },
			mixSeconds: 5,
			waitSeconds: 0
		}
	],
	delivery: { by: 'dropper', dropMl: 0.043 },
	conversion: { kind: 'perDrop', valuePerDrop: 0.6, offset: -0.45 },
	endPoint,
	statedAccuracy: 0.6,
	hazards,
	contents: {
		titrant: { kind: 'strongAcid', molPerL: 0.03445 },
		dyes: mixedIndicator('indicator')
	}
};

export const houseBuretteKit: Kit = {
	format: 1,
	id: 'house-burette',
	name: 'Bench burette',
	invented: true,
	analyte: 'alkalinity',
	unit: 'dKH',
	sample: {
		volumes: [{ id: 'normal', name: '22 mL', volumeMl: 22 }],
		measuredIn: 'syringe'
	},
	reagents: [
		{
			id: 'indicator',
			name: 'indicator',
			role: 'indicator',
			dose: { amount: 5, unit: 'drop', unitMl: 0.044 },
			mixSeconds: 5,
			waitSeconds: 0
		}
	],
	delivery: {
		by: 'burette',
		capacityMl: 10,
		graduationMl: 0.05,
		numeralEveryMl: 1,
		dropMl: 0.04
	},
	conversion: {
		kind: 'rows',
		column: 'usedMl',
		rows: straightTable([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], (usedMl) => ({
			value: 2.3 * usedMl - 0.19
		}))
	},
	endPoint,
	statedAccuracy: 0.2,
	hazards,
	contents: {
		titrant: { kind: 'strongAcid', molPerL: 0.01809 },
		dyes: mixedIndicator('indicator')
	}
};

export const houseKits: readonly Kit[] = [
	houseSyringeKit,
	houseDropperKit,
	houseBuretteKit,
	houseCalciumKit,
	houseHardnessKit
];

/** Those for one analyte. */
export const houseKitsFor = (analyte: Analyte): Kit[] =>
	houseKits.filter((kit) => kit.analyte === analyte);

/**
 * The house kit of an id.
 *
 * @throws RangeError naming `kitId` when there is none
 */
export function houseKitOf(kitId: string): Kit {
	const kit = houseKits.find((candidate) => candidate.id === kitId);
	if (!kit)
		throw new RangeError(
			`kitId must be one of ${houseKits.map((each) => each.id).join(', ')}; found ${kitId}`
		);
	return kit;
}
