import { cleanup, render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { flushSync } from 'svelte';
import { describe, expect, test } from 'vitest';
import { correctionPlan, emergencyPath } from '../../../src/lib/judgement';
import DecisionScreen from '../../../src/lib/ui/decision/DecisionScreen.svelte';
import PlanPart from '../../../src/lib/ui/decision/PlanPart.svelte';
import { madeCheck, madeDiagnosis, normalAt, toAdjust } from '../../judgement/made-diagnosis';
import { catalogue, type MadeRun } from '../conversation/made-run.svelte';
import { decidingRun } from './deciding-run';

function show(run: MadeRun) {
	render(DecisionScreen, {
		run,
		catalogue,
		checkHref: '/check/#check=made',
		reportHref: '/check/report/#check=made'
	});
	return run;
}
const verdict = () => screen.queryByRole('heading', { name: /^(Leave|Check|Adjust|Act)/ });
const body = () => (document.body.textContent ?? '').replace(/\s+/g, ' ');
const low = madeDiagnosis({ components: normalAt(6.1, 0.15) });
const lowUnverified = madeDiagnosis({ components: normalAt(6.1, 0.15), isIndependent: false });

describe('before the advice', () => {
	test('the animals are asked about first, and nothing is advised until then', async () => {
		const user = userEvent.setup();
		show(decidingRun({ diagnosis: madeDiagnosis({ components: normalAt(8, 0.2) }) }));
		expect(verdict()).toBeNull();
		expect(screen.queryByText('Why')).toBeNull();
		await user.click(screen.getByRole('radio', { name: 'As always' }));
		expect(verdict()).toHaveTextContent('Leave it.');
		expect(screen.getByRole('heading', { name: 'Why' })).toBeInTheDocument();
		expect(body()).toContain('Test again in 7 days.');
	});
	test('without a reading there is nothing to decide, and a way back', () => {
		show(decidingRun({ diagnosis: null, isEmpty: true }));
		expect(body()).toContain('no reading in question yet');
		expect(screen.getByRole('link', { name: 'Back to the check' })).toHaveAttribute(
			'href',
			'/check/#check=made'
		);
	});
	test('while it is weighed, no animals are asked about', () => {
		show(decidingRun({ diagnosis: null }));
		expect(screen.queryByRole('radio')).toBeNull();
		expect(body()).toContain('Weighing it.');
	});
});

describe('while unverified', () => {
	test('the check comes first, and there is no plan anywhere', () => {
		const run = decidingRun({ diagnosis: lowUnverified, next: madeCheck() });
		run.seeLivestock('well');
		run.describeTank({ target: 8, waterL: 180, salinity: 35, unit: 'dKH' });
		run.chooseMeans({ by: 'bicarbonate', purity: 1 });
		show(run);
		expect(verdict()).toHaveTextContent('Check first.');
		expect(screen.getByRole('heading', { name: 'Do this check first' })).toBeInTheDocument();
		expect(body()).toContain('Test a known solution');
		expect(screen.queryByRole('table')).toBeNull();
		expect(screen.queryByText('By which means?')).toBeNull();
		expect(screen.queryByText('Day by day')).toBeNull();
		expect(body()).not.toMatch(/\d (g|mL)\b/);
	});
	test('with the salinity unknown, that is measured first; once written, the advice follows', async () => {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('notLooked');
		show(run);
		expect(verdict()).toHaveTextContent('Check first.');
		expect(body()).toContain('Measure the salinity');
		// On a phone its blank is some screens further down.
		const link = screen.getByRole('link', {
			name: 'Write the salinity down here, under Your tank'
		});
		const part = document.querySelector(link.getAttribute('href')!);
		expect(part).toContainElement(screen.getByLabelText('Salinity'));
		expect(screen.queryByText('By which means?')).toBeNull();
		await user.type(screen.getByLabelText('Salinity'), '35');
		await user.tab();
		expect(verdict()).toHaveTextContent('Adjust, slowly.');
	});
	test.each(['0', '1.002', '53'])(
		'a salinity of %s releases no advice to adjust',
		async (typed) => {
			const user = userEvent.setup();
			const run = decidingRun({ diagnosis: low });
			run.seeLivestock('notLooked');
			show(run);
			await user.type(screen.getByLabelText('Salinity'), typed);
			await user.tab();
			expect(screen.getByLabelText('Salinity')).toHaveAttribute('aria-invalid', 'true');
			expect(verdict()).toHaveTextContent('Check first.');
			expect(screen.queryByText('By which means?')).toBeNull();
		}
	);
	test('a specific gravity is taken as the salinity that it means, and it is said at its place', async () => {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('notLooked');
		show(run);
		await user.type(screen.getByLabelText('Salinity'), '1.026');
		await user.tab();
		expect(screen.getByLabelText('Salinity')).not.toHaveAttribute('aria-invalid');
		expect(screen.getByLabelText('Salinity')).toHaveAccessibleDescription(
			/1\.026 at 25 °C is a salinity of about 34\.5, and is taken as that/
		);
		expect(run.state.tank.salinity).toBe(34.5);
		expect(verdict()).toHaveTextContent('Adjust, slowly.');
	});
	test('a salinity of 28 is put right first', async () => {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('notLooked');
		show(run);
		await user.type(screen.getByLabelText('Salinity'), '28');
		await user.tab();
		expect(verdict()).toHaveTextContent('Check first.');
		expect(body()).toContain('Put the salinity right');
		expect(body()).toContain('outside 33 to 37');
		expect(screen.queryByText('By which means?')).toBeNull();
	});
	test('with the unit doubted, that is found out first', () => {
		const run = decidingRun({ diagnosis: low, next: madeCheck() });
		run.seeLivestock('notLooked');
		run.doubtUnit(true);
		show(run);
		expect(body()).toContain('Find out the unit');
		expect(screen.getByRole('link', { name: 'Say which unit' })).toBeInTheDocument();
	});
	test('with no check left that would tell, something independent is asked for', () => {
		const run = decidingRun({ diagnosis: lowUnverified });
		run.seeLivestock('notLooked');
		show(run);
		expect(body()).toContain('Ask something other than the kit');
	});
});

describe('adjusting', () => {
	async function filledIn() {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('notLooked');
		run.describeTank({ salinity: 35, unit: 'dKH' });
		show(run);
		const type = async (name: string | RegExp, text: string) => {
			await user.type(screen.getByLabelText(name), text);
			await user.tab();
		};
		await user.click(screen.getByRole('radio', { name: 'Sodium bicarbonate' }));
		await type('Purity', '99');
		await type('Bring it to', '7,9');
		await type('Water in all', '180');
		await type('Give or take', '18');
		return { user, run, type };
	}

	test('what lacks is named, and every reason goes once it is filled in', async () => {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('notLooked');
		run.describeTank({ salinity: 35, unit: 'dKH' });
		show(run);
		expect(verdict()).toHaveTextContent('Adjust, slowly.');
		expect(body()).toContain('Once the means are chosen');
		await user.click(screen.getByRole('radio', { name: 'Sodium carbonate' }));
		expect(body()).toContain(
			'Of ‘Sodium carbonate’ this is still to be said: how much water is in its crystals and its purity. Then the days stand here.'
		);
		expect(body()).not.toContain('Once the means are chosen');
		await user.click(screen.getByRole('radio', { name: 'Limewater' }));
		expect(body()).toContain('The volume of the water is not known.');
		expect(body()).toContain('No value to aim at was given.');
		expect(screen.queryByRole('table')).toBeNull();
	});
	// 6.1 to 7.9 is 1.8 dKH: 4 days of 0.45; 0.45 × 0.35665 × 180 = 28.889 meq; × 84.006 / 1000 / 0.99 = 2.451 g.
	test('days as lines, with amounts, what to expect, pH and retests; a sum; cautions', async () => {
		await filledIn();
		const table = screen.getByRole('table');
		const rows = within(table).getAllByRole('row').slice(1);
		// Of consumption and dosing nothing is known: after three days nobody could say closely enough.
		expect(rows).toHaveLength(3);
		expect(rows[0]).toHaveTextContent(/1\s*2\.5 g/);
		expect(rows[1]).toHaveTextContent(/Test: it should read 7\.0 ± 0\.\d dKH; then go on/);
		// Nothing is planned after the last.
		expect(rows[2]).toHaveTextContent('Test');
		expect(rows[2]).not.toHaveTextContent('then go on');
		expect(rows[0]).not.toHaveTextContent('Test');
		expect(rows[0]).toHaveTextContent('about −0.03');
		expect(body()).toContain('7.9 − 6.1 = 1.8 dKH to go');
		expect(body()).toContain('not made up for on the next');
	});
	test('days of calcium, in a unit that alkalinity does not have', () => {
		const plan = correctionPlan({
			analyte: 'calcium',
			decision: toAdjust(),
			value: { value: 370, standardUncertainty: 5, unit: 'mg/L' },
			target: 410,
			waterL: 180,
			consumptionPerDay: 0,
			dosedPerDay: 0,
			means: { by: 'calciumChloride', hydrate: 'dihydrate', purity: 1 },
			salinity: 35
		});
		render(PlanPart, { plan });
		// 40 mg/L at no more than 20 a day, also if there is a tenth less water: two days would pass that.
		const rows = within(screen.getByRole('table')).getAllByRole('row').slice(1);
		expect(rows).toHaveLength(3);
		expect(rows[2]).toHaveTextContent(/410\s±\s\d+ mg\/L/);
	});
	test('a figure that cannot be is answered where it stands, kept, and no plan rests on it', async () => {
		const { user, type } = await filledIn();
		await user.clear(screen.getByLabelText('Water in all'));
		await type('Water in all', '18o');
		const field = screen.getByLabelText('Water in all');
		expect(field).toHaveValue('18o');
		expect(field).toHaveAccessibleDescription(/“18o” is no number/);
		expect(screen.queryByRole('table')).toBeNull();
		expect(body()).toContain('What stands at “Water in all” cannot be taken as it is.');
	});
	test.each([
		['At most, in a day', '1.5'],
		['Give or take', '150'],
		['pH now', '81'],
		['Temperature', '77'],
		['You want it no lower than', 'abc']
	])('nor beside one that may be left empty: %s', async (label, text) => {
		const { user, type } = await filledIn();
		expect(screen.getByRole('table')).toBeInTheDocument();
		await user.clear(screen.getByLabelText(label));
		await type(label, text);
		expect(screen.queryByRole('table')).toBeNull();
		expect(body()).toContain(`What stands at “${label}” cannot be taken as it is.`);
		await user.clear(screen.getByLabelText(label));
		await user.tab();
		expect(screen.getByRole('table')).toBeInTheDocument();
	});
	test('a band that is refused is not said to be what nobody said', async () => {
		const { type } = await filledIn();
		await type('You want it no lower than', 'abc');
		expect(body()).not.toContain('Nothing said');
		expect(body()).toMatch(/Until that can be taken: 7\.0 to 9\.0 dKH is taken/);
	});
	test('nobody’s limit goes above the cap', async () => {
		const { type } = await filledIn();
		await type('At most, in a day', '1.5');
		expect(screen.getByLabelText('At most, in a day')).toHaveAccessibleDescription(
			/no more than 1\.0 dKH in a day; found 1\.5/
		);
	});
	test('carbonate asks for its hydrate before anything is worked out', async () => {
		const { user, type } = await filledIn();
		await user.click(screen.getByRole('radio', { name: 'Sodium carbonate' }));
		await type('Purity', '99');
		expect(body()).toContain('Without this nothing is worked out.');
		// Nor does what was worked out for the bicarbonate stay there.
		expect(screen.queryByRole('table')).toBeNull();
		expect(body()).not.toContain('Of sodium bicarbonate');
		await user.click(screen.getByRole('radio', { name: /10H₂O/ }));
		expect(body()).toContain('Na₂CO₃·10H₂O, 99 % pure');
		await user.click(screen.getByRole('radio', { name: 'Sodium bicarbonate' }));
		expect(body()).toContain('Of sodium bicarbonate');
	});
	test('a purity that cannot be leaves no plan of the purity before it', async () => {
		const { user, run, type } = await filledIn();
		await user.clear(screen.getByLabelText('Purity'));
		await type('Purity', '990');
		expect(screen.getByLabelText('Purity')).toHaveAccessibleDescription(/between 1 and 100/);
		expect(run.state.means).toBeNull();
		expect(screen.queryByRole('table')).toBeNull();
	});
	test('each powder keeps its own purity, over a reload too', async () => {
		const { run, user, type } = await filledIn();
		const purity = () => screen.getByLabelText('Purity');
		const powder = (name: string) => user.click(screen.getByRole('radio', { name }));
		await powder('Sodium carbonate');
		expect(purity()).toHaveValue('');
		expect(run.state.means).toBeNull();
		await type('Purity', '95');
		await powder('Sodium bicarbonate');
		expect(purity()).toHaveValue('99');
		expect(run.state.means).toEqual({ by: 'bicarbonate', purity: 0.99 });
		cleanup();
		show(run);
		await powder('Sodium carbonate');
		expect(purity()).toHaveValue('95');
	});
	test('a value to aim at beyond the band is answered at its blank, and as the band moves', async () => {
		const { run, user } = await filledIn();
		const target = screen.getByLabelText('Bring it to');
		await user.clear(target);
		await user.type(target, '14');
		await user.tab();
		expect(target).toHaveAccessibleDescription(/outside the 7\.0 to 9\.0 dKH you want/);
		expect(screen.queryByRole('table')).toBeNull();
		run.describeTank({ ...run.state.tank, bandHigh: 15 });
		flushSync();
		// Beyond what any advice aims at, whatever somebody wants.
		expect(target).toHaveAccessibleDescription(/No plan aims beyond \d/);
		await user.clear(target);
		await user.type(target, '8.5');
		await user.tab();
		expect(target).not.toHaveAccessibleDescription(/outside|beyond/);
	});
	test('with a plan its own days of testing are the only ones', async () => {
		const { run } = await filledIn();
		const again = () => screen.queryByText(/^Test again in/);
		expect(run.plan).toMatchObject({ kind: 'plan' });
		expect(again()).toBeNull();
		expect(screen.getByText('Test on the days that the plan says.')).toBeInTheDocument();
		run.chooseMeans(null);
		flushSync();
		expect(again()).toBeInTheDocument();
		expect(screen.queryByText('Test on the days that the plan says.')).toBeNull();
	});
	test('a sitter or a child gets none of it', async () => {
		const { user } = await filledIn();
		await user.click(screen.getByRole('radio', { name: 'Somebody standing in' }));
		expect(verdict()).toHaveTextContent('Leave it.');
		expect(body()).toContain('Tell the keeper.');
		expect(screen.queryByRole('table')).toBeNull();
	});
	test('what was chosen to bring it up asks nothing where it is to come down', () => {
		const run = decidingRun({ diagnosis: madeDiagnosis({ components: normalAt(10.5, 0.15) }) });
		run.seeLivestock('notLooked');
		run.describeTank({ salinity: 35, unit: 'dKH' });
		run.chooseMeans({ by: 'carbonate', hydrate: 'anhydrous', purity: 0.99 });
		show(run);
		expect(screen.queryByLabelText('Purity')).toBeNull();
		expect(screen.queryByRole('group', { name: /crystals/ })).toBeNull();
	});
	test('too high: nothing but new water can be chosen', () => {
		const run = decidingRun({ diagnosis: madeDiagnosis({ components: normalAt(10.5, 0.15) }) });
		run.seeLivestock('notLooked');
		run.describeTank({ salinity: 35, unit: 'dKH' });
		show(run);
		expect(verdict()).toHaveTextContent('Adjust, slowly.');
		expect(body()).toContain('Pause what is dosed');
		const means = screen.getByRole('group', { name: 'By which means?' });
		expect(within(means).getAllByRole('radio')).toHaveLength(1);
		expect(within(means).getByRole('radio', { name: 'A water change' })).toBeInTheDocument();
	});
});

describe('your tank', () => {
	test('the default band says where it comes from, with the ocean beside it; one’s own takes its place', async () => {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('well');
		run.describeTank({ salinity: 35, unit: 'dKH' });
		show(run);
		expect(body()).toContain('7.0 to 9.0 dKH is taken (common practice, no source)');
		expect(body()).toContain('open ocean holds 6.4 to 6.8 dKH at salinity 35');
		await user.type(screen.getByLabelText('You want it no lower than'), '6');
		await user.tab();
		await user.type(screen.getByLabelText('And no higher than'), '7');
		await user.tab();
		expect(body()).not.toContain('is taken (');
		expect(verdict()).toHaveTextContent('Leave it.');
		expect(run.state.tank).toMatchObject({ bandLow: 6, bandHigh: 7, salinity: 35, unit: 'dKH' });
	});
	test('a band the wrong way round is said, and the default stands', async () => {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('well');
		show(run);
		await user.type(screen.getByLabelText('You want it no lower than'), '9');
		await user.tab();
		await user.type(screen.getByLabelText('And no higher than'), '8');
		await user.tab();
		expect(screen.getByLabelText('And no higher than')).toHaveAccessibleDescription(
			'The upper end lies below the lower; found 9 and 8.'
		);
		expect(body()).toContain('is taken (');
	});
	test('a new tank without stony corals needs no correction', async () => {
		const user = userEvent.setup();
		const run = decidingRun({ diagnosis: low });
		run.seeLivestock('well');
		show(run);
		await user.click(screen.getByRole('radio', { name: 'Not yet' }));
		expect(verdict()).toHaveTextContent('Leave it.');
		expect(body()).toContain('needs no correction');
	});
});

describe('an emergency', () => {
	test('one action at the top, without a reading, without animals, and back again', async () => {
		const user = userEvent.setup();
		const run = show(decidingRun({ diagnosis: null, isEmpty: true }));
		const [first] = screen
			.getAllByRole('button')
			.filter((button) => button.closest('main') !== null);
		expect(first).toHaveTextContent('What to do at once');
		await user.click(first!);
		expect(run.state.isEmergency).toBe(true);
		expect(verdict()).toHaveTextContent('Act now.');
		expect(verdict()).toHaveFocus();
		for (const step of emergencyPath().steps) expect(body()).toContain(step);
		for (const line of emergencyPath().never) expect(body()).toContain(line);
		expect(body()).toContain('rinse at once');
		expect(screen.queryByRole('radio')).toBeNull();
		await user.click(screen.getByRole('button', { name: /It is over/ }));
		expect(run.state.isEmergency).toBe(false);
		expect(verdict()).toBeNull();
	});
});
