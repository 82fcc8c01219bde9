import { convertValue, type Analyte } from '../../kits';
import {
	relatedInOrder,
	type BenchEvidence,
	type Reading,
	type RelatedQuantity,
	type RelatedValue,
	type TakenFromReading
} from '../../observation';
import { lookTogether } from '../consistency/look-together';
import { changeReach } from './facts';
import { against, earned, notYet, type Ruling } from './rules';

/** What is known of the tank beside the reading in question, and what was taken off it. */
export type Beside = {
	/** What the reading is of. */
	analyte: Analyte;
	related: readonly RelatedValue[];
	takenOff?: TakenFromReading;
};

/** Rulings that values beside the reading give; where one is missing they say nothing about it. */
export type BesideRulings = {
	salinity: Ruling;
	carriedOver: Ruling;
	stands: Ruling | null;
	/** Another value went as this one does when both are used up: a change that two kits saw. */
	waterChanged: Ruling | null;
};

type Known = Pick<Reading, 'value' | 'expandedUncertainty' | 'repeatabilitySd'>;

const differ = (a: Known, b: Known) =>
	Math.abs(a.value - b.value) > Math.hypot(a.expandedUncertainty, b.expandedUncertainty);

/** Did a value go with a factor, as far as both values and the factor are known? */
function follows({ then, now }: { then: Known; now: Known }, factor: Known): boolean {
	const reach = Math.hypot(changeReach(then, now), then.value * factor.expandedUncertainty);
	return Math.abs(now.value - then.value * factor.value) <= reach;
}

/** The first and the latest of the values of one quantity, and whether the latest was measured as a check. */
function thenAndNow(related: readonly RelatedValue[], of: RelatedQuantity) {
	const all = relatedInOrder(related, of);
	const [then, now] = [all[0], all.at(-1)];
	return then && now && then !== now ? { then, now } : null;
}

/** The reading of the kit in question from before. */
const before = (reading: Reading, evidence: readonly BenchEvidence[]): Reading | null =>
	evidence
		.filter((each) => each.kind === 'earlier')
		.filter((each) => each.reading.id !== reading.id && each.daysAgo > 0)
		.sort((a, b) => b.daysAgo - a.daysAgo)[0]?.reading ?? null;

function salinityRuling(
	reading: Reading,
	evidence: readonly BenchEvidence[],
	related: readonly RelatedValue[]
): Ruling {
	const salinity = thenAndNow(related, 'salinity');
	if (!salinity?.now.isChecked) return notYet('Nobody measured the salinity of today.');
	const { then, now } = salinity;
	if (!differ(then, now)) return against('The salinity is what it was, within what both allow.');
	const value = now.value / then.value;
	const factor = {
		value,
		expandedUncertainty: Math.hypot(now.expandedUncertainty, then.expandedUncertainty) / then.value
	};
	const own = before(reading, evidence);
	const others = (['alkalinity', 'calcium', 'magnesium'] as const).flatMap((of) => {
		const pair = thenAndNow(related, of);
		return pair ? [pair] : [];
	});
	const pairs = [...(own ? [{ then: own, now: reading }] : []), ...others];
	if (pairs.length === 0) return notYet('There is nothing from before to hold it against.');
	const followed = pairs.filter((pair) => follows(pair, factor)).length;
	const share = `${Math.round(Math.abs(value - 1) * 100)} %`;
	const way = value < 1 ? 'fell' : 'rose';
	return followed === pairs.length
		? earned(
				`Salinity ${way} by ${share}, and ${pairs.length === 1 ? 'this value' : `all ${pairs.length} values`} went with it, as far as their ± can tell.`
			)
		: against(`Salinity ${way} by ${share}, but not everything went with it.`);
}

/** What was taken off, against a later measurement of it: null while there is none. */
function takenAgain({ related, takenOff }: Beside): 'differs' | 'agrees' | null {
	const again = related.findLast((each) => each.isChecked && each.of === takenOff?.of);
	if (!takenOff || !again?.unit) return null;
	const inUnit = (value: number) =>
		convertValue(value, again.unit ?? takenOff.unit, takenOff.unit, takenOff.of);
	const known = {
		value: inUnit(again.value),
		expandedUncertainty: inUnit(again.expandedUncertainty)
	};
	return differ(known, takenOff) ? 'differs' : 'agrees';
}

function carriedOverRuling(beside: Beside): Ruling {
	const { takenOff } = beside;
	if (!takenOff) return against('Nothing was taken off this reading.');
	switch (takenAgain(beside)) {
		case 'differs':
			return earned(
				`Measured anew, ${takenOff.of} is not what was taken off: the rest is off the other way, mole for mole.`
			);
		case 'agrees':
			return against(`Measured anew, ${takenOff.of} is what was taken off.`);
		default:
			return notYet(`Nobody measured ${takenOff.of} anew.`);
	}
}

function standsRuling(beside: Beside): Ruling | null {
	const { takenOff } = beside;
	if (!takenOff) return null;
	const again = takenAgain(beside);
	if (again === 'differs')
		return against(`What is left was reckoned with ${takenOff.of} that the tank does not hold.`);
	return again === null && !takenOff.isMeasured
		? notYet(`The ${takenOff.of} that was taken off was never measured.`)
		: null;
}

/** Calcium and alkalinity that went together as growth and precipitation take them. */
function waterChangedRuling(
	reading: Reading,
	evidence: readonly BenchEvidence[],
	{ analyte, related }: Beside
): Ruling | null {
	const partner = { alkalinity: 'calcium', calcium: 'alkalinity' } as const;
	if (analyte !== 'alkalinity' && analyte !== 'calcium') return null;
	const own = before(reading, evidence);
	const other = thenAndNow(related, partner[analyte]);
	if (!own || !other?.now.isChecked || !other.now.unit || other.then.unit !== other.now.unit)
		return null;
	const usedOf = (then: Known, now: Known, unit: Reading['unit']) => ({
		value: then.value - now.value,
		expandedUncertainty: changeReach(then, now),
		unit
	});
	const mine = usedOf(own, reading, reading.unit);
	const others = usedOf(other.then, other.now, other.now.unit);
	const finding = lookTogether({
		usedUp:
			analyte === 'calcium'
				? { calcium: mine, alkalinity: others }
				: { calcium: others, alkalinity: mine }
	}).findings.find(({ id }) => id === 'useInProportion');
	const isSeen = [mine, others].every(
		(used) => Math.abs(used.value) > used.expandedUncertainty && used.value * mine.value > 0
	);
	return finding?.says === 'nothingOdd' && isSeen
		? earned(
				'Two kits saw it: alkalinity and calcium went together, one dKH for about 7 mg/L, as they do when skeletons or lime take them.'
			)
		: null;
}

/** What the values beside a reading say of the conclusions about it. */
export function besideRulings(
	reading: Reading,
	evidence: readonly BenchEvidence[],
	beside: Beside
): BesideRulings {
	return {
		salinity: salinityRuling(reading, evidence, beside.related),
		carriedOver: carriedOverRuling(beside),
		stands: standsRuling(beside),
		waterChanged: waterChangedRuling(reading, evidence, beside)
	};
}
