import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { lineThrough } from '../../../src/lib/ui/compare/line';
import { CompareForm } from '../../../src/lib/ui/compare/compare-form.svelte';
import CompareScreen from '../../../src/lib/ui/compare/CompareScreen.svelte';
import type { KeptPairs } from '../../../src/lib/ui/compare/kept-pairs';
import { chanceOf } from '../../studies/chance';
import flows from '../../reference/data/bland-altman-1986.json';

beforeEach(() => localStorage.clear());
afterEach(() => localStorage.clear());

function shown(blanks: Record<string, string> = {}, kept: KeptPairs[] = []) {
	const form = new CompareForm(() => 'dKH');
	for (const [name, text] of Object.entries(blanks)) form.set(name, text);
	const { unmount } = render(CompareScreen, { form, kept, solutionHref: '#solution' });
	return { form, unmount, user: userEvent.setup() };
}
const clean = (text: string | null) => (text ?? '').replace(/\s+/gu, ' ').trim();
const text = (id: string) => clean(screen.getByTestId(id).textContent);
/** What stands in a row of the figures of a part: value and standard error. */
async function figure(user: ReturnType<typeof userEvent.setup>, of: string, name: string | RegExp) {
	for (const summary of screen.getAllByText('Figures to work it out again'))
		if (!summary.closest('details')!.open) await user.click(summary);
	const table = screen.getByRole('table', { name: new RegExp(`^Figures of ${of}`, 'u') });
	const row = within(table).getByRole('rowheader', { name }).closest('tr')!;
	return [...row.querySelectorAll('td')].map((cell) => clean(cell.textContent));
}
const lines = (own: readonly number[], other: readonly number[]) =>
	own.map((each, i) => `${each} ${other[i]}`).join('\n');
const part = (name: string) => screen.getByRole('region', { name });

// Source: Bland and Altman 1986 (Lancet i:307), first readings, large less mini meter: bias −2.1, s 38.8,
// standard error 9.4, bias from −22.0 to 17.8. Limits at 1.96 s: −78.1 and 73.9 (computed with another
// program; the paper takes 2 s).
describe('peak flow of seventeen people by two meters', () => {
	const pasted = lines(
		flows.large.map(([first = 0]) => first),
		flows.mini.map(([first = 0]) => first)
	);
	test('bias, its ± and limits are the published ones, with the digits that the ± allows', () => {
		shown({ pairs: pasted });
		expect(text('mean-difference')).toBe('−2 ± 20 dKH');
		const differ = part('How they differ');
		expect(differ).toHaveTextContent('no lasting difference shows');
		expect(differ).toHaveTextContent('from 22 lower to 18 higher');
		expect(differ).toHaveTextContent('something between −78 and +74');
		expect(differ).toHaveTextContent('A first impression: from 17 samples');
	});
	test('and so are the figures behind it', async () => {
		const { user } = shown({ pairs: pasted });
		expect(await figure(user, 'the differences', 'Mean difference')).toEqual(['−2.12', '9.40']);
		expect(await figure(user, 'the differences', 'Standard deviation')).toEqual(['38.8', '']);
		expect((await figure(user, 'the differences', /^Lower limit/u))[0]).toBe('−78.1');
		expect((await figure(user, 'the differences', /^Upper limit/u))[0]).toBe('73.9');
	});
	test('the picture has a table of every mean and difference', async () => {
		const { user } = shown({ pairs: pasted });
		await user.click(screen.getAllByText('The same as a table')[0]!);
		const rows = within(screen.getByRole('table', { name: /their mean and their difference/u }));
		expect(rows.getAllByRole('row')).toHaveLength(18);
		// The first pair, 494 and 512: mean 503, difference −18.
		expect(rows.getAllByRole('row')[1]).toHaveTextContent(/^1\s*494\s*512\s*503\s*−18$/u);
	});
});

// By hand: differences −0.2, −0.4, −0.4, mean −0.3333, s 0.11547, ± 4.3027 · s / √3 = 0.2868.
test('a difference that is clear is not said to begin at nothing', () => {
	shown({ pairs: '8 8.2\n7,5 7.9\n9 9.4' });
	const differ = part('How they differ');
	expect(differ).toHaveTextContent('your kit reads lower');
	expect(differ).toHaveTextContent('in this range: by 0.05 to 0.62.');
});

// Source: Harvey, Analytical Chemistry 2.1, example 4.21: eleven differences, mean 2.25, s 5.63, no
// significant difference. Only the differences matter, so they are typed on top of 100.
test('paired differences of the textbook', async () => {
	const differences = [2.8, 1.4, -3.0, 6.0, -6.6, -0.5, 9.7, 12.7, -1.6, 4.0, -0.2];
	const { user } = shown({
		pairs: differences.map((each) => `${(100 + each).toFixed(1)}\t100`).join('\n')
	});
	expect((await figure(user, 'the differences', 'Mean difference'))[0]).toBe('2.25');
	expect(await figure(user, 'the differences', 'Standard deviation')).toEqual(['5.63', '']);
	// Unrounded t and p: computed with another program, 1.3225 and 0.2155.
	expect((await figure(user, 'the differences', /^t, 10/u))[0]).toBe('1.322');
	expect((await figure(user, 'the differences', 'p'))[0]).toBe('0.2155');
	expect(part('How they differ')).toHaveTextContent('no lasting difference shows');
});

// Source: ten pairs in the documentation of several programs, y against x with a variance ratio of 4 (x
// over y): intercept −0.08974, slope 1.00119. Standard errors by jackknife: computed with another program,
// 1.72199 and 0.187177; t for 8 degrees of freedom 2.306 (printed tables).
test('the line of the ten pairs of the handbooks, with scatter of 1 and 2', async () => {
	const other = [7, 8.3, 10.5, 9, 5.1, 8.2, 10.2, 10.3, 7.1, 5.9];
	const own = [7.9, 8.2, 9.6, 9, 6.5, 7.3, 10.2, 10.6, 6.3, 5.2];
	const { user, form } = shown({ pairs: lines(own, other) });
	// Both alike: 0.3909 and 0.9423, computed with another program.
	expect((await figure(user, 'the line', 'Offset'))[0]).toBe('0.39');
	expect((await figure(user, 'the line', 'Slope'))[0]).toMatch(/^0\.942/u);
	await user.click(screen.getByText('If one scatters more than the other'));
	await user.type(screen.getByLabelText('Scatter of your kit'), '1');
	await user.type(screen.getByLabelText('Scatter of the other'), '2');
	expect(form.scatter).toEqual({ own: 1, other: 2 });
	expect(await figure(user, 'the line', 'Offset')).toEqual(['−0.09', '1.72']);
	expect(await figure(user, 'the line', 'Slope')).toEqual(['1.001', '0.187']);
	expect(text('offset')).toBe('0 ± 4 dKH');
	expect(text('slope')).toBe('1.0 ± 0.4');
	expect(part('The line through both')).toHaveTextContent(
		'Known too badly to read a cause from it'
	);
});

// Data: Pearson 1901; weights: York 1966. Source: Cantrell 2008 (Atmos. Chem. Phys. 8:5477): 5.479910224
// and −0.480533407; standard errors after York et al. 2004, 0.295 and 0.058.
test('York’s line where every sample has both ±', async () => {
	const xs = [0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
	const ys = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
	const weightsX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
	const weightsY = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];
	const plusMinus = (weight = Number.NaN) => (2 / Math.sqrt(weight)).toFixed(9);
	const { user } = shown({
		pairs: xs
			.map((x, i) => `${ys[i]} ± ${plusMinus(weightsY[i])}; ${x} ± ${plusMinus(weightsX[i])}`)
			.join('\n')
	});
	expect(await figure(user, 'the line', 'Offset')).toEqual(['5.480', '0.295']);
	expect(await figure(user, 'the line', 'Slope')).toEqual(['−0.4805', '0.0580']);
	// 1.96 standard errors: 0.578 and 0.114.
	expect(text('offset')).toBe('5.5 ± 0.6 dKH');
	expect(text('slope')).toBe('−0.48 ± 0.11');
	const line = part('The line through both');
	expect(line).toHaveTextContent('Each sample counts by its own ±');
	// χ² 11.87 is below its limit of 15.507, so nothing was widened.
	expect(line).not.toHaveTextContent('farther off the line than their ± allow');
});

// Source: Cardone's data as in Harvey, Analytical Chemistry 2.1, section 5.5: 0.009844 W + 0.185 (weights
// from memory).
test('the blank of the textbook', async () => {
	const { user } = shown({ portions: '62.4746 0.800\n82.7915 1.000\n103.1085 1.200' });
	const [intercept] = await figure(user, 'the portions', 'Intercept');
	expect(intercept).toBe('0.185000');
	expect((await figure(user, 'the portions', 'Slope, for each mL'))[0]).toMatch(/^0\.00984/u);
	expect(text('blank')).toMatch(/^0\.185 ± 0\.01\d mL$/u);
	const said = part('What is in the blank');
	// 0.185 of 0.8 and of 1.2.
	expect(said).toHaveTextContent('23 % of what the smallest portion used, and 15 % of the largest');
	expect(said).toHaveTextContent('3 portions are few');
});

// Constructed; computed with another program: 0.8721 ± 0.264 (0.6081 to 1.1360), standard error 0.0829.
test('a blank of nearly one drop', async () => {
	const { user } = shown({ portions: '2\t4,9\n4\t8,9\n5\t11,1\n8\t17,0\n10\t21,1' });
	await user.click(screen.getByLabelText('drops'));
	expect(text('blank')).toBe('0.9 ± 0.3 drops');
	expect(await figure(user, 'the portions', 'Intercept')).toEqual(['0.8721', '0.0829']);
	expect(await figure(user, 'the portions', 'Slope, for each mL')).toEqual(['2.0221', '0.0128']);
	expect(part('What is in the blank')).toHaveTextContent('That is what is in the blank');
});

// Source: ISO 13528, E_n and zeta; by hand: −0.5/√(0.4² + 0.3²) = −1.00, twice that over standard
// uncertainties; −0.9/0.5 = −1.80.
test('E_n and zeta of samples with both ±', () => {
	shown({ pairs: '7,4 ± 0,4; 7,9 ± 0,3\n7.0 7.9 0.4 0.3' });
	const differ = part('How they differ');
	expect(differ).toHaveTextContent('On 1 of 2 samples the two differ by more than both claim');
	const [first, second] = within(differ)
		.getAllByRole('listitem')
		.map((item) => clean(item.textContent));
	expect(first).toBe('1: 7.4 ± 0.4 and 7.9 ± 0.3: within both ± En −1.00, zeta −2.0');
	expect(second).toBe('2: 7.0 ± 0.4 and 7.9 ± 0.3: far more than both ± allow En −1.80, zeta −3.6');
});

describe('the fewer samples, the less is said', () => {
	test('none, one, and one with both ±', () => {
		const { unmount } = shown();
		expect(screen.queryByTestId('mean-difference')).toBeNull();
		expect(part('How they differ')).toHaveTextContent(/Nothing yet/u);
		unmount();
		localStorage.clear();
		const one = shown({ pairs: '7.4 7.9' });
		expect(text('mean-difference')).toBe('−0.5 dKH');
		expect(part('How they differ')).toHaveTextContent('cannot tell what lasts from what is chance');
		one.unmount();
		localStorage.clear();
		shown({ pairs: '7.4±0.4 7.9±0.3' });
		expect(text('mean-difference')).toBe('−0.5 ± 0.5 dKH');
		expect(part('How they differ')).toHaveTextContent('does not make either right');
	});
	// t(0.975)/√n: 8.98 for two, 0.715 for ten (computed with another program).
	test('two say next to nothing, and no line is drawn', () => {
		shown({ pairs: '7.4 7.9\n8.2 8.4' });
		expect(part('How they differ')).toHaveTextContent('the ± is 9 times the scatter');
		expect(part('How they differ')).toHaveTextContent('From ten samples it is 0.7 times');
		expect(part('The line through both')).toHaveTextContent('From three samples on a line');
		expect(screen.queryByTestId('slope')).toBeNull();
	});
	test('differences that are all alike are known to the last digit only', () => {
		shown({ pairs: '7.4 7.9\n8.0 8.5\n8.4 8.9' });
		// √2 · 0.1/√12 over √3, times t = 4.303 for two degrees of freedom: 0.10.
		expect(text('mean-difference')).toBe('−0.50 ± 0.10 dKH');
		expect(part('How they differ')).toHaveTextContent('what that digit can hide');
		expect(screen.getByTestId('slope').textContent).not.toMatch(/±\s*0\.?0*\s*$/u);
	});
	test('samples that all hold the same give no line', () => {
		shown({ pairs: '7.4 7.9\n7.5 7.9\n7.3 7.9' });
		expect(part('The line through both')).toHaveTextContent('All samples hold about the same');
	});
});

describe('an offset and a slope point to different causes', () => {
	const other = [4, 5, 6, 7, 8, 9, 10, 11, 12, 13];
	const off = [0.05, -0.05, 0.02, -0.04, 0.05, 0, -0.05, 0.04, -0.02, 0.03];
	const at = (read: (value: number) => number) =>
		other.map((x, i) => `${(read(x) + (off[i] ?? 0)).toFixed(2)} ${x.toFixed(2)}`).join('\n');
	test('the same amount everywhere: what is the same in every test', () => {
		shown({ pairs: at((x) => x + 0.6) });
		const line = part('The line through both');
		expect(line).toHaveTextContent('more by the same amount');
		expect(line).toHaveTextContent('a drop too many');
		expect(line).not.toHaveTextContent('in proportion, by');
	});
	test('in proportion: what multiplies', () => {
		shown({ pairs: at((x) => 0.9 * x) });
		const line = part('The line through both');
		expect(line).toHaveTextContent(/less in proportion, by 1\d(\.\d)?\s±\s\d(\.\d)? %/u);
		expect(line).toHaveTextContent('strength of the titrant');
		expect(line).not.toHaveTextContent('by the same amount, whatever');
	});
});

// Nothing is wrong, and both scatter by 0.2 dKH: a cause may be read by chance in one case of 20 for each of
// the two numbers, which always come together here; 0.08 leaves room for the chance of 1,000 draws.
test.each([
	{ from: 7.9, to: 7.95, n: 10 },
	{ from: 7.6, to: 8.2, n: 20 },
	{ from: 4, to: 12, n: 5 },
	{ from: 4, to: 12, n: 20 }
])('$n samples between $from and $to with nothing wrong hardly ever point to a cause', (of) => {
	const { normal } = chanceOf(of.n);
	const draws = 1000;
	let pointing = 0;
	for (let draw = 0; draw < draws; draw++) {
		const pairs = Array.from({ length: of.n }, (_, i) => {
			const truth = of.from + ((of.to - of.from) * (i + 0.5)) / of.n;
			return { own: truth + 0.2 * normal(), other: truth + 0.2 * normal(), lineNumber: i + 1 };
		});
		const line = lineThrough({ pairs, problems: [], ownStep: 0.01, otherStep: 0.01 }, null)!;
		if (!line.isTooWide && (line.slope.isClear || line.offset.isClear)) pointing++;
	}
	expect(pointing / draws).toBeLessThan(0.08);
});

describe('typing', () => {
	test('one sample after the other, with comma or point; what cannot be is said and stays', async () => {
		const { form, user } = shown();
		const blank = (name: string) => screen.getByLabelText(name);
		await user.type(blank('Your kit'), '7,4');
		await user.type(blank('± of it'), '0,4');
		await user.type(blank('The other'), '7.9');
		await user.click(screen.getByRole('button', { name: 'Add sample' }));
		expect(form.text('pairs')).toBe('7,4 ± 0,4; 7.9');
		expect(blank('Your kit')).toHaveFocus();
		expect(blank('Your kit')).toHaveValue('');
		await user.type(blank('Your kit'), '8.1{Enter}');
		expect(screen.getByText('Type both values of the sample.')).toBeVisible();
		await user.type(blank('The other'), 'eight{Enter}');
		expect(screen.getByText(/“eight” is no number/u)).toBeVisible();
		expect(blank('The other')).toHaveValue('eight');
		expect(form.comparison.pairs).toHaveLength(1);
	});
	test.each([
		['7.4', 'Only one value was found'],
		['7,4,7,9', 'It cannot be told which comma'],
		['7.4 7.9 0.4', 'In four columns'],
		['7.4 0.4 7.9 0.3', 'In four columns'],
		['7.4 ± 0; 7.9', 'A ± lies above 0'],
		['-7.4 7.9', 'A value lies between 0 and 10 000'],
		['7.4 dKH 7.9 dKH', 'columns were found|is no number']
	])('the line “%s” is named with what is wrong, and nothing is lost', (line, why) => {
		const { form } = shown({ pairs: `own\tother\n8.0\t8.1\n${line}` });
		const item = screen.getByText(/^Line 3/u);
		expect(item.textContent).toMatch(new RegExp(why, 'u'));
		expect(screen.getByLabelText(/paste all of them/u)).toHaveValue(
			`own\tother\n8.0\t8.1\n${line}`
		);
		expect(form.comparison.pairs).toHaveLength(1);
	});
	test('is there on the next visit, in the unit of that day', () => {
		const { unmount } = shown({ pairs: '7.4 7.9' });
		unmount();
		const again = new CompareForm(() => 'meq/L');
		expect(again.kept.isAsLeft).toBe(true);
		expect(again.unit).toBe('dKH');
		expect(again.comparison.pairs).toHaveLength(1);
	});
	test('samples of kept checks are put in once', async () => {
		const kept = [
			{ name: 'Kit A and a photometer', lines: ['7.4 ± 0.4; 7.9 ± 0.3', '8.0 ± 0.4; 8.3 ± 0.3'] }
		];
		const { form, user } = shown({ pairs: '9.0 9.1' }, kept);
		await user.click(screen.getByRole('button', { name: 'Put them in the list' }));
		expect(form.text('pairs')).toBe('9.0 9.1\n7.4 ± 0.4; 7.9 ± 0.3\n8.0 ± 0.4; 8.3 ± 0.3');
		expect(screen.queryByRole('button', { name: 'Put them in the list' })).toBeNull();
		expect(screen.getByText('In the list.')).toBeVisible();
	});
});

// Source: ISO 5725-6:1994, 5.2 (from memory), worked through by hand with s_r = 0.1: r = 0.28, CR(4) = 0.36.
describe('repeats of one sample', () => {
	test.each([
		['8.1 8.3', 'Their mean is the value to compare', '8.20'],
		['8,1 8,5', 'Measure it twice more', null],
		['8.1 8.45 8.3 8.27', 'Their mean is the value to compare', '8.28'],
		['8.0 8.5 8.2 8.1', 'The middle one stands in for the mean', '8.15']
	])('%s: %s', (repeats, words, value) => {
		shown({ repeats, usualSd: '0.1' });
		expect(part('Repeats of one sample')).toHaveTextContent(words);
		// Digits follow ± 0.14 and ± 0.10: two decimals.
		expect(screen.queryByTestId('of-repeats')?.textContent?.trim() ?? null).toBe(
			value === null ? null : `${value} dKH`
		);
	});
});

describe('what was typed belongs to what was measured', () => {
	const dkhPairs = '7.4 ± 0.4; 7.9 ± 0.3\n8.1 ± 0.4; 8.4 ± 0.3';
	test('pairs of another analyte are not relabelled, and come back', async () => {
		const { user, form } = shown({ pairs: dkhPairs, usualSd: '0.1', repeats: '7.4 7.5' });
		expect(text('mean-difference')).toMatch(/dKH$/u);
		await user.click(screen.getByLabelText('calcium'));
		expect(screen.queryByTestId('mean-difference')).toBeNull();
		expect(screen.getByLabelText(/paste all of them/u)).toHaveValue('');
		expect(screen.getByLabelText('All values of one sample')).toHaveValue('');
		await user.type(screen.getByLabelText('Your kit'), '420');
		await user.type(screen.getByLabelText('The other'), '431');
		await user.click(screen.getByRole('button', { name: 'Add sample' }));
		expect(text('mean-difference')).toMatch(/mg\/L$/u);
		await user.click(screen.getByLabelText('alkalinity'));
		expect(screen.getByLabelText(/paste all of them/u)).toHaveValue(dkhPairs);
		expect(screen.getByLabelText('All values of one sample')).toHaveValue('7.4 7.5');
		expect(form.unit).toBe('dKH');
		await user.click(screen.getByLabelText('calcium'));
		expect(screen.getByLabelText(/paste all of them/u)).toHaveValue('420; 431');
	});
	test('what was kept before each had its own goes to the one in whose unit it was typed', () => {
		const before = { analyte: 'calcium', unit: 'dKH', pairs: dkhPairs };
		localStorage.setItem('halfdrop.compare', JSON.stringify(before));
		const form = new CompareForm(() => 'dKH');
		expect(form.analyte).toBe('calcium');
		expect(form.text('pairs')).toBe('');
		form.set('analyte', 'alkalinity');
		expect(form.text('pairs')).toBe(dkhPairs);
		expect(form.unit).toBe('dKH');
	});
});

test('of repeats that do not agree the one that stands apart is named, with its digits', () => {
	const { unmount } = shown({ repeats: '7.2 7.4 7.3 9.0 7.3', usualSd: '0.1' });
	expect(text('of-repeats')).toBe('7.30 dKH');
	const repeats = part('Repeats of one sample');
	expect(repeats).toHaveTextContent('9.0 stands apart; the others agree.');
	expect(repeats).toHaveTextContent('Look for what went wrong with 9.0.');
	unmount();
	localStorage.clear();
	shown({ repeats: '7.2 8.4 7.3 9.0 7.3', usualSd: '0.1' });
	expect(part('Repeats of one sample')).toHaveTextContent('No single one explains it');
	expect(part('Repeats of one sample')).not.toHaveTextContent('stands apart');
});
