import { describe, expect, it } from 'vitest';
import { decide, diagnoseAndRank } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { reference, second, test } from './diagnosed';

const band = { low: 7, high: 9, unit: 'dKH' } as const;

function adviceOn(evidence: Evidence[]) {
	const { diagnosis, ranking } = diagnoseAndRank(evidence, { band });
	return {
		diagnosis,
		decision: decide({ ...ranking, diagnosis, band, livestock: 'notLooked', salinity: 35 })
	};
}
const NOT_ALONE = /^Not the kit alone speaks for it/;

describe('a second method that does not agree with the kit', () => {
	it.each([
		['above against within', [test('a', 10.2), second('s', 8, 0.4)]],
		['below against within', [test('a', 5.9), second('s', 8, 0.4)]],
		['below against above', [test('a', 6.2), test('b', 6.2, 'repeatFull'), second('s', 9.6, 0.4)]]
	] as [string, Evidence[]][])('%s: it bears nothing out', (_, evidence) => {
		const { diagnosis, decision } = adviceOn(evidence);
		expect(diagnosis.contradictions?.[0]?.between).toBe('methods');
		expect(decision.isVerified).toBe(false);
		expect(decision.verdict).not.toBe('adjust');
		expect(decision.because.some((line) => NOT_ALONE.test(line))).toBe(false);
	});
	it('both far on one side: that side is borne out, and not how far', () => {
		const { diagnosis, decision } = adviceOn([test('a', 6.5), second('s', 4.5, 0.4)]);
		expect(diagnosis.contradictions?.some(({ between }) => between === 'methods')).toBe(true);
		expect(decision.probabilities!.below).toBeGreaterThan(0.9);
		expect(decision.isVerified).toBe(true);
		expect(decision.because.join(' ')).toMatch(/agree on the side, and not on the size/);
	});
	it('a known solution that the kit reads right says which of them holds', () => {
		const { diagnosis, decision } = adviceOn([
			test('a', 6),
			test('b', 6, 'repeatFull'),
			second('s', 8, 0.3),
			reference('r', 8)
		]);
		expect(diagnosis.isKitVouched).toBe(true);
		expect(decision.isVerified).toBe(true);
	});
	it('one that agrees bears it out', () => {
		const { diagnosis, decision } = adviceOn([test('a', 6.2), second('s', 6.1, 0.4)]);
		expect([diagnosis.isKitVouched, decision.isVerified]).toEqual([false, true]);
	});
});

describe('what the ranking says is not left out, and the keeper is known', () => {
	const { diagnosis, ranking } = diagnoseAndRank([test('a', 6.2)], { band });
	const input = { ...ranking, diagnosis, band, livestock: 'notLooked', salinity: 35 } as const;
	it.each([
		[{ isEnough: undefined }, /^isEnough must be true or false; found undefined/],
		[{ isEnough: 'no' }, /^isEnough must be true or false; found no/],
		[{ next: undefined }, /^next must be a ranked check or null/],
		[{ who: 'dog' }, /^who must be one of keeper, sitter, child; found dog/]
	])('%o', (more, message) => {
		const given = { ...input, ...more } as unknown as Parameters<typeof decide>[0];
		expect(() => decide(given)).toThrow(RangeError);
		expect(() => decide(given)).toThrow(message);
	});
});
