import { convertValue, type Analyte, type Kit } from '../kits';
import { readingBudget, type OwnRepeatability } from '../metrology';
import type {
	Circumstances,
	Differs,
	Evidence,
	EvidenceOf,
	KnownSolution,
	Reading
} from '../observation';
import { cuesOfTest } from './check-cues';
import { solutionLeft } from './check-solution-left';
import { differsOf, doneByOf, handsOf, named, type DoneBy } from './check-done-by';
import { lastOf } from './event-queries';
import { replayTest, type TankTitration, type TestState } from './tank-test';
import type { TestDifference } from './test-difference';
import type { TestLog } from './test-log';
import { measuredOf, testResult, type TestResult } from './test-result';
import type { ValuedTitration } from './titration-value';

/** What a test of the tank's water is to a check. */
export type TestRole = EvidenceOf<'test'>['from'];

export type TestEvidenceOptions = {
	/** What the test is to the check; the test in question when left out. */
	as?: TestRole;
	/** How the test in question was done, where this is another one. */
	inQuestion?: DoneBy;
	/** A corrected leaflet; the one of that day when left out. */
	kit?: Kit;
	/** Of what it shall speak; by default of what is left by difference, and else of what the kit measures. */
	analyte?: Analyte;
	/** The person's own scatter with this kit, where it is known. */
	own?: OwnRepeatability | null;
};

const waterNames = {
	topOff: 'top-off water',
	newMix: 'new salt water',
	other: 'another water than the tank’s'
} as const;

/** Why a test can be no evidence, in a sentence; null when it can. */
export function whyNoEvidence(
	{ water, reference }: Circumstances,
	result: TestResult | null
): string | null {
	if (!result) return 'The test has no value.';
	if (water === 'reference')
		return reference ? null : 'It was a known solution, but nobody noted what it holds.';
	return water === undefined || water === 'tank' ? null : `It was a test of ${waterNames[water]}.`;
}

/** What a titration was for; one begun in the place of another that was given up stands for that one. */
function purposeOf(titrations: readonly TankTitration[], number: number): TankTitration['purpose'] {
	const purpose = titrations[number]?.purpose ?? 'first';
	const isInPlace = purpose === 'freshSample' && titrations[number - 1]?.walk.value === 'abandoned';
	return isInPlace ? purposeOf(titrations, number - 1) : purpose;
}

/** What a further titration of the test in question is to its first. */
function roleBeside(purpose: TankTitration['purpose'], differs: Differs): TestRole {
	if (purpose === 'otherPerson' || differs.hands !== undefined) return 'otherHands';
	if (purpose === 'freshSample') return 'freshSample';
	const { sampleRatio = 1 } = differs;
	if (sampleRatio === 1) return 'repeatFull';
	return sampleRatio > 1 ? 'largerSample' : 'smallerSample';
}

const labels: Partial<Record<TestRole, string>> = {
	first: 'Your test',
	repeatFull: 'Repeat',
	repeatQuick: 'Quick repeat',
	otherHands: 'Test by other hands',
	freshSample: 'Test of fresh water',
	freshLot: 'Test with a fresh bottle',
	largerSample: 'Test with more water',
	smallerSample: 'Test with less water'
};

/** One titration with the ± that it has alone. */
function readingOf(
	test: { log: TestLog; state: TestState; kit: Kit; own: OwnRepeatability | null },
	valued: ValuedTitration,
	label: string
): { reading: Reading; coverageFactor: number } {
	const { log, state, kit, own } = test;
	const { temperatureC } = state.circumstances;
	const budget = readingBudget(kit, measuredOf(kit, valued, temperatureC), own);
	const events = state.titrations[valued.titration]?.events ?? [];
	const read = lastOf(events, 'marks.read');
	const reading: Reading = {
		id: `${log.id.slice(0, 150)} ${valued.titration}`,
		label: named(label),
		value: valued.value,
		expandedUncertainty: budget.expandedUncertainty,
		repeatabilitySd: budget.repeatabilitySd,
		unit: kit.unit,
		...(read ? { marks: read.event.marks } : {})
	};
	return { reading, coverageFactor: budget.coverageFactor };
}

/** What is left by difference, in the place of what was titrated. */
function readingLeft(
	{ reading: { id, label } }: { reading: Reading },
	{ value, unit, expandedUncertainty, repeatabilitySd, coverageFactor, less }: TestDifference
): { reading: Reading; coverageFactor: number } {
	return {
		reading: {
			id,
			label,
			value,
			unit,
			expandedUncertainty,
			...(repeatabilitySd > 0 ? { repeatabilitySd } : {}),
			takenOff: {
				value: less.value,
				expandedUncertainty: less.expandedUncertainty,
				unit: less.unit
			}
		},
		coverageFactor
	};
}

function ofSolution(
	reading: Reading,
	{ nominal, expandedUncertainty, unit, matrix, name }: KnownSolution,
	{ kit, isOtherKit, differs }: { kit: Kit; isOtherKit: boolean; differs: Differs }
): EvidenceOf<'reference'> {
	const inUnit = (value: number) => convertValue(value, unit, reading.unit, kit.analyte);
	// Water of the tank has no part in it.
	const { lot, hands, sampleRatio } = differs;
	const ofTest = {
		...(lot ? { lot } : {}),
		...(hands ? { hands } : {}),
		...(sampleRatio ? { sampleRatio } : {})
	};
	return {
		kind: 'reference',
		reading,
		nominal: inUnit(nominal),
		nominalExpandedUncertainty: inUnit(expandedUncertainty),
		matrix,
		...(name ? { solution: name } : {}),
		...(isOtherKit ? { instrument: named(kit.name) } : {}),
		...(!isOtherKit && Object.keys(ofTest).length > 0 ? { differs: ofTest } : {})
	};
}

/**
 * A stored test as evidence: each titration that counts, with a ± of its own, and the questions that
 * its notes have answered. Of the test in question the first titration is the reading in question and
 * the others are what they were done for; the titrations of a further test are all what that test was
 * done for. A known solution becomes a reference, a test with another kit a second method. What
 * others read off the same glass is no titration of its own and is left out.
 *
 * @param result the test as it is valued today; by the leaflet of its day when left out
 * @returns nothing where `whyNoEvidence` has a reason
 */
export function evidenceOfTest(
	log: TestLog,
	result: TestResult | null = testResult(replayTest(log)),
	options: TestEvidenceOptions = {}
): Evidence[] {
	const state = replayTest(log);
	const { circumstances, titrations } = state;
	if (!result || whyNoEvidence(circumstances, result) !== null) return [];
	const test = { log, state, kit: options.kit ?? log.kit, own: options.own ?? null };
	const { kit } = test;
	const base = doneByOf(state, result);
	const { as = 'first', inQuestion = base } = options;
	const isOtherKit = base.kitId !== inQuestion.kitId;
	const counts = new Map<string, number>();
	const labelled = (label: string) => {
		const n = (counts.get(label) ?? 0) + 1;
		counts.set(label, n);
		return n === 1 ? label : `${label} ${n}`;
	};

	const { difference } = result;
	const { analyte = difference?.analyte ?? kit.analyte } = options;
	const isLeft = analyte !== kit.analyte;
	const isSolution = circumstances.water === 'reference';
	const given = isSolution ? kit.byDifference?.gives : difference?.analyte;
	if (isLeft && given !== analyte) return [];
	// What is left is one value, however many titrations it rests on.
	const counted = isLeft && !isSolution ? result.counted.slice(0, 1) : result.counted;
	const readOf = (valued: ValuedTitration, label: string) => {
		const own = readingOf(test, valued, label);
		return isLeft && difference ? readingLeft(own, difference) : own;
	};

	const readings = counted.map((valued, i): Evidence => {
		const hands = handsOf(state, titrations[valued.titration]);
		const { sampleVolumeMl } = valued;
		const now = { ...base, sampleVolumeMl, tester: hands ?? undefined };
		const differs = differsOf(now, inQuestion);
		if (isSolution && circumstances.reference) {
			const { reading } = readingOf(test, valued, labelled('Known solution'));
			const known = ofSolution(reading, circumstances.reference, { kit, isOtherKit, differs });
			return isLeft ? solutionLeft(known, kit, analyte) : known;
		}
		if (isOtherKit) {
			const second = readOf(valued, labelled(kit.name));
			const { sampling } = differs;
			return {
				kind: 'secondMethod',
				method: 'kit',
				instrument: named(kit.name),
				reading: second.reading,
				coverageFactor: Math.min(4, second.coverageFactor),
				...(sampling ? { sampling } : {})
			};
		}
		const purpose = purposeOf(titrations, valued.titration);
		const from = as === 'first' && i > 0 ? roleBeside(purpose, differs) : as;
		const said = {
			...differs,
			...(from === 'freshSample' && i > 0 ? { sampling: `fresh water ${i}` } : {})
		};
		return {
			kind: 'test',
			reading: readOf(valued, labelled(labels[from] ?? 'Test')).reading,
			from,
			...(Object.keys(said).length > 0 ? { differs: said } : {})
		};
	});

	const [first] = result.counted;
	const walked = first && titrations[first.titration];
	const isInQuestion = as === 'first' && !isOtherKit && !isSolution;
	if (!first || !walked || !isInQuestion) return readings;
	const { startedAtEpochMs } = log;
	const less = isLeft && difference ? difference.less : null;
	return [
		...readings,
		...cuesOfTest(walked, first, { circumstances, startedAtEpochMs, analyte, less })
	];
}
