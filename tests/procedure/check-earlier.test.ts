import { describe, expect, it } from 'vitest';
import { EvidenceSchema, type TestSummary } from '$lib/observation';
import { chartByLot } from '$lib/metrology';
import { earlierEvidence, referenceChecksOf, UNNAMED_LOT, type EarlierTest } from '$lib/procedure';

const DAY = 86_400_000;
const NOW = 100 * DAY;
const summary = (value: number, more: Partial<TestSummary> = {}): TestSummary => ({
	value,
	unit: 'dKH',
	standardUncertainty: 0.2,
	expandedUncertainty: 0.4,
	repeatabilitySd: 0.12,
	values: [value],
	sampleVolumeMl: 6,
	isSuspect: false,
	...more
});
const before = (
	id: string,
	daysAgo: number,
	of: TestSummary | null = summary(8),
	kitId = 'mine'
): EarlierTest => ({
	id,
	kitId,
	kitName: kitId === 'mine' ? 'My kit' : 'Other kit',
	startedAtEpochMs: NOW - daysAgo * DAY,
	summary: of
});
const inQuestion = {
	id: 'q',
	kitId: 'mine',
	sampleVolumeMl: 6,
	tester: 'Mia',
	lot: 'A',
	startedAtEpochMs: NOW
};

describe('what was read before', () => {
	it('comes oldest first, with its age; of the same kit without an instrument', () => {
		const found = earlierEvidence([before('a', 3), before('b', 10, summary(9))], inQuestion);
		expect(found).toEqual([
			{
				kind: 'earlier',
				reading: {
					id: 'b earlier',
					label: 'Earlier',
					value: 9,
					expandedUncertainty: 0.4,
					repeatabilitySd: 0.12,
					unit: 'dKH'
				},
				daysAgo: 10
			},
			expect.objectContaining({ daysAgo: 3 })
		]);
		for (const each of found) expect(EvidenceSchema.parse(each)).toEqual(each);
	});

	it('names another kit, and says in what tests with this one differed', () => {
		const done = { tester: 'Ben', lot: 'B', sampleVolumeMl: 12 };
		const [other, same] = earlierEvidence(
			[before('a', 3, summary(8, done)), before('b', 10, summary(9, done), 'theirs')],
			inQuestion
		);
		expect(other).toMatchObject({ instrument: 'Other kit' });
		// Lot and hands of another kit are its own.
		expect(other).not.toHaveProperty('differs');
		expect(same).not.toHaveProperty('instrument');
		expect(same?.differs).toEqual({ hands: 'Ben', lot: 'B', sampleRatio: 2 });
		// Nobody knows which kit is in question: each is named.
		const nameless = { ...inQuestion, kitId: null };
		expect(earlierEvidence([before('a', 3)], nameless)[0]).toMatchObject({ instrument: 'My kit' });
	});

	it('is nothing in doubt, of another water, without a value, to come, too old, or in question', () => {
		const tests = [
			before('doubtful', 1, summary(8, { isSuspect: true })),
			before('solution', 2, summary(8, { water: 'reference' })),
			before('mix', 3, summary(8, { water: 'newMix' })),
			before('valueless', 4, null),
			before('tomorrow', -1),
			before('old', 61),
			before('q', 0),
			before('good', 5, summary(8, { water: 'tank' }))
		];
		const found = earlierEvidence(tests, inQuestion);
		expect(found.map(({ reading }) => reading.id)).toEqual(['good earlier']);
		expect(earlierEvidence(tests, inQuestion, { withinDays: 90 })).toHaveLength(2);
	});

	it('is the newest ten at most', () => {
		const daily = Array.from({ length: 30 }, (_, i) => before(`d${i}`, i + 1));
		expect(earlierEvidence(daily, inQuestion).map(({ daysAgo }) => daysAgo)).toEqual([
			10, 9, 8, 7, 6, 5, 4, 3, 2, 1
		]);
	});

	it('scatters less where it is a mean: by the root of their number', () => {
		const [found] = earlierEvidence(
			[before('a', 1, summary(8, { values: [7.9, 8, 8, 8.1] }))],
			inQuestion
		);
		expect(found?.reading.repeatabilitySd).toBeCloseTo(0.06, 12);
	});
});

describe('known solutions kept for a control chart', () => {
	const solution = (value: number, more: Partial<TestSummary> = {}): TestSummary =>
		summary(value, {
			water: 'reference',
			reference: {
				nominal: 8,
				expandedUncertainty: 0.1,
				unit: 'dKH',
				matrix: 'seawater',
				name: 'March'
			},
			...more
		});
	const asked = { kitId: 'mine', unit: 'dKH' as const, analyte: 'alkalinity' as const };

	it('are those of the kit whose content is known, in the order of time', () => {
		const found = referenceChecksOf(
			[
				before('c', 1, solution(7.4, { lot: 'B', isSuspect: true })),
				before('a', 9, solution(8.1, { lot: 'A' })),
				before('b', 5, solution(7.9)),
				before('tank', 4),
				before('unknown', 3, summary(8, { water: 'reference' })),
				before('theirs', 2, solution(8), 'theirs')
			],
			asked
		);
		expect(found.map(({ testId, value, expected, lot }) => [testId, value, expected, lot])).toEqual(
			[
				['a', 8.1, 8, 'A'],
				['b', 7.9, 8, UNNAMED_LOT],
				['c', 7.4, 8, 'B']
			]
		);
		expect(found[0]).toMatchObject({
			solution: 'March',
			matrix: 'seawater',
			atEpochMs: NOW - 9 * DAY
		});
	});

	it('stand in one unit, whatever they were read and stated in', () => {
		const reference = {
			nominal: 2.5,
			expandedUncertainty: 0.05,
			unit: 'meq/L',
			matrix: 'purified'
		} as const;
		const [found] = referenceChecksOf([before('a', 1, solution(7, { reference }))], asked);
		// 1 dKH is 0.35664 meq/L (10 mg of CaO in a litre; CaO 56.0774 g/mol, IUPAC).
		expect(found?.expected).toBeCloseTo(2.5 / 0.35664, 3);
		expect(found?.expectedExpandedUncertainty).toBeCloseTo(0.05 / 0.35664, 4);
		expect(found?.value).toBe(7);
	});

	it('go into the chart by lot as they are', () => {
		const values = { A: [8.0, 8.1, 7.9, 8.05, 7.95], B: [7.4, 7.35, 7.45] };
		const tests = Object.entries(values).flatMap(([lot, found], l) =>
			found.map((value, i) => before(`${lot}${i}`, 40 - 20 * l - i, solution(value, { lot })))
		);
		const chart = chartByLot(referenceChecksOf(tests, asked));
		expect(chart.lots.map(({ lot, standsApart }) => [lot, standsApart])).toEqual([
			['A', false],
			['B', true]
		]);
	});
});
