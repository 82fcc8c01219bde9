import { describe, expect, it } from 'vitest';
import {
	diagnoseAndRank,
	faults,
	rankChecks,
	type Band,
	type CheckRanking,
	type RankedCheck,
	type RankOptions
} from '../../src/lib/judgement';
import { houseCalciumKit } from '../../src/lib/kits';
import { methodFiguresFor } from '../../src/lib/metrology';
import { checkIds, type CheckId, type Evidence, type Reading } from '../../src/lib/observation';
import { minutesOf } from '../../src/lib/judgement/ranking/checks';
import { earlier, reference, second, test } from './diagnosed';

const nameOf = (ranked: RankedCheck) =>
	ranked.kind === 'cue' ? `?${ranked.cue}` : ranked.checks.join('+');
const find = ({ ranked }: CheckRanking, name: string) =>
	ranked.find((each) => nameOf(each) === name);
const bits = (ranking: CheckRanking, name: string) =>
	find(ranking, name)?.information ?? Number.NaN;

const single = [test('a', 7.2)];
const repeated = [test('a', 7.2), test('b', 7.3, 'repeatFull'), test('c', 7.2, 'repeatFull')];

describe('the ranking', () => {
	const ranking = rankChecks(single);

	it('has the best for its cost first, and all figures in range', () => {
		const scores = ranking.ranked.map(({ score }) => score);
		expect(scores).toEqual([...scores].sort((a, b) => b - a));
		for (const { information, changesAdvice, cost, because } of ranking.ranked) {
			expect(information).toBeGreaterThanOrEqual(0);
			expect(information).toBeLessThan(3);
			expect(changesAdvice).toBeGreaterThanOrEqual(0);
			expect(changesAdvice).toBeLessThanOrEqual(1);
			expect(cost.minutes).toBeGreaterThan(0);
			expect(because).toMatch(/^It [a-z].*\.$/);
		}
	});

	it('has checks, pairs of checks, and questions that were not asked', () => {
		const names = ranking.ranked.map(nameOf);
		expect(names).toEqual(expect.arrayContaining(['repeatFull', 'reference', '?light']));
		expect(names).toContain('repeatFull+repeatFull');
		expect(names).toContain('smallerSample+largerSample');
		expect(new Set(names).size).toBe(names.length);
		const asked = rankChecks([...single, { kind: 'cue', cue: 'light', answer: 'white' }]);
		expect(asked.ranked.map(nameOf)).not.toContain('?light');
	});

	it('asks about a second method or a known solution only where there is one', () => {
		const names = ranking.ranked.map(nameOf);
		expect(names).not.toContain('?photometerCare');
		expect(names).not.toContain('referenceBySecondMethod');
		const withSecond = rankChecks([...single, second('s', 8, 0.5, { method: 'photometer' })]);
		expect(withSecond.ranked.map(nameOf)).toEqual(
			expect.arrayContaining(['?photometerCare', 'referenceBySecondMethod'])
		);
	});

	it('keeps to what is at hand, and takes other costs', () => {
		const available: CheckId[] = ['repeatFull', 'freshLot'];
		const few = rankChecks(single, { available });
		for (const ranked of few.ranked)
			if (ranked.kind === 'checks')
				for (const check of ranked.checks) expect(available).toContain(check);
		const cheap = rankChecks(single, {
			costs: { reference: { minutes: 0.1, priceMinutes: 0, riskMinutes: 0 } }
		});
		expect(nameOf(cheap.ranked[0]!)).toBe('reference');
		expect(() => rankChecks(single, { costs: { reference: { minutes: -1 } } })).toThrow(
			'costs.reference.minutes must be 0 or above; found -1'
		);
	});

	it('the order of the evidence is irrelevant', () => {
		const evidence = [...repeated, reference('r', 7.4), earlier('e', 8.1, 7)];
		expect(rankChecks([...evidence].reverse().sort((a) => (a === repeated[0] ? -1 : 0)))).toEqual(
			rankChecks(evidence)
		);
	});

	it('says the same by itself and beside the diagnosis', () => {
		const evidence: Evidence[] = [...single, earlier('e', 8.1, 7)];
		expect(diagnoseAndRank(evidence).ranking).toEqual(rankChecks(evidence));
	});

	it('names causes in plain words', () => {
		const words = ranking.ranked.map(({ because }) => because).join(' ');
		for (const { id, name } of faults) if (id !== name) expect(words).not.toContain(`‘${id}’`);
		expect(words).toContain('‘nothing wrong’');
	});
});

describe('what a check is expected to tell', () => {
	it('a first repeat tells more than a fourth', () => {
		expect(bits(rankChecks(repeated), 'repeatFull')).toBeLessThan(
			bits(rankChecks(single), 'repeatFull') / 2
		);
	});

	it('once repeats agree, what is independent tells more than another repeat', () => {
		const ranking = rankChecks(repeated);
		for (const check of ['reference', 'freshLot', 'otherHands'])
			expect(bits(ranking, check)).toBeGreaterThan(2 * bits(ranking, 'repeatFull'));
	});

	it('two checks tell at least as much as the better one, and at most both', () => {
		const ranking = rankChecks(single);
		const [small, large, both] = [
			'smallerSample',
			'largerSample',
			'smallerSample+largerSample'
		].map((name) => bits(ranking, name)) as [number, number, number];
		// Coarser cells of two dimensions lose a little.
		expect(both).toBeGreaterThan(0.95 * Math.max(small, large));
		expect(both).toBeLessThan(1.05 * (small + large));
	});

	it('a sample of another size is what parts a volume from a share', () => {
		const off = [test('a', 5.3), test('b', 5.3, 'repeatFull'), earlier('e', 8, 7)];
		const priors = {
			...Object.fromEntries(faults.map(({ id }) => [id, 0])),
			filledByLine: 0.1,
			bottlesSwapped: 0.1
		};
		const ranking = rankChecks(off, { priors, realChangePrior: 0, available: [...checkIds] });
		const sampled = Math.max(bits(ranking, 'smallerSample'), bits(ranking, 'largerSample'));
		expect(sampled).toBeGreaterThan(2 * bits(ranking, 'repeatFull'));
	});
});

describe('what a check is said to tell apart', () => {
	const becauseOf = (evidence: readonly Evidence[], name: string, options: RankOptions = {}) =>
		find(rankChecks(evidence, options), name)?.because ?? '';
	const only = (priors: Record<string, number>): RankOptions => ({
		priors: { ...Object.fromEntries(faults.map(({ id }) => [id, 0])), ...priors },
		realChangePrior: 0,
		available: [...checkIds]
	});
	const calcium: RankOptions = {
		unit: 'mg/L',
		analyte: 'calcium',
		method: methodFiguresFor(houseCalciumKit, 'calcium')
	};
	const high: Evidence = {
		kind: 'test',
		from: 'first',
		reading: { id: 'a', label: 'A', value: 470, expandedUncertainty: 16, unit: 'mg/L' }
	};
	const ofBase = { ...calcium, ...only({ baseOld: 0.3, baseShort: 0.3 }) };

	it('what lasts in a bottle, fresh water from the tank does not tell from a sound one', () => {
		const because = becauseOf([high], 'freshSample', ofBase);
		// Nothing wrong and a weak base both say the same of it again; too few drops once do not.
		expect(because).toMatch(/^It tells ‘too few drops of base’ from /u);
		expect(because).not.toMatch(/from each other/u);
	});

	it('where a check cannot part any of what is likely, no two are named', () => {
		const lasting = { ...calcium, ...only({ baseOld: 0.4 }) };
		expect(becauseOf([high], 'freshSample', lasting)).not.toMatch(/from/u);
		expect(becauseOf([high], 'moreBase', lasting)).toMatch(
			/‘nothing wrong’ from ‘base grown weak|‘base grown weak.*from ‘nothing wrong’/u
		);
	});
});

describe('when it is enough', () => {
	const verified = [
		...[test('a', 8), test('b', 8, 'repeatFull'), test('c', 8.1, 'repeatFull')],
		reference('r', 8),
		second('s', 8.1, 0.3)
	];

	it('a value well within the band, verified, needs no more', () => {
		const { isEnough, because } = rankChecks(verified);
		expect(isEnough).toBe(true);
		expect(because).toMatch(/\.$/);
	});

	it('a value outside the band is never enough without anything independent', () => {
		const low = Array.from({ length: 5 }, (_, i) =>
			test(`t${i}`, 5.6, i === 0 ? 'first' : 'repeatFull')
		);
		expect(rankChecks(low).isEnough).toBe(false);
		expect(rankChecks([...low, earlier('e', 5.7, 7), earlier('f', 5.7, 14)]).isEnough).toBe(false);
	});

	it('one that leapt by the volume of the tip is worth looking into', () => {
		expect(rankChecks([test('a', 5.4), earlier('e', 8.1, 7)]).isEnough).toBe(false);
	});

	it('it depends on the person’s own band, in any unit', () => {
		const wide = rankChecks(single, { band: { low: 5, high: 11, unit: 'dKH' } });
		const narrow = rankChecks(single, { band: { low: 8, high: 8.4, unit: 'dKH' } });
		expect(wide.isEnough).toBe(true);
		expect(narrow.isEnough).toBe(false);
		const inMeq = rankChecks(single, {
			band: { low: 8 * 0.35665, high: 8.4 * 0.35665, unit: 'meq/L' }
		});
		expect(inMeq.isEnough).toBe(narrow.isEnough);
		expect(inMeq.ranked[0]?.changesAdvice).toBeCloseTo(narrow.ranked[0]?.changesAdvice ?? -1, 3);
	});

	it('a band the wrong way round is refused by name', () => {
		expect(() => rankChecks(single, { band: { low: 9, high: 7, unit: 'dKH' } })).toThrow(
			'band.low must be at most band.high; found 9 and 7'
		);
	});
});

describe('an odd reading', () => {
	const bare = (id: string, value: number, expandedUncertainty = 0.7): Reading => ({
		id,
		label: id,
		value,
		expandedUncertainty,
		unit: 'dKH'
	});
	const alone = (value: number): Evidence => ({
		kind: 'test',
		from: 'first',
		reading: bare('a', value)
	});
	const lastWeek = (value: number): Evidence => ({
		kind: 'earlier',
		daysAgo: 7,
		reading: bare('e', value)
	});
	const again = (id: string, value: number): Evidence => ({
		kind: 'test',
		from: 'repeatFull',
		reading: bare(id, value)
	});
	const own: Band = { low: 6, high: 9, unit: 'dKH' };

	it.each([
		['outside the usual band', [alone(6.3)], undefined],
		['within a band of one’s own, and near its edge', [alone(6.3)], own],
		['far from last week’s', [alone(6.3), lastWeek(8.2)], undefined],
		['far from last week’s, within a band of one’s own', [alone(6.3), lastWeek(8.2)], own],
		['within the band, and on its way out if it goes on so', [alone(7.2), lastWeek(8.6)], undefined]
	] as const)('is looked into cheaply first: %s', (_, evidence, band) => {
		const { ranked, isEnough } = rankChecks([...evidence], {
			...(band ? { band } : {}),
			available: checkIds.filter((check) => check !== 'repeatQuick')
		});
		expect(isEnough).toBe(false);
		const [first] = ranked;
		expect(first && minutesOf(first.cost)).toBeLessThanOrEqual(10);
	});

	it.each([
		['in the middle of the band', [alone(8)]],
		['like last week’s', [alone(8.2), lastWeek(8.2)]],
		['moved by less than it can tell', [alone(8.2), lastWeek(8.6)]],
		['put right by two repeats', [alone(9.6), lastWeek(8), again('b', 8.2), again('c', 8.1)]]
	] as const)('is none: %s', (_, evidence) => {
		expect(rankChecks([...evidence]).isEnough).toBe(true);
	});

	it('does not ask for ever: repeats that agree within one’s own band are enough', () => {
		const repeated = [alone(6.6), again('b', 6.6), again('c', 6.7)];
		expect(rankChecks(repeated, { band: own }).isEnough).toBe(true);
	});

	it('three that lie far apart are never enough by themselves', () => {
		const { isEnough, because } = rankChecks([alone(6.3), again('b', 8.3), again('c', 10)]);
		expect(isEnough).toBe(false);
		expect(because).toMatch(/does not fit together/);
	});
});
