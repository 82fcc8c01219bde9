import { SEAL_RIM_ML } from '../bench';
import type { Kit } from '../kits';
import { combineUncertainty } from '../metrology';
import { additionsIn, eventsOf, lastOf } from './event-queries';
import { USUAL_TIP_ML, type Unvalued, type ValuedTitration } from './titration-value';
import type { TimedEvent } from './walk-log';

/** Why drops and travel may disagree. */
export type DropCause =
	| 'otherEnd'
	| 'refillNotNoted'
	| 'tipFittedLate'
	| 'mixedMarks'
	| 'wrongNumeral'
	| 'wrongRim'
	| 'miscounted'
	| 'dropSize';

export type DropCheck = {
	dropsMl: number;
	travelMl: number;
	/** Travel less drops, mL. */
	differenceMl: number;
	/** Of the difference, mL, about 95 %. */
	expandedUncertaintyMl: number;
	agrees: boolean;
	/** Likely causes, the likeliest first; none when they agree. */
	causes: DropCause[];
};

/** Half-width of an even distribution as a standard uncertainty (JCGM 100:2008, 4.3.7). */
const even = (halfWidth: number) => halfWidth / Math.sqrt(3);

/**
 * Drops from the tip of a syringe or burette against what the leaflet gives for one: standard
 * uncertainty as a share (common practice, no source); tips differ more than a dropper's nozzle.
 */
const DROP_SHARE = 0.1;
/** Drops that somebody may miss or count twice, either way (common practice, no source). */
const MISCOUNT_DROPS = 2;
/** Half-width of a barrel's scale, as a share, for want of the kit's own (common practice, no source). */
const SCALE_SHARE = 0.015;
/** About 95 % for what is nearly normal (JCGM 100:2008, 6.2). */
const COVERAGE = 2;

/** Combined standard uncertainty of the difference, mL. */
function uncertaintyMl({ delivery, assumed }: Kit, drops: number, usedMl: number): number {
	const graduationMl = delivery.by === 'dropper' ? 0 : delivery.graduationMl;
	const { standardUncertainty } = combineUncertainty([
		{
			name: 'size of a drop',
			standardUncertainty: assumed?.dropSd ?? DROP_SHARE,
			sensitivity: drops * delivery.dropMl
		},
		{
			name: 'counting',
			standardUncertainty: even(MISCOUNT_DROPS),
			sensitivity: delivery.dropMl
		},
		{
			name: 'reading twice',
			standardUncertainty: even(graduationMl / 2),
			sensitivity: Math.SQRT2
		},
		{
			name: 'scale',
			standardUncertainty: even(assumed?.deliveryHalfWidth ?? SCALE_SHARE),
			sensitivity: Math.abs(usedMl)
		}
	]);
	return standardUncertainty;
}

/** By how much each cause would set travel off from the drops, mL; both ways where it has two. */
function shiftsOf({ delivery }: Kit): [DropCause, number[]][] {
	if (delivery.by === 'dropper') return [];
	const both = (ml: number) => [ml, -ml];
	const numeral: [DropCause, number[]] = ['wrongNumeral', both(delivery.numeralEveryMl)];
	if (delivery.by === 'burette') return [numeral];
	const tipMl = delivery.tipVolumeMl ?? USUAL_TIP_ML;
	return [
		['tipFittedLate', [tipMl]],
		['mixedMarks', both(tipMl)],
		numeral,
		['wrongRim', both(SEAL_RIM_ML)]
	];
}

/**
 * Drops counted, times the volume of one, held against the travel of the mark. Both numbers are
 * kept; when they differ by more than their uncertainty allows, likely causes come in order.
 *
 * @param counted.drops whole drops that fell
 * @param counted.usedMl by the marks, refills included
 * @param counted.otherEndMl what would have been used, had the scale been read from its other end;
 *   what the capacity leaves over when not given
 * @throws RangeError naming the field when a number is not finite, or the count below 0
 */
export function dropsAgainstTravel(
	kit: Kit,
	counted: { drops: number; usedMl: number; otherEndMl?: number | null }
): DropCheck {
	const { drops, usedMl } = counted;
	if (!(drops >= 0 && Number.isFinite(drops)))
		throw new RangeError(`drops must be a count of 0 or more; found ${drops}`);
	if (!Number.isFinite(usedMl)) throw new RangeError(`usedMl must be a number; found ${usedMl}`);
	const { delivery } = kit;
	const dropsMl = drops * delivery.dropMl;
	const differenceMl = usedMl - dropsMl;
	const expandedUncertaintyMl = COVERAGE * uncertaintyMl(kit, drops, usedMl);
	const agrees = Math.abs(differenceMl) <= expandedUncertaintyMl;
	const otherEndMl =
		counted.otherEndMl === undefined && delivery.by !== 'dropper'
			? delivery.capacityMl - usedMl
			: (counted.otherEndMl ?? null);
	const leftOver = (shiftMl: number) => Math.abs(differenceMl - shiftMl);
	const found = shiftsOf(kit).map(([cause, ml]) => ({
		cause,
		leftOverMl: Math.min(...ml.map(leftOver))
	}));
	if (otherEndMl !== null)
		found.unshift({ cause: 'otherEnd', leftOverMl: Math.abs(otherEndMl - dropsMl) });
	// More than one filling holds, by the drops and not by the travel: then it was filled again.
	if (delivery.by !== 'dropper' && usedMl <= delivery.capacityMl && dropsMl > delivery.capacityMl)
		found.push({ cause: 'refillNotNoted', leftOverMl: 0 });
	const likely = found
		.filter(({ leftOverMl }) => leftOverMl <= expandedUncertaintyMl)
		.sort((a, b) => a.leftOverMl - b.leftOverMl)
		.map(({ cause }) => cause);
	return {
		dropsMl,
		travelMl: usedMl,
		differenceMl,
		expandedUncertaintyMl,
		agrees,
		// A count that is off, and drops of another size, explain anything, and nothing well.
		causes: agrees ? [] : [...likely, 'miscounted', 'dropSize']
	};
}

/** A cause in words, to be looked for. */
export const dropCauseWords: Record<DropCause, string> = {
	otherEnd: 'the scale was read from its other end',
	refillNotNoted: 'it was filled again on the way, and that was not noted',
	tipFittedLate: 'the tip went on after filling, or air left through it',
	mixedMarks: 'one mark was the seal, the other the line',
	wrongNumeral: 'the short lines were counted from the wrong numeral',
	wrongRim: 'the other rim of the seal was read',
	miscounted: 'drops were missed or counted twice',
	dropSize: 'the drops are of another size than the leaflet has'
};

/** Drops that were counted, typed with the mark or noted as they fell; null when some were not. */
export function dropsCountedIn(events: readonly TimedEvent[]): number | null {
	const typed = lastOf(events, 'marks.read')?.event.marks.drops;
	return typed ?? talliedDropsIn(events);
}

/** Drops noted while titrating; null when none were, or one without its number. */
export function talliedDropsIn(events: readonly TimedEvent[]): number | null {
	const fell = eventsOf(additionsIn(events), 'titrant.fell').map(({ event }) => event.drops);
	if (fell.length === 0) return null;
	return fell.reduce<number | null>(
		(sum, drops) => (sum === null || drops === undefined ? null : sum + drops),
		0
	);
}

/** A numeral as it would be, had the scale been read from its other end. */
export function fromOtherEnd(kit: Kit, numeralMl: number): number {
	const { delivery } = kit;
	return delivery.by === 'dropper' ? numeralMl : delivery.capacityMl - numeralMl;
}

/**
 * The check for what has been noted of a titration; null where no drops were counted, or the value
 * rests on nothing else.
 *
 * @param valued what its marks come to
 */
export function dropCheckOf(
	kit: Kit,
	events: readonly TimedEvent[],
	valued: ValuedTitration | Unvalued
): DropCheck | null {
	const drops = dropsCountedIn(events);
	if (drops === null || drops === 0 || valued.value === null) return null;
	if (kit.delivery.by === 'dropper' || valued.by === 'drops') return null;
	return dropsAgainstTravel(kit, {
		drops,
		usedMl: valued.usedMl,
		otherEndMl: otherEndMlOf(kit, valued)
	});
}

/** What the same end mark would come to, read from the other end of the scale; null below nothing. */
export function otherEndMlOf(kit: Kit, { usedMl, endMl }: ValuedTitration): number | null {
	const { delivery } = kit;
	if (delivery.by === 'dropper' || endMl === undefined) return null;
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const otherMl = usedMl + (isDown ? 1 : -1) * (endMl - fromOtherEnd(kit, endMl));
	return otherMl >= 0 ? otherMl : null;
}
