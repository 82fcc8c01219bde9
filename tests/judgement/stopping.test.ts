import { describe, expect, it } from 'vitest';
import { decide, diagnoseAndRank, rankChecks } from '../../src/lib/judgement';
import type { Evidence, LivestockLook } from '../../src/lib/observation';
import { earlier, reference, second, test } from './diagnosed';

const bands = [
	{ low: 7, high: 9, unit: 'dKH' },
	{ low: 7.8, high: 8.4, unit: 'dKH' },
	{ low: 2.3, high: 2.9, unit: 'meq/L' }
] as const;
const late: Evidence = { kind: 'cue', cue: 'tip', answer: 'late' };

/** Readings as they come up, alone and with what may be asked beside them. */
const cases: Record<string, Evidence[]> = {
	'in the middle': [test('a', 8)],
	'in the middle, twice': [test('a', 8), test('b', 8.1, 'repeatFull')],
	'in the middle, verified': [test('a', 8), test('b', 8, 'repeatFull'), reference('r', 8)],
	'near the edge': [test('a', 7.1)],
	'low once': [test('a', 6.2)],
	'low twice': [test('a', 6.2), test('b', 6.2, 'repeatFull')],
	'low twice, verified': [test('a', 6.2), test('b', 6.2, 'repeatFull'), reference('r', 8)],
	'low, another way agrees': [test('a', 6.2), second('s', 6.1, 0.4)],
	'low, another way does not': [test('a', 6.2), second('s', 8, 0.4)],
	'low, solution off': [test('a', 5.9), test('b', 5.8, 'repeatFull'), reference('r', 6.2)],
	'very low': [test('a', 4), test('b', 4.1, 'repeatFull'), reference('r', 8)],
	'high once': [test('a', 10.6)],
	'high once, explained': [test('a', 10.6), late],
	'high, then not': [test('a', 10.2), test('b', 8, 'repeatFull')],
	'three apart': [test('a', 6.3), test('b', 8.3, 'repeatFull'), test('c', 10, 'repeatFull')],
	'fell since last week': [test('a', 6.5), earlier('e', 8.3, 7)],
	'fell, and again': [test('a', 6.5), test('b', 6.6, 'repeatFull'), earlier('e', 8.3, 7)],
	'of no tank': [test('a', 60)]
};
const looks: LivestockLook[] = ['notLooked', 'well', 'manyTroubled'];

const grid = Object.entries(cases).map(([name, evidence], i) => ({
	name,
	evidence,
	// Each case with a band and a look of its own: all of them with all take minutes.
	options: { band: bands[i % bands.length]!, livestock: looks[Math.floor(i / 2) % looks.length]! }
}));
const usual = Object.entries(cases).map(([name, evidence]) => ({
	name: `${name}, usual band`,
	evidence,
	options: { band: bands[0], livestock: 'notLooked' as LivestockLook }
}));

describe('when to stop: the ranking and the decision say the same', () => {
	const seen = { enough: 0, checks: 0, lacks: 0 };
	it.each([...usual, ...grid])('$name', ({ evidence, options }) => {
		const { diagnosis, ranking } = diagnoseAndRank(evidence, options);
		const { ranked, next, isEnough } = ranking;
		const decision = decide({ diagnosis, ranked, next, isEnough, salinity: 35, ...options });
		expect(decision.check).toBe(next);
		expect(decision.verdict === 'check').toBe(!isEnough);
		if (isEnough) expect(next).toBeNull();
		else if (decision.lacks) expect(['reading', 'repeat', 'independent']).toContain(decision.lacks);
		else expect(next).not.toBeNull();
		seen[isEnough ? 'enough' : next ? 'checks' : 'lacks']++;
	});
	it('in the grid both come up', () => {
		expect(seen.enough).toBeGreaterThan(8);
		expect(seen.checks).toBeGreaterThan(12);
	});
});

describe('what comes next', () => {
	it('a low value that a known solution bears out is enough: it is adjusted', () => {
		const { isEnough, next, because } = rankChecks(cases['low twice, verified']!);
		expect([isEnough, next]).toEqual([true, null]);
		expect(because).toMatch(/^Something independent bears the value out/);
	});
	it('one far off is repeated before anything that tells more', () => {
		const { ranked, next } = rankChecks(cases['low once']!);
		expect(next).toMatchObject({ kind: 'checks' });
		expect(ranked).toContain(next);
		const without = rankChecks(cases['low once']!, { available: ['reference', 'freshLot'] });
		expect([without.next, without.isEnough]).toEqual([null, false]);
	});
	it.each(looks)(
		'near an edge it goes by how the animals look as the decision does: %s',
		(livestock) => {
			const options = { livestock, band: { low: 8.9, high: 9.6, unit: 'dKH' } } as const;
			const evidence = [test('a', 8.6), test('b', 8.8, 'repeatFull'), test('c', 8.7, 'repeatFull')];
			const { diagnosis, ranking } = diagnoseAndRank(evidence, options);
			const decision = decide({ diagnosis, ...ranking, salinity: 35, ...options });
			expect([decision.check, decision.verdict === 'check']).toEqual([
				ranking.next,
				!ranking.isEnough
			]);
		}
	);
	it('two tests of one water that leave two values are tested again tomorrow, not in a week', () => {
		const evidence = cases['high, then not']!;
		const { diagnosis, ranking } = diagnoseAndRank(evidence);
		const advice = (of: typeof diagnosis, livestock: LivestockLook = 'notLooked') =>
			decide({ ...ranking, diagnosis: of, band: bands[0], livestock, salinity: 35 });
		expect(diagnosis.trueValue.humps.length).toBeGreaterThan(1);
		for (const livestock of looks) {
			const { verdict, retestInDays, because } = advice(diagnosis, livestock);
			expect([verdict, retestInDays]).toEqual(['leave', 1]);
			expect(because.join(' ')).toMatch(
				/apart than tests scatter.* another test tells which holds/
			);
		}
		const agreed = diagnoseAndRank(cases['in the middle, verified']!).diagnosis;
		expect(advice(agreed).retestInDays).toBe(7);
	});
});
