import { convertValue, type Analyte, type Kit, type Unit } from '../kits';
import { metalsMmolPerL } from './water-metals';
import type { Water } from './world';

/** Content of a water by analyte, and the unit in which it stands here. */
const contentOf: Record<Analyte, { unit: Unit; of: (water: Water) => number }> = {
	alkalinity: { unit: 'dKH', of: ({ alkalinityDkh }) => alkalinityDkh },
	calcium: { unit: 'mmol/L', of: (water) => metalsMmolPerL(water).calcium },
	magnesium: { unit: 'mmol/L', of: (water) => metalsMmolPerL(water).magnesium },
	hardness: {
		unit: 'mmol/L',
		of: (water) => {
			const { calcium, magnesium } = metalsMmolPerL(water);
			return calcium + magnesium;
		}
	}
};

/** What a perfect test of this kit's analyte would say of a water, in the kit's unit. Strontium counts for nothing. */
export function trueValueOf(
	water: Water,
	{ analyte, unit }: Pick<Kit, 'analyte' | 'unit'>
): number {
	const content = contentOf[analyte];
	return convertValue(content.of(water), content.unit, unit, analyte);
}
