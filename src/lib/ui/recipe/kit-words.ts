import type { ExpectedReading, MadeAnalyte } from '$lib/judgement';
import { convertValue, type Kit, type Unit } from '$lib/kits';
import { abouts } from './about';
import { kitAtEnd } from './kit-at-end';
import { valueText } from './numbers';

/** What a kit should read, in its own unit: '7.83 ± 0.14 dKH'. */
export function expectedText(
	{ value, expandedUncertainty }: Pick<ExpectedReading, 'value' | 'expandedUncertainty'>,
	unit: Unit,
	kit: Kit | null,
	analyte: MadeAnalyte = 'alkalinity'
): string {
	const own = kit?.unit ?? unit;
	const inOwn = (each: number) => convertValue(each, unit, own, analyte);
	return valueText(inOwn(value), inOwn(expandedUncertainty), own, analyte);
}

/** Of which kits it is true. */
export function holdsForWords(kit: Kit | null, analyte: MadeAnalyte = 'alkalinity'): string {
	const { holdsFor } = abouts[analyte];
	if (holdsFor !== null) return holdsFor;
	if (!kit)
		return 'That is for a sample of 5 mL and an indicator that turns from blue-green to rose. Say above which kit it is, and it is worked out for that one.';
	return kitAtEnd(kit).isAllKnown
		? 'Worked out for its sample, its titrant, its indicator and the colour at which it ends.'
		: 'Worked out for its sample and its titrant. What is in its indicator no leaflet says: one that turns from blue-green to rose is taken, and what that leaves open is in the ±.';
}
