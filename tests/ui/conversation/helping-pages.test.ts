import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, test, vi } from 'vitest';
import type { FormContext } from '../../../src/lib/ui/conversation/forms/form';
import TellSentence from '../../../src/lib/ui/conversation/TellSentence.svelte';

beforeEach(() => localStorage.clear());

const context: FormContext = {
	analyte: 'alkalinity',
	unit: 'dKH',
	first: null,
	kit: null,
	evidence: [],
	id: 'second'
};
const href = '/check/curve#check=abc';
function shown(about: Partial<FormContext> = {}) {
	const props = {
		id: 'tell',
		form: 'secondMethod' as const,
		context: { ...context, ...about },
		blanks: {},
		ways: { probeTitration: { href, words: 'Work out the pH curve' } },
		onwrite: vi.fn(),
		ontell: vi.fn()
	};
	render(TellSentence, { props });
	return userEvent.setup();
}
const link = () => screen.queryByRole('link', { name: 'Work out the pH curve' });

test('a titration with a pH probe leads to the page of its curve, for the same check', async () => {
	const user = shown();
	expect(link()).toBeNull();
	await user.selectOptions(screen.getByLabelText('Which method'), 'probe');
	expect(link()).toHaveAttribute('href', href);
	await user.selectOptions(screen.getByLabelText('Which method'), 'laboratory');
	expect(link()).toBeNull();
});
test('of calcium there is none', async () => {
	const user = shown({ analyte: 'calcium', unit: 'mg/L' });
	await user.selectOptions(screen.getByLabelText('Which method'), 'probe');
	expect(link()).toBeNull();
});
