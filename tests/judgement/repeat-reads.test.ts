import { describe, expect, it } from 'vitest';
import { faults, rankChecks } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { earlier, second, test } from './diagnosed';

describe('what the same test would read again', () => {
	const dkh = (value: number, answers: readonly Evidence[] = []) =>
		rankChecks([test('a', value), ...answers]).repeatReads;
	const once: Evidence[] = [
		earlier('e', 8.1, 7),
		{ kind: 'cue', cue: 'marksUsed', answer: 'lineThenSeal' }
	];
	it('is about what was read where nothing speaks against it', () => {
		expect(dkh(8)?.value).toBeCloseTo(8, 0);
	});
	it('is what the water holds after a slip that was made once', () => {
		// By the line, read by the seal, 5.6 instead of about 8.2.
		expect(dkh(5.6, once)?.value).toBeGreaterThan(7.5);
	});
	it('is the same wrong number again where bottles are swapped for good', () => {
		const swapped = rankChecks(
			[test('a', 5.6), test('b', 5.6, 'repeatFull'), earlier('e', 8.1, 7)],
			{
				priors: { ...Object.fromEntries(faults.map(({ id }) => [id, 0])), bottlesSwapped: 0.5 },
				realChangePrior: 0
			}
		);
		expect(swapped.repeatReads?.value).toBeCloseTo(5.6, 0);
	});
	it('is not known without a test in question', () => {
		expect(rankChecks([second('s', 8.1)]).repeatReads).toBeNull();
	});
});
