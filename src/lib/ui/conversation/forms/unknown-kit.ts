import { convertValue, type Analyte, type Unit } from '$lib/kits';

/**
 * The ± that a hand titration is taken to have where nothing is known of its kit: a share of the
 * value, and never less than what a drop or a division of such kits makes. Our own choice;
 * magnesium bears two titrations, or one and calcium that nobody measured.
 */
const unknownKits: Record<Analyte, { share: number; least: number; unit: Unit }> = {
	alkalinity: { share: 0.08, least: 0.3, unit: 'dKH' },
	calcium: { share: 0.06, least: 10, unit: 'mg/L' },
	magnesium: { share: 0.08, least: 60, unit: 'mg/L' },
	hardness: { share: 0.06, least: 1.5, unit: 'mmol/L' }
};

/** The ± of a value by a kit that nobody knows, in the unit of the value. */
export function unknownKitUncertainty(value: number, unit: Unit, analyte: Analyte): number {
	const { share, least, unit: own } = unknownKits[analyte];
	return Math.max(value * share, convertValue(least, own, unit, analyte));
}
