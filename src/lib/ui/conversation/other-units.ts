import {
	amountOf,
	analyteName,
	analyteUnits,
	decimalsFor,
	unitOf,
	type Analyte,
	type Unit
} from '$lib/kits';
import type { Reading } from '$lib/observation';
import { plain } from '../charts/numbers';
import { takenOffFor } from './forms/looks-like';

/** What a reading would be if the number had been meant otherwise. */
export type OtherUnit = { name: string; explanation: string; value: string };

/** mg/L of calcium, about that of the sea at salinity 35 (Millero and others 2008, from memory). */
const USUAL_CALCIUM_MG_PER_L = 420;

type Read = Pick<Reading, 'value' | 'expandedUncertainty' | 'unit'>;

/** The number as that of two things together, with what is usual of the one still to be taken off. */
function asSum(reading: Read, unit: Unit, analyte: Analyte): OtherUnit[] {
	const less = takenOffFor(analyte);
	if (less !== 'calcium') return [];
	const { base } = analyteUnits[analyte];
	const { size } = unitOf(unit, analyte);
	const amount = (value: number) => amountOf(value, reading.unit, analyte, base) / size;
	const left = amount(reading.value) - amountOf(USUAL_CALCIUM_MG_PER_L, 'mg/L', less, base) / size;
	if (!(left > 0)) return [];
	return [
		{
			name: `${analyteName(less)} and ${analyteName(analyte)} together`,
			explanation: `If ${analyteName(less)} was never taken off: with ${USUAL_CALCIUM_MG_PER_L} mg/L of it, about that of the sea, so much is left.`,
			value: plain(left, decimalsFor(unit, amount(reading.expandedUncertainty)))
		}
	];
}

/** What a reading would be in `unit` if its number was in another unit, or of more than it is taken for. */
export function otherUnitsOf(reading: Read, unit: Unit, analyte: Analyte): OtherUnit[] {
	const { units, traps } = analyteUnits[analyte];
	const own = unitOf(unit, analyte).size;
	const sizeNow = unitOf(reading.unit, analyte).size;
	const inOthers = [...Object.values(units), ...traps]
		.filter(({ size }) => size !== sizeNow)
		.map(({ name, explanation, size }): OtherUnit => {
			const value = (reading.value * size) / own;
			const expanded = (reading.expandedUncertainty * size) / own;
			return { name, explanation, value: plain(value, decimalsFor(unit, expanded)) };
		});
	return [...inOthers, ...asSum(reading, unit, analyte)];
}
