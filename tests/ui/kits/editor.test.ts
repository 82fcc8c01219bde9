import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { draftOfKit, emptyDraft, houseSyringeKit, type Kit } from '../../../src/lib/kits';
import { KitForm } from '../../../src/lib/ui/kits/kit-form.svelte';
import KitEditor from '../../../src/lib/ui/kits/KitEditor.svelte';

function shown(form: KitForm) {
	const onkeep = vi.fn<(kit: Kit) => void>();
	const { container } = render(KitEditor, { id: 'kit-form', form, onkeep });
	const element = container.querySelector('form');
	if (!element) throw new Error('a form expected');
	return { onkeep, keep: () => element.requestSubmit(), container };
}
const copy = () => new KitForm(draftOfKit(houseSyringeKit));

describe('the leaflet sentence', () => {
	test('a kit goes in and comes out as it was, with all that no blank shows', async () => {
		const { onkeep, keep } = shown(copy());
		keep();
		expect(onkeep).toHaveBeenCalledOnce();
		const kept = onkeep.mock.calls[0]?.[0];
		expect(kept).toEqual({ ...houseSyringeKit, id: kept?.id });
	});

	test('an unfinished one is not kept: every missing blank says so, the first has the focus', async () => {
		const { onkeep, keep } = shown(new KitForm(emptyDraft()));
		keep();
		await vi.waitFor(() => expect(screen.getByLabelText('Name of the kit')).toHaveFocus());
		expect(onkeep).not.toHaveBeenCalled();
		const name = screen.getByLabelText('Name of the kit');
		expect(name).toHaveAttribute('aria-invalid', 'true');
		expect(name).toHaveAccessibleDescription('Type a name for the kit here.');
		expect(screen.getByLabelText('Capacity of the syringe, mL')).toHaveAttribute(
			'aria-invalid',
			'true'
		);
		expect(screen.getByText(/choose at which end its 0 stands/)).toBeInTheDocument();
		expect(screen.getByText(/A table needs two rows/)).toBeInTheDocument();
	});

	test('what belongs to a syringe is asked of a syringe only', async () => {
		const user = userEvent.setup();
		shown(copy());
		expect(screen.getByText(/Which end of its scale is 0/)).toBeInTheDocument();
		await user.selectOptions(screen.getByLabelText('How the titrant is given'), 'dropper');
		expect(screen.queryByText(/Which end of its scale is 0/)).not.toBeInTheDocument();
		expect(screen.queryByLabelText(/Capacity/)).not.toBeInTheDocument();
		expect(screen.getByLabelText('Volume of one drop, mL')).toHaveValue('0.021');
		await user.selectOptions(screen.getByLabelText('How the titrant is given'), 'syringe');
		expect(screen.getByLabelText('Capacity of the syringe, mL')).toHaveValue('1');
	});

	test('every blank has a name, decimals bring the decimal keys', () => {
		const { container } = shown(copy());
		const blanks = [...container.querySelectorAll('input, select, textarea')];
		expect(blanks.length).toBeGreaterThan(40);
		for (const blank of blanks) expect(blank).toHaveAccessibleName();
		expect(screen.getByLabelText('Sample, mL')).toHaveAttribute('inputmode', 'decimal');
		expect(screen.getByLabelText('Row 3, dKH')).toHaveAttribute('inputmode', 'decimal');
	});

	test('Enter goes on to the next blank and keeps nothing', async () => {
		const user = userEvent.setup();
		const { onkeep } = shown(copy());
		await user.click(screen.getByLabelText('Row 1, the mark at the seal'));
		await user.keyboard('{Enter}');
		expect(screen.getByLabelText('Row 1, dKH')).toHaveFocus();
		await user.keyboard('{Enter}');
		expect(screen.getByLabelText('Row 2, the mark at the seal')).toHaveFocus();
		expect(onkeep).not.toHaveBeenCalled();
	});

	test('two columns pasted into a blank of the table become its rows', async () => {
		const user = userEvent.setup();
		const form = copy();
		shown(form);
		await user.click(screen.getByLabelText('Row 1, the mark at the seal'));
		await user.paste('mark\tdKH\n1,0\t0\n0,5\t8,0\n0\t16');
		expect(form.draft.rows).toEqual([
			{ at: '1,0', value: '0' },
			{ at: '0,5', value: '8,0' },
			{ at: '0', value: '16' },
			{ at: '', value: '' }
		]);
		expect(screen.getByText(/3 rows taken\. Not taken: “mark/)).toBeInTheDocument();
	});

	test('a number pasted into a blank is only that number', async () => {
		const user = userEvent.setup();
		const form = copy();
		shown(form);
		const blank = screen.getByLabelText('Row 1, the mark at the seal');
		await user.clear(blank);
		await user.paste('0,95');
		expect(form.draft.rows[0]).toEqual({ at: '0,95', value: '−0.3' });
		expect(form.draft.rows).toHaveLength(12);
	});

	test('a reagent is added, named and taken out again, and the focus stays near', async () => {
		const user = userEvent.setup();
		const form = copy();
		shown(form);
		const part = screen.getByRole('region', { name: 'The reagents' });
		await user.click(within(part).getByRole('button', { name: 'Another reagent' }));
		await vi.waitFor(() => expect(screen.getByLabelText('Amount of reagent 2')).toHaveFocus());
		await user.type(screen.getByLabelText('Name of reagent 2'), 'B');
		await user.click(within(part).getByRole('button', { name: 'Add B one place earlier' }));
		expect(form.draft.reagents.map(({ name }) => name)).toEqual(['B', 'indicator']);
		await user.click(within(part).getByRole('button', { name: 'Take B out' }));
		expect(form.draft.reagents.map(({ name }) => name)).toEqual(['indicator']);
	});

	test('a new volume is a new name of the sample', async () => {
		const user = userEvent.setup();
		const form = copy();
		shown(form);
		await user.clear(screen.getByLabelText('Sample, mL'));
		await user.type(screen.getByLabelText('Sample, mL'), '5');
		expect(form.kit?.sample.volumes[0]).toMatchObject({ name: 'Normal, 5 mL', volumeMl: 5 });
	});

	test('a leaflet for calcium and magnesium together, which is filled again on the way', async () => {
		const user = userEvent.setup();
		const { onkeep, keep } = shown(copy());
		const pick = (label: string, value: string) =>
			user.selectOptions(screen.getByLabelText(label), value);
		await pick('What the kit measures', 'hardness');
		expect(screen.getByLabelText('Row 3, mmol/L')).toBeInTheDocument();
		expect(screen.getByLabelText('This value less calcium')).toHaveValue('yes');
		expect(screen.getByRole('checkbox', { name: /ammonia/ })).toBeChecked();
		expect(screen.queryByText(/dKH/)).not.toBeInTheDocument();
		// 16 mmol/L for each mL of 6 mL: 96 mmol in a litre of EDTA, one to one.
		expect(screen.getByText(/implies EDTA of about 0\.096 mol\/L/)).toBeInTheDocument();
		await pick('If it runs empty before the end', 'yes');
		// Tanks have 43 to 89 mmol/L of both: at 15.7 a filling, 3 to 6 of them.
		expect(screen.getByText(/Normal, 6 mL: one filling.*3 to 6 fillings are/)).toBeInTheDocument();
		keep();
		expect(onkeep).toHaveBeenCalledOnce();
		expect(onkeep.mock.calls[0]?.[0]).toMatchObject({
			analyte: 'hardness',
			unit: 'mmol/L',
			byDifference: { gives: 'magnesium', less: 'calcium' },
			delivery: { refilled: true }
		});
	});
});
