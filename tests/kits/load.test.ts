import { describe, expect, it } from 'vitest';
import { houseDropperKit, loadKit } from '../../src/lib/kits';
import { diagnose } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';

describe('what is found in the place of a number', () => {
	const [volume, ...others] = houseDropperKit.sample.volumes;
	it.each([
		[Number.NaN, 'found NaN'],
		[Infinity, 'found Infinity'],
		[null, 'found null'],
		['5', 'found "5"'],
		[{ mL: Number.NaN }, 'found {"mL":"NaN"}']
	])('%o is called what it is', (volumeMl, words) => {
		const sample = { ...houseDropperKit.sample, volumes: [{ ...volume, volumeMl }, ...others] };
		expect(() => loadKit({ ...houseDropperKit, sample })).toThrow(words);
	});
	it('also in evidence', () => {
		const reading = {
			id: 'a',
			label: 'A',
			value: Number.NaN,
			expandedUncertainty: 0.5,
			unit: 'dKH'
		};
		const evidence = [{ kind: 'test', from: 'first', reading }] as Evidence[];
		expect(() => diagnose(evidence, { unit: 'dKH' })).toThrow(/value.*found NaN/u);
	});
});
