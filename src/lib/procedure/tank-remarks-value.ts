import {
	beyondAnyTank,
	convertValue,
	unitName,
	unitsLikely,
	unitsOf,
	valueFromMark,
	type EndMark,
	type Kit
} from '../kits';
import { sampleVolumeOf } from './counted-mark';
import { dropCheckOf } from './drop-check';
import { endTravelOf } from './end-travel';
import { lastOf } from './event-queries';
import { usedMlFor } from './expected-use';
import { refilledMlIn, startFillingOf } from './refills';
import type { Remark, RemarkOffer, Remarker, TankSight } from './tank-remark';
import { otherVolumes } from './tank-sight';
import { valueOfTitration, type ValuedTitration } from './titration-value';

/** Titrant below which a value is next to nothing, in drops. */
const NEXT_TO_NOTHING_DROPS = 3;

/** Next to nothing, or below 0. */
function lowRemarks(
	sight: TankSight,
	{ value, usedMl, sampleVolumeMl }: ValuedTitration
): Remark[] {
	const { kit, circumstances } = sight;
	const few = NEXT_TO_NOTHING_DROPS * kit.delivery.dropMl;
	if (value >= 0 && usedMl > few + 1e-9) return [];
	const id = value < 0 ? 'read.below0' : 'read.nearly0';
	if (circumstances.water === 'topOff')
		return [{ id, tone: 'say', text: 'Next to nothing, as top-off water should be.' }];
	const { largerMl } = otherVolumes(kit, sampleVolumeMl);
	const more = largerMl === null ? '' : ` ${largerMl} mL of water would tell more.`;
	return [
		{
			id,
			tone: 'warn',
			text: `Next to nothing was used. Was it top-off water, or an end taken too soon?${more}`,
			offers: largerMl === null ? ['freshSample'] : ['freshSample', 'useLargerSample']
		}
	];
}

/** More than the leaflet's table reaches: carried on where it is straight, else without a value. */
function highRemarks(sight: TankSight): Remark[] {
	const beyond = beyondTable(sight);
	if (!beyond) return [];
	const { smallerMl } = otherVolumes(sight.kit, sampleVolumeOf(sight.kit, sight.events));
	const offer: RemarkOffer = smallerMl === null ? 'dilute' : 'useSmallerSample';
	const instead =
		smallerMl === null
			? 'Half sample, half purified water of which a blank was measured: value and ± then double.'
			: `${smallerMl} mL of water would stay within it.`;
	return [
		{
			id: 'read.beyond',
			tone: beyond === 'noValue' ? 'warn' : 'say',
			text: `Beyond the leaflet’s table${beyond === 'carriedOn' ? ', carried on as straight as it was' : ''}. ${instead}`,
			offers: [offer]
		}
	];
}

/** Does the titrant used lie past the far end of the leaflet's table? */
function beyondTable({ kit, events }: TankSight): 'carriedOn' | 'noValue' | null {
	if (kit.conversion.kind !== 'rows') return null;
	const drops = lastOf(events, 'marks.read')?.event.marks.drops;
	const usedMl =
		kit.delivery.by === 'dropper'
			? (drops ?? Number.NaN) * kit.delivery.dropMl
			: endTravelOf(kit, events)?.usedMl;
	if (usedMl === undefined || !(usedMl > 0)) return null;
	const largest = Math.max(...kit.conversion.rows.map(({ value }) => value));
	const lastMl = usedMlFor(kit, largest, kit.sample.volumes[0]?.volumeMl ?? 1);
	if (lastMl === null || usedMl <= lastMl + 1e-6) return null;
	try {
		valueFromMark(kit, endFor(kit, events, usedMl));
		return 'carriedOn';
	} catch {
		return 'noValue';
	}
}

/** An end mark that stands for so much titrant, as this titration was read. */
function endFor(kit: Kit, events: TankSight['events'], usedMl: number): EndMark {
	if (kit.delivery.by === 'dropper') return { drops: usedMl / kit.delivery.dropMl };
	const { sealMl, lineMl, levelMl } = lastOf(events, 'marks.read')?.event.marks ?? {};
	const start = startFillingOf(events)?.event;
	const isLine = sealMl === undefined && lineMl !== undefined;
	return {
		markMl: sealMl ?? lineMl ?? levelMl,
		startMarkMl: isLine ? start?.lineMl : (start?.sealMl ?? start?.levelMl),
		refilledMl: refilledMlIn(kit, events) ?? 0
	};
}

/** Within so much of a ratio a value is taken to be off by it: what one test can tell. */
const RATIO_SHARE = 0.06;
const isNear = (value: number, other: number) => Math.abs(value / other - 1) <= RATIO_SHARE;

/** Where no drops were counted, the last value tells whether the scale was read from its other end. */
function otherEnd(sight: TankSight, valued: ValuedTitration, expected: number): Remark[] {
	const { kit, events } = sight;
	const travel = endTravelOf(kit, events);
	if (!travel || valued.refills > 0 || dropCheckOf(kit, events, valued)) return [];
	const otherValue = valued.value + (travel.otherEndMl - valued.usedMl) * valued.valuePerMl;
	const isClear = Math.abs(valued.value - expected) > 4 * Math.abs(otherValue - expected);
	if (!isClear || isNear(valued.value, expected) || !isNear(otherValue, expected)) return [];
	return [
		{
			id: 'read.otherEnd',
			tone: 'warn',
			text: 'Read from the other end of the scale it would be near the last test. Which end is 0?',
			offers: ['readOtherEnd']
		}
	];
}

/** Fillings that somebody may forget in one test; more would be seen. */
const MOST_FORGOTTEN = 3;

/** Short of the last value by one whole filling, or some: filled again on the way, and not noted. */
function refillForgotten(sight: TankSight, valued: ValuedTitration, expected: number): Remark[] {
	const { kit, events } = sight;
	if (kit.delivery.by === 'dropper' || isNear(valued.value, expected)) return [];
	if (dropCheckOf(kit, events, valued)) return [];
	const filling = kit.delivery.capacityMl * valued.valuePerMl;
	const short = expected - valued.value;
	const fillings = Math.round(short / filling);
	if (fillings < 1 || fillings > MOST_FORGOTTEN) return [];
	const isClear = Math.abs(short) > 4 * Math.abs(short - fillings * filling);
	if (!isClear || !isNear(valued.value + fillings * filling, expected)) return [];
	const many = fillings === 1 ? 'one whole filling' : `${fillings} whole fillings`;
	return [
		{
			id: 'read.refillForgotten',
			tone: 'warn',
			text: `Short of the last test by ${many}. Was it filled again and not noted? Go back and note it.`,
			costValue: fillings * filling,
			unit: kit.unit,
			analyte: kit.analyte
		}
	];
}

/** Off by the ratio of the leaflet's samples: perhaps the other one is in the vial. */
function otherSample({ kit }: TankSight, valued: ValuedTitration, expected: number): Remark[] {
	const { value, sampleVolumeMl } = valued;
	const other = kit.sample.volumes.find(
		({ volumeMl }) =>
			!isNear(volumeMl, sampleVolumeMl) && isNear(value, (expected * volumeMl) / sampleVolumeMl)
	);
	return other && !isNear(value, expected)
		? [
				{
					id: 'read.otherSample',
					tone: 'say',
					text: `Beside the last test it looks as if ${other.volumeMl} mL were in the vial, not ${sampleVolumeMl}. Which?`
				}
			]
		: [];
}

/** A value that another unit would bring near the last one, or to what tanks have. */
function otherUnit(kit: Kit, value: number, expected: number | null): Remark[] {
	const near =
		expected === null
			? undefined
			: { low: expected * (1 - RATIO_SHARE), high: expected * (1 + RATIO_SHARE) };
	// A small step is the tank's; a unit makes a large one.
	const isLarge = (other: number) => Math.abs(Math.log(other / value)) > Math.log(1.5);
	const likely = unitsLikely(value, kit.unit, kit.analyte, near).find(
		(each) => isLarge(each.value) && (expected !== null || each.unit !== null)
	);
	const fromThis = (expected === null ? [] : unitsOf(kit.analyte)).find((unit) => {
		const other = convertValue(value, kit.unit, unit, kit.analyte);
		return expected !== null && isLarge(other) && isNear(other, expected);
	});
	if (!likely && !fromThis) return [];
	return [
		{
			id: 'read.otherUnit',
			tone: 'say',
			text: `A factor between units lies between this and what was to be expected${likely ? ` (${likely.name})` : ''}. Does the leaflet give ${unitName(kit.unit, kit.analyte)}?`
		}
	];
}

/** A value that no tank of seawater is likely to hold. */
function noTank({ kit }: TankSight, { value, refills }: ValuedTitration): Remark[] {
	const side = beyondAnyTank(value, kit.unit, kit.analyte);
	if (!side) return [];
	const isRefilled = kit.delivery.by !== 'dropper' && kit.delivery.refilled === true;
	const asks =
		side === 'below' && isRefilled && refills === 0
			? 'Was it filled again on the way? Then go back and note it. If not, read the mark again.'
			: 'Read the mark again before you take it.';
	return [
		{
			id: 'read.noTank',
			tone: 'warn',
			text: `No tank of seawater is likely to hold so ${side === 'below' ? 'little' : 'much'}. ${asks}`,
			offers: ['countAgain']
		}
	];
}

/** What the value shows beside the leaflet's reach, the last test and other units. */
export const valueRemarks: Remarker = (sight) => {
	const { kit, events, titration, circumstances, expected } = sight;
	if (!lastOf(events, 'marks.read')) return [];
	const valued = valueOfTitration(titration, kit);
	if (valued.value === null) return highRemarks(sight);
	const found = [...highRemarks(sight), ...lowRemarks(sight, valued)];
	const isTank = circumstances.water === undefined || circumstances.water === 'tank';
	if (!isTank || valued.value <= 0 || found.some(({ tone }) => tone === 'warn')) return found;
	// Where the drops speak against the mark, that comes first, and no unit need explain it.
	if (dropCheckOf(kit, events, valued)?.agrees === false) return found;
	const beside =
		expected !== null && expected > 0
			? [
					...refillForgotten(sight, valued, expected),
					...otherEnd(sight, valued, expected),
					...otherSample(sight, valued, expected),
					...otherUnit(kit, valued.value, expected)
				]
			: otherUnit(kit, valued.value, null);
	const likeliest = beside.slice(0, 1);
	// Where the last value tells what happened, that is enough.
	const beyond = likeliest.some(({ tone }) => tone === 'warn') ? [] : noTank(sight, valued);
	return [...found, ...beyond, ...likeliest];
};
