import type { Assumed, Kit } from '../kits';
import { usedMlIn, type BudgetReading } from './budget-input';
import { combineRepeats, WORTH_GAIN } from './combine-repeats';
import type { OwnRepeatability } from './own-scatter';
import { readingBudget } from './reading-budget';
import { DROP_SPREAD, ALIGNED_TO_DIVISIONS } from './scatter-inputs';

export type ShrinkBy =
	| 'largerSample'
	| 'halfDrops'
	| 'repeat'
	| 'twoRepeats'
	| 'weighedSample'
	| 'weighedDelivery'
	| 'weighedDrops'
	| 'finerReading';

/** Something that would make the ± smaller, and what it would then be. */
export type Shrink = {
	by: ShrinkBy;
	/** About 95 %, in the kit's unit. */
	expandedUncertainty: number;
	/** By how much smaller, as a share of the ± now. */
	gain: number;
	/** For a larger sample: which of the kit's. */
	volumeId?: string;
	volumeMl?: number;
};

/**
 * A pocket scale that shows 0.01 g, tare and reading: standard uncertainty, g. An estimate: linear to
 * 0.02 g and repeating to 0.01 g, besides the last digit.
 */
const WEIGHING_SD_G = 0.022;
/** Portions weighed together: samples, deliveries of the usual travel, drops. */
const SAMPLES = 5;
const DELIVERIES = 10;
const DROPS = 50;
/** A mark estimated to a fifth of a division. */
const FINER = 0.2;

/** `Assumed` holds half-widths of even distributions. */
const halfWidth = (sd: number) => Math.min(0.5, sd * Math.sqrt(3));
const withAssumed = (kit: Kit, assumed: Assumed): Kit => ({
	...kit,
	assumed: { ...kit.assumed, ...assumed }
});

function largerSamples(kit: Kit, reading: BudgetReading): { reading: BudgetReading; id: string }[] {
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
	const nowMl = reading.sampleVolumeMl ?? nominalMl;
	const { delivery } = kit;
	return kit.sample.volumes
		.filter(({ volumeMl }) => volumeMl > nowMl)
		.map(({ id, volumeMl }) => {
			const usedMl = (usedMlIn(reading) * volumeMl) / nowMl;
			const fillings =
				delivery.by === 'dropper' ? 1 : Math.max(1, Math.ceil(usedMl / delivery.capacityMl - 1e-9));
			return {
				id,
				reading: {
					...reading,
					sampleVolumeMl: volumeMl,
					valuePerMl: (reading.valuePerMl * nowMl) / volumeMl,
					usedMl,
					refills: Math.max(reading.refills ?? 0, fillings - 1)
				}
			};
		});
}

/** The kit once its ware was weighed and the mean of that is used. */
function weighed(kit: Kit, reading: BudgetReading): { by: ShrinkBy; kit: Kit }[] {
	const { delivery, sample } = kit;
	const sampleMl = reading.sampleVolumeMl ?? sample.volumes[0]?.volumeMl ?? Number.NaN;
	const usedMl = Math.max(usedMlIn(reading), delivery.dropMl);
	const sampleHalfWidth = halfWidth(WEIGHING_SD_G / (SAMPLES * sampleMl));
	const ways: { by: ShrinkBy; kit: Kit }[] = [
		{ by: 'weighedSample', kit: withAssumed(kit, { sampleHalfWidth }) }
	];
	if (delivery.by === 'dropper') {
		const dropSd = Math.hypot(
			WEIGHING_SD_G / (DROPS * delivery.dropMl),
			DROP_SPREAD / Math.sqrt(DROPS)
		);
		ways.push({ by: 'weighedDrops', kit: withAssumed(kit, { dropSd }) });
	} else {
		const settingMl =
			(Math.SQRT2 * ALIGNED_TO_DIVISIONS * delivery.graduationMl) / Math.sqrt(DELIVERIES);
		const sd = Math.hypot(WEIGHING_SD_G / DELIVERIES, settingMl) / usedMl;
		ways.push({
			by: 'weighedDelivery',
			kit: withAssumed(kit, { deliveryHalfWidth: halfWidth(sd) })
		});
	}
	return ways;
}

/**
 * What would shrink the ± of a reading, and to what: the budget is worked out again with each change.
 * Smallest first; what gains less than a twentieth is left out. Half-drops are no way for a dropper.
 * Weighing helps once what was found is used: a sample drawn to its weight, a scale or drop corrected.
 *
 * @param readings one reading, or those of one water that were combined
 * @param own a person's own scatter, as in `combineRepeats`; it belongs to the sample volume now used
 * @throws RangeError as `combineRepeats`
 */
export function shrinksOf(
	kit: Kit,
	readings: BudgetReading | readonly BudgetReading[],
	own?: OwnRepeatability | null
): Shrink[] {
	const all = 'valuePerMl' in readings ? [readings] : readings;
	const now = combineRepeats(kit, all, own);
	const found: Shrink[] = [];
	const consider = (by: ShrinkBy, expandedUncertainty: number, more: Partial<Shrink> = {}) => {
		const gain = 1 - expandedUncertainty / now.expandedUncertainty;
		if (gain >= WORTH_GAIN) found.push({ by, expandedUncertainty, gain, ...more });
	};
	const combined = (
		otherKit: Kit,
		change: (reading: BudgetReading) => BudgetReading,
		otherOwn = own
	) => combineRepeats(otherKit, all.map(change), otherOwn).expandedUncertainty;
	const same = (reading: BudgetReading) => reading;

	const [first] = all;
	if (!first) return found;
	for (const larger of largerSamples(kit, first)) {
		// Scatter in the kit's unit is that of drops and marks, which shrink as the sample grows.
		const share = larger.reading.valuePerMl / first.valuePerMl;
		const volumeMl = larger.reading.sampleVolumeMl;
		const largerOwn = own ? { ...own, sd: own.sd * share } : own;
		consider(
			'largerSample',
			readingBudget(kit, { ...larger.reading, value: now.value }, largerOwn).expandedUncertainty,
			{ volumeId: larger.id, volumeMl }
		);
	}
	if (kit.delivery.by !== 'dropper' && all.some((reading) => (reading.endStepDrops ?? 1) > 0.5))
		consider(
			'halfDrops',
			combined(kit, (reading) => ({ ...reading, endStepDrops: 0.5 }))
		);
	consider('repeat', now.next.expandedUncertainty);
	consider('twoRepeats', afterTwo(kit, all, own));
	for (const way of weighed(kit, first)) consider(way.by, combined(way.kit, same));
	if (
		kit.delivery.by !== 'dropper' &&
		all.some((reading) => (reading.readToDivisions ?? 0.5) > FINER)
	)
		consider(
			'finerReading',
			combined(kit, (reading) => ({ ...reading, readToDivisions: FINER }))
		);
	return found.sort((a, b) => a.expandedUncertainty - b.expandedUncertainty);
}

/** One more, and then what one more after that would make of it. */
function afterTwo(
	kit: Kit,
	readings: readonly BudgetReading[],
	own: OwnRepeatability | null | undefined
): number {
	const { value } = combineRepeats(kit, readings, own);
	const [first] = readings;
	return first
		? combineRepeats(kit, [...readings, { ...first, value }], own).next.expandedUncertainty
		: Number.NaN;
}
