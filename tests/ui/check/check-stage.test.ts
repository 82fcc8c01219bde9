import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { conclusions } from '../../../src/lib/observation';
import CheckStage from '../../../src/lib/ui/check/CheckStage.svelte';
import { conclusionWords } from '../../../src/lib/ui/check/conclusion-words';
import { madeUpScenario, planOf, PlayedRun } from '../played-run';

const played = () => new PlayedRun().titrate();
function show(run = played()) {
	const oncheck = vi.fn();
	const onconclude = vi.fn();
	const view = render(CheckStage, { run: run.run, oncheck, onconclude });
	return { ...view, oncheck, onconclude };
}

describe('CheckStage', () => {
	test('asks whether one can stand by the reading', () => {
		const run = played();
		show(run);
		const value = run.log.entries.flatMap((entry) =>
			'event' in entry && entry.event.in === 'walk' && entry.event.event.type === 'value.reported'
				? [entry.event.event.value.toFixed(1)]
				: []
		)[0];
		expect(document.querySelector('.question')?.textContent?.replace(/\s+/g, ' ').trim()).toBe(
			`Can you stand by ${value}?`
		);
	});

	test('a quick repeat that comes to no end is told as such', () => {
		const run = new PlayedRun().titrate(planOf({ extraIndicator: -3 }));
		show(run.inquire({ type: 'result.asked', check: 'repeatQuick' }));
		expect(screen.getByText(/^Quick repeat: the colour never came to its end/)).toBeVisible();
	});

	test('the conclusions stand in their one order', () => {
		show();
		const group = screen.getByRole('group', { name: 'I conclude:' });
		const names = within(group)
			.getAllByRole('radio')
			.map((radio) => radio.closest('label')?.querySelector('.name')?.textContent);
		const asked = conclusions.filter((each) => each !== 'salinity' && each !== 'carriedOver');
		expect(names).toEqual(asked.map((each) => conclusionWords[each].name));
	});

	test('what is missing is said at its place, and nothing is concluded', async () => {
		const { onconclude } = show();
		await userEvent.click(screen.getByRole('button', { name: 'This is what I conclude' }));
		expect(screen.getByRole('alert')).toHaveTextContent('Choose one of these first.');
		await userEvent.click(screen.getByRole('radio', { name: /My technique/ }));
		await userEvent.click(screen.getByRole('button', { name: 'This is what I conclude' }));
		expect(screen.getByRole('alert')).toHaveTextContent('Say how sure you are.');
		expect(onconclude).not.toHaveBeenCalled();
	});

	test('a conclusion goes out with how sure one is', async () => {
		const { onconclude } = show();
		await userEvent.click(screen.getByRole('radio', { name: /The reading stands/ }));
		await userEvent.click(screen.getByRole('radio', { name: /Fairly sure/ }));
		await userEvent.click(screen.getByRole('button', { name: 'This is what I conclude' }));
		expect(onconclude).toHaveBeenCalledExactlyOnceWith({ conclusion: 'stands', sure: 80 });
	});

	test('a check is asked for by its line, with its cost', async () => {
		const { oncheck } = show();
		expect(screen.getAllByText(/12 min, about 0\.\d mL of titrant/).length).toBeGreaterThan(0);
		await userEvent.click(screen.getByRole('button', { name: /^Do it: Repeat the test/ }));
		expect(oncheck).toHaveBeenCalledExactlyOnceWith('repeatFull');
	});

	test('readings that came in are in the table, and what they say below', () => {
		const run = played()
			.inquire({ type: 'result.asked', check: 'repeatQuick' })
			.inquire({ type: 'result.asked', check: 'secondMethod' });
		show(run);
		const table = screen.getByRole('table');
		expect(within(table).getByText('Quick repeat')).toBeInTheDocument();
		expect(within(table).getByText('Another method')).toBeInTheDocument();
		expect(screen.getByText('mean')).toBeInTheDocument();
		expect(screen.getByText(/Spent on checks so far: 11 min/)).toBeInTheDocument();
	});

	test('hidden truths that look alike give the same page', () => {
		const other = madeUpScenario({
			verdict: 'reagent',
			reveal: 'Another cause.',
			checks: madeUpScenario().checks.map((offer) =>
				offer.check === 'reference'
					? { ...offer, water: { ...offer.water, alkalinityDkh: 3 } }
					: offer.check === 'secondMethod'
						? { ...offer, offset: -2 }
						: offer
			)
		});
		const bare = (html: string) => html.replace(/svelte-\w+|c\d+-/g, '');
		const one = show(new PlayedRun(madeUpScenario(), 9).titrate(planOf({ fillBy: 'line' })));
		const first = bare(one.container.innerHTML);
		one.unmount();
		const two = show(new PlayedRun(other, 9).titrate(planOf({ fillBy: 'line' })));
		expect(bare(two.container.innerHTML)).toBe(first);
	});
});
