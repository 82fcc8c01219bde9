import { cleanup, render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { flushSync } from 'svelte';
import { describe, expect, test, vi } from 'vitest';
import { rankChecks } from '$lib/judgement';
import { houseCalciumKit, houseSyringeKit } from '$lib/kits';
import { methodFiguresFor } from '$lib/metrology';
import type { Evidence } from '$lib/observation';
import ConversationScreen from '../../../src/lib/ui/conversation/ConversationScreen.svelte';
import { catalogue, diagnosis, firstReading, firstTest, MadeRun, ranking } from './made-run.svelte';

function show(run = new MadeRun(), inQuestion = firstTest, believed = diagnosis) {
	run.give(inQuestion);
	run.diagnosis = believed;
	run.ranking = ranking;
	const onemergency = vi.fn();
	const onlogged = vi.fn((id: string) => {
		run.give(
			{ kind: 'test', from: 'repeatFull', reading: { ...firstReading, id, label: 'Stored' } },
			id
		);
		return Promise.resolve(null);
	});
	render(ConversationScreen, {
		run,
		catalogue,
		logged: [
			{
				id: 'stored',
				value: '8.1',
				band: '0.5',
				unitName: 'dKH',
				when: 'today, 18:05',
				kitName: 'House syringe kit',
				isSameKit: true
			},
			{
				id: 'solution',
				value: '7.9',
				band: '0.5',
				unitName: 'dKH',
				when: 'today, 18:20',
				kitName: 'House syringe kit',
				isSameKit: true,
				holds: '8.00 ± 0.10 dKH'
			},
			{
				id: 'other',
				value: '8.2',
				band: '0.9',
				unitName: 'dKH',
				when: 'today, 18:30',
				kitName: 'House dropper kit',
				isSameKit: false
			}
		],
		decisionHref: '/check/decision/#check=made',
		onemergency,
		onlogged,
		testHref: (id: string) => `/log/test/#test=${id}`
	});
	return { run, onemergency, onlogged };
}
const known = () => screen.getByRole('list', { name: 'What we know' });
const bars = () => screen.getByRole('list', { name: /^What could explain it/ });
const words = (element: Element | null | undefined) =>
	element?.textContent?.replace(/\s+/g, ' ').trim();
const kind = (name: string) => screen.getByRole('button', { name, expanded: false });

describe('what could explain it', () => {
	test('what cannot be told apart is one bar, with the check that would; none of these stands last', () => {
		show();
		const items = within(bars())
			.getAllByRole('listitem')
			.filter((item) => item.parentElement === bars());
		expect(items.map((item) => words(item.querySelector('.title')))).toEqual([
			'Titrant grown stronger; or sample over its mark',
			'No fault, only the usual spread',
			'A real change of the water',
			'A drop left hanging',
			'None of these'
		]);
		expect(items.map((item) => words(item.querySelector('.chance')))).toEqual([
			'about 6 in 10',
			'about 3 in 10',
			'about 1 in 20',
			'about 1 in 20',
			'about 1 in 20'
		]);
		expect(words(items[0])).toContain('What would: test with a fresh bottle.');
		expect(screen.getByText('All else together: about 1 in 20')).toBeInTheDocument();
		expect(screen.getByText('Something else about the bottles')).toBeInTheDocument();
		expect(
			screen.getByText(/^Eye above the mark; Indicator grown pale; End judged in dim light\.$/)
		).toBeInTheDocument();
	});

	test('a value with two humps is told split, and no chance is printed with decimals', () => {
		show();
		const figure = screen.getByRole('figure');
		expect(words(figure.querySelector('figcaption'))).toBe(
			'8.0 ± 0.3 dKH if it is “titrant grown stronger”, or something that comes to the same; 7.3 ± 0.2 if nothing is wrong, or nothing that moves it far.'
		);
		expect(document.body.textContent).not.toMatch(/\d\s*%/);
		expect(screen.getByText(/Nothing that shares no fault with your kit/)).toBeInTheDocument();
	});

	test('says which pieces speak for and against, by their numbers', () => {
		const run = new MadeRun();
		show(run);
		run.give({
			kind: 'test',
			from: 'freshLot',
			reading: { id: 'b', label: 'Bottle B', value: 8, expandedUncertainty: 0.6, unit: 'dKH' }
		});
		run.without = null;
		flushSync();
		expect(words(bars())).not.toMatch(/for it|against it/i);
		run.without = [{ at: 1, probabilities: { strong: 0.1, large: 0.1, none: 0.6 } }];
		flushSync();
		expect(words(bars())).toContain('For it: 2 (Bottle B).');
		// It agrees within the ± of both: no evidence against there being no fault.
		expect(words(bars())).not.toContain('Against it');
	});
});

describe('what we know', () => {
	test('a sentence is filled in with a decimal comma, added, and taken back', async () => {
		const user = userEvent.setup();
		const { run } = show();
		await user.click(kind('Another bottle of titrant'));
		const form = screen.getByRole('form', { name: 'Another bottle of titrant' });
		await user.type(within(form).getByLabelText('Lot of the other bottle'), 'B');
		await user.type(within(form).getByLabelText('What it read'), '8,0');
		await user.click(within(form).getByRole('button', { name: 'Add it' }));
		expect(run.state.evidence[1]?.evidence).toMatchObject({
			kind: 'test',
			from: 'freshLot',
			differs: { lot: 'B' },
			reading: { value: 8, expandedUncertainty: 0.6, repeatabilitySd: 0.15, unit: 'dKH' }
		});
		expect(words(known())).toContain('8.0 ± 0.6 dKH');
		await user.click(screen.getByRole('button', { name: 'Take back 2: Bottle B' }));
		expect(run.state.evidence).toHaveLength(1);
		await user.click(screen.getByRole('button', { name: 'Undo the last step' }));
		expect(run.state.evidence).toHaveLength(2);
	});

	test('what cannot stand is said beside its blank and nothing typed is lost', async () => {
		const user = userEvent.setup();
		const { run } = show();
		await user.click(kind('A repeat'));
		const value = screen.getByLabelText('What it read');
		await user.type(value, 'seven');
		const form = screen.getByRole('form', { name: 'A repeat' });
		await user.click(within(form).getByRole('button', { name: 'Add it' }));
		expect(value).toHaveAttribute('aria-invalid', 'true');
		expect(value).toHaveAccessibleDescription(/“seven” is no number/);
		expect(value).toHaveValue('seven');
		expect(value).toHaveFocus();
		expect(run.state.evidence).toHaveLength(1);
	});

	test('what was typed is there again after the page was left', async () => {
		const user = userEvent.setup();
		const run = new MadeRun();
		show(run);
		await user.click(kind('A repeat'));
		await user.type(screen.getByLabelText('What it read'), '7,');
		cleanup();
		const again = new MadeRun();
		again.log = { ...again.log, id: run.log.id };
		show(again);
		expect(screen.getByLabelText('What it read')).toHaveValue('7,');
	});

	test('a stored test is taken as what the sentence says, and its line leads to it', async () => {
		const user = userEvent.setup();
		const { onlogged } = show();
		await user.click(kind('Another bottle of titrant'));
		await user.click(screen.getByText('It stands in the log'));
		await user.click(screen.getByRole('button', { name: /8\.1 ± 0\.5 dKH today/ }));
		expect(onlogged).toHaveBeenCalledWith('stored', 'freshLot');
		expect(await screen.findByRole('link', { name: 'from the log' })).toHaveAttribute(
			'href',
			'/log/test/#test=stored'
		);
		expect(screen.queryByRole('form', { name: 'Another bottle of titrant' })).toBeNull();
	});

	test.each([
		['A known solution', /^7\.9 .*said to hold 8\.00 ± 0\.10 dKH/u, 'solution', 'reference'],
		['A second method', /^8\.2 .*House dropper kit/u, 'other', 'secondMethod']
	])('%s is taken from the log, and only tests that can tell it', async (title, name, id, role) => {
		const user = userEvent.setup();
		const { onlogged } = show();
		await user.click(kind(title));
		await user.click(screen.getByText('It stands in the log'));
		const form = screen.getByRole('form', { name: title });
		const offered = within(form)
			.getAllByRole('listitem')
			.map((each) => words(each));
		expect(offered).toHaveLength(1);
		await user.click(within(form).getByRole('button', { name }));
		expect(onlogged).toHaveBeenCalledWith(id, role);
	});
	test('a known solution is no repeat', async () => {
		const user = userEvent.setup();
		show();
		await user.click(kind('Another bottle of titrant'));
		await user.click(screen.getByText('It stands in the log'));
		expect(screen.queryByRole('button', { name: /said to hold/u })).toBeNull();
	});

	test('a doubt about the unit shows what the number would be in the others', async () => {
		const user = userEvent.setup();
		const { run } = show();
		await user.click(screen.getByRole('checkbox', { name: 'I am not sure of the unit' }));
		expect(run.state.isUnitDoubted).toBe(true);
		const rows = within(screen.getByRole('table')).getAllByRole('row');
		// 7.4 meq/L are 20.7 dKH, and 7.4 mg/L HCO3 0.34: by the sizes of the units (meq/L per dKH 0.357).
		expect(rows.map(words).find((row) => row?.startsWith('meq/L'))).toMatch(/20\.\d?7?|21/);
		expect(rows.some((row) => words(row)?.startsWith('mg/L HCO₃'))).toBe(true);
	});
});

describe('what would tell most', () => {
	test('one check with why, minutes and mL; its sentence is opened and told there', async () => {
		const user = userEvent.setup();
		const { run } = show();
		const next = screen.getByRole('region', { name: 'What would tell most' });
		expect(within(next).getByRole('heading', { level: 3 })).toHaveTextContent(
			'Test with a fresh bottle'
		);
		expect(words(next)).toContain('8 min, about 0.5 mL of titrant');
		expect(words(next)).toContain('It parts a strong titrant from a large sample.');
		await user.click(within(next).getByRole('button', { name: 'Say what it read' }));
		await user.type(within(next).getByLabelText('What it read'), '8.0');
		await user.click(within(next).getByRole('button', { name: 'Add it' }));
		expect(run.state.evidence[1]?.evidence).toMatchObject({ from: 'freshLot' });
		expect(document.getElementById('next-check')).toHaveFocus();
	});

	test('a question has its answers as buttons; what cannot be done is left out and can come back', async () => {
		const user = userEvent.setup();
		const { run } = show();
		await user.click(screen.getByText('Something else'));
		await user.click(screen.getByRole('button', { name: /^How is it with the bottle/ }));
		await user.click(screen.getByRole('button', { name: 'Old and low, with a crust' }));
		expect(run.state.evidence[1]?.evidence).toEqual({ kind: 'cue', cue: 'bottle', answer: 'old' });
		await user.click(screen.getByRole('button', { name: 'I cannot do this' }));
		expect(run.state.leftOut).toEqual(['freshLot']);
		await user.click(screen.getByRole('button', { name: 'Put back what I cannot do' }));
		expect(run.state.leftOut).toEqual([]);
	});

	test('when it is enough it says so and leads to what to do', () => {
		const run = new MadeRun();
		show(run);
		run.ranking = { ...ranking, isEnough: true, because: 'No check would change the advice.' };
		flushSync();
		expect(screen.getByText('Of the reading, that is enough')).toBeInTheDocument();
		expect(screen.getByText('No check would change the advice.')).toBeInTheDocument();
		expect(
			screen.getByText(
				'What to do also asks: how the animals look and the salinity, before anything goes into the tank.'
			)
		).toBeInTheDocument();
		run.seeLivestock('well');
		run.describeTank({ salinity: 30, unit: 'dKH' });
		flushSync();
		expect(screen.queryByText(/What to do also asks/)).toBeNull();
		expect(screen.getByText(/^The salinity lies outside 33 to 37/)).toBeInTheDocument();
		run.describeTank({ salinity: 35, unit: 'dKH' });
		flushSync();
		expect(screen.queryByText(/salinity/i)).toBeNull();
		expect(screen.getAllByRole('link', { name: 'See what to do' })[0]).toHaveAttribute(
			'href',
			'/check/decision/#check=made'
		);
	});

	test('a question has one way to say that one does not know', async () => {
		const user = userEvent.setup();
		show();
		await user.click(screen.getByText('Something else'));
		await user.click(screen.getByRole('button', { name: /^How is it with the bottle/ }));
		expect(screen.getByRole('button', { name: 'I don’t know' })).toBeInTheDocument();
		expect(screen.queryByRole('button', { name: /I cannot/ })).toBeNull();
	});

	test('every question that can be answered for the kit can be reached, however little it would tell', async () => {
		const user = userEvent.setup();
		const evidence: Evidence[] = [firstTest];
		const run = new MadeRun();
		show(run);
		run.ranking = rankChecks(evidence, { method: methodFiguresFor(houseSyringeKit, 'alkalinity') });
		flushSync();
		const next = screen.getByRole('region', { name: 'What would tell most' });
		await user.click(within(next).getByText('Something else'));
		const buttons = () => within(next).queryAllByRole('button').map(words);
		const left = run.ranking.ranked.length;
		expect(left).toBeGreaterThan(20);
		const before = buttons().length;
		await user.click(within(next).getByRole('button', { name: /^Show all \d+$/ }));
		expect(buttons().length).toBeGreaterThan(before);
		const { ranked } = run.ranking;
		const asked = ranked.filter((each) => each.kind === 'cue');
		// The questions of a syringe kit by name, whatever their place.
		expect(asked.map(({ cue }) => cue)).toEqual(
			expect.arrayContaining(['marksUsed', 'startColour', 'light', 'tip', 'plunger'])
		);
		expect(screen.queryByRole('button', { name: /^Show all/ })).toBeNull();
		// One of them stands open, the others in the list.
		const listed = within(next).getAllByRole('listitem').length;
		expect(listed).toBeGreaterThanOrEqual(left - 1);
		expect(document.activeElement?.closest('#something-else')).not.toBeNull();
	});

	test('titrant, ware and lot are explained where the causes first name them', () => {
		show();
		const causes = screen.getByRole('region', { name: 'What could explain it' });
		expect(words(causes)).toContain('Titrant is the liquid you add until the colour turns');
		expect(words(causes)).toMatch(/ware is what you measure with: syringe, vial or dropper/);
		expect(words(causes)).toMatch(/A lot is one filling/);
	});

	test('a blank for a name has room for all of it', async () => {
		const user = userEvent.setup();
		show();
		await user.click(kind('A second method'));
		const name = screen.getByLabelText('Its name');
		const room = () => Number(/--width: (\d+)ch/.exec(name.getAttribute('style') ?? '')?.[1]);
		const empty = room();
		await user.type(name, 'Photometer P of the club');
		expect(empty).toBeLessThan('Photometer P'.length);
		expect(room()).toBeGreaterThan('Photometer P of the club'.length);
	});

	test('an emergency is one action away', async () => {
		const user = userEvent.setup();
		const { onemergency } = show();
		await user.click(screen.getByRole('button', { name: 'What to do at once' }));
		expect(onemergency).toHaveBeenCalledOnce();
	});
});

test('one polite sentence when the answer has changed, none before', () => {
	const run = new MadeRun();
	show(run);
	flushSync();
	const status = document.querySelector('.opening [role="status"]');
	expect(words(status)).toBe('');
	run.ranking = { ...ranking, isEnough: true };
	flushSync();
	expect(words(status)).toMatch(
		/^Most likely now: titrant grown stronger; or sample over its mark, about 6 in 10\. .* Of the reading, that is enough\.$/
	);
});

test('once the reading in question is taken back, nothing is said of it any longer', () => {
	const run = new MadeRun();
	show(run);
	flushSync();
	run.ranking = { ...ranking, isEnough: true };
	flushSync();
	const status = () => words(document.querySelector('.opening [role="status"]'));
	expect(status()).not.toBe('');
	run.takeBack(run.state.evidence[0]?.entryId ?? '');
	run.diagnosis = null;
	run.ranking = null;
	flushSync();
	expect(status()).toBe('');
	// The same reading given again is answered aloud again.
	run.give(firstTest);
	run.diagnosis = diagnosis;
	run.ranking = { ...ranking, isEnough: true };
	flushSync();
	expect(status()).toMatch(/^Most likely now/);
});

test('a check of calcium speaks in its own unit throughout', () => {
	const run = new MadeRun();
	run.log = { ...run.log, analyte: 'calcium', kit: houseCalciumKit };
	run.unit = 'mg/L';
	const reading = { ...firstReading, value: 430, expandedUncertainty: 20, unit: 'mg/L' as const };
	const { repeatabilitySd: _, ...bare } = reading;
	show(run, { kind: 'test', from: 'first', reading: bare }, { ...diagnosis, unit: 'mg/L' });
	run.doubtUnit(true);
	flushSync();
	expect(words(document.querySelector('.question'))).toBe('Can you stand by 430 ± 20 mg/L?');
	expect(words(document.querySelector('figcaption'))).toContain('mg/L');
	expect(screen.getByRole('columnheader', { name: 'mg/L' })).toBeInTheDocument();
	expect(words(document.querySelector('main, body'))).not.toContain('dKH');
});
