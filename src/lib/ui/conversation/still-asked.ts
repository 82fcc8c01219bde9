import { limitsOf, salinityOf, salinityOff } from '$lib/judgement';
import type { CheckState } from '$lib/procedure';
import { listed } from './catalogue';

/** What the decision asks beyond the reading, in a sentence or two: enough of one is not all of it. */
export function stillAskedWords({
	isUnitDoubted,
	livestock,
	tank,
	analyte
}: Pick<CheckState, 'isUnitDoubted' | 'livestock' | 'tank' | 'analyte'>): string {
	const salinity = salinityOf(tank);
	const { low, high } = limitsOf(analyte).salinity;
	const asked = listed([
		...(isUnitDoubted ? ['which unit it was in'] : []),
		...(livestock === null ? ['how the animals look'] : []),
		...(salinity === null ? ['the salinity, before anything goes into the tank'] : [])
	]);
	const first = asked === '' ? '' : `What to do also asks: ${asked}.`;
	const off = salinityOff(salinity, analyte)
		? `The salinity lies outside ${low} to ${high}: that comes before anything is added.`
		: '';
	return [first, off].filter(Boolean).join(' ');
}
