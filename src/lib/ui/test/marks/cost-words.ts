import { convertValue, decimalsFor, unitFor, unitName, type Unit } from '$lib/kits';
import type { Remark } from '$lib/procedure';
import { plain } from '../../charts/numbers';

/**
 * What a slip may cost, in the unit that the person reads values in: '2.7 dKH'; null where a remark
 * has no cost.
 */
export function costWords(
	{ costValue, unit, analyte = 'alkalinity' }: Pick<Remark, 'costValue' | 'unit' | 'analyte'>,
	preferred: Unit
): string | null {
	if (costValue === undefined || unit === undefined) return null;
	const inUnit = unitFor(analyte, preferred);
	const value = convertValue(costValue, unit, inUnit, analyte);
	return `${plain(value, decimalsFor(inUnit, undefined, analyte))}\u00a0${unitName(inUnit, analyte)}`;
}
