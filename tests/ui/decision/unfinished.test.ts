import { cleanup, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, test } from 'vitest';
import DecisionScreen from '../../../src/lib/ui/decision/DecisionScreen.svelte';
import { madeDiagnosis, normalAt } from '../../judgement/made-diagnosis';
import { catalogue, type MadeRun } from '../conversation/made-run.svelte';
import { decidingRun } from './deciding-run';

beforeEach(() => localStorage.clear());

function adjusting(): MadeRun {
	const run = decidingRun({ diagnosis: madeDiagnosis({ components: normalAt(6.1, 0.15) }) });
	run.seeLivestock('notLooked');
	run.describeTank({ salinity: 35, unit: 'dKH' });
	return run;
}
/** The page as it comes anew: what was told stands in the run, the rest in storage alone. */
function load(run: MadeRun) {
	cleanup();
	render(DecisionScreen, { run, catalogue, checkHref: '#', reportHref: '#' });
}
const blank = (name: string) => screen.getByLabelText<HTMLInputElement>(name);

describe('what was typed and cannot count is there after a reload', () => {
	test('a number with its unit and a band that is none, with their messages', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		load(run);
		await user.type(blank('Water in all'), '200 L{Tab}');
		await user.type(blank('You want it no lower than'), '7x{Tab}');
		load(run);
		expect(blank('Water in all')).toHaveValue('200 L');
		expect(blank('Water in all')).toBeInvalid();
		expect(blank('You want it no lower than')).toHaveValue('7x');
	});
	test('a number that was not left yet', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		load(run);
		await user.type(blank('Water in all'), '20');
		load(run);
		expect(blank('Water in all')).toHaveValue('20');
		expect(run.state.tank.waterL).toBeUndefined();
	});
	test('what counts is kept by the check alone', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		load(run);
		await user.type(blank('Water in all'), '200{Tab}');
		expect(run.state.tank.waterL).toBe(200);
		run.describeTank({ ...run.state.tank, waterL: 180 });
		load(run);
		expect(blank('Water in all')).toHaveValue('180');
	});
	test('a means that lacks its purity, or has one that cannot be', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		load(run);
		await user.click(screen.getByRole('radio', { name: 'Sodium carbonate' }));
		await user.click(screen.getByRole('radio', { name: /without water/i }));
		await user.type(blank('Purity'), '99,x{Tab}');
		load(run);
		expect(screen.getByRole('radio', { name: 'Sodium carbonate' })).toBeChecked();
		expect(blank('Purity')).toHaveValue('99,x');
		expect(blank('Purity')).toBeInvalid();
		await user.clear(blank('Purity'));
		await user.type(blank('Purity'), '99{Tab}');
		expect(run.state.means).toMatchObject({ by: 'carbonate', purity: 0.99 });
		expect(localStorage.getItem('halfdrop.check-drafts') ?? '').not.toContain('99');
	});
});
