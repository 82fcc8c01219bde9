import type { Analyte, Unit } from '../../kits';
import type { Means } from '../../observation';
import type { PlannedMeans } from './correction';
import { atomicWeights } from '../catalogue/molar-masses';
import { isPowder, powderInWords, powderOf, powders } from './correction-powders';

/** Lime dissolved in a litre of its saturated solution at 25 °C, mol/L. Source: Bates, Bower and Smith 1956 (J. Res. Natl. Bur. Stand. 56:305), the pH standard. */
export const SATURATED_LIME_MOL_PER_L = 0.0203;
/** Lime takes up two of acid. */
export const MEQ_PER_L_OF_LIMEWATER = 2000 * SATURATED_LIME_MOL_PER_L;
/** Calcium that lime brings with each milliequivalent, mg: half a millimole. */
export const CALCIUM_MG_PER_MEQ = atomicWeights.Ca / 2;

/** Unit in which an amount of an analyte is counted: milliequivalents or millimoles in a litre. */
export const countedIn = (analyte: Analyte): Unit =>
	analyte === 'alkalinity' ? 'meq/L' : 'mmol/L';

/** What one amount of a means does, and how surely. */
export type MeansFigures = {
	/** In words, with hydrate and purity. */
	name: string;
	amountUnit: 'g' | 'mL' | 'L';
	/**
	 * Moles of inorganic carbon that come with each equivalent of alkalinity; null for what brings no
	 * alkalinity.
	 */
	carbonPerEquivalent: number | null;
	/** Strength of what is in the hand, expanded uncertainty as a share; judgement. */
	strengthExpandedShare: number;
};

/** By which means an analyte can be raised, the mildest first; none for a sum of two. */
export function meansFor(analyte: Analyte): Means['by'][] {
	if (analyte === 'hardness') return [];
	const weighed = Object.entries(powders).flatMap(([by, powder]) =>
		powder.analyte === analyte ? [by as Means['by']] : []
	);
	return [
		...weighed,
		...(analyte === 'alkalinity' ? ['limewater' as const] : []),
		'product',
		'waterChange'
	];
}

/** Figures of what would be added. */
export function meansFigures(means: PlannedMeans): MeansFigures {
	if (isPowder(means)) {
		const { carbonPerEquivalent, strengthExpandedShare } = powderOf(means);
		return {
			name: powderInWords(means),
			amountUnit: 'g',
			carbonPerEquivalent,
			strengthExpandedShare
		};
	}
	switch (means.by) {
		case 'limewater':
			return {
				name: 'limewater, saturated, clear',
				amountUnit: 'L',
				carbonPerEquivalent: 0,
				// It loses strength to the air and in the cold.
				strengthExpandedShare: 0.1
			};
		case 'product':
			return {
				name: 'a product, by its label',
				amountUnit: 'mL',
				// Its label does not say what it is: taken for the strongest alkali.
				carbonPerEquivalent: 0,
				strengthExpandedShare: 0.1
			};
		case 'waterChange':
			return {
				name: 'new water',
				amountUnit: 'L',
				carbonPerEquivalent: 1,
				strengthExpandedShare: 0.05
			};
	}
}
