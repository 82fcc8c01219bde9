import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { ImportReport } from '$lib/records';
import { importWords } from '../../../src/lib/ui/log/import-words';
import { ageWords, byMonth } from '../../../src/lib/ui/log/log-words';
import LogPicture from '../../../src/lib/ui/log/LogPicture.svelte';
import LogRows, { type LogRow } from '../../../src/lib/ui/log/LogRows.svelte';
import userEvent from '@testing-library/user-event';

const row = (id: string, at: Date, more: Partial<LogRow> = {}): LogRow => ({
	id,
	href: `/log/test/#test=${id}`,
	at: at.getTime(),
	shown: { value: '7.4', band: '0.4' },
	unitName: 'dKH',
	analyteName: 'Alkalinity',
	kitName: 'House syringe kit',
	tester: null,
	marks: [],
	isSure: true,
	...more
});

describe('LogRows', () => {
	test('groups by month, and says value, ±, kit, tester and marks of each', () => {
		render(LogRows, {
			rows: [
				row('a', new Date(2026, 2, 3, 18, 5), { tester: 'Ada', marks: ['doubtful'] }),
				row('b', new Date(2026, 1, 27, 9, 0), { shown: null })
			]
		});
		expect(screen.getAllByRole('heading').map((each) => each.textContent)).toEqual([
			'March 2026',
			'February 2026'
		]);
		const [first, second] = screen.getAllByRole('link');
		expect(first).toHaveAttribute('href', '/log/test/#test=a');
		const words = first?.textContent?.replace(/\s+/g, ' ');
		for (const part of ['3 Mar', '7.4', '± 0.4 dKH', 'House syringe kit · Ada', 'doubtful'])
			expect(words).toContain(part);
		expect(second).toHaveTextContent('no value');
	});
});

describe('LogPicture', () => {
	test('says in a table what it shows: doubt and dosing in words', async () => {
		const at = Date.UTC(2026, 2, 3, 12);
		render(LogPicture, {
			unit: 'dKH',
			caption: 'Readings',
			points: [
				{ id: 'a', at, value: 7.4, expandedUncertainty: 0.4, isSuspect: false, isDosed: true },
				{
					id: 'b',
					at: at + 7 * 86_400_000,
					value: 8.05,
					expandedUncertainty: 0.4,
					isSuspect: true,
					isDosed: false
				}
			]
		});
		await userEvent.click(screen.getByText('The same as a table'));
		const rows = screen.getAllByRole('row').map((each) => each.textContent?.replace(/\s+/g, ' '));
		expect(rows).toHaveLength(3);
		expect(rows[1]).toMatch(/10 Mar 2026.*doubtful.*8\.\d0\.4/);
		expect(rows[2]).toMatch(/3 Mar 2026.*dosing said.*7\.40\.4/);
	});
});

describe('words', () => {
	test('an age is told as one would tell it', () => {
		const now = Date.UTC(2026, 2, 3, 12);
		const hour = 3_600_000;
		expect(ageWords(now - 30_000, now)).toBe('just now');
		expect(ageWords(now - 3 * hour, now)).toBe('3 h ago');
		expect(ageWords(now - 12 * 24 * hour, now)).toBe('12 days ago');
		expect(ageWords(now - 100 * 24 * hour, now)).toMatch(/^on 23 Nov 2025$/);
	});

	test('months keep the order of what is in them', () => {
		const times = [new Date(2026, 2, 3), new Date(2026, 2, 1), new Date(2025, 2, 9)].map(Number);
		expect(byMonth(times, (at) => at).map(({ name, things }) => [name, things.length])).toEqual([
			['March 2026', 2],
			['March 2025', 1]
		]);
	});

	test('an import is told part by part, with the place of each damage', () => {
		const report: ImportReport = {
			added: 3,
			grown: 1,
			already: 2,
			keptApart: [{ where: 'tests.4', id: 'a~2', of: 'a', because: 'diverged' }],
			damaged: [{ where: 'tests.7.log.entries.3', problem: 'expected a number', raw: null }],
			refused: []
		};
		const words = importWords(report);
		expect(words[0]).toBe('Added: 3 records.');
		expect(words).toContain('Grown: 1 record of which the file knew more.');
		expect(words).toContain('Already here: 2 records, left as they are.');
		expect(words.some((line) => line.startsWith('Kept apart: tests.4'))).toBe(true);
		expect(words).toContain('Damaged at tests.7.log.entries.3: expected a number.');
	});

	test('an empty file says so', () => {
		const nothing = { added: 0, grown: 0, already: 0, keptApart: [], damaged: [], refused: [] };
		expect(importWords(nothing)).toEqual(['The file holds no records: nothing was added.']);
	});
});
