import { cleanup, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, expect, test, vi } from 'vitest';
import { houseKitOf } from '../../../src/lib/kits';
import ReadControls from '../../../src/lib/ui/bench/controls/ReadControls.svelte';

afterEach(cleanup);

/** The value is asked for of a titration that was filled so often again. */
function asked(refills: number) {
	const say = vi.fn();
	const kit = houseKitOf('house-hardness');
	const titration = { bench: { kit, volumeId: 'normal', refills }, walk: { matches: () => true } };
	const hands = { run: { titration, say } };
	const step = { kind: 'read', id: 'read', what: 'mark' };
	render(ReadControls, { hands, step } as never);
	return say;
}
async function typed(value: string) {
	const user = userEvent.setup();
	await user.type(screen.getByLabelText(/Value/), value);
	await user.click(screen.getByRole('button', { name: 'That is my value' }));
}

test('a value beyond one filling is not doubted where the syringe was filled again', async () => {
	const say = asked(1);
	await typed('63.8');
	expect(say).toHaveBeenCalledWith({ type: 'value.reported', value: 63.8, unit: 'mmol/L' });
});
test('without a refill it is asked about, and so is one beyond two fillings with one', async () => {
	const say = asked(0);
	await typed('63.8');
	expect(say).not.toHaveBeenCalled();
	expect(screen.getByText(/leaflet ends at 38.0 mmol\/L/)).toBeVisible();
	cleanup();
	const again = asked(1);
	await typed('95');
	expect(again).not.toHaveBeenCalled();
	expect(screen.getByText(/filled again the leaflet ends at 78.0 mmol\/L/)).toBeVisible();
});
