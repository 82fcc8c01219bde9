/**
 * g/mol, as handbooks print them (CRC Handbook of Chemistry and Physics; from memory): a sum of atomic
 * weights that were rounded before may differ in the last digit.
 */
export const molarMasses = {
	sodiumBicarbonate: 84.007,
	sodiumCarbonate: 105.988,
	water: 18.015
};
