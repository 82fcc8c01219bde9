import {
	amountOf,
	analyteUnits,
	plausibleRange,
	unitFor,
	unitOf,
	type Kit,
	type Unit
} from '../kits';
import { methodFiguresOf, type FiguresAt, type MethodFigures } from './method-figures';

/**
 * A kit that finds its value together with another, as the measurement equation needs it for what is left
 * once that other is taken off: magnesium, by a titration of calcium and magnesium together. Volumes and
 * drops are worth what they are worth in moles; shares of the titrant or the sample are shares of all that
 * is titrated, and so larger ones of what is left. That the value taken off is uncertain is no part of it:
 * the reading's own ± has it.
 *
 * @param takenOff the value that is taken off, in a unit of its own analyte, 0 or above
 * @param at.value value of what is left at which shares are taken, in its customary unit; a middling one
 * @returns figures in the customary unit of what is left
 * @throws RangeError when nothing is taken off by this kit, or `takenOff` is out of range
 */
export function differenceFiguresOf(
	kit: Kit,
	takenOff: { value: number; unit: Unit },
	at: FiguresAt = {}
): MethodFigures {
	if (!kit.byDifference)
		throw new RangeError(`byDifference must be said by the kit; found none in ${kit.id}`);
	if (!(takenOff.value >= 0 && Number.isFinite(takenOff.value)))
		throw new RangeError(`takenOff.value must be 0 or above; found ${takenOff.value}`);
	const { gives, less } = kit.byDifference;
	const { base } = analyteUnits[kit.analyte];
	const unit = unitFor(gives, undefined);
	const { low, high } = plausibleRange(unit, gives);
	const value = at.value ?? Math.sqrt(low * high);
	const amount = amountOf(value, unit, gives, base);
	const whole = amount + amountOf(takenOff.value, takenOff.unit, less, base);
	const { size } = unitOf(kit.unit, kit.analyte);
	const figures = methodFiguresOf(kit, { ...at, value: whole / size });
	const wholeOverValue = whole / amount;
	/** From the kit's unit to that of what is left. */
	const inUnit = size / unitOf(unit, gives).size;
	const less2 = 2 * (whole / size) * inUnit - 2 * value;
	return {
		...figures,
		analyte: gives,
		unit,
		valuePerMl: figures.valuePerMl * inUnit,
		// Used and left taken for each other: what is taken off is so twice.
		fullScale: figures.fullScale === null ? null : figures.fullScale * inUnit - less2,
		sampleWareSd: figures.sampleWareSd * wholeOverValue,
		titrantWareSd: figures.titrantWareSd * wholeOverValue,
		lotSd: figures.lotSd * wholeOverValue,
		sampleSettingSd: figures.sampleSettingSd * wholeOverValue,
		endPointSd: figures.endPointSd * inUnit,
		scatterSd: figures.scatterSd * inUnit,
		wholeOverValue
	};
}
