import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeAll, describe, expect, test } from 'vitest';
import { cues, diagnose, faults, type Diagnosis } from '../../../src/lib/judgement';
import type { Evidence } from '../../../src/lib/observation';
import ConversationScreen from '../../../src/lib/ui/conversation/ConversationScreen.svelte';
import DecisionScreen from '../../../src/lib/ui/decision/DecisionScreen.svelte';
import { reportOf } from '../../../src/lib/ui/decision/report';
import { decidingRun } from '../decision/deciding-run';
import { firstReading } from './made-run.svelte';

const catalogue = { faults, cues };
const read = (id: string, value: number) => ({ ...firstReading, id, label: id, value });
const first: Evidence = { kind: 'test', from: 'first', reading: read('first', 6.3) };
/** A fall that a known solution and a photometer bear out, and what is told of the doser. */
const others: Evidence[] = [
	{ kind: 'earlier', reading: read('before', 8.2), daysAgo: 7 },
	{
		kind: 'reference',
		reading: read('known', 8),
		nominal: 8,
		nominalExpandedUncertainty: 0.15,
		matrix: 'seawater'
	},
	{
		kind: 'secondMethod',
		method: 'photometer',
		instrument: 'photometer',
		reading: read('photometer', 6.4)
	},
	{ kind: 'cue', cue: 'dosing', answer: 'stopped' }
];
let believed: Diagnosis;
beforeAll(() => {
	believed = diagnose([first, ...others]);
});

function fallen() {
	const run = decidingRun({ diagnosis: believed, isEmpty: true });
	for (const each of [first, ...others]) run.give(each);
	run.seeLivestock('well');
	return run;
}
const causes = () => screen.getByTestId('water-causes');

describe('a real change of the water', () => {
	test('in the check: what it may be, how it shows itself and what to do', async () => {
		render(ConversationScreen, {
			run: fallen(),
			catalogue,
			logged: [],
			decisionHref: '/check/decision/#check=made',
			onemergency: () => {},
			onlogged: () => Promise.resolve(null),
			testHref: (id: string) => `/log/test/#test=${id}`
		});
		expect(screen.getByRole('heading', { name: 'If the water really fell' })).toBeVisible();
		const [told, ...rest] = within(causes()).getAllByRole('listitem');
		expect(told).toHaveTextContent(/^Doser stopped, bottle empty or tube clogged/u);
		expect(told).toHaveTextContent('an answer speaks for it');
		expect(told).toHaveTextContent('Look for: as much is left in the bottle as days ago');
		expect(told).toHaveTextContent('No double doses to catch up.');
		const urgent = rest.find((each) => each.textContent?.includes('fell out at once'));
		expect(urgent).toHaveTextContent('Look for: haze or a white film within hours');
		expect(urgent).toHaveTextContent('If you see that, do not wait. Stop all dosing');
		await userEvent.setup().click(screen.getByText('What else the water may have done'));
		expect(screen.getByText('Food turned to nitrate')).toBeVisible();
		expect(screen.queryByText(/doser stuck/iu)).toBeNull();
	});
	test('beside the advice', () => {
		render(DecisionScreen, {
			run: fallen(),
			catalogue,
			checkHref: '/check/#check=made',
			reportHref: '/check/report/#check=made'
		});
		expect(screen.getByRole('heading', { name: 'If the water really fell' })).toBeVisible();
		expect(within(causes()).getAllByRole('listitem')[0]).toHaveTextContent('Get it running');
	});
	test('in the report, the one that is spoken for first, three in full at most and the others by name', () => {
		const part = reportOf(fallen(), catalogue).parts.find(
			({ title }) => title === 'If the water really fell'
		);
		expect(part?.lines[0]).toMatch(
			/^Doser stopped.*\(an answer speaks for it\)\. Look for: .*Get it/u
		);
		expect(part?.lines.join(' ')).toContain(
			'If you see that, do not wait. Stop all dosing, aerate'
		);
		const inFull = part?.lines.filter((line) => line.includes('Look for: '));
		expect(inFull?.length).toBeLessThanOrEqual(3);
		expect(part?.lines.at(-1)).toMatch(
			/^Or, with their signs on the page of the advice: .*; .*\.$/u
		);
		expect(part?.lines).toHaveLength(inFull!.length + 1);
	});
});
