import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import type { Circumstances } from '$lib/observation';
import BeforeSheet from '../../../src/lib/ui/test/before/BeforeSheet.svelte';

const noon = new Date(2026, 4, 5, 12, 0).getTime();

function show(remembered: Circumstances | null = null) {
	const onchange = vi.fn<(circumstances: Circumstances) => void>();
	const onpass = vi.fn();
	render(BeforeSheet, { circumstances: {}, remembered, now: noon, onchange, onpass });
	return { onchange, onpass, user: userEvent.setup(), said: () => onchange.mock.lastCall?.[0] };
}

describe('BeforeSheet', () => {
	test('can be skipped whole, with nothing said', async () => {
		const { user, onchange, onpass } = show();
		await user.click(screen.getByRole('button', { name: 'Skip all this' }));
		expect(onpass).toHaveBeenCalledOnce();
		expect(onchange).not.toHaveBeenCalled();
	});

	test('says each thing when its field is left', async () => {
		const { user, said } = show();
		await user.click(screen.getByRole('radio', { name: 'tank' }));
		await user.click(screen.getByRole('button', { name: 'Just now' }));
		await user.type(screen.getByLabelText('Who tests'), 'Ada');
		await user.tab();
		expect(said()).toEqual({ water: 'tank', takenAtEpochMs: noon, tester: 'Ada' });
	});

	test('begins with what stays the same, when asked', async () => {
		const { user, said } = show({ tester: 'Ada', hoursSinceDose: 3, temperatureC: 25 });
		await user.click(screen.getByRole('button', { name: 'Same as last time' }));
		expect(said()).toEqual({ tester: 'Ada' });
		expect(screen.getByLabelText('Temperature of the water')).toHaveValue('');
	});

	test('offers no last time when there was none', () => {
		show();
		expect(screen.queryByRole('button', { name: 'Same as last time' })).toBeNull();
	});

	test('a wrong number is answered at its field and holds up the start once', async () => {
		const { user, onpass } = show();
		const field = screen.getByLabelText('Temperature of the water');
		await user.type(field, '77');
		await user.click(screen.getByRole('button', { name: 'Start the test' }));
		expect(onpass).not.toHaveBeenCalled();
		expect(field).toHaveValue('77');
		expect(field).toHaveAttribute('aria-invalid', 'true');
		expect(field).toHaveAccessibleDescription(/25\.0 °C/);
		expect(field).toHaveFocus();
		await user.clear(field);
		await user.type(field, '25,0');
		await user.click(screen.getByRole('button', { name: 'Start the test' }));
		expect(onpass).toHaveBeenCalledOnce();
	});

	test('blue light is warned of before the first drop', async () => {
		const { user } = show();
		expect(screen.getByRole('status').textContent?.trim()).toBe('');
		await user.click(screen.getByRole('radio', { name: 'blue' }));
		expect(screen.getByRole('status')).toHaveTextContent(/white lamp/);
	});

	test('asks what a known solution holds, and only of one', async () => {
		const { user, said, onpass } = show();
		await user.click(screen.getByRole('radio', { name: 'tank' }));
		expect(screen.queryByLabelText('It holds')).toBeNull();
		await user.click(screen.getByRole('radio', { name: 'known solution' }));
		await user.type(screen.getByLabelText('It holds'), '8');
		await user.click(screen.getByRole('button', { name: 'Start the test' }));
		// Half of it is no known solution: the rest is asked for once, where it belongs.
		expect(onpass).not.toHaveBeenCalled();
		const band = screen.getByLabelText('Known to within ±');
		expect(band).toHaveFocus();
		expect(band).toHaveAttribute('aria-invalid', 'true');
		expect(screen.getByRole('group', { name: 'In which unit?' })).toHaveAccessibleDescription(
			'Which unit is that in?'
		);
		await user.type(band, '0,1');
		await user.click(screen.getByRole('radio', { name: 'dKH' }));
		await user.click(screen.getByRole('radio', { name: 'salt water' }));
		await user.click(screen.getByRole('button', { name: 'Start the test' }));
		expect(onpass).toHaveBeenCalledOnce();
		expect(said()).toEqual({
			water: 'reference',
			reference: { nominal: 8, expandedUncertainty: 0.1, unit: 'dKH', matrix: 'seawater' }
		});
	});
});
