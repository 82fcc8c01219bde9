import { normalAt, trueValueOf, type CheckOffer } from '../bench';
import {
	amountOf,
	analyteUnits,
	unitFor,
	unitOf,
	type Analyte,
	type Kit,
	type Unit
} from '../kits';
import {
	relatedQuantities,
	type Reading,
	type RelatedQuantity,
	type RelatedValue,
	type TakenFromReading
} from '../observation';
import type { RunState } from './run';

type RelatedOffer = Extract<CheckOffer, { check: RelatedQuantity }>;

export const isRelatedOffer = (offer: CheckOffer): offer is RelatedOffer =>
	(relatedQuantities as readonly string[]).includes(offer.check);

/** Salinity is written to a tenth. */
const SALINITY_DECIMALS = 1;

/** What a measurement of another value shows: the truth of this water with its own offset and scatter. */
function measured(run: RunState, offer: RelatedOffer, n: number): RelatedValue {
	const { water } = run.scenario.truth;
	const unit = offer.check === 'salinity' ? null : offer.unit;
	const content =
		offer.check === 'salinity'
			? water.salinity
			: trueValueOf(water, { analyte: offer.check, unit: offer.unit });
	const decimals =
		offer.check === 'salinity' ? SALINITY_DECIMALS : unitOf(offer.unit, offer.check).decimals;
	const shown = content + offer.offset + offer.sd * normalAt(run.seed, offer.check, n);
	return {
		id: `${offer.check}-${n}`,
		of: offer.check,
		label: offer.label,
		value: Number(shown.toFixed(decimals)),
		expandedUncertainty: offer.expandedUncertainty,
		unit,
		daysAgo: 0,
		isChecked: true,
		note: offer.note ?? null
	};
}

/** Other values of the tank that are known by now: those of the book, then those that were asked for. */
export function relatedValues(run: RunState): RelatedValue[] {
	const { record, checks } = run.scenario;
	const written = record.map(({ note, ...each }, i): RelatedValue => ({
		...each,
		id: `written-${i}`,
		unit: each.of === 'salinity' ? null : each.unit,
		isChecked: false,
		note: note ?? null
	}));
	const made = run.inquiry.context.checks.flatMap(({ check, isDone }, i) => {
		const offer = checks.filter(isRelatedOffer).find((each) => each.check === check);
		return offer && isDone ? [measured(run, offer, i)] : [];
	});
	return [...written, ...made];
}

/** What is left of a reading, in the customary unit of what the kit is bought for. */
export type ReadingDifference = {
	analyte: Analyte;
	unit: Unit;
	value: number;
	expandedUncertainty: number;
	less: TakenFromReading;
};

/**
 * The rest of a reading when another value is taken off it, mole for mole; null for a kit that finds
 * one thing alone, or where nothing was taken off. The two ± are added in squares.
 */
export function differenceOfReading(
	{ analyte, byDifference }: Kit,
	{ value, expandedUncertainty, unit }: Pick<Reading, 'value' | 'expandedUncertainty' | 'unit'>,
	less: TakenFromReading | undefined
): ReadingDifference | null {
	if (!byDifference || less?.of !== byDifference.less) return null;
	const { gives } = byDifference;
	const { base } = analyteUnits[gives];
	const toUnit = unitFor(gives, undefined);
	const { size, decimals } = unitOf(toUnit, gives);
	const whole = (each: number) => amountOf(each, unit, analyte, base) / size;
	const taken = (each: number) => amountOf(each, less.unit, less.of, base) / size;
	return {
		analyte: gives,
		unit: toUnit,
		value: Number((whole(value) - taken(less.value)).toFixed(decimals)),
		expandedUncertainty: Math.hypot(whole(expandedUncertainty), taken(less.expandedUncertainty)),
		less
	};
}
