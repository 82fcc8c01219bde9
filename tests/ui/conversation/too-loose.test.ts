import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { houseSyringeKit } from '$lib/kits';
import type { Evidence } from '$lib/observation';
import type { FormId } from '../../../src/lib/ui/conversation/forms/forms';
import TellSentence from '../../../src/lib/ui/conversation/TellSentence.svelte';
import { firstReading, firstTest } from './made-run.svelte';

function sentence(form: FormId) {
	const ontell = vi.fn<(evidence: Evidence) => void>();
	// Under `props`: the renderer has a `context` of its own.
	render(TellSentence, {
		props: {
			id: 'tell',
			form,
			context: {
				analyte: 'alkalinity',
				unit: 'dKH',
				first: firstReading,
				kit: houseSyringeKit,
				evidence: [firstTest],
				id: 'new'
			},
			blanks: {},
			onwrite: () => {},
			ontell
		}
	});
	return { ontell, user: userEvent.setup() };
}
const rise = () => screen.getByLabelText('By how much the addition raises it');
const its = () => screen.getByLabelText(/^The ± of that rise/u);
const read = () => screen.getByLabelText('What it read');
const tell = () => screen.getByRole('button', { name: 'Add it' });

describe('a known amount whose ± is wide', () => {
	test('3 ± 9 is said to say next to nothing, at its blank, and is told at a second press', async () => {
		const { ontell, user } = sentence('addition');
		await user.type(rise(), '3');
		await user.type(its(), '9');
		await user.type(read(), '10.2');
		expect(its()).toHaveAccessibleDescription(/3\s±\s9 nobody knows.*next to nothing/u);
		expect(screen.queryByText(/^Found again/u)).not.toBeInTheDocument();
		await user.click(tell());
		expect(ontell).not.toHaveBeenCalled();
		await user.click(tell());
		expect(ontell.mock.calls[0]?.[0]).toMatchObject({
			kind: 'addition',
			added: 3,
			addedExpandedUncertainty: 9
		});
	});

	test('up to half of the amount nothing is asked, and what was found again stands there', async () => {
		const { ontell, user } = sentence('addition');
		await user.type(rise(), '3');
		await user.type(its(), '1.5');
		await user.type(read(), '10.2');
		expect(its()).toHaveAttribute('aria-invalid', 'false');
		// 10.2 less the 7.4 of the test in question.
		expect(screen.getByText('Found again: 2.8 of 3.0 dKH.')).toBeInTheDocument();
		await user.click(tell());
		expect(ontell).toHaveBeenCalledTimes(1);
	});

	test.each([
		['-1', /more than 0.*found -1/u],
		['0', /more than 0.*found 0/u],
		['2000', /up to 150; found 2000/u],
		['wide', /“wide” is no number/u]
	])('a ± of %s stays refused, however often it is pressed', async (typed, why) => {
		const { ontell, user } = sentence('addition');
		await user.type(rise(), '3');
		await user.type(its(), typed);
		await user.type(read(), '10.2');
		await user.click(tell());
		await user.click(tell());
		expect(ontell).not.toHaveBeenCalled();
		expect(its()).toHaveAccessibleDescription(why);
	});

	test('the same goes for what a solution holds', async () => {
		const { ontell, user } = sentence('reference');
		await user.type(screen.getByLabelText('What it is said to hold'), '8');
		await user.type(screen.getByLabelText(/^The ± of what it holds/u), '6');
		await user.type(read(), '7.9');
		await user.click(tell());
		expect(ontell).not.toHaveBeenCalled();
		expect(screen.getByLabelText(/^The ± of what it holds/u)).toHaveAccessibleDescription(
			/the solution can say next to nothing/u
		);
	});
});
