import type { Kit } from './kit';

/**
 * House kits for calcium and magnesium, with EDTA. Made up like the others: their volumes and strengths
 * are like those of no kit on sale, and each conversion was found on the practice bench with a clean
 * hand in ordinary seawater; a test repeats that.
 */

const stains = 'The indicator stains skin and cloth.';
const away =
	'Keep all of it from children and animals. Never pour a tested sample back into the tank.';

export const houseCalciumKit: Kit = {
	format: 1,
	id: 'house-calcium',
	name: 'House calcium kit',
	invented: true,
	analyte: 'calcium',
	unit: 'mg/L',
	sample: {
		volumes: [{ id: 'normal', name: 'Normal, 8 mL', volumeMl: 8 }],
		measuredIn: 'syringe'
	},
	reagents: [
		{
			id: 'base',
			name: 'strong base',
			role: 'base',
			dose: { amount: 14, unit: 'drop', unitMl: 0.045 },
			mixSeconds: 10,
			waitSeconds: 60
		},
		{
			id: 'indicator',
			name: 'indicator powder',
			role: 'indicator',
			dose: { amount: 2, unit: 'spoon', unitMl: 0.03 },
			mixSeconds: 10,
			waitSeconds: 0
		}
	],
	delivery: {
		by: 'syringe',
		capacityMl: 2,
		graduationMl: 0.05,
		numeralEveryMl: 0.5,
		barrelEndMl: 2.4,
		tipVolumeMl: 0.16,
		scale: 'down',
		counts: 'used',
		dropMl: 0.024
	},
	conversion: { kind: 'perMl', valuePerMl: 300, offset: -6.8 },
	endPoint: { startColour: 'wine red', endColour: 'blue', holdsSeconds: 40, hueDegrees: 250 },
	statedAccuracy: 15,
	hazards: [
		'The base is strong and burns eyes and skin: wear eye protection, and let no child drop it. Rinse an eye at once with plenty of water and get help.',
		stains,
		away
	],
	contents: {
		// The tetrasodium salt sets no acid free: where base is short, magnesium stays and is titrated too.
		titrant: { kind: 'edta', molPerL: 0.05871, hydroxidePerMol: 2 },
		dyes: { indicator: [{ dyeId: 'hydroxynaphtholBlue', molPerL: 5e-3, addedAs: 'salt' }] },
		phReagents: { base: { kind: 'base', hydroxideMolPerL: 2, carbonateMolPerL: 0.01 } }
	}
};

export const houseHardnessKit: Kit = {
	format: 1,
	id: 'house-hardness',
	name: 'House magnesium kit',
	invented: true,
	analyte: 'hardness',
	unit: 'mmol/L',
	sample: {
		volumes: [{ id: 'normal', name: 'Normal, 2.5 mL', volumeMl: 2.5 }],
		measuredIn: 'syringe'
	},
	reagents: [
		{
			id: 'buffer',
			name: 'ammonia buffer',
			role: 'buffer',
			dose: { amount: 10, unit: 'drop', unitMl: 0.045 },
			mixSeconds: 5,
			waitSeconds: 0
		},
		{
			id: 'indicator',
			name: 'indicator powder',
			role: 'indicator',
			dose: { amount: 1, unit: 'spoon', unitMl: 0.03 },
			mixSeconds: 10,
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
		dropMl: 0.021,
		refilled: true
	},
	conversion: { kind: 'perMl', valuePerMl: 40, offset: -1.99 },
	endPoint: { startColour: 'wine red', endColour: 'blue', holdsSeconds: 40, hueDegrees: 268 },
	byDifference: { gives: 'magnesium', less: 'calcium' },
	statedAccuracy: 1.5,
	hazards: [
		'The buffer gives off ammonia: open a window, keep your nose away from the bottle, and close it at once.',
		'Keep all of it off eyes and skin; rinse an eye at once with water and get help.',
		stains,
		away
	],
	contents: {
		titrant: { kind: 'edta', molPerL: 0.10043 },
		dyes: { indicator: [{ dyeId: 'eriochromeBlackT', molPerL: 4e-3, addedAs: 'salt' }] },
		phReagents: {
			buffer: { kind: 'ammoniaBuffer', ammoniaMolPerL: 5, ammoniumMolPerL: 1 }
		}
	}
};
