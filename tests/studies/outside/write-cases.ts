import { writeFileSync } from 'node:fs';
import { casesFromOutside, writtenCase } from './cases';

/** A file of cases, saying what they are. */
export function fileOfCases(count: number, seed: number) {
	return {
		about:
			'Invented cases, drawn by chance: no tank, person or kit behind them. Own choices of size and frequency.',
		count,
		seed,
		cases: casesFromOutside(count, seed).map(writtenCase)
	};
}

/**
 * `COUNT=20 SEED=1 FILE=cases.json node --input-type=module -e
 * "(await import('vite')).runnerImport('./tests/studies/outside/write-cases.ts')"`
 */
const { FILE: file, COUNT: count = '20', SEED: seed = '1' } = process.env;
if (file && !process.env.VITEST)
	writeFileSync(file, JSON.stringify(fileOfCases(Number(count), Number(seed))));
