import { render, screen } from '@testing-library/svelte';
import { describe, expect, test, vi } from 'vitest';
import type { RelatedValue } from '../../../src/lib/observation';
import CheckStage from '../../../src/lib/ui/check/CheckStage.svelte';
import { checkLines } from '../../../src/lib/ui/check/check-words';
import { besideGroups } from '../../../src/lib/ui/check/values-beside';
import { madeUpScenario, PlayedRun } from '../played-run';

const value = (more: Partial<RelatedValue>): RelatedValue => ({
	id: `${more.of}-${more.daysAgo}`,
	of: 'salinity',
	label: 'your hydrometer',
	value: 35,
	expandedUncertainty: 1,
	unit: null,
	daysAgo: 0,
	isChecked: false,
	note: null,
	...more
});
const plainly = (text: string) => text.replace(/\u00a0/g, ' ');

describe('values beside a reading', () => {
	test('stand by what they are of, from first to latest, with the change in per cent', () => {
		const groups = besideGroups([
			value({ of: 'calcium', unit: 'mg/L', value: 575, expandedUncertainty: 36, label: 'Alex' }),
			value({ value: 31 }),
			value({ daysAgo: 28 }),
			value({
				of: 'calcium',
				unit: 'mg/L',
				value: 425,
				expandedUncertainty: 27,
				daysAgo: 1,
				label: 'Alex'
			})
		]);
		expect(
			groups.map(({ title, rows }) => [
				title,
				...rows.map((row) => plainly(`${row.when}: ${row.value} ${row.change}`.trim()))
			])
		).toEqual([
			[
				'Salinity',
				'28 days ago, your hydrometer: 35.0 ± 1.0',
				'Today, your hydrometer: 31.0 ± 1.0 −11 %'
			],
			['Calcium, mg/L', 'Yesterday, Alex: 425 ± 27', 'Today, Alex: 575 ± 36 +35 %']
		]);
	});
});

const byDifference = madeUpScenario({
	kitId: 'house-hardness',
	truth: { water: { alkalinityDkh: 8, calciumMgPerL: 420, magnesiumMgPerL: 1300 } },
	takenOff: {
		of: 'calcium',
		label: 'your test',
		value: 500,
		unit: 'mg/L',
		expandedUncertainty: 27
	},
	record: [
		{ of: 'salinity', label: 'your hydrometer', value: 35, expandedUncertainty: 1, daysAgo: 3 }
	],
	checks: [
		{ check: 'repeatQuick', minutes: 6 },
		{
			check: 'calcium',
			unit: 'mg/L',
			minutes: 12,
			label: 'a borrowed kit',
			sd: 0,
			expandedUncertainty: 25
		}
	]
});

describe('the check of a reading of which something is taken off', () => {
	const show = (run: PlayedRun) =>
		render(CheckStage, { run: run.run, oncheck: vi.fn(), onconclude: vi.fn() });

	test('asks about what is left, and shows the sum', () => {
		show(new PlayedRun(byDifference).titrate());
		const question = document.querySelector('.question')?.textContent?.replace(/\s+/g, ' ') ?? '';
		const asked = Number(/magnesium (\d+)\?/.exec(question)?.[1]);
		// 80 mg/L of calcium too much, times 24.305 / 40.078, off 1300; a drop is worth 20.
		expect(Math.abs(asked - (1300 - 48.5))).toBeLessThan(30);
		expect(plainly(document.body.textContent ?? '').replace(/\s+/g, ' ')).toMatch(
			/Taken off, your test: calcium 500 mg\/L\. 6\d\.\d − 12\.5 = 5\d\.\d mmol\/L, which is magnesium 1\d\d\d ± 1\d\d mg\/L\./
		);
	});

	test('offers to measure it anew, and what was found stands among the other values', () => {
		const run = new PlayedRun(byDifference).titrate();
		run.inquire({ type: 'result.asked', check: 'calcium' });
		show(run);
		expect(screen.getByText(/Today, a borrowed kit/)).toBeVisible();
		expect(screen.getByRole('radio', { name: /What was taken off/ })).toBeVisible();
		expect(screen.getByRole('radio', { name: /The salinity/ })).toBeVisible();
		expect(screen.getByText('Measure calcium anew: a borrowed kit')).toBeVisible();
		expect(screen.getByText(/12 min\. Made once/)).toBeVisible();
	});
});

test('a fresh set of bottles is called so', () => {
	const line = (opens: 'titrant' | 'allBottles') =>
		checkLines([{ check: 'freshLot', minutes: 9, opens }], null)[0]?.title;
	expect(line('titrant')).toBe('Test with a fresh bottle');
	expect(line('allBottles')).toBe('Test with a fresh set of bottles');
});
