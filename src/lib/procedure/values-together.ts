import {
	changeReach,
	lookTogether,
	type ConsistencyInput,
	type Finding,
	type KnownValue
} from '../judgement';
import type { Kit } from '../kits';
import {
	relatedInOrder,
	type BenchEvidence,
	type Reading,
	type RelatedValue
} from '../observation';
import type { ReadingDifference } from './related';

type Looked = {
	kit: Pick<Kit, 'analyte'>;
	reading: Reading;
	difference: ReadingDifference | null;
	evidence: readonly BenchEvidence[];
	related: readonly RelatedValue[];
};

function knownOf({ value, expandedUncertainty, unit }: RelatedValue): KnownValue | null {
	return unit && { value, expandedUncertainty, unit };
}

/** What was used up between two values. */
const usedBetween = (then: KnownValue, now: KnownValue): KnownValue => ({
	value: then.value - now.value,
	expandedUncertainty: changeReach(then, now),
	unit: now.unit
});

/** Values of an analyte from first to last: those of the kit in question, or those of the book. */
function seriesOf(
	analyte: 'alkalinity' | 'calcium' | 'magnesium',
	{ kit, reading, evidence, related }: Looked
): KnownValue[] {
	if (kit.analyte !== analyte)
		return relatedInOrder(related, analyte).flatMap((each) => knownOf(each) ?? []);
	const earlier = evidence
		.filter((each) => each.kind === 'earlier')
		.filter((each) => each.daysAgo > 0 && each.reading.id !== reading.id)
		.sort((a, b) => b.daysAgo - a.daysAgo);
	return [...earlier.map((each) => each.reading), reading];
}

/**
 * What the values of a run tell when they are looked at together, as far as they tell anything. Nothing
 * where the reading stands alone.
 */
export function findingsTogether(looked: Looked): readonly Finding[] {
	const { related, difference } = looked;
	if (related.length === 0 && !difference) return [];
	const [alkalinity, calcium, magnesium] = (['alkalinity', 'calcium', 'magnesium'] as const).map(
		(analyte) => seriesOf(analyte, looked)
	) as [KnownValue[], KnownValue[], KnownValue[]];
	const salinity = relatedInOrder(related, 'salinity').at(-1);
	const last = {
		alkalinity: alkalinity.at(-1),
		calcium: difference ? difference.less : calcium.at(-1),
		magnesium: difference ?? magnesium.at(-1)
	};
	const used = (values: readonly KnownValue[]) => {
		const [then, now] = [values[0], values.at(-1)];
		return then && now && then !== now && then.unit === now.unit ? usedBetween(then, now) : null;
	};
	// Where the salinity moved, what is gone was not used up.
	const isDiluted = hasMoved(relatedInOrder(related, 'salinity'));
	const usedUp = isDiluted
		? { alkalinity: null, calcium: null }
		: { alkalinity: used(alkalinity), calcium: used(calcium) };
	const input: ConsistencyInput = {
		...Object.fromEntries(Object.entries(last).filter(([, known]) => known)),
		...(difference ? { isMagnesiumByDifference: true } : {}),
		...(salinity
			? {
					salinity: { value: salinity.value, expandedUncertainty: salinity.expandedUncertainty }
				}
			: {}),
		...(usedUp.alkalinity && usedUp.calcium
			? { usedUp: { alkalinity: usedUp.alkalinity, calcium: usedUp.calcium } }
			: {})
	};
	return lookTogether(input).findings.filter(({ says }) => says !== 'cannotTell');
}

function hasMoved(values: readonly RelatedValue[]): boolean {
	const [then, now] = [values[0], values.at(-1)];
	return Boolean(then && now && Math.abs(now.value - then.value) > changeReach(then, now));
}
