import { cleanup, fireEvent, render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { tick } from 'svelte';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { BenchStage } from '../../../src/lib/ui/bench';
import { caseOf, giveTheDomABench, TestRun } from './bench-dom.svelte';

beforeEach(() => {
	localStorage.clear();
	giveTheDomABench();
});
afterEach(() => {
	cleanup();
	vi.restoreAllMocks();
	vi.unstubAllGlobals();
});

const show = (run: TestRun) => render(BenchStage, { run, leaveTo: '/practise' });
const button = (name: string | RegExp) => screen.getByRole('button', { name });
const key = (code: string, type: 'keyDown' | 'keyUp' = 'keyDown') =>
	fireEvent[type](document.body, { code, key: code });

describe('the way to the first drop', () => {
	test('is walked with buttons alone', async () => {
		const user = userEvent.setup();
		const run = new TestRun(caseOf());
		show(run);
		expect(screen.getByRole('heading', { level: 1 })).toHaveTextContent('Sample size');
		await user.click(button('Next'));
		await user.click(button('tank water'));
		await user.click(button('Next'));
		await user.click(button('Next, without rinsing'));
		expect(run.said).toEqual(['step.done', 'step.done', 'step.skipped']);
		for (let i = 0; i < 6; i++) await user.click(button(/Draw a stretch/));
		expect(run.titration.bench.sampler.volumeMl).toBeCloseTo(6, 9);
		expect(button('Next')).toBeDisabled();
		await user.click(button('Empty into the vial'));
		expect(run.titration.bench.contents).not.toBeNull();
		await user.click(button('Next'));
		expect(screen.getByRole('heading', { level: 1 })).toHaveTextContent('Indicator');
	});
	test('nobody counts the drops of indicator', async () => {
		vi.useFakeTimers();
		const run = new TestRun(caseOf());
		for (let i = 0; i < 4; i++) {
			const { context } = run.titration.walk;
			run.act({ type: 'sample.draw', toMl: 6 });
			run.act({ type: 'sample.pour' });
			run.say({ type: 'step.skipped', stepId: context.steps[context.stepIndex]!.id });
		}
		show(run);
		await fireEvent.click(button(/Let a drop fall/));
		await fireEvent.click(button(/Let a drop fall/));
		vi.advanceTimersByTime(500);
		await tick();
		vi.useRealTimers();
		expect(run.titration.bench.doses).toEqual({ indicator: 2 });
		expect(document.querySelector('.bench')?.textContent).not.toMatch(/\b2\b/);
	});
});

describe('filling', () => {
	test('the plunger moves by keys: 0.01, with Shift 0.05, by page 0.10', async () => {
		const run = new TestRun(caseOf()).upTo('fill');
		show(run);
		await fireEvent.click(button('Push the tip on'));
		await fireEvent.click(button('Dip in titrant'));
		const plunger = button(/^Plunger/);
		await fireEvent.keyDown(plunger, { key: 'PageUp' });
		await fireEvent.keyDown(plunger, { key: 'ArrowUp' });
		await fireEvent.keyDown(plunger, { key: 'ArrowUp', shiftKey: true });
		const { delivery } = run.titration.bench;
		expect(delivery.by === 'syringe' && delivery.syringe.sealMl).toBeCloseTo(0.16, 9);
	});
	test('above the bottle the plunger draws air', async () => {
		const run = new TestRun(caseOf()).upTo('fill');
		show(run);
		await fireEvent.click(button(/Draw a stretch/));
		const { delivery } = run.titration.bench;
		expect(delivery.by === 'syringe' && delivery.syringe.liquidMl).toBe(0);
	});

	async function fillByTheLine(run: TestRun) {
		await fireEvent.click(button('Push the tip on'));
		await fireEvent.click(button('Dip in titrant'));
		const plunger = button(/^Plunger/);
		for (let i = 0; i < 11; i++) await fireEvent.keyDown(plunger, { key: 'PageUp' });
		for (let i = 0; i < 7; i++) await fireEvent.keyDown(plunger, { key: 'ArrowUp' });
		expect(run.titration.bench.delivery).toMatchObject({ by: 'syringe' });
	}
	test('by the liquid line it is flagged at once, with its cost and both ways out', async () => {
		const run = new TestRun(caseOf()).upTo('fill');
		show(run);
		expect(screen.queryByText(/The line stands at full, the seal does not/)).toBeNull();
		await fillByTheLine(run);
		const trap = screen.getByRole('region', { name: /The line stands at full/ });
		// T = 0.17 mL at 16 dKH for 1 mL: the kit's own numbers.
		expect(trap).toHaveTextContent('2.7 dKH too low');
		await fireEvent.click(within(trap).getByRole('button', { name: /read the line at the end/ }));
		expect(screen.queryByRole('region', { name: /The line stands at full/ })).toBeNull();
	});
	test('the warning goes when the plunger is pushed back to the seal', async () => {
		const run = new TestRun(caseOf()).upTo('fill');
		show(run);
		await fillByTheLine(run);
		for (let i = 0; i < 17; i++) await fireEvent.keyDown(button(/^Plunger/), { key: 'ArrowDown' });
		expect(screen.queryByRole('region', { name: /The line stands at full/ })).toBeNull();
		expect(screen.queryByText(/Read by the seal/)).toBeNull();
	});
	test('the silent coach says nothing of it', async () => {
		const run = new TestRun(caseOf(), 'silent').upTo('fill');
		show(run);
		await fillByTheLine(run);
		expect(screen.queryByText(/line stands at full/i)).toBeNull();
	});
});

describe('drops', () => {
	test('holding Space lets a drop form, letting go stops; S swirls, T touches off', async () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		await key('Space');
		run.time += 700;
		await key('Space', 'keyUp');
		await key('KeyS');
		run.time += 1000;
		await key('KeyS', 'keyUp');
		await key('KeyT');
		expect(run.deeds.slice(-5)).toEqual([
			'flow.start',
			'flow.stop',
			'swirl.start',
			'swirl.stop',
			'tip.touchOff'
		]);
		expect(run.titration.bench.drops.length).toBe(2);
	});
	test('a repeated key event is still one hold', async () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		await key('Space');
		await fireEvent.keyDown(document.body, { code: 'Space', repeat: true });
		expect(run.deeds.filter((deed) => deed === 'flow.start')).toHaveLength(1);
	});
	test('keys switched off do nothing; the pad still works when it has the focus', async () => {
		localStorage.setItem('halfdrop.bench', JSON.stringify({ keysOn: false }));
		const run = new TestRun(caseOf()).upTo('titrate');
		const before = run.deeds.length;
		show(run);
		await key('Space');
		await key('KeyS');
		await key('Enter');
		expect(run.deeds.length).toBe(before);
		expect(run.said).not.toContain('colour.stayed');
		await fireEvent.keyDown(button(/let a drop form/), { code: 'Space', key: ' ' });
		expect(run.deeds.at(-1)).toBe('flow.start');
	});
	test('a press without a hold, as from a switch, gives one whole drop', async () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		await fireEvent.click(button(/let a drop form/));
		expect(run.deeds.at(-1)).toBe('flow.give');
	});
	test('steady hands: a whole drop, a half, a stream, and swirl by press', async () => {
		localStorage.setItem('halfdrop.bench', JSON.stringify({ steadyHands: true }));
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		await fireEvent.click(button(/A whole drop/));
		run.time += 3000;
		await fireEvent.click(button('Half a drop'));
		run.time += 3000;
		await fireEvent.click(button('A short stream'));
		run.time += 5000;
		await fireEvent.click(button(/^Swirl/));
		run.time += 1000;
		await fireEvent.click(button(/^Stop/));
		expect(run.deeds.slice(-5)).toEqual([
			'flow.give',
			'flow.give',
			'flow.give',
			'swirl.start',
			'swirl.stop'
		]);
	});
	test('“It stays” is live from the first moment; the answer is only that it is noted', async () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		await fireEvent.click(button(/It stays/));
		expect(run.said.at(-1)).toBe('colour.stayed');
		expect(screen.getByText('Noted.').parentElement).toHaveTextContent('Noted. Read the scale.');
		await fireEvent.click(button(/It did not stay/));
		expect(button(/let a drop form/)).toBeInTheDocument();
	});
	test('a look is told in words, and only when asked for', async () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		const words = () => document.querySelector('.words')?.textContent;
		expect(words()).toBe('');
		await key('KeyL');
		expect(words()).toBe('Teal.');
		run.time += 500;
		await key('KeyL');
		expect(words()).toContain('Same as before');
	});
	test('lamp, comparison vial and refill are at hand', async () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		await fireEvent.click(button('Red'));
		expect(button('Red')).toHaveAttribute('aria-pressed', 'true');
		await fireEvent.click(button(/Compare/));
		expect(run.titration.bench.comparison).not.toBeNull();
		await fireEvent.click(button('Refill'));
		expect(button('Dip in titrant')).toBeInTheDocument();
		await fireEvent.click(button('Back to the vial'));
		expect(button(/let a drop form/)).toBeInTheDocument();
	});
});

describe('reading', () => {
	test('nothing is filled in; what is wrong is said beside the field and nothing is lost', async () => {
		const user = userEvent.setup();
		const run = new TestRun(caseOf()).upTo('read');
		show(run);
		const seal = screen.getByLabelText(/The seal stands at/);
		expect(seal).toHaveValue('');
		await user.type(seal, '0.4.2');
		await user.click(button('That is my reading'));
		expect(seal).toHaveValue('0.4.2');
		expect(seal).toHaveAccessibleDescription(/more than a decimal sign/);
		expect(run.said).not.toContain('marks.read');
		await user.clear(seal);
		await user.type(seal, '0,42');
		await user.click(button('That is my reading'));
		expect(run.said.at(-1)).toBe('marks.read');
		const table = screen.getByRole('table', { name: 'Table of the leaflet' });
		expect(within(table).getAllByRole('row').length).toBeGreaterThanOrEqual(2);
		await user.click(button('Back to the mark'));
		expect(screen.getByLabelText(/The seal stands at/)).toBeInTheDocument();
	});
	test('the value is typed by the learner and ends the titration', async () => {
		const user = userEvent.setup();
		const run = new TestRun(caseOf()).upTo('read');
		show(run);
		await user.type(screen.getByLabelText(/The seal stands at/), '0.42');
		await user.click(button('That is my reading'));
		await user.click(button('That is my value'));
		expect(screen.getByLabelText(/Value, dKH/)).toHaveAccessibleDescription(/Type the value/);
		await user.type(screen.getByLabelText(/Value, dKH/), '8,9');
		await user.click(button('That is my value'));
		expect(run.said).toContain('value.reported');
		expect(run.titration.walk.matches('valued')).toBe(true);
	});
	test('no digits of the mark stand anywhere until they are typed', () => {
		const run = new TestRun(caseOf()).upTo('read');
		const { delivery } = run.titration.bench;
		show(run);
		const mark = delivery.by === 'syringe' ? delivery.syringe.sealMl.toFixed(2) : '';
		expect(mark).toMatch(/^0\.\d\d$/);
		expect(document.body.textContent).not.toContain(mark);
		expect(document.body.innerHTML).not.toMatch(/aria-valuenow/);
	});
});

describe('two truths that look alike', () => {
	/** All that a screen reader can come by: text and every attribute outside the picture. */
	function accessibleTree(page: HTMLElement): string {
		const copy = page.cloneNode(true) as HTMLElement;
		for (const picture of copy.querySelectorAll('svg[aria-hidden="true"]')) picture.remove();
		return copy.innerHTML;
	}
	async function treesOf(alkalinityDkh: number): Promise<string[]> {
		const run = new TestRun(
			caseOf({
				truth: { water: { alkalinityDkh } },
				verdict: alkalinityDkh > 8.5 ? 'stands' : 'waterChanged',
				reveal: `It was ${alkalinityDkh}.`
			})
		).upTo('titrate');
		const { unmount, container } = show(run);
		const trees = [accessibleTree(container)];
		for (let i = 0; i < 4; i++) {
			await key('Space');
			run.time += 1300;
			await key('Space', 'keyUp');
			await key('KeyS');
			run.time += 3000;
			await key('KeyS', 'keyUp');
			await key('KeyL');
			trees.push(accessibleTree(container));
		}
		await key('Enter');
		trees.push(accessibleTree(container));
		unmount();
		return trees;
	}
	test('give byte-identical pages to whoever does not see the picture', async () => {
		const one = await treesOf(8.2);
		const other = await treesOf(9);
		expect(other).toEqual(one);
		expect(one[1]).toContain('Teal');
	});
});

describe('nobody is there any more', () => {
	test('what was held is let go when the window loses the focus', async () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		show(run);
		await key('Space');
		await key('KeyS');
		run.time += 400;
		await fireEvent.blur(window);
		expect(run.titration.bench.flow).toBeNull();
		expect(run.titration.bench.swirlStartedAt).toBeNull();
	});
	test('a page that was killed in the middle of a hold comes back with nothing flowing', () => {
		const run = new TestRun(caseOf()).upTo('titrate');
		run.act({ type: 'flow.start' });
		run.act({ type: 'swirl.start' });
		show(run);
		expect(run.titration.bench.flow).toBeNull();
		expect(run.titration.bench.swirlStartedAt).toBeNull();
	});
	test('a step that is over hands the focus to the name of the next', async () => {
		const user = userEvent.setup();
		const run = new TestRun(caseOf());
		show(run);
		button('Next').focus();
		await user.keyboard('{Enter}');
		expect(screen.getByRole('heading', { level: 1 })).toHaveFocus();
	});
});

describe('a check on another water', () => {
	test('says what is on the bench', async () => {
		const run = new TestRun(
			caseOf({
				checks: [
					{
						check: 'reference',
						minutes: 12,
						label: 'bicarbonate in purified water',
						nominal: 8,
						nominalExpandedUncertainty: 0.1,
						water: { matrix: 'purified', salinity: 0, alkalinityDkh: 8, ph: 8.2 }
					}
				]
			})
		).upTo('read');
		run.say({ type: 'marks.read', marks: { sealMl: 0.42 } });
		run.say({ type: 'value.reported', value: 8.9, unit: 'dKH' });
		run.say({ type: 'step.done', stepId: 'read' });
		run.inquire({ type: 'reading.given' });
		run.inquire({ type: 'check.begun', check: 'reference', titration: 1 });
		expect(run.titration.number).toBe(1);
		show(run);
		expect(screen.getByText(/In place of tank water: bicarbonate/)).toBeInTheDocument();
		await fireEvent.click(button('Next'));
		expect(button('the solution')).toBeInTheDocument();
	});
});
