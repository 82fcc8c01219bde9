import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge, type Judged } from './calibration/judge';
import { casesOfFile, priorsOfFile } from './calibration/file-cases';
import { namesOfMistakes } from './calibration/outside-names';
import { reliabilityFor } from './calibration/report';
import {
	baseRateScores,
	meanOf,
	reliabilityOf,
	scoresOf,
	shareError,
	shareOf
} from './calibration/scores';
import { chanceAt } from './calibration/seeds';
import { tables, workOn, type TableId } from './calibration/tables';
import { rightVerdicts } from './calibration/verdicts';

/**
 * A small, seeded part of the calibration tables (`npm run calibration` has all of them): too few
 * cases to measure by, enough to see that something broke.
 */
const SEED = 11;
/** Diagnoses by the dozen, on a machine that may be busy. */
const SLOW_MS = 120_000;

/** All kinds of evidence come equally often in multiples of seven. */
const COUNT = 42;
const judgedOf = (table: TableId, count = COUNT): Judged[] =>
	workOn({ table, of: 'judged', from: 0, to: count, seed: SEED }).judged;
/** Verdicts of many other cases, by which base rates are known beforehand. */
const othersOf = (table: TableId) =>
	Array.from({ length: 600 }, (_, index) => ({
		right: rightVerdicts(tables[table].caseAt(index, SEED + 1).truth.causes)
	}));

/** What a share may differ by for no reason but chance, three standard errors. */
const slack = (share: number, count = COUNT) => 3 * shareError(share, count);
/** Playing takes longer than drawing. */
const PLAYED = 14;

describe('scores of forecasts', () => {
	const uniform = (count: number, rightWhen: (p: number, u: number) => boolean) => {
		const chance = chanceAt('uniform', count);
		return Array.from({ length: count }, () => {
			const p = chance.uniform();
			return { p, isRight: rightWhen(p, chance.uniform()) };
		});
	};
	const honest = (p: number, u: number) => u < p;

	it('know what calibration error chance alone makes', () => {
		// Mean of |error| of a share in a bin of n/10 cases, √(2/π)·√(p(1−p)/(n/10)), over p from 0 to 1,
		// where √(p(1−p)) is π/8 on average.
		for (const count of [300, 3000]) {
			const { perfectEce } = reliabilityOf(uniform(count, honest), chanceAt('bands'), 400);
			const expected = Math.sqrt(2 / Math.PI) * (Math.PI / 8) * Math.sqrt(10 / count);
			expect(Math.abs(perfectEce.mean / expected - 1)).toBeLessThan(0.06);
			expect(perfectEce.upper).toBeGreaterThan(perfectEce.mean);
		}
	});

	it('find an honest forecaster within the bands, and one who is too sure outside them', () => {
		const found = reliabilityOf(uniform(2000, honest), chanceAt('bands'), 400);
		expect(found.ece).toBeLessThan(found.perfectEce.upper);
		const within = found.bins.filter(({ right, band }) => right >= band[0] && right <= band[1]);
		expect(within.length).toBeGreaterThanOrEqual(8);
		// What is said lies twice as far from a half as it should.
		const sure = reliabilityOf(
			uniform(2000, (p, u) => u < (p > 0.5 ? 0.5 + (p - 0.5) / 2 : 0.5 - (0.5 - p) / 2)),
			chanceAt('bands'),
			400
		);
		expect(sure.ece).toBeGreaterThan(sure.perfectEce.upper);
		expect(sure.bins[9]?.right).toBeLessThan(sure.bins[9]?.band[0] ?? 0);
	});

	it('come out as by hand', () => {
		const one = { right: ['a'], pRight: 0.5, brier: 0.38, isClass: true };
		const two = { right: ['b'], pRight: 0.25, brier: 0.8, isClass: false };
		const judged = [one, one, one, two] as unknown as Judged[];
		expect(scoresOf(judged).top1).toBe(0.75);
		expect(scoresOf(judged).log).toBeCloseTo((3 * Math.log(2) + Math.log(4)) / 4, 12);
		// Rates 3/4 and 1/4: squares (1/4)² + (1/4)² for the one, (3/4)² twice for the other.
		const base = baseRateScores(judged);
		expect(base.top1).toBe(0.75);
		expect(base.brier).toBeCloseTo((3 * (2 / 16) + 18 / 16) / 4, 12);
		expect(base.log).toBeCloseTo((3 * Math.log(4 / 3) + Math.log(4)) / 4, 12);
	});
});

describe('the diagnosis on cases drawn from its own prior', () => {
	it(
		'is calibrated as far as so few can show, and better than base rates',
		() => {
			const judged = judgedOf('prior');
			const { ece, perfectEce, tooSure } = reliabilityFor(judged, SEED);
			expect(ece).toBeLessThan(perfectEce.upper);
			expect(Math.abs(tooSure)).toBeLessThan(slack(0.5));
			const held = shareOf(judged, ({ isHeld }) => isHeld);
			expect(held).toBeGreaterThan(0.95 - slack(0.95));
			const own = scoresOf(judged);
			const base = baseRateScores(judged, othersOf('prior'));
			expect(own.log).toBeLessThan(base.log);
			expect(own.brier).toBeLessThan(base.brier);
		},
		SLOW_MS
	);
});

describe.each(['calcium', 'magnesium'] as const)('the diagnosis on cases of %s', (table) => {
	it(
		'is calibrated as far as so few can show, holds the true value and beats the number alone',
		() => {
			const judged = judgedOf(table);
			const { ece, perfectEce, tooSure } = reliabilityFor(judged, SEED);
			expect(ece).toBeLessThan(perfectEce.upper);
			expect(Math.abs(tooSure)).toBeLessThan(slack(0.5));
			const held = shareOf(judged, ({ isHeld }) => isHeld);
			expect(held).toBeGreaterThan(0.95 - slack(0.95));
			expect(held).toBeGreaterThan(shareOf(judged, ({ isRawHeld }) => isRawHeld));
			expect(scoresOf(judged).log).toBeLessThan(baseRateScores(judged, othersOf(table)).log);
			const rms = (of: (each: Judged) => number) =>
				Math.sqrt(meanOf(judged.map((each) => of(each) ** 2)));
			expect(rms(({ error }) => error)).toBeLessThan(rms(({ rawError }) => rawError));
		},
		SLOW_MS
	);
});

describe.each(['bench', 'outside'] as const)('the diagnosis on cases of the table %s', (table) => {
	it(
		'holds the true value, more often than the number alone, and advises better than leaving all',
		() => {
			const judged = judgedOf(table, PLAYED);
			const held = shareOf(judged, ({ isHeld }) => isHeld);
			expect(held).toBeGreaterThan(0.95 - slack(0.95, PLAYED));
			expect(held).toBeGreaterThan(shareOf(judged, ({ isRawHeld }) => isRawHeld));
			const regret = (of: keyof Judged['regret']) => meanOf(judged.map((each) => each.regret[of]));
			expect(regret('belief')).toBeLessThan(regret('leave'));
			expect(regret('advised')).toBeLessThanOrEqual(regret('leave'));
		},
		SLOW_MS
	);
});

describe('a task of the study', () => {
	it(
		'comes out the same in whatever pieces it is done',
		() => {
			const task = { table: 'bench', of: 'judged', seed: 5 } as const;
			const plain = (judged: readonly Judged[]) => judged.map(({ ms: _, ...each }) => each);
			const whole = workOn({ ...task, from: 0, to: 2 }).judged;
			const late = workOn({ ...task, from: 1, to: 2 }).judged;
			expect(plain(whole.slice(1))).toEqual(plain(late));
			const others = workOn({ ...task, seed: 6, from: 1, to: 2 }).judged;
			expect(plain(others)).not.toEqual(plain(late));
		},
		SLOW_MS
	);
	it(
		'makes checks in each order until the side of the band is certain or eight are made',
		() => {
			const { ordered } = workOn({ table: 'bench', of: 'ordered', from: 0, to: 1, seed: 5 });
			expect(ordered.map(({ order }) => order)).toEqual(['ranked', 'fixed', 'random']);
			for (const { side, regretAtEnd } of ordered) {
				expect(side.isReached || side.checks >= 8).toBe(true);
				expect(side.minutes > 0).toBe(side.checks > 0);
				expect(regretAtEnd).toBeGreaterThanOrEqual(0);
			}
		},
		SLOW_MS
	);
});

describe('cases of a file', () => {
	const file: unknown = JSON.parse(
		readFileSync(new URL('./outside/sample-cases.json', import.meta.url), 'utf8')
	);
	it('are taken as they were written down', () => {
		const cases = casesOfFile(file, namesOfMistakes);
		expect(cases).toHaveLength(20);
		const [first] = cases;
		if (!first) throw new Error('no case');
		expect(first.evidence[0]).toMatchObject({ kind: 'test', from: 'first' });
		const with0 = judge(first, { priors: { filledByLine: 0, filledByLineOnce: 0 } });
		expect(with0.pRight).toBeGreaterThan(0);
		expect(with0.pRight).not.toBe(judge(first).pRight);
	});
	it('are refused with the field that does not fit', () => {
		const [first] = (file as { cases: Record<string, unknown>[] }).cases;
		expect(() => casesOfFile([{ ...first, evidence: [] }])).toThrow(/evidence/);
		expect(() => casesOfFile([{ ...first, truth: {} }])).toThrow(/trueValueDkh/);
		expect(() => priorsOfFile({ lotOff: 1 })).toThrow(/lotOff/);
	});
});
