import { CALCIUM_G_PER_MOL, MAGNESIUM_G_PER_MOL } from '../../chemistry/units';

/**
 * Standard atomic weights, g/mol, abridged to five figures. Source: IUPAC Commission on Isotopic
 * Abundances and Atomic Weights 2021 (Prohaska and others 2022, Pure Appl. Chem. 94:573).
 */
export const atomicWeights = {
	O: 15.999,
	Mg: MAGNESIUM_G_PER_MOL,
	S: 32.06,
	Cl: 35.45,
	Ca: CALCIUM_G_PER_MOL
};
const { O, Mg, S, Cl, Ca } = atomicWeights;

/**
 * g/mol. Those with hydrogen or sodium as handbooks print them (CRC Handbook of Chemistry and Physics; from
 * memory): a sum of atomic weights that were rounded before may differ in the last digit. Salts of metals
 * without the water of their crystals.
 */
export const molarMasses = {
	sodiumBicarbonate: 84.007,
	sodiumCarbonate: 105.988,
	water: 18.015,
	calciumChloride: Ca + 2 * Cl,
	magnesiumChloride: Mg + 2 * Cl,
	magnesiumSulfate: Mg + S + 4 * O
};
