import { metalMatrixEffect, type MetalValue } from '../catalogue/matrix-effect-metals';
import type { Unit } from '../../kits';
import type { WaterFigures } from './water-figures';

/** What is judged of a metal in tanks, in its customary unit. */
type Metal = {
	unit: Unit;
	/** What nearly all tanks hold: middle, and standard deviation. */
	usual: { mean: number; spread: number };
	/** How it wanders: between two hours of a day, by the root of the days, and by the days out of balance. */
	wanders: { daySd: number; perRootDaySd: number; perDaySd: number };
	/** Middling falls and rises out of the ordinary, with their share of the cases. */
	changes: readonly (readonly [weight: number, mean: number, sd: number])[];
	portionSd: number;
	unforeseenSd: number;
};

const metals: Record<MetalValue, Metal> = {
	calcium: {
		unit: 'mg/L',
		usual: { mean: 420, spread: 40 },
		wanders: { daySd: 2, perRootDaySd: 2, perDaySd: 1 },
		changes: [
			[0.5, -35, 18],
			[0.15, -85, 35],
			[0.25, 35, 18],
			[0.1, 90, 40]
		],
		portionSd: 1,
		unforeseenSd: 35
	},
	magnesium: {
		unit: 'mg/L',
		usual: { mean: 1320, spread: 100 },
		wanders: { daySd: 4, perRootDaySd: 4, perDaySd: 1.5 },
		changes: [
			[0.5, -90, 45],
			[0.15, -220, 80],
			[0.25, 90, 45],
			[0.1, 220, 90]
		],
		portionSd: 2,
		unforeseenSd: 90
	},
	hardness: {
		unit: 'mmol/L',
		usual: { mean: 64.5, spread: 4.5 },
		wanders: { daySd: 0.2, perRootDaySd: 0.2, perDaySd: 0.08 },
		changes: [
			[0.5, -4, 2],
			[0.15, -10, 4],
			[0.25, 4, 2],
			[0.1, 10, 4]
		],
		portionSd: 0.1,
		unforeseenSd: 4
	}
};

/** What is taken for granted about a metal in tanks, known solutions and second methods. */
export function waterFiguresOfMetal(metal: MetalValue): WaterFigures {
	const { unit, usual, wanders, changes, portionSd, unforeseenSd } = metals[metal];
	const inSalt = metalMatrixEffect(metal, 'sodiumChloride', usual.mean).standardDeviation;
	return {
		unit,
		usual: {
			mean: usual.mean,
			standardDeviation: usual.spread,
			origin:
				'judgement, about that of the sea at salinity 35 (Millero and others 2008, from memory): nearly all tanks lie within two such spreads'
		},
		ordinary: {
			...wanders,
			portionSd,
			origin:
				'judgement: a tank that uses 1 dKH a day uses 7.15 mg/L of calcium with it (textbook) and about a tenth as much magnesium; dosing mostly makes up for nearly all of it'
		},
		realChange: {
			prior: 0.12,
			sizes: changes.map(([weight, mean, sd]) => ({ weight, mean, sd, of: 'customaryUnit' })),
			origin:
				'judgement: falls are commoner than rises; 3 to 4 of salinity move calcium by 40 and magnesium by 120 mg/L (in proportion)'
		},
		matrixEffect: (matrix, nominal) => metalMatrixEffect(metal, matrix, nominal),
		matrixSdOfInstrument: inSalt,
		referenceMatrix: 'seawater',
		leftOut: { mean: 0, standardDeviation: portionSd, origin: 'nothing is left out by a report' },
		blankSd: portionSd,
		blankEndSd: 2 * inSalt,
		unforeseenSd
	};
}
