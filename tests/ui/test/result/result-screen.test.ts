import { cleanup, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { houseBuretteKit, houseDropperKit } from '../../../../src/lib/kits';
import { PlayedTank } from '../../played-tank.svelte';
import { button, field, headline, section, showResult, testOf, titrate, words } from './result-dom';

afterEach(cleanup);

describe('the value', () => {
	it('is what the leaflet makes of the marks, with its ± and what that means', () => {
		showResult(testOf([0.52]));
		// 16 dKH for each mL, less 0.3: 0.48 mL make 7.38.
		expect(headline()).toMatch(/^7\.4 ± 0\.\d dKH$/);
		const band = Number(/± ([\d.]+)/.exec(headline())?.[1]);
		expect(words()).toContain(
			`between ${(7.4 - band).toFixed(1)} and ${(7.4 + band).toFixed(1)}: about 95 in 100`
		);
	});

	it.each([
		// 0.6 for each of 14 drops, less 0.45; 2.3 for each of 3.37 mL, less 0.19.
		[houseDropperKit, { drops: 14 }, /^(7\.9|8\.0) ± \d\.\d dKH$/],
		[houseBuretteKit, { levelMl: 3.37 }, /^7\.6 ± \d\.\d dKH$/]
	])('also by drops and by a burette', (kit, marks, line) => {
		showResult(titrate(new PlayedTank({ kit }), marks));
		expect(headline()).toMatch(line);
	});

	it('is told in the unit of the person, and in all others', async () => {
		const run = testOf([0.52]);
		const expanded = run.result?.expandedUncertainty ?? Number.NaN;
		// 1 dKH is the alkalinity of 10 mg of CaO in a litre (the unit's definition); molar masses of CaO
		// and CaCO3 by IUPAC's atomic weights: 56.077 and 100.086 g/mol.
		const meqPerL = (2 * 10) / 56.077;
		const ppmCaCO3 = (10 * 100.086) / 56.077;
		showResult(run, { unit: 'ppm CaCO3' });
		expect(headline()).toBe(
			`${(7.38 * ppmCaCO3).toFixed(0)} ± ${(expanded * ppmCaCO3).toFixed(0)} ppm CaCO₃`
		);
		await userEvent.click(screen.getByText('In other units'));
		const cells = screen.getAllByRole('row').map(({ textContent }) => textContent);
		const asMeq = new RegExp(`^${(7.38 * meqPerL).toFixed(1)}\\d? ± 0\\.\\d+ *meq/L$`);
		expect(cells).toContainEqual(expect.stringMatching(asMeq));
		expect(cells).toContainEqual(expect.stringMatching(/^7\.4 ± 0\.\d *dKH$/));
	});

	it('that is missing is not made up: what is missing is said, and can be corrected', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank();
		run.goOnTo('fill').say({ type: 'titrant.drawn', sealMl: 1 });
		run.goOnTo('titrate').say({ type: 'titrant.fell', drops: 40 });
		run.wait(20).say({ type: 'titrant.drawn', sealMl: 1 });
		run.walkThrough({ sealMl: 0.3 });
		showResult(run);
		expect(headline()).toBe('No value yet');
		expect(words()).toContain('The titration has no value that counts.');
		expect(words()).toContain('No value: Nobody noted how much the refill drew in.');
		expect(screen.queryByRole('heading', { name: 'What the ± is made of' })).toBeNull();
		expect(button('Correct a mark')).toBeInTheDocument();
		await user.click(button('Do it again with the same water'));
		expect(run.state.titrations.map(({ purpose }) => purpose)).toEqual(['first', 'repeat']);
	});
});

describe('what the ± is made of', () => {
	const number = (text: string | null | undefined) => Number(/± ([\d.]+)/.exec(text ?? '')?.[1]);

	it('rows add up, as squares, to what they make together; none is larger than that', () => {
		showResult(testOf([0.52]));
		const table = screen.getByRole('table', { name: /What the ± is made of/ });
		const rows = within(table).getAllByRole('row').slice(1);
		const together = number(rows.at(-1)?.textContent);
		const parts = rows.slice(0, -1).map(({ textContent }) => number(textContent));
		expect(parts.length).toBeGreaterThan(2);
		for (const part of parts) expect(part).toBeLessThan(together);
		// Each of them is rounded to 0.01.
		expect(Math.abs(Math.hypot(...parts) - together)).toBeLessThan(0.02);
	});

	it('what would shrink it can be told from what it is now', () => {
		showResult(testOf([0.52]));
		const list = screen.getByRole('heading', { name: 'What would shrink it' }).nextElementSibling;
		const items = [...(list?.children ?? [])].map(({ textContent }) => textContent);
		expect(items[0]).toMatch(/^± \d\.\d\d\s+now$/);
		const sizes = items.map(number);
		expect(items.length).toBeGreaterThan(2);
		for (const size of sizes.slice(1)) expect(size).toBeLessThan(sizes[0] ?? 0);
		expect(items.join()).toContain('with 10 mL of water');
	});

	it('is not told while the repeats do not agree: something else comes first', () => {
		showResult(testOf([0.52, 0.3]));
		expect(screen.queryByRole('heading', { name: 'What would shrink it' })).toBeNull();
		expect(words()).toContain('can be told once the repeats agree');
	});
});

describe('doubt', () => {
	/** The tip went on after the syringe was filled: its volume is missing from the travel. */
	function tipLate(): PlayedTank {
		const run = new PlayedTank().goOnTo('fill');
		run.say({ type: 'titrant.drawn', sealMl: 1, tip: 'off' });
		run.say({ type: 'tip.fitted', liquidInside: true });
		return run.walkThrough({ sealMl: 0.4 });
	}

	it('over a slip says so beside the number, and what was found', () => {
		showResult(tipLate());
		expect(words()).toContain('Check before acting.');
		expect(section('Found on the way')).toMatch(/Look:.*tip/);
	});

	it('over repeats that differ says that', () => {
		showResult(testOf([0.52, 0.3]));
		expect(words()).toContain('Check before acting. The repeats do not agree');
	});

	it('is not raised over a clean test', () => {
		showResult(testOf([0.52, 0.51]));
		expect(words()).not.toContain('Check before acting');
		expect(screen.queryByRole('heading', { name: 'Found on the way' })).toBeNull();
	});

	it('a doubtful value leads to its check first, and nobody to dosing', () => {
		showResult(tipLate(), { checkHref: '/check/#test=t' });
		expect(document.querySelector('a.primary')).toHaveTextContent('Check it');
		expect(document.querySelector('a.primary')).toHaveAttribute('href', '/check/#test=t');
		expect(screen.getByRole('button', { name: 'Done' })).toBeInTheDocument();
		expect(words()).not.toMatch(/\bdos(e|ing)\b|raise|lower your|add more/i);
	});

	it.each([
		['clean', () => testOf([0.52])],
		['three that agree', () => testOf([0.52, 0.51, 0.5])],
		['two that differ', () => testOf([0.52, 0.3])],
		['a slip', tipLate]
	])('nothing is praised or vouched for: %s', (_, run) => {
		showResult(run(), { last: null });
		expect(words()).not.toMatch(
			/(is|are|reading) correct\b|\b(good|bad|reliable) kit|safe dose|well done|perfect|accurate/i
		);
	});
});

describe('kept or not', () => {
	it('done closes the test once, and the log is named', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		const onclose = vi.fn();
		showResult(run, { onclose, logHref: '/log/' });
		expect(screen.queryByText('Kept in the log.')).toBeNull();
		await user.click(button('Done'));
		expect(onclose).toHaveBeenCalledOnce();
		expect(run.state.phase).toBe('closed');
		expect(screen.getByText('Kept in the log.')).toBeInTheDocument();
		expect(screen.getByRole('link', { name: 'See it in the log' })).toHaveAttribute(
			'href',
			'/log/'
		);
		// Nothing is left to do of a repeat, and of one titration nothing is to be compared.
		expect(screen.queryByRole('region', { name: 'A repeat' })).toBeNull();
	});

	it('where the browser keeps nothing, the file is offered', async () => {
		const onsavefile = vi.fn();
		const run = testOf([0.52], { storage: 'memory' });
		showResult(run, { notice: 'This browser keeps nothing.', onsavefile });
		await userEvent.click(button('Save this test as a file'));
		expect(onsavefile).toHaveBeenCalledOnce();
		await userEvent.click(button('Done'));
		expect(screen.queryByText('Kept in the log.')).toBeNull();
	});

	it('where it keeps the test, no file is', () => {
		showResult(testOf([0.52]), { onsavefile: vi.fn() });
		expect(screen.queryByRole('button', { name: /as a file/ })).toBeNull();
	});

	it('a note is written when the field is left', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		showResult(run);
		await user.type(field('What else you want to remember'), 'new bottle ');
		await user.tab();
		expect(run.state.note).toBe('new bottle');
		expect(screen.getByText('Noted.')).toBeInTheDocument();
	});
});
