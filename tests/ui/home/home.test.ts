import { render, screen, within } from '@testing-library/svelte';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { bottleCautions, houseKits } from '$lib/kits';
import type { RunHeader, TestHeader } from '$lib/records';
import Home from '../../../src/routes/+page.svelte';
import { nothingYet, type HomeReading, type HomeState } from '../../../src/routes/home-state';

const state = vi.hoisted(() => ({ now: null as HomeState | null }));
vi.mock('../../../src/routes/home-state', async (original) => ({
	...(await original<object>()),
	homeState: () => Promise.resolve(state.now)
}));

const items = [
	{
		id: 'first-drop',
		kind: 'drill' as const,
		title: 'First drop',
		minutes: 6,
		kitName: 'House syringe kit'
	}
];
const reading: HomeReading = {
	id: 'a',
	name: 'Alkalinity',
	value: '7.4',
	band: '0.4',
	unitName: 'dKH',
	age: '3 days ago',
	isSuspect: false
};
const practice: RunHeader = {
	id: 'run',
	scenarioId: 'first-drop',
	startedAtEpochMs: 0,
	changedAtEpochMs: 0,
	where: 'step 3, swirl',
	state: 'unfinished'
};
const left: TestHeader = {
	id: 'left',
	kitId: 'k',
	analyte: 'alkalinity',
	startedAtEpochMs: 0,
	changedAtEpochMs: 0,
	where: 'step 5, swirl',
	state: 'unfinished',
	summary: null
};

async function show(here: Partial<HomeState>) {
	state.now = { ...nothingYet, ...here };
	render(Home, { data: { items, cautions: bottleCautions(houseKits) } } as never);
	await vi.dynamicImportSettled();
	await Promise.resolve();
}
/** The one button: it stands twice, in the foot of a phone and in the column of a desk. */
const primary = () => [
	...new Set([...document.querySelectorAll('a.primary')].map((each) => each.textContent?.trim()))
];

describe('home', () => {
	beforeEach(() => (document.body.innerHTML = ''));

	test('at the first visit offers the first drill', async () => {
		await show({});
		expect(primary()).toEqual(['First drop, 6 min']);
		expect(screen.getByText(/^Nothing measured yet/)).toBeInTheDocument();
		expect(
			screen.getByRole('heading', { name: 'Check' }).querySelector('a')?.getAttribute('href')
		).toMatch(/\/check\/?$/);
	});

	test('says what to beware of in every kind of bottle that practice is made with', async () => {
		await show({});
		const care = screen.getByRole('region', { name: 'Take care' });
		for (const words of [
			/is acid/,
			/sodium hydroxide/,
			/goggles/,
			/ammonia/,
			/stain/,
			/15 minutes/
		])
			expect(care).toHaveTextContent(words);
	});

	test('after a test offers the next, with the last readings and their age', async () => {
		await show({ readings: [reading, { ...reading, id: 'b', isSuspect: true }] });
		expect(primary()).toEqual(['Test']);
		const lines = within(screen.getByRole('list', { name: 'Last readings' })).getAllByRole('link');
		expect(lines[0]).toHaveTextContent(/7\.4\s*± 0\.4 dKH\s*Alkalinity, 3 days ago/);
		expect(lines[0]).not.toHaveTextContent('doubtful');
		expect(lines[1]).toHaveTextContent('doubtful');
		expect(screen.queryByText(/^Nothing measured yet/)).toBeNull();
	});

	test('with a kit of one’s own offers a test', async () => {
		await show({ hasOwnKit: true });
		expect(primary()).toEqual(['Test']);
	});

	test('an unfinished test comes before everything', async () => {
		await show({ unfinishedTest: left, readings: [reading], runs: [practice] });
		expect(primary()).toEqual(['Go on: step 5, swirl']);
		expect(document.querySelector('a.primary')?.getAttribute('href')).toMatch(
			/\/test\/?#test=left$/
		);
		expect(screen.getByText('Practice unfinished:').closest('p')).toHaveTextContent('First drop');
	});

	test('an unfinished check is offered beside what else was left', async () => {
		const check = { id: 'c', value: '7.4 ± 0.4 dKH', where: '3 things known' };
		await show({ unfinishedCheck: check, readings: [reading] });
		const line = screen.getByText('A check left unfinished:').closest('p');
		expect(line).toHaveTextContent('7.4 ± 0.4 dKH, 3 things known. Go on');
		expect(line?.querySelector('a')?.getAttribute('href')).toMatch(/\/check\/?#check=c$/);
	});

	test('unfinished practice is the one button only while nothing was measured', async () => {
		await show({ runs: [practice] });
		expect(primary()).toEqual(['Go on: step 3, swirl']);
	});

	test('and beside a test it is offered in the text', async () => {
		await show({ runs: [practice], readings: [reading] });
		expect(primary()).toEqual(['Test']);
		const line = screen.getByText('Left unfinished:').closest('p');
		expect(line).toHaveTextContent('First drop, step 3, swirl. Go on');
	});
});
