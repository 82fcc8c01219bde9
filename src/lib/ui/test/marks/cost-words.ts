import { convertValue, decimalsFor, unitName, type Unit } from '$lib/kits';
import type { Remark } from '$lib/procedure';
import { plain } from '../../charts/numbers';

/**
 * What a slip may cost, in the unit that the person reads values in: '2.7 dKH'; null where a remark
 * has no cost.
 */
export function costWords(
	{ costValue, unit }: Pick<Remark, 'costValue' | 'unit'>,
	inUnit: Unit
): string | null {
	if (costValue === undefined || unit === undefined) return null;
	const value = convertValue(costValue, unit, inUnit);
	return `${plain(value, decimalsFor(inUnit))}\u00a0${unitName(inUnit)}`;
}
