import { cleanup, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, test } from 'vitest';
import DecisionScreen from '../../../src/lib/ui/decision/DecisionScreen.svelte';
import ReportScreen from '../../../src/lib/ui/decision/ReportScreen.svelte';
import { draftOfMeans } from '../../../src/lib/ui/decision/means-form';
import { correctionFields } from '../../../src/lib/ui/decision/tank-fields';
import { keepUnfinished, unfinishedIn } from '../../../src/lib/ui/decision/unfinished';
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
/** Where the blanks of a correction are kept. */
const waterPart = (run: MadeRun) =>
	correctionFields('dKH', run.log.analyte)
		.map(({ name, unit }) => `${name} ${unit ?? ''}`)
		.join();
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
	test('a number that was not left yet is taken when the page comes anew: the plan is of it', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		run.describeTank({ ...run.state.tank, waterL: 200 });
		keepUnfinished(run.log.id, waterPart(run), { waterL: '20' });
		load(run);
		expect(blank('Water in all')).toHaveValue('20');
		expect(run.state.tank.waterL).toBe(20);
		expect(unfinishedIn(run.log.id, waterPart(run))).toEqual({});
		await user.clear(blank('Water in all'));
		await user.type(blank('Water in all'), '30');
		expect(run.state.tank.waterL).toBe(20);
		load(run);
		expect(run.state.tank.waterL).toBe(30);
	});
	test('beside one that cannot be taken the report has no plan either, and says so', () => {
		const run = adjusting();
		run.describeTank({ ...run.state.tank, target: 7.9, waterL: 200 });
		run.chooseMeans({ by: 'bicarbonate', purity: 0.99 });
		const report = () => {
			cleanup();
			const onsave = () => undefined;
			render(ReportScreen, { run, catalogue, decisionHref: '#', onsave });
			return document.body.textContent ?? '';
		};
		expect(report()).toContain('Day by day');
		keepUnfinished(run.log.id, waterPart(run), { waterExpandedUncertaintyL: '150' });
		expect(report()).not.toContain('Day by day');
		expect(report()).toContain('What stands at “Give or take” cannot be taken as it is.');
	});
	test('a number that cannot be takes the one before it away, and says why', () => {
		const run = adjusting();
		run.describeTank({ ...run.state.tank, waterL: 200 });
		keepUnfinished(run.log.id, waterPart(run), { waterL: '0' });
		load(run);
		expect(blank('Water in all')).toHaveValue('0');
		expect(blank('Water in all')).toBeInvalid();
		expect(run.state.tank.waterL).toBeUndefined();
	});
	test('salinity and band, each with the others as they were', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		load(run);
		await user.clear(blank('Salinity'));
		await user.type(blank('Salinity'), '34');
		await user.type(blank('You want it no lower than'), '7.5');
		await user.type(blank('And no higher than'), '8.5');
		load(run);
		expect(run.state.tank).toMatchObject({ salinity: 34, bandLow: 7.5, bandHigh: 8.5 });
	});
	test('the share of a water change that was not left', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		run.chooseMeans({ by: 'waterChange', newValue: 9, share: 0.1 });
		load(run);
		await user.type(blank('Changed in a day, at most'), '5');
		load(run);
		// '10' with a 5 behind it is no share: no plan stands that is not of what is written.
		expect(run.state.means).toBeNull();
		run.chooseMeans({ by: 'waterChange', newValue: 9, share: 0.1 });
		keepUnfinished(run.log.id, 'means', {
			...draftOfMeans(run.state.means),
			sharePercent: '20'
		});
		load(run);
		expect(run.state.means).toEqual({ by: 'waterChange', newValue: 9, share: 0.2 });
	});
	test('a note for the report', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		const note = () => screen.getByLabelText('A note for the report');
		const open = () =>
			render(ReportScreen, { run, catalogue, decisionHref: '#', onsave: () => {} });
		open();
		await user.type(note(), 'New lamp');
		expect(run.state.note ?? '').toBe('');
		expect(unfinishedIn(run.log.id, 'note')).toEqual({ note: 'New lamp' });
		cleanup();
		open();
		expect(note()).toHaveValue('New lamp');
		expect(run.state.note).toBe('New lamp');
		expect(unfinishedIn(run.log.id, 'note')).toEqual({});
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
