import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { flushSync } from 'svelte';
import { describe, expect, test, vi } from 'vitest';
import { waterCausesTold } from '../../../src/lib/judgement';
import type { CheckRun } from '../../../src/lib/ui/conversation/run';
import { causeLine, waterTitle } from '../../../src/lib/ui/conversation/water-words';
import { reportOf, reportText } from '../../../src/lib/ui/decision/report';
import ReportScreen from '../../../src/lib/ui/decision/ReportScreen.svelte';
import { madeCheck, madeDiagnosis, normalAt } from '../../judgement/made-diagnosis';
import { catalogue, diagnosis, firstReading } from '../conversation/made-run.svelte';
import { decidingRun } from './deciding-run';

function adjusting() {
	const run = decidingRun({ diagnosis: madeDiagnosis({ components: normalAt(6.1, 0.15) }) });
	run.give({
		kind: 'reference',
		reading: { ...firstReading, id: 'ref', label: 'Known solution', value: 8.1 },
		nominal: 8,
		nominalExpandedUncertainty: 0.1,
		matrix: 'seawater'
	});
	run.seeLivestock('someTroubled');
	run.describeTank({
		unit: 'dKH',
		salinity: 35,
		target: 7.9,
		waterL: 180,
		waterExpandedUncertaintyL: 18,
		who: 'keeper'
	});
	run.chooseMeans({ by: 'bicarbonate', purity: 0.99 });
	return run;
}

describe('what the report holds', () => {
	test('what was known, what could explain it, what the water holds, the advice, the plan, what would change it', () => {
		const report = reportOf(adjusting(), catalogue);
		expect(report.verdict).toBe('Adjust, slowly.');
		expect(report.parts.map(({ title }) => title)).toEqual([
			'What was known',
			'What could explain it',
			'What the water holds',
			'Why',
			'Day by day: sodium bicarbonate, NaHCO₃, 99 % pure',
			'The sum, to check by hand',
			'Heed this',
			'What would change it'
		]);
		expect(report.parts[0]?.lines).toEqual([
			'Your first test: 7.4 ± 0.6 dKH (in question)',
			'Known solution: 8.1 ± 0.6 dKH (said to hold 8.00 ± 0.10 dKH, in seawater)'
		]);
		expect(report.parts[4]?.lines[0]).toMatch(
			/^Day 1: 2\.5 g; then about 6\.5 ± 0\.4 dKH; pH at once: about −0\.03$/
		);
	});
	test('with a plan, what would change both stands once, and the days of testing are the plan’s', () => {
		const run: CheckRun = adjusting();
		const { parts } = reportOf(run, catalogue);
		const last = parts.at(-1)!;
		for (const line of run.plan?.kind === 'plan' ? run.plan.wouldChange : ['no plan'])
			expect(last.lines).toContain(line);
		const beginning = (words: string) => last.lines.filter((line) => line.startsWith(words));
		expect(beginning('A retest')).toHaveLength(1);
		expect(beginning('Haze')).toHaveLength(1);
		expect(beginning('Salinity')).toHaveLength(1);
		expect(parts.find(({ title }) => title === 'Why')?.lines.join(' ')).not.toContain('Test again');
	});
	test('date, kit and that it is invented, who, band and animals', () => {
		const facts = Object.fromEntries(
			reportOf(adjusting(), catalogue).facts.map(({ name, value }) => [name, value])
		);
		expect(facts['When']).toMatch(/^1 January 1970, \d\d:\d\d/);
		expect(facts['Kit']).toMatch(/\(an invented kit\)$/);
		expect(facts['Who']).toBe('the keeper');
		expect(facts['Wanted']).toBe('7.0 to 9.0 dKH (taken, as nothing was said)');
		expect(facts['Animals']).toBe('some are troubled');
		const unseen = adjusting();
		unseen.seeLivestock('notLooked');
		expect(reportOf(unseen, catalogue).facts).toContainEqual({
			name: 'Animals',
			value: 'not looked at'
		});
	});
	test('what the advice rests on: salinity, corals and, with a plan, how much water', () => {
		const factsOf = (run: ReturnType<typeof adjusting>) =>
			Object.fromEntries(reportOf(run, catalogue).facts.map(({ name, value }) => [name, value]));
		expect(factsOf(adjusting())).toMatchObject({
			Salinity: '35 PSU or g/kg',
			'Water in all': '180 L, give or take 18 L'
		});
		expect(factsOf(adjusting())).not.toHaveProperty('Stony corals');
		const little = adjusting();
		little.describeTank({ unit: 'dKH', salinity: 34.5, target: 7.9, waterL: 180.5 });
		expect(factsOf(little)).toMatchObject({
			Salinity: '34.5 PSU or g/kg',
			'Water in all': '180.5 L (a tenth more or less was taken, as nothing was said)'
		});
		little.describeTank({ unit: 'dKH', hasStonyCorals: false, waterL: 180 });
		expect(factsOf(little)).toMatchObject({ Salinity: 'not known', 'Stony corals': 'not yet' });
		// Without a plan nothing is worked out from the water.
		expect(factsOf(little)).not.toHaveProperty('Water in all');
	});
	test('every cause of a change is there: the first in full, the others by name, and where they stand', () => {
		const made = madeDiagnosis({ components: normalAt(6.1, 0.15) });
		const run = decidingRun({ diagnosis: { ...made, waterChanged: 0.6 } });
		const told = waterCausesTold(run.diagnosis!, [], 'alkalinity')!;
		expect(told.causes.length).toBeGreaterThan(3);
		const part = reportOf(run, catalogue).parts.find(({ title }) => title === waterTitle(told))!;
		expect(part.lines.slice(0, 3)).toEqual(told.causes.slice(0, 3).map(causeLine));
		for (const { isUrgent, remedy } of told.causes)
			if (isUrgent) expect(part.lines.join(' ')).toContain(remedy);
		const last = part.lines.at(-1)!;
		expect(last).toMatch(/^Or, with their signs on the page of the advice: /);
		for (const { name } of told.causes)
			expect(part.lines.some((line) => line.toLowerCase().includes(name.toLowerCase()))).toBe(true);
	});
	test('while unverified: the check, and no amounts', () => {
		const run = decidingRun({ diagnosis, next: madeCheck() });
		run.seeLivestock('well');
		run.describeTank({ unit: 'dKH', salinity: 35, target: 7.9, waterL: 180 });
		run.chooseMeans({ by: 'bicarbonate', purity: 1 });
		const text = reportText(reportOf(run, catalogue));
		expect(text).toContain('Check first.');
		expect(text).toContain('- Test a known solution');
		expect(text).not.toMatch(/Day 1|\d g\b/);
	});
	test('a piece that was not used is told so, with why', () => {
		const unused = [{ at: 0, why: 'no tank holds that' }];
		const run = decidingRun({ diagnosis: { ...diagnosis, unused } });
		expect(reportOf(run, catalogue).parts[0]?.lines[0]).toMatch(
			/\. Not used: no tank holds that\.$/
		);
	});
	test('a band that was typed and cannot be is not one of which nothing was said', () => {
		const wanted = (refused: readonly string[]) =>
			reportOf(adjusting(), catalogue, refused).facts.find(({ name }) => name === 'Wanted')?.value;
		expect(wanted(['You want it no lower than'])).toMatch(
			/\(taken, as what was typed cannot be\)$/
		);
		expect(wanted(['Give or take'])).toMatch(/\(taken, as nothing was said\)$/);
		const { facts } = reportOf(adjusting(), catalogue, ['Give or take']);
		expect(facts.map(({ name }) => name)).not.toContain('Water in all');
	});
	test('a plan refused is reported with its reasons', () => {
		const run = adjusting();
		run.describeTank({ unit: 'dKH', salinity: 35, target: 7.9 });
		expect(reportText(reportOf(run, catalogue))).toMatch(
			/No plan, because\n-+\n- The volume of the water is not known\./
		);
	});
	test('an emergency without a reading', () => {
		const run = decidingRun({ diagnosis: null, isEmpty: true });
		run.seeEmergency(true);
		const text = reportText(reportOf(run, catalogue));
		expect(text).toContain('Act now.');
		expect(text).toContain('- Stop all dosing.');
	});
});

describe('the page', () => {
	test('shows and saves the same words', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		const onsave = vi.fn<(text: string) => void>();
		render(ReportScreen, { run, catalogue, decisionHref: '/check/decision/#check=made', onsave });
		// A figure and its unit are kept on one line; that is no other word.
		const inOneSpacing = (text: string) => text.replace(/\s+/g, ' ');
		const shown = inOneSpacing(document.body.textContent ?? '');
		const { parts, facts } = reportOf(run, catalogue);
		for (const { lines } of parts)
			for (const line of lines) expect(shown).toContain(inOneSpacing(line));
		for (const { value } of facts) expect(shown).toContain(value);
		await user.click(screen.getByRole('button', { name: 'Save as a file' }));
		const [[text = ''] = []] = onsave.mock.calls;
		for (const { lines } of parts) for (const line of lines) expect(text).toContain(line);
	});
	test('while it is being weighed nothing can be printed or saved, and the page says why', () => {
		const run = adjusting();
		run.isThinking = true;
		const onsave = vi.fn<(text: string) => void>();
		render(ReportScreen, { run, catalogue, decisionHref: '/check/decision/#check=made', onsave });
		expect(screen.getByRole('button', { name: 'Weighing it' })).toBeDisabled();
		expect(screen.queryByRole('button', { name: 'Save as a file' })).toBeNull();
		expect(screen.getByText('Still being weighed.')).toBeInTheDocument();
		run.isThinking = false;
		flushSync();
		expect(screen.getByRole('button', { name: 'Print it' })).toBeEnabled();
		expect(screen.getByRole('button', { name: 'Save as a file' })).toBeEnabled();
		expect(screen.queryByText('Still being weighed.')).toBeNull();
	});
	test('an emergency waits for no answer; what is undecided is saved as undecided', () => {
		const urgent = decidingRun({ diagnosis: null });
		urgent.isThinking = true;
		urgent.seeEmergency(true);
		render(ReportScreen, {
			run: urgent,
			catalogue,
			decisionHref: '/check/decision/#check=made',
			onsave: () => {}
		});
		expect(screen.getByRole('button', { name: 'Print it' })).toBeEnabled();
		const unasked = decidingRun({ diagnosis });
		expect(reportText(reportOf(unasked, catalogue))).toContain('Not decided yet.');
	});
	test('a note goes into the check and onto the page; done is done', async () => {
		const user = userEvent.setup();
		const run = adjusting();
		render(ReportScreen, {
			run,
			catalogue,
			decisionHref: '/check/decision/#check=made',
			onsave: () => {}
		});
		await user.type(screen.getByLabelText('A note for the report'), 'Ask Jo about the doser.');
		await user.tab();
		expect(run.state.note).toBe('Ask Jo about the doser.');
		expect(screen.getByRole('heading', { name: 'Note' })).toBeInTheDocument();
		await user.click(screen.getByRole('button', { name: 'Done with this check' }));
		expect(run.state.isClosed).toBe(true);
		expect(screen.getByText('Done. The log has it.')).toBeInTheDocument();
	});
});
