import { leafletEndOf, unitsLikely, valueFromMark, type Kit } from '../kits';
import { sampleVolumeOf } from './counted-mark';
import {
	dropCauseWords,
	dropCheckOf,
	fromOtherEnd,
	otherEndMlOf,
	talliedDropsIn
} from './drop-check';
import { lastOf, type Of } from './event-queries';
import { startFillingOf } from './refills';
import type { Remark, RemarkOffer, Remarker, TankSight } from './tank-remark';
import { costOf, otherVolumes } from './tank-sight';
import { valueOfTitration, type ValuedTitration } from './titration-value';

type Read = Of<'marks.read'>;
const ml = (volumeMl: number) => volumeMl.toFixed(2);

/** Numerals between which a mark can stand on this glass. */
function scaleEnds({ delivery }: Kit): [number, number] | null {
	if (delivery.by === 'dropper') return null;
	if (delivery.by === 'burette') return [0, delivery.capacityMl];
	const beyond = delivery.barrelEndMl - delivery.capacityMl;
	return delivery.scale === 'down' ? [0, delivery.barrelEndMl] : [-beyond, delivery.capacityMl];
}

/** A numeral that this scale does not have, or one on the wrong side of the start. */
const scaleRemarks: Remarker = ({ kit, titration, events }) => {
	const read = lastOf(events, 'marks.read');
	const ends = scaleEnds(kit);
	if (!read || !ends) return [];
	const numerals = marksOf(read);
	const off = numerals.find((each) => each < ends[0] - 1e-9 || each > ends[1] + 1e-9);
	if (off !== undefined)
		return [
			{
				id: 'read.offScale',
				tone: 'warn',
				text: `${ml(off)} is not on this scale: it runs from ${ml(ends[0])} to ${ml(ends[1])}.`,
				offers: ['countAgain']
			}
		];
	const valued = valueOfTitration(titration, kit);
	const numeral = numerals[0];
	if (valued.value === null || numeral === undefined || valued.usedMl >= -1e-9) return [];
	const otherMl = otherEndMlOf(kit, valued);
	return [
		{
			id: 'read.wrongSide',
			tone: 'warn',
			text:
				otherMl === null
					? 'By this mark less than nothing was used. Look where it stands once more.'
					: `By this mark less than nothing was used. Read from the other end it is ${ml(fromOtherEnd(kit, valued.endMl ?? numeral))}.`,
			offers: [otherMl === null ? 'countAgain' : 'readOtherEnd']
		}
	];
};

function marksOf({ event }: Read): number[] {
	const { sealMl, lineMl, levelMl } = event.marks;
	return [sealMl, lineMl, levelMl].filter((each) => each !== undefined);
}

/** Seal at one end, line at the other: the value then leans on the volume of the tip. */
const mixedRemarks: Remarker = (sight) => {
	const { kit, events, titration } = sight;
	const valued = valueOfTitration(titration, kit);
	if (valued.value === null || valued.from !== 'throughTip') return [];
	const start = startFillingOf(events)?.event;
	const noted = start?.lineMl !== undefined ? 'line' : 'seal';
	const other = valued.by === 'line' ? 'line' : 'seal';
	return [
		{
			id: 'read.mixed',
			tone: 'warn',
			text:
				noted === other
					? 'The start was not noted: the volume of the tip is put between, and widens the ±.'
					: `The start has the ${noted}, the end the ${other}: the tip’s volume is put between. Read the ${noted} too.`,
			...costOf(sight, Math.abs((valued.startMl ?? 0) - (start?.[`${noted}Ml`] ?? 0))),
			offers: noted === 'line' && other !== 'line' ? ['readLineToo'] : ['countAgain']
		}
	];
};

/** Drops counted against the travel; both numbers are kept. */
const dropRemarks: Remarker = (sight) => {
	const { kit, titration, events } = sight;
	const read = lastOf(events, 'marks.read');
	if (!read) return [];
	const tallied = talliedDropsIn(events);
	const typed = read.event.marks.drops;
	const remarks: Remark[] = [];
	if (tallied !== null && typed !== undefined && tallied !== typed)
		remarks.push({
			id: 'read.tally',
			tone: 'say',
			text: `${tallied} drops were noted as they fell, ${typed} are written down. Which is it?`,
			offers: ['countAgain']
		});
	const check = dropCheckOf(kit, events, valueOfTitration(titration, kit));
	if (!check || check.agrees) return remarks;
	const drops = typed ?? tallied ?? 0;
	const isOtherEnd = check.causes[0] === 'otherEnd';
	const [first = 'miscounted', second] = check.causes;
	const maybe = isOtherEnd
		? 'Read from the other end?'
		: `Perhaps ${dropCauseWords[first]}${second ? `, or ${dropCauseWords[second]}` : ''}.`;
	remarks.unshift({
		id: 'read.drops',
		tone: 'warn',
		text: `${drops} drops make about ${ml(check.dropsMl)} mL; your mark says ${ml(check.travelMl)}. ${maybe}`,
		...costOf(sight, check.differenceMl),
		offers: isOtherEnd ? ['readOtherEnd', 'countAgain'] : ['countAgain']
	});
	return remarks;
};

/** Titrant below which a value is next to nothing, in drops. */
const NEXT_TO_NOTHING_DROPS = 3;

/** Off the leaflet's table, below 0, next to nothing: what then. */
const rangeRemarks: Remarker = (sight) => {
	const { kit, events, titration, circumstances } = sight;
	if (!lastOf(events, 'marks.read')) return [];
	const sampleVolumeMl = sampleVolumeOf(kit, events);
	const { smallerMl, largerMl } = otherVolumes(kit, sampleVolumeMl);
	const valued = valueOfTitration(titration, kit);
	if (valued.value === null) {
		if (!isBeyondLeaflet(sight)) return [];
		const offers: RemarkOffer[] = [smallerMl === null ? 'dilute' : 'useSmallerSample'];
		return [
			{
				id: 'read.beyond',
				tone: 'warn',
				text:
					smallerMl === null
						? 'Beyond the leaflet’s table. Take half sample, half purified water with a blank; value and ± double.'
						: `Beyond the leaflet’s table. Take ${smallerMl} mL of water instead.`,
				offers
			}
		];
	}
	if (valued.usedMl < -1e-9) return [];
	const few = NEXT_TO_NOTHING_DROPS * kit.delivery.dropMl;
	if (valued.value >= 0 && valued.usedMl > few) return [];
	const isTopOff = circumstances.water === 'topOff';
	const offers: RemarkOffer[] =
		largerMl === null ? ['freshSample'] : ['useLargerSample', 'freshSample'];
	return [
		{
			id: valued.value < 0 ? 'read.below0' : 'read.nearly0',
			tone: isTopOff ? 'say' : 'warn',
			text: isTopOff
				? 'Next to nothing, as top-off water should be.'
				: `Next to nothing was used. Was it top-off water?${largerMl === null ? '' : ` More sample (${largerMl} mL) tells more.`}`,
			...(isTopOff ? {} : { offers })
		}
	];
};

/** Does any way of counting the marks leave the leaflet's table at its far end? */
function isBeyondLeaflet({ kit, events }: TankSight): boolean {
	const read = lastOf(events, 'marks.read');
	if (!read) return false;
	const ends = scaleEnds(kit);
	if (ends && marksOf(read).some((each) => each < ends[0] || each > ends[1])) return false;
	const { sealMl, lineMl, levelMl, drops } = read.event.marks;
	try {
		valueFromMark(kit, { markMl: sealMl ?? lineMl ?? levelMl, drops });
		return false;
	} catch {
		return kit.conversion.kind === 'rows';
	}
}

/** The value beside the last one: another unit, another sample, the other end. */
const valueRemarks: Remarker = (sight) => {
	const { kit, titration, expected, circumstances } = sight;
	const valued = valueOfTitration(titration, kit);
	if (valued.value === null || !lastOf(sight.events, 'marks.read')) return [];
	const isTank = circumstances.water === undefined || circumstances.water === 'tank';
	if (!isTank || valued.value <= 0) return [];
	return [...otherSample(sight, valued, expected), ...otherUnit(kit, valued, expected)].slice(0, 1);
};

/** Within so much of a ratio a value is taken to be off by it: what a test can tell. */
const RATIO_SHARE = 0.05;
const isRatio = (a: number, b: number, ratio: number) => Math.abs(a / b / ratio - 1) <= RATIO_SHARE;

/** Off by the ratio of the leaflet's samples: perhaps the other one is in the vial. */
function otherSample(
	{ kit }: TankSight,
	{ value, sampleVolumeMl }: ValuedTitration,
	expected: number | null
): Remark[] {
	if (expected === null || expected <= 0) return [];
	const other = kit.sample.volumes.find(
		({ volumeMl }) =>
			Math.abs(volumeMl / sampleVolumeMl - 1) > 2 * RATIO_SHARE &&
			isRatio(value, expected, volumeMl / sampleVolumeMl)
	);
	return other
		? [
				{
					id: 'read.otherSample',
					tone: 'say',
					text: `Against the last test it is off as if ${other.volumeMl} mL were in the vial, not ${sampleVolumeMl}. Which was it?`
				}
			]
		: [];
}

/** A value far from the last, or from what tanks have, that another unit would explain. */
function otherUnit(kit: Kit, { value }: ValuedTitration, expected: number | null): Remark[] {
	const near =
		expected !== null && expected > 0 ? { low: expected * 0.8, high: expected * 1.25 } : undefined;
	const [likely] = unitsLikely(value, kit.unit, kit.analyte, near);
	// Between 0.8 and 1.25 a tank may have moved; only clear ratios are asked about.
	if (
		!likely ||
		isRatio(likely.value, value, 1.1) ||
		Math.abs(Math.log(likely.value / value)) < 0.3
	)
		return [];
	return [
		{
			id: 'read.otherUnit',
			tone: 'say',
			text: `It looks like a value in ${likely.name}. Does the leaflet’s table give ${kit.unit}?`
		}
	];
}

/** A value beyond what one filling can show with this sample, with the marks of no refill. */
const oneFillingRemarks: Remarker = ({ kit, titration, events }) => {
	const valued = valueOfTitration(titration, kit);
	if (valued.value === null || valued.refills > 0 || kit.delivery.by === 'dropper') return [];
	const chosen = lastOf(events, 'sample.chosen')?.event.volumeId;
	let endValue: number;
	try {
		endValue = leafletEndOf(kit, chosen);
	} catch {
		return [];
	}
	if (valued.value <= endValue + 1e-9 || valued.usedMl <= kit.delivery.capacityMl) return [];
	return [
		{
			id: 'read.moreThanFull',
			tone: 'say',
			text: 'More was used than a full filling holds. Was it refilled? Then note that, too.',
			offers: ['countAgain']
		}
	];
};

export const readingRemarks: Remarker = (sight) =>
	lastOf(sight.events, 'marks.read') && (sight.step?.kind === 'read' || sight.isPast('read'))
		? [
				...scaleRemarks(sight),
				...dropRemarks(sight),
				...rangeRemarks(sight),
				...mixedRemarks(sight),
				...oneFillingRemarks(sight),
				...valueRemarks(sight)
			]
		: [];
