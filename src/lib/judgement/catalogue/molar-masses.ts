import { atomicWeights } from '../correction/correction-powders';

const { H, C, O, Na } = atomicWeights;

/** g/mol, from the standard atomic weights. */
export const molarMasses = {
	sodiumBicarbonate: Na + H + C + 3 * O,
	sodiumCarbonate: 2 * Na + C + 3 * O,
	water: 2 * H + O
};
