import { unitName, unitOf, type Analyte } from '$lib/kits';
import { usualMethodFiguresOf, type MethodFigures } from '$lib/metrology';
import { plain } from '../charts/numbers';

const readBy: Record<MethodFigures['delivery'], string> = {
	syringe: 'a syringe kit',
	dropper: 'a dropper kit',
	burette: 'a burette'
};

/** As what a kit is taken of which nothing is known: 'a syringe kit, 1 mL for 16.0 dKH'. */
export function takenKitWords(analyte: Analyte): string {
	const { delivery, valuePerMl, unit } = usualMethodFiguresOf(analyte);
	const { decimals } = unitOf(unit, analyte);
	return `${readBy[delivery]}, 1 mL for ${plain(valuePerMl, decimals)}\u00a0${unitName(unit, analyte)}`;
}

/** The same in sentences, with what that means. */
export const unknownKitWords = (analyte: Analyte): string =>
	`No kit was told: it is taken to be ${takenKitWords(analyte)}. With another kind, as one that counts drops, other causes come first.`;
