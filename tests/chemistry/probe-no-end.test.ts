import { describe, expect, it } from 'vitest';
import { fitAlkalinityTitration, granEndPoint } from '../../src/lib/chemistry';

/** What is no titration with acid has no end: its volumes rise and its pH must fall. */
const options = { sampleVolumeMl: 50, acidMolPerL: 0.1, temperatureC: 25, salinity: 35 } as const;
const series = (phAt: (i: number) => number) =>
	Array.from({ length: 12 }, (_, i) => ({ addedMl: 1.2 + 0.1 * i, ph: phAt(i) }));

describe('readings whose pH does not fall', () => {
	it.each([
		['stands still', series(() => 3.2)],
		['rises', series((i) => 3.0 + 0.04 * i)]
	])('%s: no Gran end, and no fit', (_, points) => {
		expect(() => granEndPoint(points, options)).toThrow(/points must fall in pH .* found 3/);
		expect(() => fitAlkalinityTitration(points, options)).toThrow(/points must fall in pH/);
	});
	it('nor is an end found before any acid was added', () => {
		// A pH that hardly falls: the line rises too little and meets nothing far to the left.
		const points = series((i) => 3.2 - 0.002 * i);
		expect(() => granEndPoint(points, options)).toThrow(/points must lie on a rising line/);
	});
	it('a vessel that nobody knows is named', () => {
		const points = series((i) => 3.5 - 0.04 * i);
		const asked = { ...options, vessel: 'bucket' } as unknown as Parameters<
			typeof fitAlkalinityTitration
		>[1];
		expect(() => fitAlkalinityTitration(points, asked)).toThrow(/vessel must be .* found bucket/);
	});
});
