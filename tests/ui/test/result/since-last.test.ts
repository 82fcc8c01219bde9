import { cleanup, screen, within } from '@testing-library/svelte';
import { afterEach, describe, expect, it } from 'vitest';
import type { LastReading } from '../../../../src/lib/ui/test/result/since-last';
import { earlierWords } from '../../../../src/lib/ui/test/result/since-last';
import { section, showResult, testOf } from './result-dom';

afterEach(cleanup);

const DAY = 86_400_000;
const now = Date.UTC(2024, 2, 3, 19, 30);
const last = (more: Partial<LastReading> = {}): LastReading => ({
	value: 7.4,
	unit: 'dKH',
	standardUncertainty: 0.29,
	expandedUncertainty: 0.58,
	repeatabilitySd: 0.15,
	values: [7.4],
	sampleVolumeMl: 6,
	isSuspect: false,
	kitId: 'house-syringe',
	testedAtEpochMs: now - 5 * DAY,
	...more
});
const said = () => section('Since last time');

describe('change since last', () => {
	it('too small to tell', () => {
		showResult(testOf([0.52]), { last: last() });
		// 7.38 now.
		expect(said()).toMatch(
			/Too small to tell: (0\.0|−0\.0\d) ± 0\.\d+ dKH\. 5 days before, it was 7\.4 ± 0\.6\./
		);
		expect(said()).not.toContain('Likely real');
	});

	it('likely real, which is not to say that either is right', () => {
		showResult(testOf([0.52]), { last: last({ value: 9.6 }) });
		expect(said()).toMatch(/Likely real: −2\.2 ± 0\.\d dKH/);
		expect(said()).toContain('That says nothing of whether either is right.');
	});

	it('the sum behind it can be worked out again', () => {
		showResult(testOf([0.52]), { last: last({ value: 6.9 }) });
		const table = screen.getByRole('table', { name: 'The sum behind the change' });
		const amount = (name: string) => {
			const row = within(table).getByRole('rowheader', { name }).parentElement;
			return Number(/[−+]?[\d.]+$/.exec(row?.textContent ?? '')?.[0].replace('−', '-'));
		};
		expect(amount('Now')).toBe(7.38);
		expect(amount('Last time')).toBe(6.9);
		expect(amount('Change')).toBe(0.48);
		// What is independent adds as squares (JCGM 100:2008, 5.1.2); about 95 % is about twice that (6.2).
		const together = Math.hypot(
			amount('Scatter now'),
			amount('Scatter last time'),
			amount('Left of what both share')
		);
		const factor = amount('A change must be above') / together;
		expect(factor).toBeGreaterThan(1.9);
		expect(factor).toBeLessThan(2.6);
		const isReal = 0.48 > amount('A change must be above');
		expect(said()).toContain(isReal ? 'Likely real' : 'Too small to tell');
	});

	it('and in a unit whose ± has two figures before the point, too', () => {
		showResult(testOf([0.52]), { last: last({ value: 6.9 }), unit: 'ppm CaCO3' });
		const table = screen.getByRole('table', { name: 'The sum behind the change' });
		const [now, then, change, ...rest] = within(table)
			.getAllByRole('cell')
			.map(({ textContent }) => Number(textContent?.replace(/^[±+]\s*/, '')));
		// 7.38 and 6.90 dKH, 17.848 ppm CaCO3 each: 131.7 and 123.2.
		expect([now, then]).toEqual([131.7, 123.2]);
		// Three numbers, each rounded to 0.1.
		expect(change).toBeCloseTo((now ?? NaN) - (then ?? NaN), 0);
		const factor = (rest[3] ?? NaN) / Math.hypot(...rest.slice(0, 3));
		expect(factor).toBeGreaterThan(1.9);
		expect(factor).toBeLessThan(2.6);
	});

	it('by another kit less can be told, and a last value in doubt is called that', () => {
		showResult(testOf([0.52]), { last: last({ kitId: 'another', isSuspect: true }) });
		expect(said()).toContain('by another kit, and already in doubt');
		expect(said()).toContain('two kits share nothing');
	});

	it('a last value in another unit is told in that of today, as finely as it was then', () => {
		// 2.64 meq/L are 7.40 dKH, at 2.804 dKH for each; by the definition of the unit.
		const inMeq = last({
			value: 2.64,
			unit: 'meq/L',
			standardUncertainty: 0.1,
			expandedUncertainty: 0.2,
			repeatabilitySd: 0.05,
			values: [2.64]
		});
		showResult(testOf([0.52, 0.2]), { last: inMeq });
		expect(said()).toContain('it was 7.4 ± 0.6.');
	});

	it('without one nothing is said', () => {
		showResult(testOf([0.52]));
		expect(screen.queryByRole('region', { name: 'Since last time' })).toBeNull();
	});
});

describe('how long before', () => {
	it.each([
		[0.4, 'less than a day before'],
		[1.2, 'a day before'],
		[5, '5 days before'],
		[59, '59 days before'],
		[91, '3 months before']
	])('%f days: %s', (days, text) => {
		expect(earlierWords(now - days * DAY, now)).toBe(text);
	});
});
