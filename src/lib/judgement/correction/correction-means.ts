import type { PlannedMeans } from './correction';

/**
 * Standard atomic weights, g/mol, abridged to five figures. Source: IUPAC Commission on Isotopic
 * Abundances and Atomic Weights 2021 (Prohaska and others 2022, Pure Appl. Chem. 94:573).
 */
export const atomicWeights = { H: 1.008, C: 12.011, O: 15.999, Na: 22.99, Ca: 40.078 };
const { H, C, O, Na, Ca } = atomicWeights;
const WATER = 2 * H + O;
const CARBONATE = 2 * Na + C + 3 * O;

/** Molar masses of what is weighed, g/mol. */
export const molarMassesGPerMol = {
	bicarbonate: Na + H + C + 3 * O,
	carbonateAnhydrous: CARBONATE,
	carbonateMonohydrate: CARBONATE + WATER,
	carbonateDecahydrate: CARBONATE + 10 * WATER
};

/** Lime dissolved in a litre of its saturated solution at 25 °C, mol/L. Source: Bates, Bower and Smith 1956 (J. Res. Natl. Bur. Stand. 56:305), the pH standard. */
export const SATURATED_LIME_MOL_PER_L = 0.0203;
/** Lime takes up two of acid. */
export const MEQ_PER_L_OF_LIMEWATER = 2000 * SATURATED_LIME_MOL_PER_L;
/** Calcium that lime brings with each milliequivalent, mg: half a millimole. */
export const CALCIUM_MG_PER_MEQ = Ca / 2;

/** What one amount of a means does to alkalinity and carbon, and how surely. */
export type MeansFigures = {
	/** In words, with hydrate and purity. */
	name: string;
	amountUnit: 'g' | 'mL' | 'L';
	/** Moles of inorganic carbon that come with each equivalent of alkalinity. */
	carbonPerEquivalent: number;
	/** Strength of what is in the hand, expanded uncertainty as a share; judgement. */
	strengthExpandedShare: number;
};

const percent = (share: number) => `${Number((share * 100).toPrecision(3))} %`;

/** Grams of a powder that hold one milliequivalent of alkalinity; null for what is not weighed. */
export function gramsPerMeq(means: PlannedMeans): number | null {
	if (means.by === 'bicarbonate') return molarMassesGPerMol.bicarbonate / 1000 / means.purity;
	if (means.by === 'carbonate') return molarMassOf(means) / 2000 / means.purity;
	return null;
}

/** Molar mass of a carbonate with its water, g/mol. */
export function molarMassOf({ hydrate }: Extract<PlannedMeans, { by: 'carbonate' }>): number {
	return {
		anhydrous: molarMassesGPerMol.carbonateAnhydrous,
		monohydrate: molarMassesGPerMol.carbonateMonohydrate,
		decahydrate: molarMassesGPerMol.carbonateDecahydrate
	}[hydrate];
}

const hydrateNames = {
	anhydrous: 'without water, Na₂CO₃',
	monohydrate: 'monohydrate, Na₂CO₃·H₂O',
	decahydrate: 'decahydrate, Na₂CO₃·10H₂O'
};

/** Figures of what would be added. */
export function meansFigures(means: PlannedMeans): MeansFigures {
	switch (means.by) {
		case 'bicarbonate':
			return {
				name: `sodium bicarbonate, NaHCO₃, ${percent(means.purity)} pure`,
				amountUnit: 'g',
				carbonPerEquivalent: 1,
				strengthExpandedShare: 0.02
			};
		case 'carbonate':
			return {
				name: `sodium carbonate, ${hydrateNames[means.hydrate]}, ${percent(means.purity)} pure`,
				amountUnit: 'g',
				carbonPerEquivalent: 0.5,
				// It takes up water or gives it off in the jar.
				strengthExpandedShare: 0.05
			};
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
