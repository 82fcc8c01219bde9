import { fireEvent, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, test, vi } from 'vitest';
import { houseCalciumKit, houseHardnessKit, houseSyringeKit, type Analyte } from '$lib/kits';
import StartCheck from '../../../src/lib/ui/conversation/StartCheck.svelte';

beforeEach(() => localStorage.clear());

function show() {
	const onstart = vi.fn();
	const kits = [houseSyringeKit, houseCalciumKit, houseHardnessKit].map((kit) => ({
		kit,
		version: 0,
		isOwn: false
	}));
	render(StartCheck, {
		kits,
		unitOf: (analyte: Analyte) => (analyte === 'alkalinity' ? 'dKH' : 'mg/L'),
		analyte: 'alkalinity',
		unfinished: [],
		tests: [],
		onstart,
		onemergency: vi.fn()
	});
	return { user: userEvent.setup(), onstart };
}

/** The button stands in the foot of the page. */
const send = () => fireEvent.submit(screen.getByRole('form', { name: 'The reading in question' }));

test('a reading of a calcium kit is asked for, and taken, in what that kit measures', async () => {
	const { user, onstart } = show();
	await user.selectOptions(screen.getByLabelText('Which kit read it?'), houseCalciumKit.name);
	await user.type(screen.getByLabelText('What the test said'), '430');
	expect(screen.queryByRole('option', { name: 'dKH' })).toBeNull();
	await send();
	expect(onstart).toHaveBeenCalledOnce();
	expect(onstart.mock.calls[0]?.[1]).toMatchObject({ reading: { value: 430, unit: 'mg/L' } });
});

test('a unit that was chosen for another kit is not kept for one that does not have it', async () => {
	const { user, onstart } = show();
	const kit = screen.getByLabelText('Which kit read it?');
	await user.selectOptions(kit, houseSyringeKit.name);
	await user.selectOptions(screen.getByLabelText('Unit'), 'meq/L');
	await user.selectOptions(kit, houseCalciumKit.name);
	await user.type(screen.getByLabelText('What the test said'), '430');
	await send();
	expect(onstart.mock.calls[0]?.[1]).toMatchObject({ reading: { unit: 'mg/L' } });
});

test('without a kit it is asked what was measured, and the units are those of it', async () => {
	const { user, onstart } = show();
	await user.selectOptions(screen.getByLabelText('What was measured?'), 'Magnesium');
	expect(screen.queryByRole('option', { name: 'dKH' })).toBeNull();
	await user.type(screen.getByLabelText('What the test said'), '1310');
	await send();
	const [line, evidence, analyte] = onstart.mock.calls[0] ?? [];
	expect(line).toBeNull();
	expect(evidence).toMatchObject({ reading: { value: 1310, unit: 'mg/L' } });
	expect(analyte).toBe('magnesium');
});

test('as what an unknown kit is taken is said, until one is chosen', async () => {
	const { user } = show();
	expect(
		screen.getByText(/It is then taken to be a syringe kit, 1 mL for 16\.0 dKH/u)
	).toBeVisible();
	await user.selectOptions(screen.getByLabelText('Which kit read it?'), houseSyringeKit.name);
	expect(screen.queryByText(/It is then taken to be/u)).toBeNull();
});

test('a kit says what was measured, and one that measures something else is put away', async () => {
	const { user, onstart } = show();
	const kit = screen.getByLabelText('Which kit read it?');
	const measured = screen.getByLabelText('What was measured?');
	await user.selectOptions(kit, houseCalciumKit.name);
	expect(measured).toHaveDisplayValue('Calcium');
	await user.selectOptions(kit, 'I do not know, or none of these');
	expect(measured).toHaveDisplayValue('Calcium');
	await user.selectOptions(kit, houseCalciumKit.name);
	await user.selectOptions(measured, 'Alkalinity');
	expect(kit).toHaveDisplayValue('I do not know, or none of these');
	await user.type(screen.getByLabelText('What the test said'), '7.4');
	await send();
	expect(onstart.mock.calls[0]?.[1]).toMatchObject({ reading: { unit: 'dKH' } });
	expect(onstart.mock.calls[0]?.[2]).toBe('alkalinity');
});

/** What most tanks have, of magnesium alone; both metals together are far less in mmol/L. */
async function sayMagnesium(user: ReturnType<typeof userEvent.setup>, value: string) {
	await user.type(screen.getByLabelText('What the test said'), value);
	await send();
}

test.each([
	['said first', ['measured', 'kit']],
	['said after the kit', ['kit', 'measured']],
	['never said', ['kit']]
] as const)('magnesium, %s, stays magnesium in mg/L by a kit of both', async (_, order) => {
	const { user, onstart } = show();
	for (const each of order) {
		if (each === 'kit')
			await user.selectOptions(screen.getByLabelText('Which kit read it?'), houseHardnessKit.name);
		else await user.selectOptions(screen.getByLabelText('What was measured?'), 'Magnesium');
	}
	expect(screen.getByLabelText('What was measured?')).toHaveDisplayValue('Magnesium');
	expect(screen.getByText(/calcium has been taken off already/u)).toBeVisible();
	await sayMagnesium(user, '1290');
	expect(screen.queryByText(/Is that the unit|Hardly any tank/u)).toBeNull();
	const [line, evidence, analyte] = onstart.mock.calls[0] ?? [];
	expect(line?.kit.id).toBe(houseHardnessKit.id);
	expect(evidence).toMatchObject({ reading: { value: 1290, unit: 'mg/L' } });
	expect(analyte).toBe('magnesium');
});

test('both together are asked for where somebody says so, and the unit is then the kit’s', async () => {
	const { user, onstart } = show();
	await user.selectOptions(screen.getByLabelText('Which kit read it?'), houseHardnessKit.name);
	await user.selectOptions(
		screen.getByLabelText('What was measured?'),
		'Calcium and magnesium together'
	);
	expect(screen.getByLabelText('Which kit read it?')).toHaveDisplayValue(houseHardnessKit.name);
	expect(screen.queryByText(/has been taken off already/u)).toBeNull();
	await sayMagnesium(user, '63.8');
	const [, evidence, analyte] = onstart.mock.calls[0] ?? [];
	expect(evidence).toMatchObject({ reading: { value: 63.8, unit: houseHardnessKit.unit } });
	expect(analyte).toBe('hardness');
	await user.selectOptions(screen.getByLabelText('What was measured?'), 'Magnesium');
	expect(screen.getByLabelText('Unit')).toHaveDisplayValue('mg/L');
});
