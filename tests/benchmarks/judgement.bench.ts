import { bench, describe } from 'vitest';
import { diagnose, diagnoseAndRank, rankChecks } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { earlier, reference, second, test } from '../judgement/diagnosed';

/** Ten pieces of evidence of as many kinds as there are: every scope of faults is touched. */
const ten: Evidence[] = [
	test('a', 7.2),
	test('b', 7.3, 'repeatFull'),
	test('c', 7.2, 'repeatFull'),
	test('d', 7.9, 'freshLot'),
	test('e', 7.1, 'largerSample'),
	reference('f', 7.3),
	second('g', 8, 0.6, { method: 'photometer' }),
	earlier('h', 7.6, 7),
	earlier('i', 7.9, 14),
	{ kind: 'weighing', ware: 'sample', foundOverNominal: 1.003, expandedUncertainty: 0.01 }
];
const options = { time: 3000 };

// The promise: diagnosis with pairs and ranking together in less than 100 ms for ten pieces.
describe('ten pieces of evidence', () => {
	bench('diagnosis with pairs, and ranking, together', () => void diagnoseAndRank(ten), options);
	bench('diagnosis by itself', () => void diagnose(ten), options);
	bench('ranking by itself', () => void rankChecks(ten), options);
});

describe('one test', () => {
	bench('diagnosis and ranking together', () => void diagnoseAndRank(ten.slice(0, 1)), options);
});
