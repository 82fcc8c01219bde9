import { scaleEndsOf } from '../kits';
import {
	dropCauseWords,
	dropCheckOf,
	fromOtherEnd,
	talliedDropsIn,
	type DropCheck
} from './drop-check';
import { endTravelOf, numeralsRead } from './end-travel';
import { lastOf } from './event-queries';
import { isLineBeyondSeal } from './filling-trap';
import { startFillingOf } from './refills';
import type { Remark, Remarker } from './tank-remark';
import { SWAPPED } from './tank-remarks-filling';
import { costOf } from './tank-sight';
import { valueOfTitration } from './titration-value';

const ml = (volumeMl: number) => volumeMl.toFixed(2).replace('-', '−');

/** A numeral that this scale does not have, or one on the wrong side of the start. */
const scaleRemarks: Remarker = ({ kit, events, titration }) => {
	if (kit.delivery.by === 'dropper') return [];
	const ends = scaleEndsOf(kit.delivery);
	const off = numeralsRead(events).find((each) => each < ends[0] - 1e-9 || each > ends[1] + 1e-9);
	if (off !== undefined)
		return [
			{
				id: 'read.offScale',
				tone: 'warn',
				text: `${ml(off)} is not on this scale: it runs from ${ml(ends[0])} to ${ml(ends[1])}.`,
				offers: ['countAgain']
			}
		];
	const travel = endTravelOf(kit, events);
	const valued = valueOfTitration(titration, kit);
	// A division before the start is the eye's doing; and another mark may have made the value.
	const lowestMl = -kit.delivery.graduationMl;
	if (!travel || travel.usedMl >= lowestMl) return [];
	if (valued.value !== null && valued.usedMl >= lowestMl) return [];
	const otherEndMl = fromOtherEnd(kit, travel.endMl);
	const isOnScale = otherEndMl >= ends[0] - 1e-9 && otherEndMl <= ends[1] + 1e-9;
	const fits = isOnScale && travel.otherEndMl >= 0;
	return [
		{
			id: 'read.wrongSide',
			tone: 'warn',
			text: fits
				? `By this mark less than nothing was used. From the other end it is ${ml(otherEndMl)}: which end is 0?`
				: 'By this mark less than nothing was used. Look where it stands once more.',
			offers: [fits ? 'readOtherEnd' : 'countAgain']
		}
	];
};

/** Seal at one end, line at the other: the value then leans on the volume of the tip. */
const mixedRemarks: Remarker = (sight) => {
	const { kit, events, titration } = sight;
	const valued = valueOfTitration(titration, kit);
	if (valued.value === null || valued.from !== 'throughTip') return [];
	const start = startFillingOf(events)?.event;
	const end = valued.by === 'line' ? 'line' : 'seal';
	const noted = start?.lineMl !== undefined ? 'line' : start?.sealMl !== undefined ? 'seal' : null;
	const tip = 'The tip’s volume is put between, and widens the ±.';
	if (noted === null)
		return [{ id: 'read.mixed', tone: 'say', text: `No start was noted for the line. ${tip}` }];
	return [
		{
			id: 'read.mixed',
			tone: 'warn',
			text: `The ${noted} was noted at the start, the ${end} at the end. ${tip} Read the ${noted} too.`,
			offers: [noted === 'line' ? 'readLineToo' : 'countAgain']
		}
	];
};

/** Seal and line the wrong way round. */
const swappedRemarks: Remarker = ({ kit: { delivery }, events }) => {
	const marks = lastOf(events, 'marks.read')?.event.marks ?? {};
	return delivery.by === 'syringe' && isLineBeyondSeal(delivery, marks)
		? [{ id: 'read.swapped', tone: 'warn', text: SWAPPED, offers: ['countAgain'] }]
		: [];
};

/** Seal and line that moved by different amounts: the air between them is not what it was. */
const cushionRemarks: Remarker = (sight) => {
	const { kit, events } = sight;
	const { delivery } = kit;
	const start = startFillingOf(events)?.event;
	const end = lastOf(events, 'marks.read')?.event.marks;
	if (delivery.by !== 'syringe' || !start || !end) return [];
	if (start.sealMl === undefined || start.lineMl === undefined) return [];
	if (end.sealMl === undefined || end.lineMl === undefined) return [];
	// The wrong way round at one end, they tell nothing of the air between.
	if ([start, end].some((marks) => isLineBeyondSeal(delivery, marks))) return [];
	const grewMl = Math.abs(end.sealMl - end.lineMl) - Math.abs(start.sealMl - start.lineMl);
	if (Math.abs(grewMl) <= 2 * delivery.graduationMl + 1e-9) return [];
	return [
		{
			id: 'read.cushion',
			tone: 'warn',
			text: 'Seal and line moved by different amounts: a mark misread, or air left through the tip.',
			...costOf(sight, grewMl),
			offers: ['countAgain']
		}
	];
};

function disagreement(drops: number, { dropsMl, travelMl, causes }: DropCheck): string {
	const both = `${drops} drops make about ${ml(dropsMl)} mL; your mark says ${ml(travelMl)}.`;
	const [first = 'miscounted', second] = causes;
	if (first === 'otherEnd') return `${both} Read from the other end?`;
	return `${both} Perhaps ${dropCauseWords[first]}${second ? `, or ${dropCauseWords[second]}` : ''}.`;
}

/** Drops counted against the travel; both numbers are kept. */
const dropRemarks: Remarker = (sight) => {
	const { kit, titration, events } = sight;
	const typed = lastOf(events, 'marks.read')?.event.marks.drops;
	const tallied = talliedDropsIn(events);
	const remarks: Remark[] = [];
	const check = dropCheckOf(kit, events, valueOfTitration(titration, kit));
	if (check && !check.agrees)
		remarks.push({
			id: 'read.drops',
			tone: 'warn',
			text: disagreement(typed ?? tallied ?? 0, check),
			...costOf(sight, check.differenceMl),
			offers: check.causes[0] === 'otherEnd' ? ['readOtherEnd', 'countAgain'] : ['countAgain']
		});
	if (tallied !== null && typed !== undefined && tallied !== typed)
		remarks.push({
			id: 'read.tally',
			tone: 'say',
			text: `${tallied} drops were noted as they fell, ${typed} are written down. Which is it?`,
			offers: ['countAgain']
		});
	return remarks;
};

/** What the marks read at the end show, each against the other. */
export const readingRemarks: Remarker = (sight) =>
	lastOf(sight.events, 'marks.read')
		? [
				...scaleRemarks(sight),
				...dropRemarks(sight),
				...swappedRemarks(sight),
				...cushionRemarks(sight),
				...mixedRemarks(sight)
			]
		: [];
