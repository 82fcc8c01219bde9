import { isOfTank, type EvidenceOf, type TestSummary } from '../observation';
import { differsOf, named, type DoneBy } from './check-done-by';

/** A stored test from before, as lists have it. */
export type EarlierTest = {
	id: string;
	kitId: string;
	/** For the name of another kit among the evidence. */
	kitName: string;
	startedAtEpochMs: number;
	summary: TestSummary | null;
};

const DAY = 86_400_000;
/** Older readings tell little of a tank that takes up a tenth or more of its alkalinity a day. */
const DAYS = 60;
/** So many of the newest: with each further one the next tells less. Judgement, as are the days. */
const MOST = 10;

/**
 * Readings of the tank from before, oldest first: by the kit in question, or by another one that is
 * then named. Those in doubt, those of other waters and those without a value are left out.
 *
 * @param tests of one analyte, in any order
 * @param inQuestion how the test in question was done, and when it began, ms since 1970; what was not
 *   said of it is not known to differ
 */
export function earlierEvidence(
	tests: readonly EarlierTest[],
	inQuestion: Omit<DoneBy, 'kitId'> & {
		kitId: string | null;
		startedAtEpochMs: number;
		id?: string;
	},
	{ withinDays = DAYS, most = MOST } = {}
): EvidenceOf<'earlier'>[] {
	const days = ({ startedAtEpochMs }: EarlierTest) =>
		(inQuestion.startedAtEpochMs - startedAtEpochMs) / DAY;
	return tests
		.filter((test) => test.id !== inQuestion.id && days(test) >= 0 && days(test) <= withinDays)
		.filter(({ summary }) => summary !== null && !summary.isSuspect && isOfTank(summary))
		.sort((a, b) => b.startedAtEpochMs - a.startedAtEpochMs)
		.slice(0, most)
		.reverse()
		.flatMap((test) => {
			const { summary } = test;
			return summary ? [earlierOf(test, summary, days(test), inQuestion)] : [];
		});
}

function earlierOf(
	{ id, kitId, kitName }: EarlierTest,
	summary: TestSummary,
	daysAgo: number,
	inQuestion: Omit<DoneBy, 'kitId'> & { kitId: string | null }
): EvidenceOf<'earlier'> {
	const isOtherKit = kitId !== inQuestion.kitId;
	const { value, unit, expandedUncertainty, repeatabilitySd, values, sampleVolumeMl } = summary;
	const { tester, lot } = summary;
	// A mean of several scatters less than one of them.
	const scatter = repeatabilitySd / Math.sqrt(Math.max(1, values.length));
	const differs = differsOf(
		{ sampleVolumeMl, ...(tester ? { tester } : {}), ...(lot ? { lot } : {}) },
		inQuestion
	);
	return {
		kind: 'earlier',
		reading: {
			id: `${id.slice(0, 150)} earlier`,
			label: isOtherKit ? named(`Earlier, ${kitName}`) : 'Earlier',
			value,
			expandedUncertainty,
			...(scatter > 0 ? { repeatabilitySd: scatter } : {}),
			unit
		},
		daysAgo,
		...(isOtherKit ? { instrument: named(kitName) } : {}),
		...(!isOtherKit && Object.keys(differs).length > 0 ? { differs } : {})
	};
}
