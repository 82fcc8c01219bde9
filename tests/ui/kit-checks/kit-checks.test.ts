import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test } from 'vitest';
import {
	houseCalciumKit,
	houseDropperKit,
	houseHardnessKit,
	houseSyringeKit
} from '../../../src/lib/kits';
import type { TestSummary } from '../../../src/lib/observation';
import { referenceChecksOf, type KeptReference } from '../../../src/lib/procedure';
import KnownWater from '../../../src/lib/ui/kit-checks/KnownWater.svelte';
import KitChecks from '../../../src/lib/ui/kit-checks/KitChecks.svelte';
import {
	chartDrawing,
	kitChart,
	offText,
	resolutionOf
} from '../../../src/lib/ui/kit-checks/kit-chart';
import { looks, standsOut } from '../../../src/lib/ui/kit-checks/kit-check-words';
import { runningOf } from '../../../src/lib/ui/kit-checks/running';
import { chartByLot } from '../../../src/lib/metrology';
import montgomery from '../../reference/data/control-charts.json';

const DAY = 86_400_000;
const START = Date.UTC(2026, 0, 5, 12);

/** Checks of a solution of 8 dKH, a week apart, by what was read. */
const checksOf = (
	readings: readonly [value: number, lot: string, more?: Partial<KeptReference>][]
): KeptReference[] =>
	readings.map(([value, lot, more], i) => ({
		testId: `t${i}`,
		value,
		expected: 8,
		expectedExpandedUncertainty: 0.08,
		lot,
		atEpochMs: START + i * 7 * DAY,
		matrix: 'seawater',
		solution: 'baking soda',
		...more
	}));
const at = (checks: readonly KeptReference[]) =>
	kitChart(checks, { matrix: 'seawater', resolution: 0.05 });
const usual = [8.0, 8.1, 7.9, 8.05, 7.95].map((value) => [value, 'A'] as [number, string]);

describe('the water of a check', () => {
	test('is made by the recipe, where there is one for the kit', () => {
		render(KnownWater, { kit: houseSyringeKit, recipeHref: '/check/solution#kit=a' });
		const link = screen.getByRole('link', { name: 'How to make one' });
		expect(link).toHaveAttribute('href', '/check/solution#kit=a');
		expect(screen.queryByText(/label states/u)).toBeNull();
	});
	test.each([
		[houseCalciumKit, /what it holds of calcium in a litre/u],
		[houseHardnessKit, /what it holds of calcium and magnesium together in a litre/u]
	])('$id: without a recipe it is said what to have, and nothing leads elsewhere', (kit, said) => {
		render(KnownWater, { kit, recipeHref: null });
		expect(screen.queryByRole('link')).toBeNull();
		expect(screen.getByText(said)).toHaveTextContent(/how far that may lie off/u);
	});
});

describe('checks of a kit', () => {
	test('a lot that reads 4 % low is named with its interval', () => {
		// Lot B: mean 7.68 of 8, and lot A 8.00: 4.0 % lower.
		const low = [7.68, 7.78, 7.58].map((value) => [value, 'B'] as [number, string]);
		const said = standsOut(at(checksOf([...usual, ...low])));
		// By hand: scatter within lots √(0.045/6) = 0.0866 of 8, 1.08 %; times √(1/5 + 1/3) and t(6) = 2.447 (printed
		// tables): 4.0 ± 1.9 %.
		expect(said).toBe(
			'Since lot B known solutions read about 4.0 % lower than with lot A (between 2.1 and 5.9 %).'
		);
	});

	test('with another solution it is said that it may be the solution', () => {
		const low = [7.68, 7.78, 7.58].map(
			(value) => [value, 'B', { solution: 'washing soda' }] as [number, string, object]
		);
		expect(standsOut(at(checksOf([...usual, ...low])))).toContain('it may be that and not the lot');
	});

	test('a slow change within one lot is dated by the running sum', () => {
		const many = Array.from({ length: 20 }, (_, i) => 8 + 0.08 * ((i % 3) - 1));
		const later = Array.from({ length: 8 }, () => 8.2);
		const checks = checksOf([...many, ...later].map((value) => [value, 'A']));
		const chart = at(checks);
		expect(chart.sum?.firstSignal?.direction).toBe('up');
		const said = standsOut(chart);
		expect(said).toMatch(/^Since about .+ known solutions read about \d(\.\d)? % higher/u);
	});

	test('ordinary scatter is called so, and nothing is claimed of one or two', () => {
		expect(standsOut(at(checksOf(usual)))).toMatch(/^Nothing stands out/u);
		expect(standsOut(at(checksOf(usual.slice(0, 2))))).toMatch(/^There are 2 checks so far/u);
		expect(standsOut(at([]))).toMatch(/^No test of a known solution/u);
		expect(
			standsOut(
				at(
					checksOf([
						[8, 'A'],
						[8, 'B'],
						[8, 'C']
					])
				)
			)
		).toMatch(/^Every bottle was checked once only/u);
	});

	test('equal readings are taken to be as alike as a drop lets them look', () => {
		const chart = at(checksOf(usual.map(([, lot]) => [8, lot])));
		// 0.05 over √12, of 8 (JCGM 100:2008, F.2.2.1).
		expect(chart.byLot?.sd).toBeCloseTo(0.05 / Math.sqrt(12) / 8, 10);
		expect(standsOut(chart)).toMatch(/^Nothing stands out/u);
		for (const kit of [houseDropperKit, houseSyringeKit])
			expect(resolutionOf(kit, 'dKH')).toBeGreaterThan(0);
	});

	test.each([
		[houseCalciumKit, 'mg/L', 415, [413, 419, 407, 416, 410, 388, 391], '6'],
		[houseHardnessKit, 'mmol/L', 64, [63.8, 64.6, 63.2, 64.2, 64, 60.2, 60.6], '5.6']
	] as const)('$id: its checks are charted in its own unit', (kit, unit, expected, read, lower) => {
		const tests = read.map((value, i) => ({
			id: `t${i}`,
			kitId: kit.id,
			startedAtEpochMs: START + i * 7 * DAY,
			summary: {
				...{ value, unit, expandedUncertainty: 0.04 * value, standardUncertainty: 0.02 * value },
				...{ unsure: null, titrations: 1, water: 'reference', lot: i < 5 ? 'A' : 'B' },
				reference: {
					...{ nominal: expected, expandedUncertainty: 0.01 * expected, unit },
					matrix: 'seawater'
				}
			} as unknown as TestSummary
		}));
		const checks = referenceChecksOf(tests, { kitId: kit.id, unit, analyte: kit.analyte });
		const resolution = resolutionOf(kit, unit);
		// A drop of the kit, by its leaflet: less than a twentieth of the value, and more than nothing.
		expect(resolution / expected).toBeGreaterThan(0.001);
		expect(resolution / expected).toBeLessThan(0.05);
		// Lot B against lot A: 389.5 of 413 are 5.7 % less, 60.4 of 63.96 are 5.6 % less.
		expect(standsOut(kitChart(checks, { matrix: 'seawater', resolution }))).toContain(
			`Since lot B known solutions read about ${lower} % lower than with lot A`
		);
		render(KitChecks, { kit, checks, unit, testHref: (id: string) => `#${id}` });
		expect(document.body.textContent).toContain(`holds ${expected}`);
		expect(document.body.textContent).toContain(unit);
		expect(document.body.textContent).not.toContain('dKH');
	});

	test('solutions of another water stand for themselves', () => {
		const checks = checksOf([...usual, [7.2, 'A', { matrix: 'purified' }]]);
		expect(at(checks).checks).toHaveLength(5);
	});

	test('limits of the single checks lie three sigmas about the first lot', () => {
		const chart = at(checksOf(usual));
		const drawing = chartDrawing(chart, 'single');
		const levels = drawing?.data.lines
			?.filter(({ kind }) => kind === 'limit')
			.map(({ points }) => points[0]?.y ?? Number.NaN);
		// Mean 8.00, standard deviation 0.0791 of the five, by hand: 3 · 0.0791 / 8 = 2.96 %.
		expect(levels?.[0]).toBeCloseTo(-2.965, 2);
		expect(levels?.[1]).toBeCloseTo(2.965, 2);
	});

	test('the page shows one drawing at a choice, with its table, and calls limits provisional', async () => {
		const user = userEvent.setup();
		render(KitChecks, {
			kit: houseDropperKit,
			checks: checksOf(usual),
			unit: 'dKH',
			testHref: (id: string) => `#${id}`
		});
		expect(screen.getByText(/The limits are provisional: they come from 5 checks/u)).toBeVisible();
		expect(screen.getByText(/^Each point is one check/u)).toBeInTheDocument();
		await user.click(screen.getByLabelText('running sum'));
		expect(screen.queryByText(/^Each point is one check/u)).toBeNull();
		expect(screen.getByText(/is summed up/u)).toBeInTheDocument();
		await user.click(screen.getByText('The same as a table'));
		const table = screen.getByRole('table', { name: 'Tests of known solutions in sea salt' });
		expect(within(table).getAllByRole('row')).toHaveLength(6);
		expect(screen.getAllByRole('link')).toHaveLength(5);
	});

	test('both ends of the interval of a lot have the same digits', () => {
		// Scatter of 0.1 %, and lot B 1.0 % lower: the ± is a tenth of a per cent or so.
		const fine = [8, 8.01, 7.99, 8.005, 7.995].map((value) => [value, 'A'] as [number, string]);
		const low = [7.92, 7.93, 7.91, 7.92].map((value) => [value, 'B'] as [number, string]);
		const chart = kitChart(checksOf([...fine, ...low]), { matrix: 'seawater', resolution: 0.005 });
		const [, first = '', second = ''] =
			/between ([\d.]+) and ([\d.]+) %/u.exec(standsOut(chart)) ?? [];
		expect(first).toMatch(/^\d\.\d+$/u);
		expect(second.split('.')[1]).toHaveLength(first.split('.')[1]!.length);
		expect(Number(first)).toBeLessThan(1);
		expect(Number(second)).toBeGreaterThan(1);
	});

	test('an alarm says what it means and what it does not', () => {
		const many = Array.from({ length: 20 }, (_, i) => 8 + 0.8 * ((i % 3) - 1));
		const later = Array.from({ length: 8 }, () => 10);
		const checks = checksOf([...many, ...later].map((value) => [value, 'A']));
		const [, , sum] = looks(at(checks));
		expect(sum?.isAlarm).toBe(true);
		// The change begins with the 21st check, 20 weeks after the first: on 25 May 2026.
		expect(sum?.words).toMatch(
			/^beyond its limit since \d+ (Jun|Jul) 2026: the readings went up, counted from \d+ May 2026$/u
		);
		render(KitChecks, { kit: houseSyringeKit, checks, unit: 'dKH', testHref: (id) => `#${id}` });
		const means = screen.getByRole('region', { name: 'What an alarm means' });
		expect(means).toHaveTextContent('It does not say why');
		expect(means).toHaveTextContent('No alarm does not mean that the kit reads right');
		expect(means).toHaveTextContent('no factor to correct readings by follows');
		expect(screen.getByTestId('looks')).toHaveTextContent('running sum: beyond its limit');
	});

	/** Scatter that is more than a drop. */
	const wide = [8, 8.5, 7.5, 8.25, 7.75].map((value) => [value, 'A'] as [number, string]);
	const page = (readings: Parameters<typeof checksOf>[0]) =>
		render(KitChecks, {
			kit: houseSyringeKit,
			checks: checksOf(readings),
			unit: 'dKH',
			testHref: (id: string) => `#${id}`
		});
	const items = (part: string) =>
		within(screen.getByRole('region', { name: part })).getAllByRole('listitem');

	test('running average and sum go along the checks, and the table has them', async () => {
		const chart = at(checksOf(wide));
		// By hand: s = 0.3953 of 8, so slack 2.47 %. Off 0, +6.25, −6.25, +3.125, −3.125 %. Average with weight
		// 0.2: 0, 1.25, −0.25, +0.425, −0.285. Down at the third 6.25 − 2.47 = 3.78; up at the fourth 3.125 − 2.47 =
		// 0.65, where 3.78 − 3.125 − 2.47 is below 0; down at the fifth 0.65.
		const averages = chart.average?.points.map(({ average }) => 100 * (average - 1)) ?? [];
		[0, 1.25, -0.25, 0.425, -0.285].forEach((byHand, i) =>
			expect(averages[i]).toBeCloseTo(byHand, 10)
		);
		const sums = chart.sum?.points.map(({ high, low }) => [100 * high, 100 * low]) ?? [];
		[
			[0, 3.78],
			[0.65, 0],
			[0, 0.65]
		].forEach(([up, down], i) => {
			expect(sums[i + 2]?.[0]).toBeCloseTo(up!, 1);
			expect(sums[i + 2]?.[1]).toBeCloseTo(down!, 1);
		});
		page(wide);
		const user = userEvent.setup();
		await user.click(screen.getByLabelText('running sum'));
		await user.click(screen.getByText('The same as a table'));
		const rows = within(
			screen.getByRole('table', { name: 'Tests of known solutions in sea salt' })
		).getAllByRole('row');
		// One check is known to √((2 · 4.94)² + 1²) = 9.9 %: whole per cent.
		expect(rows[3]).toHaveTextContent(/−6\s±\s10\s%\s*0\s*4$/u);
		expect(rows[4]).toHaveTextContent(/\+3\s±\s10\s%\s*1\s*0$/u);
		// There is one bottle only: nothing to begin anew with.
		expect(screen.queryByLabelText('anew with each bottle')).toBeNull();
	});

	test('a check shows one percentage, of what its solution holds, as fine as its ±', () => {
		// A drop of 0.32 dKH over √12 (JCGM 100:2008, F.2.2.1) is 1.15 % of 8, more than these scatter; with ± 0.08
		// of 8 for the content √(2.31² + 1²) = 2.5 %.
		page(usual);
		expect(screen.getByText(/^In per cent of what the solution is said to hold/u)).toBeVisible();
		const said = items('The checks').map((item) => item.textContent?.replace(/\s+/gu, ' ') ?? '');
		// 7.95 and 8.05 of 8 are 0.6 % off, and 7.9 is 1.3 %.
		expect(said[0]).toMatch(/read \d\.\d+, holds 8\.\d+ dKH: −1 ± 3 %/u);
		expect(said[1]).toContain(': +1 ± 3 %');
		expect(said[2]).toContain(': −1 ± 3 %');
		expect(said[4]).toContain(': 0 ± 3 %');
		for (const each of said) expect(each.match(/%/gu)).toHaveLength(1);
		for (const each of document.body.textContent?.match(/[\d.]+\s%/gu) ?? [])
			expect(each).not.toContain('.');
	});

	test('fine checks keep the digit that their ± allows', () => {
		// s = 0.00791 of 8, 0.1 %; content ± 0.016 of 8, 0.2 %: together 0.28 %.
		const fine = [8, 8.01, 7.99, 8.005, 7.92].map(
			(value) => [value, 'A', { expectedExpandedUncertainty: 0.016 }] as [number, string, object]
		);
		const chart = kitChart(checksOf(fine), { matrix: 'seawater', resolution: 0.005 });
		expect(offText(chart, chart.checks[4]!)).toMatch(/^−1\.0\s±\s\d\.\d\s%$/u);
	});

	test('lots are held against the first one, bottle by bottle', async () => {
		const low = [6, 6.5, 5.5].map((value) => [value, 'B'] as [number, string]);
		const alike = [8, 8.25].map((value) => [value, 'C'] as [number, string]);
		page([...wide, ...low, ...alike]);
		const [a, b, c] = items('Bottle by bottle');
		expect(a).toHaveTextContent('A: 5 checks, on the mean 0 % from what the solutions hold');
		// By hand: scatter within lots √(1.15625/7) = 0.4064 of 8, 5.08 %; times √(1/5 + 1/3) and t(7) at 1.25 %
		// a side, 2.841 (computed with another program): 10.5 %.
		expect(b).toHaveTextContent(/B: 3 checks, 25\s±\s11 % lower than lot A\./u);
		expect(c).toHaveTextContent(/C: 2 checks, no difference from lot A shows \(2\s±\s12 %\)/u);
		const user = userEvent.setup();
		await user.click(screen.getByLabelText('running sum'));
		await user.click(screen.getByText('The same as a table'));
		const firstOfC = () =>
			within(
				screen.getByRole('table', { name: 'Tests of known solutions in sea salt' })
			).getAllByRole('row')[9];
		expect(firstOfC()).toHaveTextContent(/\s±\s10\s%\s*0\s*[1-9]\d*$/u);
		await user.click(screen.getByLabelText('anew with each bottle'));
		// The sum of bottle B does not go on into C.
		expect(firstOfC()).toHaveTextContent(/\s±\s10\s%\s*0\s*0$/u);
	});
});

// Source: Montgomery, Introduction to Statistical Quality Control, thirty observations, target 10, sigma 1:
// table of sums to two decimals, k = 0.5, h = 5, signal at period 29, onset 23.
describe('what runs along the checks', () => {
	const { observations, cusum } = montgomery;
	// Of 1 each, so that a recovery is the observation; target and scatter are the book's.
	const lotChart = (lotAt: (i: number) => string) => {
		const found = chartByLot(
			observations.map((value, i) => ({ value, expected: 1, lot: lotAt(i), atEpochMs: i })),
			{ sd: 1 }
		);
		return { ...found, chart: { ...found.chart, target: 10 } };
	};
	const rows = (points: ReturnType<typeof runningOf>['sum']['points']) =>
		points.map(({ high, highCount, low, lowCount }) => [
			Number(high.toFixed(2)),
			highCount,
			Number(low.toFixed(2)),
			lowCount
		]);
	test('right through all lots it is the published table', () => {
		const { sum } = runningOf(
			lotChart((i) => (i < 15 ? 'A' : 'B')),
			'through'
		);
		expect(rows(sum.points)).toEqual(cusum);
		expect(sum.firstSignal).toMatchObject({ index: 28, onsetIndex: 22, direction: 'up' });
		expect(sum.limit).toBe(5);
	});
	test('begun anew, a lot knows nothing of the one before', () => {
		// From the 25th on: 10.6, 11.08, 10.38, 11.62, 11.31, 10.52. By hand, less 10.5 each: 0.10, 0.68, 0.56,
		// 1.68, 2.49, 2.51; the published sum goes on from 2.79 before it.
		const { sum, average } = runningOf(
			lotChart((i) => (i < 24 ? 'A' : 'B')),
			'eachLot'
		);
		expect(rows(sum.points).slice(0, 24)).toEqual(cusum.slice(0, 24));
		expect(sum.points.slice(24).map(({ high }) => Number(high.toFixed(2)))).toEqual([
			0.1, 0.68, 0.56, 1.68, 2.49, 2.51
		]);
		expect(sum.firstSignal).toBeNull();
		expect(average.stretches).toEqual([
			{ from: 0, to: 24 },
			{ from: 24, to: 30 }
		]);
		// The average begins anew at the target: 10 + 0.2 · 0.6.
		expect(average.points[24]?.average).toBeCloseTo(10.12, 10);
		expect(average.points.map(({ index }) => index)).toEqual(observations.map((_, i) => i));
	});
});
