import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { flushSync } from 'svelte';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { houseKits, type Kit } from '../../../src/lib/kits';
import { EvidenceSchema } from '../../../src/lib/observation';
import { contentOf } from '../../../src/lib/judgement';
import { RecipeForm } from '../../../src/lib/ui/recipe/recipe-form.svelte';
import { solutionOf } from '../../../src/lib/ui/recipe/solution';
import SolutionMaker from '../../../src/lib/ui/recipe/SolutionMaker.svelte';
import { stepsOf } from '../../../src/lib/ui/recipe/steps';
import type { UsedPart } from '../../../src/lib/ui/recipe/used-part';

function shown(over: { asked?: 'calcium' | 'hardness'; kit?: Kit } = {}) {
	const onuse = vi.fn<(used: UsedPart) => void>();
	const form = new RecipeForm(() => 'dKH');
	form.kits = houseKits;
	form.asked = over.asked ?? null;
	form.checksKit = over.kit ?? null;
	const { unmount } = render(SolutionMaker, { form, onuse });
	return { form, onuse, unmount, user: userEvent.setup() };
}
const textOf = (id: string) => screen.getByTestId(id).textContent?.replace(/\s+/gu, ' ').trim();
const kitOf = (id: string) => houseKits.find((kit) => kit.id === id)!;

beforeEach(() => localStorage.clear());
afterEach(() => localStorage.clear());

describe('a known solution of calcium', () => {
	test('from a kit’s page: its powder, its unit, what it holds and what the kit should read', () => {
		shown({ asked: 'calcium', kit: kitOf('house-calcium') });
		expect(screen.getByLabelText('Which kit will read it?')).toHaveValue('house-calcium');
		expect(screen.queryByRole('group', { name: 'A solution of' })).not.toBeInTheDocument();
		expect(screen.getByLabelText(/^calcium chloride dihydrate/u)).toBeChecked();
		// ± 3.4 % of the powder and a little of the weighing: 14 to 15 mg/L.
		expect(textOf('content')).toMatch(/^It will hold 41[456] ± 1[45] mg\/L$/u);
		// 5 mg/L more than it holds; with the ± of kits, 8 mg/L, √(14.5² + 8²) = 16.6.
		expect(textOf('expected')).toMatch(
			/^House calcium kit should read about (419|420|421) ± 1[67] mg\/L on it, because in water without sea salt no magnesium falls out/u
		);
		expect(textOf('expected')).toMatch(/about 5 mg\/L more than it holds/u);
		expect(textOf('holds-for')).toMatch(/^Worked out for an ordinary kit with EDTA/u);
		expect(textOf('looks')).toMatch(/stays clear/u);
	});
	test('it is said what such a powder can show, and what is better', () => {
		shown({ asked: 'calcium' });
		// Of the reading to be expected, with what kits differ in: 16.6 of 420.
		expect(textOf('powder-vague')).toMatch(
			/only an error of the kit larger than ± (3\.9|4\.0) % shows/u
		);
		expect(textOf('powder-vague')).toMatch(/a bought solution is better whose label states/u);
		expect(screen.getByText(/Most of the ± comes from how pure the powder is/u)).toBeVisible();
		// Chloride of calcium without water: 415 · 147.01/110.98 and 5 for the water.
		expect(screen.getByText(/About\s55[3-6]\smg\/L/u)).toBeInTheDocument();
	});
	test('powder into water, a little at a time, and it cools before it is filled up', () => {
		shown({ asked: 'calcium' });
		// Twenty times 415 is about 8440, ± 3.4 %: 290, of which a hundred is fine enough.
		expect(screen.getByText(/Label it: stock, 8400\s±\s300\smg\/L/u)).toBeVisible();
		const step = screen.getByText(/then the powder a little at a time/u).closest('li')!;
		expect(step).toHaveTextContent(/let it cool, and fill up to 1000\sg in all/u);
		expect(screen.getByText(/never water onto the powder/u)).toBeInTheDocument();
		const weighed = screen.getByText(/of calcium chloride dihydrate in a small dry cup/u);
		expect(within(weighed.closest('li')!).getByText(/draws water from the air/u)).toBeVisible();
	});
	test('nothing is added to the tank’s water, and the page says why', () => {
		shown({ asked: 'calcium' });
		expect(screen.queryByLabelText('Your tank reads')).not.toBeInTheDocument();
		expect(screen.getByText(/^This way is for alkalinity/u)).toBeInTheDocument();
	});
	test('a check gets it in its unit', async () => {
		const { onuse, user } = shown({ asked: 'calcium' });
		await user.click(screen.getByRole('button', { name: 'Use this solution in the check' }));
		const { part, unit } = onuse.mock.calls[0]![0];
		expect(unit).toBe('mg/L');
		const reading = { id: 'r', label: 'k', value: 418, expandedUncertainty: 15, unit };
		const evidence = EvidenceSchema.parse({ ...part, reading });
		if (evidence.kind !== 'reference') throw new Error('a reference expected');
		expect(Math.abs(evidence.nominal - 415)).toBeLessThan(2);
		expect(evidence.nominalExpandedUncertainty / evidence.nominal).toBeGreaterThan(0.034);
	});
});

describe('of what it is made', () => {
	test('nobody says: alkalinity, until another is chosen; each keeps what was typed for it', async () => {
		const { form, user } = shown();
		expect(textOf('content')).toMatch(/dKH$/u);
		await user.type(screen.getByLabelText('It shall hold'), '9');
		await user.click(screen.getByLabelText('0.001 g'));
		await user.click(screen.getByLabelText('calcium and magnesium together'));
		expect(screen.getByLabelText('It shall hold')).toHaveValue('');
		expect(screen.getByLabelText('0.001 g')).toBeChecked();
		expect(textOf('content')).toMatch(/^It will hold 6[34]\.\d ± 1\.[56] mmol\/L$/u);
		await user.type(screen.getByLabelText('It shall hold'), '50');
		expect(textOf('content')).toMatch(/^It will hold (49|50)\.\d ± 1\.[12] mmol\/L$/u);
		await user.click(screen.getByLabelText('alkalinity'));
		expect(screen.getByLabelText('It shall hold')).toHaveValue('9');
		expect(textOf('content')).toMatch(/^It will hold 9\.0\d? ± 0\.\d+ dKH$/u);
		form.startOver();
		form.bringBack();
		form.setAnalyte('hardness');
		flushSync();
		expect(screen.getByLabelText('It shall hold')).toHaveValue('50');
	});
	test('a kit brings what it reads; the last choice is there after a reload', async () => {
		const { user, unmount } = shown();
		await user.selectOptions(
			screen.getByLabelText('Which kit will read it?'),
			kitOf('house-hardness').name
		);
		expect(screen.getByLabelText(/^Epsom salt/u)).toBeChecked();
		expect(screen.queryByRole('group', { name: 'A solution of' })).not.toBeInTheDocument();
		// In purified water the end comes early: about 1.4 mmol/L.
		expect(textOf('expected')).toMatch(/should read about 6[23](\.\d)? ± \d(\.\d)? mmol\/L/u);
		expect(textOf('expected')).toMatch(/turns a little early: about 1\.4 mmol\/L less/u);
		await user.click(screen.getByLabelText('with 35 g of plain salt in a litre'));
		// 0.09 mmol/L, of which nobody knows more than ± 0.66.
		expect(textOf('expected')).toMatch(/turns as it does in water from the tank/u);
		unmount();
		shown();
		expect(screen.getByLabelText('Which kit will read it?')).toHaveValue('house-hardness');
		expect(screen.getByLabelText(/^Epsom salt/u)).toBeChecked();
	});
	test('what led here goes before what was made last', () => {
		localStorage.setItem('halfdrop.known-solution', JSON.stringify({ kit: 'house-syringe' }));
		shown({ asked: 'calcium', kit: kitOf('house-calcium') });
		expect(screen.getByLabelText('Which kit will read it?')).toHaveValue('house-calcium');
		expect(textOf('content')).toMatch(/mg\/L$/u);
	});
	test('another powder of the same', async () => {
		const { user } = shown({ asked: 'hardness' });
		await user.click(screen.getByLabelText(/^magnesium chloride hexahydrate/u));
		expect(screen.getByText(/of magnesium chloride hexahydrate in a small dry cup/u)).toBeVisible();
		expect(screen.getByText(/label must say hexahydrate/u)).toBeVisible();
	});
	test('a wrong blank is told in the unit at hand', async () => {
		const { user } = shown({ asked: 'calcium' });
		await user.type(screen.getByLabelText('It shall hold'), '8');
		await user.tab();
		expect(screen.getByLabelText('It shall hold')).toHaveAccessibleDescription(
			/In mg\/L from 50(\.0)? to 1500/u
		);
	});
});

describe('the steps of calcium chloride, done in the order in which they stand', () => {
	test.each(
		['hundredth', 'thousandth', 'tenth'].flatMap((scale) =>
			(['purified', 'sodiumChloride'] as const).flatMap((matrix) =>
				(['kitchen', 'jug'] as const).map((waterWay) => [scale, matrix, waterWay] as const)
			)
		)
	)('scale %s, %s, %s', (scale, matrix, waterWay) => {
		const { recipe } = solutionOf({ scale, matrix, waterWay }, 'mg/L', null, 'calcium');
		const lines = stepsOf(recipe!, (stage) => contentOf(recipe!, [], stage)).map(({ words }) =>
			words.map((part) => (typeof part === 'string' ? part : part.amount)).join('')
		);
		// The bottle is empty when the scale is set to zero, once for each solution that is weighed.
		const zeros = lines.filter((line) => line.includes('Set a clean, empty bottle to zero'));
		expect(zeros).toHaveLength(waterWay === 'kitchen' ? recipe!.stages.length : 0);
		const hot = lines.filter((line) => line.includes('it grows warm'));
		expect(hot).toHaveLength(1);
		expect(hot[0]).toMatch(
			waterWay === 'kitchen' ? /fill up to \d+\sg in all/u : /fill up to the line of \d+\smL\.$/u
		);
		const salt = lines.findIndex((line) => line.includes('plain salt'));
		if (matrix === 'sodiumChloride') expect(lines[salt + 1]).toMatch(/fill up/u);
		else expect(salt).toBe(-1);
	});
});
