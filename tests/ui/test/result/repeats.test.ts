import { cleanup, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { houseBuretteKit } from '../../../../src/lib/kits';
import { PlayedTank } from '../../played-tank.svelte';
import {
	button,
	field,
	headline,
	section,
	showResult,
	testOf,
	titrate,
	titration,
	words
} from './result-dom';

afterEach(cleanup);

describe('repeats', () => {
	it('one alone: says what a repeat would bring, and nothing of agreement', () => {
		showResult(testOf([0.52]));
		expect(section('A repeat')).toMatch(
			/A repeat is worth it: it would make ± (\d\.\d\d) instead of ± (\d\.\d\d)/
		);
		expect(section('A repeat')).not.toMatch(/agree|outlier/);
	});

	it('one by a burette: what all repeats share is most of it, so another is not worth it', () => {
		showResult(titrate(new PlayedTank({ kit: houseBuretteKit }), { levelMl: 3.37 }));
		expect(section('A repeat')).toMatch(/not worth the reagent: ± \d\.\d\d at best/);
	});

	it('two that agree: how far they lie apart, and what chance does', () => {
		showResult(testOf([0.52, 0.5]));
		// 0.02 mL at 16 dKH for each.
		expect(section('The repeats')).toMatch(
			/The two lie 0\.32 dKH apart; chance alone stays within 0\.\d\d in 19 of 20 such cases\. They agree\./
		);
		expect(headline()).toMatch(/^7\.5 ±/);
		expect(words()).toContain('From 2 titrations.');
	});

	it('two that do not: one more, and no mean is leant on', () => {
		showResult(testOf([0.52, 0.3]));
		expect(section('The repeats')).toContain(
			'They do not agree: something happened to one of them. Do one more before you trust it.'
		);
		expect(section('The repeats')).toContain('Another is worth it: these do not agree.');
	});

	it('three: an outlier test says next to nothing of them', () => {
		showResult(testOf([0.52, 0.52, 0.5]));
		expect(section('The repeats')).toContain('The three lie at most 0.32 dKH apart');
		expect(section('The repeats')).toContain(
			'An outlier test says next to nothing of three results'
		);
	});

	it('three with one far off: the middle one counts, and none is struck out', () => {
		const run = testOf([0.52, 0.51, 0.2]);
		showResult(run);
		expect(section('The repeats')).toContain('The middle one is taken, not the mean.');
		// 0.49 mL at 16 dKH for each, less 0.3.
		expect(run.result?.value).toBeCloseTo(7.54, 6);
		expect(run.result?.counted).toHaveLength(3);
	});

	it('four with one far off: the middle of them counts, and no more are asked for in vain', () => {
		const run = testOf([0.52, 0.5, 0.3, 0.51]);
		showResult(run);
		const said = section('The repeats');
		expect(said).toContain('The middle of them is taken, not the mean.');
		expect(said).toMatch(/Another hardly helps: ± \d.*Look first for what happened to the one/);
		expect(said).not.toMatch(/same in every repeat/);
		// 0.49 and 0.50 mL lie in the middle: 0.495 at 16 dKH for each, less 0.3.
		expect(run.result?.value).toBeCloseTo(7.62, 6);
		// What these show is no matter of reading or judging alone.
		const budget = section('What the ± is made of');
		expect(budget).toContain('scatter of these repeats');
		expect(budget).not.toMatch(/reading the mark|judging the colour/);
	});

	it('somebody else repeats under a name of their own, or not at all', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		showResult(run);
		await user.click(button(/^Somebody else repeats/));
		await user.click(button('Begin'));
		expect(screen.getByText('Write a name, so that the two can be told apart.')).toBeVisible();
		expect(run.state.titrations).toHaveLength(1);
		await user.type(field('Who repeats?'), 'Ana');
		await user.click(button('Begin'));
		expect(run.titration).toMatchObject({ purpose: 'otherPerson', by: 'Ana' });
	});
});

describe('setting aside', () => {
	it('wants a reason, keeps it in sight, and can be taken back', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52, 0.5]);
		showResult(run);
		await user.click(titration(1).getByRole('button', { name: 'Set aside' }));
		await user.click(button('Set it aside'));
		expect(screen.getByText(/A number that looks odd is no reason/)).toBeVisible();
		expect(run.result?.counted).toHaveLength(2);
		await user.type(field('Why shall it not count?'), 'a drop ran down outside');
		await user.click(button('Set it aside'));
		expect(run.state.titrations[0]?.setAsideBecause).toBe('a drop ran down outside');
		expect(titration(1).getByText('Set aside: a drop ran down outside')).toBeVisible();
		expect(titration(1).getByText('7.4', { selector: 's' })).toBeVisible();
		// 0.5 mL at 16 dKH for each, less 0.3.
		expect(headline()).toMatch(/^7\.7 ±/);
		await user.click(titration(1).getByRole('button', { name: 'Count it again' }));
		expect(run.result?.counted).toHaveLength(2);
		expect(headline()).toMatch(/^7\.5 ±/);
	});

	it('of the only one leaves no value, and the way back', async () => {
		const user = userEvent.setup();
		showResult(testOf([0.52]));
		await user.click(button('Set aside'));
		await user.type(field('Why shall it not count?'), 'wrong water');
		await user.click(button('Set it aside'));
		expect(headline()).toBe('No value yet');
		await user.click(button('Count it again'));
		expect(headline()).toMatch(/^7\.4 ±/);
	});
});

describe('a mark corrected', () => {
	it('changes the value and keeps the old mark in sight', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		showResult(run);
		await user.click(button('Correct a mark'));
		const seal = field('Seal stands at');
		expect(seal).toHaveValue('0.52');
		await user.clear(seal);
		await user.type(seal, '0,42');
		await user.click(button('Put these in their place'));
		expect(titration(1).getByText('You read: seal at 0.42.')).toBeVisible();
		expect(titration(1).getByText('Before it was corrected: seal at 0.52.')).toBeVisible();
		// 0.58 mL at 16 dKH for each, less 0.3: 8.98.
		expect(headline()).toMatch(/^9\.0 ±/);
	});

	it('off the scale is answered beside the field, and nothing changes', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		showResult(run);
		await user.click(button('Correct a mark'));
		await user.clear(field('Seal stands at'));
		await user.type(field('Seal stands at'), '4,2');
		const entries = run.log.entries.length;
		await user.click(button('Put these in their place'));
		expect(field('Seal stands at')).toHaveValue('4,2');
		expect(field('Seal stands at')).toHaveAccessibleDescription(/between 0 and 1\.25; found 4,2/);
		expect(run.log.entries).toHaveLength(entries);
	});

	it('of a filling: the value follows, the old marks stay to be read', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		showResult(run);
		expect(screen.getByText('You filled it to: seal at 1.00.')).toBeInTheDocument();
		await user.click(button('Correct the filling'));
		expect(screen.queryByLabelText(/Drops/)).toBeNull();
		await user.clear(field('Seal stands at'));
		await user.type(field('Seal stands at'), '0,90');
		await user.click(button('Put these in their place'));
		expect(screen.getByText('You filled it to: seal at 0.90.')).toBeInTheDocument();
		expect(screen.getByText('Before it was corrected: seal at 1.00.')).toBeInTheDocument();
		// 0.38 mL at 16 dKH each, less 0.30.
		expect(run.result?.value).toBeCloseTo(5.78, 10);
	});

	it('to what it was is no correction', async () => {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		showResult(run);
		const entries = run.log.entries.length;
		await user.click(button('Correct a mark'));
		await user.click(button('Put these in their place'));
		expect(run.log.entries).toHaveLength(entries);
		expect(words()).not.toContain('Before it was corrected');
	});
});

describe('a second pair of eyes', () => {
	async function read(mark: string) {
		const user = userEvent.setup();
		const run = testOf([0.52]);
		showResult(run);
		await user.click(button('Somebody else reads this glass'));
		const blind = words();
		await user.click(button('That is what I read'));
		expect(screen.getByText('Write who reads.')).toBeVisible();
		expect(run.titration.otherReadings).toEqual([]);
		await user.type(field('Who reads'), 'Ana');
		await user.type(field('Seal stands at'), mark);
		await user.click(button('That is what I read'));
		return { run, blind };
	}

	it('sees nothing of what the first read', async () => {
		const { blind } = await read('0,53');
		expect(blind).toContain('A second pair of eyes');
		expect(blind).not.toMatch(/0\.52|7\.4|±|You read/);
	});

	it('within what two eyes differ by: said, and the value stays', async () => {
		const { run } = await read('0,53');
		// Half a division of 0.02.
		expect(words()).toContain('Ana read, without seeing that: seal at 0.53');
		expect(words()).toContain('0.5 divisions apart: two eyes come no nearer.');
		expect(headline()).toMatch(/^7\.4 ±/);
		expect(run.titration.otherReadings).toEqual([{ by: 'Ana', marks: { sealMl: 0.53 } }]);
	});

	it('beyond it: look together, no mean', async () => {
		await read('0.62');
		expect(words()).toMatch(/5\.0 divisions apart, more than two eyes on one mark differ by/);
		expect(headline()).toMatch(/^7\.4 ±/);
	});
});
