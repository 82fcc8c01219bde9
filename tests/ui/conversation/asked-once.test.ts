import { fireEvent, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { expect, test, vi } from 'vitest';
import { houseHardnessKit } from '$lib/kits';
import TellSentence from '../../../src/lib/ui/conversation/TellSentence.svelte';

const NAME = 'Magnesium once the new value is taken off';

function show() {
	const ontell = vi.fn();
	render(TellSentence, {
		props: {
			id: 'tell',
			form: 'otherWay',
			context: {
				analyte: 'magnesium',
				unit: 'mg/L',
				first: { id: 'q', label: 'Q', value: 1072, expandedUncertainty: 92, unit: 'mg/L' },
				kit: houseHardnessKit,
				evidence: [],
				id: 'new'
			},
			blanks: { way: 'takenOffAnew' },
			onwrite: vi.fn(),
			ontell
		}
	});
	const send = () => fireEvent.submit(screen.getByRole('form'));
	return { user: userEvent.setup(), ontell, send };
}

test('a number like calcium is queried at its place, and taken when it is told once more', async () => {
	const { user, ontell, send } = show();
	const blank = screen.getByLabelText(NAME);
	await user.type(blank, '430');
	await send();
	expect(ontell).not.toHaveBeenCalled();
	expect(blank).toHaveAccessibleDescription(/looks like calcium: magnesium is meant here/u);
	expect(blank).toHaveFocus();
	await send();
	expect(ontell).toHaveBeenCalledOnce();
	expect(ontell.mock.calls[0]?.[0]).toMatchObject({
		from: 'takenOffAnew',
		reading: { value: 430 }
	});
});

test('another such number is queried anew, and what tanks hold is taken at once', async () => {
	const { user, ontell, send } = show();
	const blank = screen.getByLabelText(NAME);
	await user.type(blank, '430');
	await send();
	await user.clear(blank);
	await user.type(blank, '440');
	await send();
	expect(ontell).not.toHaveBeenCalled();
	await user.clear(blank);
	await user.type(blank, '1290');
	expect(blank).not.toHaveAccessibleDescription();
	await send();
	expect(ontell).toHaveBeenCalledOnce();
});
