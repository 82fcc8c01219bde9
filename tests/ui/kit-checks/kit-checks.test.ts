import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test } from 'vitest';
import { houseDropperKit, houseSyringeKit } from '../../../src/lib/kits';
import type { KeptReference } from '../../../src/lib/procedure';
import KitChecks from '../../../src/lib/ui/kit-checks/KitChecks.svelte';
import { chartDrawing, kitChart, resolutionOf } from '../../../src/lib/ui/kit-checks/kit-chart';
import { standsOut } from '../../../src/lib/ui/kit-checks/kit-check-words';

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

describe('checks of a kit', () => {
	test('a lot that reads 4 % low is named with its interval', () => {
		// Lot B: mean 7.68 of 8, and lot A 8.00: 4.0 % lower.
		const low = [7.68, 7.78, 7.58].map((value) => [value, 'B'] as [number, string]);
		const said = standsOut(at(checksOf([...usual, ...low])));
		expect(said).toMatch(
			/^Since lot B known solutions read about 4 % lower than with lot A \(between [12] and 6 %\)\.$/u
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
		expect(within(table).getAllByRole('row')[2]).toHaveTextContent(
			/8\.1.*\+1\.25? %|8\.1.*\+1\.3 %/u
		);
		expect(screen.getAllByRole('link')).toHaveLength(5);
	});
});
