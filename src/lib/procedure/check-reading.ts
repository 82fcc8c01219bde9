import { convertValue, valueFromMark, type Analyte, type Kit, type Unit } from '../kits';
import { readingBudget } from '../metrology';
import type { Reading } from '../observation';

/** A number that somebody read, with the ± that it is given, and where that comes from. */
export type NumberAsReading = {
	reading: Reading;
	/** Assumed: nothing is known of how the number came about. */
	isAssumed: boolean;
	/** For the screen, one sentence. */
	because: string;
};

/** ± of a number of which not even the kit is known: so much, and such a share of it, added in squares. */
type AssumedSpread = { atZero: number; unit: Unit; share: number };

/**
 * Judgement. Alkalinity: as wide as the widest of the invented kits, the dropper, which comes to
 * ± 0.6 dKH at 0 and ± 1.0 dKH at 8 dKH with ordinary hands. The others: two drops of an ordinary kit
 * and 5 % of the value; magnesium bears two titrations.
 */
const assumedSpreads: Record<Analyte, AssumedSpread> = {
	alkalinity: { atZero: 0.61, unit: 'dKH', share: 0.1 },
	calcium: { atZero: 20, unit: 'mg/L', share: 0.05 },
	hardness: { atZero: 2.5, unit: 'mmol/L', share: 0.05 },
	magnesium: { atZero: 60, unit: 'mg/L', share: 0.07 }
};

/** A middling mark: the value of 1 mL hardly depends on where it is. */
function valuePerMlOf(kit: Kit): number {
	const { delivery } = kit;
	const middle = delivery.by === 'dropper' ? { drops: 10 } : { markMl: delivery.capacityMl / 2 };
	return valueFromMark(kit, middle).valuePerMl;
}

/**
 * A bare number as a reading: with the ± that the kit can claim for a test with its usual sample, or
 * with an assumed one where no kit is known.
 *
 * @param value in `unit`, at least 0
 * @param about.id tells it from other readings of the same check
 * @throws RangeError when the value is no number or below 0
 */
export function readingOfNumber(
	value: number,
	unit: Unit,
	kit: Kit | null,
	about: { id: string; label?: string; analyte?: Analyte } = { id: 'number' }
): NumberAsReading {
	if (!(value >= 0 && Number.isFinite(value)))
		throw new RangeError(`value must be a number of 0 or above; found ${value}`);
	const named = { id: about.id, label: about.label ?? 'Your number', value, unit };
	if (kit) {
		const inUnit = (each: number) => convertValue(each, kit.unit, unit, kit.analyte);
		const { expandedUncertainty, repeatabilitySd } = readingBudget(kit, {
			value: convertValue(value, unit, kit.unit, kit.analyte),
			valuePerMl: valuePerMlOf(kit)
		});
		return {
			reading: {
				...named,
				expandedUncertainty: inUnit(expandedUncertainty),
				repeatabilitySd: inUnit(repeatabilitySd)
			},
			isAssumed: false,
			because: `The ± is what ${kit.name} can claim for one test with its usual sample.`
		};
	}
	const analyte = about.analyte ?? 'alkalinity';
	const { atZero, unit: ofZero, share } = assumedSpreads[analyte];
	const spread = Math.hypot(convertValue(atZero, ofZero, unit, analyte), share * value);
	return {
		reading: { ...named, expandedUncertainty: spread },
		isAssumed: true,
		because: 'The ± is assumed, since nothing is known of the kit: choose a kit for a better one.'
	};
}
