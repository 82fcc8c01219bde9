import {
	densityKgPerL,
	dicFromAlkalinityAndPh,
	molPerKgFromDkh,
	phFromAlkalinityAndDic
} from '../../chemistry';
import { convertValue, type Unit } from '../../kits';

export type PhInput = {
	/** Alkalinity before, and its rise at once, in `unit`. */
	value: number;
	rise: number;
	unit: Unit;
	/** Moles of inorganic carbon with each equivalent: 1 bicarbonate, ½ carbonate, 0 lime. */
	carbonPerEquivalent: number;
	/** Of the tank before. */
	ph: number;
	salinity: number;
	temperatureC: number;
};

/**
 * Change of pH at once when alkalinity rises, before any CO2 has passed between water and air:
 * carbon stays what it was but for what the addition brings. A keeper's meter may stand 0.1 to 0.15
 * above the total scale used here; that makes the change up to a fifth smaller or larger.
 *
 * Source: equilibria of chemistry/ (the Guide of 2007).
 *
 * @throws RangeError naming the field outside its range
 */
export function phChangeAtOnce(input: PhInput): number {
	const { salinity, temperatureC, ph, carbonPerEquivalent, unit } = input;
	const density = densityKgPerL(salinity, temperatureC);
	const molPerKg = (value: number) => molPerKgFromDkh(convertValue(value, unit, 'dKH'), density);
	const alkalinityMolPerKg = molPerKg(input.value);
	const risen = molPerKg(input.rise);
	const water = { salinity, temperatureC };
	const dicMolPerKg = dicFromAlkalinityAndPh({ ...water, alkalinityMolPerKg, ph });
	const after = phFromAlkalinityAndDic({
		...water,
		alkalinityMolPerKg: alkalinityMolPerKg + risen,
		dicMolPerKg: dicMolPerKg + carbonPerEquivalent * risen
	});
	return after - ph;
}
