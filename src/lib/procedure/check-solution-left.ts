import { amountOf, analyteUnits, unitFor, unitOf, type Analyte, type Kit } from '../kits';
import { methodFiguresFor } from '../metrology';
import type { EvidenceOf } from '../observation';
import { named } from './check-done-by';

/**
 * A known solution that was tested with a kit of two values together, as it speaks of the one that is
 * left when the other is taken off. Only what it holds of both together needs to be known: the same
 * amount is taken off what was read and off what it holds, and the error of the kit is left, drop for
 * drop. That amount has the proportion of tank water, so that an error in proportion to all that was
 * titrated is the same multiple of what is left as it is in a test of the tank. What is taken off is the
 * same on both sides, and adds nothing to the ±.
 *
 * @param known the test in the unit of the kit
 * @param analyte what is left
 * @throws RangeError when the kit gives no such analyte by difference
 */
export function solutionLeft(
	known: EvidenceOf<'reference'>,
	kit: Kit,
	analyte: Analyte
): EvidenceOf<'reference'> {
	const { wholeOverValue = 1 } = methodFiguresFor(kit, analyte);
	const { id, label, value, unit, expandedUncertainty, repeatabilitySd } = known.reading;
	const left = unitFor(analyte, undefined);
	const { base } = analyteUnits[analyte];
	const inLeft = (each: number) =>
		amountOf(each, unit, kit.analyte, base) / unitOf(left, analyte).size;
	const takenOff = known.nominal * (1 - 1 / wholeOverValue);
	return {
		...known,
		reading: {
			id,
			label: named(`${label}, as ${analyteUnits[analyte].name}`),
			value: inLeft(value - takenOff),
			expandedUncertainty: inLeft(expandedUncertainty),
			...(repeatabilitySd === undefined ? {} : { repeatabilitySd: inLeft(repeatabilitySd) }),
			unit: left
		},
		nominal: inLeft(known.nominal - takenOff),
		nominalExpandedUncertainty: inLeft(known.nominalExpandedUncertainty)
	};
}
