import { describe, expect, test } from 'vitest';
import { houseSyringeKit } from '$lib/kits';
import { kitInHash, knownSolutionHash, waterInHash } from '../../src/routes/test/water-in-address';

const solution = {
	nominal: 8.04321,
	expandedUncertainty: 0.1,
	unit: 'dKH',
	matrix: 'purified',
	name: 'March'
} as const;

describe('the water that an address names', () => {
	test('a known solution comes back as it was, to the digits that its ± allows', () => {
		const hash = knownSolutionHash(solution, 'alkalinity');
		expect(waterInHash(hash, houseSyringeKit)).toEqual({
			water: 'reference',
			reference: { ...solution, nominal: 8.04 }
		});
	});
	test('without figures it is a known solution all the same, and never the tank', () => {
		expect(waterInHash(knownSolutionHash(), houseSyringeKit)).toEqual({ water: 'reference' });
		const damaged = knownSolutionHash(solution, 'alkalinity').replace('8.04', 'much');
		expect(waterInHash(damaged, houseSyringeKit)).toEqual({ water: 'reference' });
	});
	test('with a kit, the kit comes back whatever stands in its id, and the solution with it', () => {
		for (const kitId of [houseSyringeKit.id, 'a&b=c #d']) {
			const hash = knownSolutionHash(solution, 'alkalinity', kitId);
			expect(kitInHash(hash)).toBe(kitId);
			expect(waterInHash(hash, houseSyringeKit)?.reference?.nominal).toBe(8.04);
		}
		expect(kitInHash(knownSolutionHash(solution, 'alkalinity'))).toBeNull();
	});
	test('of another analyte than the kit reads, its content is not taken', () => {
		const hash = knownSolutionHash(solution, 'alkalinity');
		expect(waterInHash(hash, { analyte: 'calcium' })).toEqual({ water: 'reference' });
	});
	test.each(['', '#test=abc', '#water=', '#water=sea'])('%s says nothing', (hash) => {
		expect(waterInHash(hash, houseSyringeKit)).toBeNull();
	});
});
