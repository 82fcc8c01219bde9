import type { Analyte } from '../../kits';
import type { Tank } from '../../observation';
import { limitsOf } from './limits';

/**
 * What the water of a reef tank can have at all, PSU or g/kg; judgement. Below it lie specific
 * gravities (1.02) and fresh water, above it conductivities (53 mS/cm).
 */
export const possibleSalinity = { low: 5, high: 45 } as const;

/** Whether a number can be the salinity of a tank at all, be it good or bad. */
export const isPossibleSalinity = (salinity: number): boolean =>
	salinity >= possibleSalinity.low && salinity <= possibleSalinity.high;

/**
 * Why nothing is added at this salinity, in a sentence; null where it stands in the way of nothing.
 *
 * @param salinity PSU or g/kg, within `possibleSalinity`; null or left out where it is not known
 * @param whatMoves with it, as the end of the sentence
 * @throws RangeError naming field, range and what was found
 */
export function salinityOff(
	salinity: number | null | undefined,
	analyte: Analyte = 'alkalinity',
	whatMoves = 'this value moves'
): string | null {
	if (salinity === null || salinity === undefined) return null;
	const { low: least, high: most } = possibleSalinity;
	if (!isPossibleSalinity(salinity))
		throw new RangeError(`salinity must be between ${least} and ${most}; found ${salinity}`);
	const { low, high, maxChangePerDay } = limitsOf(analyte).salinity;
	if (salinity >= low && salinity <= high) return null;
	return `The salinity of ${salinity} is outside ${low} to ${high}. Put that right first, at most ${maxChangePerDay} a day: ${whatMoves} with it.`;
}

/** The salinity of a tank; null where none was said, or one that no tank has. */
export const salinityOf = ({ salinity }: Tank): number | null =>
	salinity !== undefined && isPossibleSalinity(salinity) ? salinity : null;
