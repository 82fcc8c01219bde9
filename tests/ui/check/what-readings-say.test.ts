import { describe, expect, test } from 'vitest';
import { houseCalciumKit, houseSyringeKit } from '../../../src/lib/kits';
import type { BenchEvidence, Reading } from '../../../src/lib/observation';
import { expectedScatter, whatReadingsSay } from '../../../src/lib/ui/check/what-readings-say';

const reading = (id: string, value: number, expandedUncertainty = 0.4): Reading => ({
	id,
	label: id,
	value,
	expandedUncertainty,
	unit: 'dKH'
});
const own = reading('first', 7.1);
const first: BenchEvidence = { kind: 'test', from: 'first', reading: own };
const say = (...evidence: BenchEvidence[]) =>
	whatReadingsSay(own, [first, ...evidence], houseSyringeKit, 16);
const about = (id: string, ...evidence: BenchEvidence[]) =>
	say(...evidence).find((saying) => saying.id === id);

describe('whatReadingsSay', () => {
	test('one reading alone says nothing', () => {
		expect(say()).toEqual([]);
	});

	test('mean and standard deviation of repeats, n − 1 below', () => {
		const evidence: BenchEvidence[] = [
			{ kind: 'test', from: 'repeatFull', reading: reading('second', 7.4) },
			{ kind: 'test', from: 'repeatQuick', reading: reading('third', 7.1) }
		];
		// By hand: mean 21.6 / 3 = 7.2; squares 0.01 + 0.04 + 0.01 over 2, root 0.1732.
		expect(about('mean', ...evidence)?.figure).toBe('7.2');
		expect(about('spread', ...evidence)?.figure).toBe('0.17');
	});

	test('two repeats are held against 2.8 times the scatter to be expected', () => {
		// Factor for two results: ISO 5725-6:1994, table 1.
		const limit = (2.8 * expectedScatter(houseSyringeKit, 7.1, 16)).toFixed(1);
		const near = about('apart', {
			kind: 'test',
			from: 'repeatFull',
			reading: reading('second', 7.2)
		});
		expect(near?.sentence).toContain(`seldom get more than ${limit}.`);
		expect(near?.sentence).toContain('no more than scatter');
		const far = about('apart', {
			kind: 'test',
			from: 'repeatFull',
			reading: reading('second', 8.2)
		});
		expect(far?.sentence).toContain('something differed');
	});

	test('the scatter to be expected lies below what the kit claims in all, and above nothing', () => {
		const scatter = expectedScatter(houseSyringeKit, 8, 16);
		expect(scatter).toBeGreaterThan(0.05);
		expect(scatter).toBeLessThan(0.4);
	});

	test('two methods are compared with both uncertainties', () => {
		const saying = about('other', {
			kind: 'secondMethod',
			reading: reading('other', 7.6, 0.3)
		});
		// By hand, E_n of ISO 13528: 0.5 / √(0.4² + 0.3²) = 1.0.
		expect(saying?.figure).toBe('1.0');
		expect(saying?.sentence).toContain('Both together allow 0.5');
		expect(saying?.sentence).toContain('agree');
		expect(saying?.sentence).toContain('does not make both right');
	});

	test('a known solution gives a recovery; in purified water a little low is ordinary', () => {
		const evidence = (matrix: 'purified' | 'seawater'): BenchEvidence => ({
			kind: 'reference',
			reading: reading('known', 7.8),
			nominal: 8,
			nominalExpandedUncertainty: 0.1,
			matrix
		});
		const purified = about('reference-known', evidence('purified'));
		// By hand: 7.8 / 8 = 97.5 %.
		expect(purified?.figure).toMatch(/^9[78] %$/);
		expect(purified?.sentence).toContain('0.1 to 0.3 low is ordinary');
		expect(about('reference-known', evidence('seawater'))?.sentence).not.toContain('ordinary');
	});

	test('a change that both uncertainties could make is too small to tell', () => {
		const earlier = (value: number): BenchEvidence => ({
			kind: 'earlier',
			daysAgo: 7,
			reading: reading('before', value)
		});
		expect(about('earlier-before', earlier(7.5))?.sentence).toContain('too small to tell');
		const fallen = about('earlier-before', earlier(8.2));
		expect(fallen?.figure).toBe('−1.1');
		expect(fallen?.sentence).toContain('likely real');
	});

	test('calcium is told in whole mg/L, and of purified water nothing is said that holds for alkalinity', () => {
		const calcium = (id: string, value: number): Reading => ({
			id,
			label: id,
			value,
			expandedUncertainty: 20,
			unit: 'mg/L'
		});
		const evidence: BenchEvidence[] = [
			{ kind: 'test', from: 'repeatFull', reading: calcium('second', 431) },
			{
				kind: 'reference',
				reading: calcium('known', 404),
				nominal: 400,
				nominalExpandedUncertainty: 4,
				matrix: 'purified'
			}
		];
		const said = whatReadingsSay(calcium('first', 424), evidence, houseCalciumKit, 300);
		// By hand: (424 + 431) / 2 = 427.5; squares 2 · 3.5² over 1, root 4.95.
		expect(said.find(({ id }) => id === 'mean')?.figure).toMatch(/^42[78]$/);
		expect(said.find(({ id }) => id === 'spread')?.figure).toBe('4.9');
		const reference = said.find(({ id }) => id === 'reference-known');
		expect(reference?.sentence).toContain('400 ± 4');
		expect(reference?.sentence).toContain('found 404: 101 %');
		expect(reference?.sentence).not.toMatch(/purified|dKH/);
	});
});
