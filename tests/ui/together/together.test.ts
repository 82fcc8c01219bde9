import { fireEvent, render, screen } from '@testing-library/svelte';
import { tick } from 'svelte';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Analyte, Unit } from '../../../src/lib/kits';
import { readTogether } from '../../../src/lib/ui/together/together-fields';
import { TogetherForm } from '../../../src/lib/ui/together/together-form.svelte';
import TogetherScreen from '../../../src/lib/ui/together/TogetherScreen.svelte';
import { latestOf } from '../../../src/routes/check/together/latest';
import type { TestHeader } from '../../../src/lib/records';

const units: Partial<Record<Analyte, Unit>> = {
	alkalinity: 'dKH',
	calcium: 'mg/L',
	magnesium: 'mg/L'
};
const unitFor = (analyte: Analyte) => units[analyte]!;
beforeEach(() => localStorage.clear());

describe('what is typed', () => {
	const read = (texts: Record<string, string>) => readTogether(texts, unitFor, false);
	it('is taken with decimal comma or point', () => {
		const { input, problems } = read({ alkalinity: '8,1', alkalinityU: '0.5', salinity: '35' });
		expect(problems).toEqual({});
		expect(input).toMatchObject({
			alkalinity: { value: 8.1, expandedUncertainty: 0.5, unit: 'dKH' },
			salinity: { value: 35 }
		});
	});
	it('without its ± is taken with a usual one, and it is said', () => {
		const { input, problems, notes } = read({ calcium: '410' });
		expect(problems).toEqual({});
		expect(notes.calciumU).toBe('Taken as 25: usual for a kit.');
		const taken = input.calcium!.expandedUncertainty;
		expect(notes.calciumU).toContain(taken.toFixed(0));
		// Of what was used up between two tests, √2 times that.
		const used = read({
			calcium: '410',
			usedCalcium: '50',
			usedAlkalinity: '6',
			usedAlkalinityU: '0.5'
		});
		expect(used.input.usedUp!.calcium.expandedUncertainty).toBeCloseTo(Math.SQRT2 * taken, 9);
		expect(used.notes.usedCalciumU).toMatch(/for two tests/);
	});
	it('with a ± that is none is no use', () => {
		expect(read({ calcium: '410', calciumU: 'a few' }).input).not.toHaveProperty('calcium');
	});
	it.each([
		['salinity', '1.011', /between 20 and 43.*specific gravity/],
		['salinity', '53', /between 20 and 43.*conductivity/],
		['ph', '81', /between 7 and 9/],
		['calcium', 'four hundred', /no number/],
		['magnesiumU', '0', /more than 0/]
	])('%s of %s gets a message', (name, text, words) => {
		expect(read({ [name]: text }).problems[name]).toMatch(words);
	});
	it('a specific gravity is taken as the salinity that it means, and it is said', () => {
		const { input, problems, notes } = read({ salinity: '1.026' });
		expect(input.salinity?.value).toBe(34.5);
		expect(problems).toEqual({});
		expect(notes.salinity).toMatch(/specific gravity.*about 34\.5, and is taken as that/);
	});
	it('what was used up counts when both are there', () => {
		const one = read({ usedAlkalinity: '4', usedAlkalinityU: '0.5' });
		expect(one.input).not.toHaveProperty('usedUp');
		const both = read({
			usedAlkalinity: '4',
			usedAlkalinityU: '0.5',
			usedCalcium: '−3',
			usedCalciumU: '20'
		});
		expect(both.input.usedUp?.calcium.value).toBe(-3);
	});
});

describe('the page', () => {
	const type = async (label: string, text: string, which = 0) => {
		const field = screen.getAllByLabelText(label)[which]!;
		await fireEvent.input(field, { target: { value: text } });
		await fireEvent.change(field);
		await tick();
	};
	it('says what stands out, with its figures, and always what it cannot tell', async () => {
		render(TogetherScreen, { form: new TogetherForm(unitFor) });
		expect(screen.getByText(/can all be off together/)).toBeVisible();
		await type('Calcium', '350');
		await type('± of calcium', '15');
		await type('Magnesium', '1080');
		await type('± of magnesium', '50');
		await type('Salinity', '35');
		expect(screen.getAllByText('Stands out').length).toBeGreaterThan(0);
		expect(screen.getByText(/check the instrument in a solution of known salinity/)).toBeVisible();
		expect(screen.getByText(/calcium 17 % less, magnesium 18 % less/)).toBeVisible();
	});
	it('names what alkalinity, calcium and salinity lack, and only that', async () => {
		render(TogetherScreen, { form: new TogetherForm(unitFor) });
		for (const [label, text] of [
			['Alkalinity', '8'],
			['± of alkalinity', '0.5'],
			['Calcium', '420'],
			['± of calcium', '15'],
			['Salinity', '35'],
			['± of the salinity', '1']
		] as const)
			await type(label, text);
		expect(screen.getByText(/cannot be held against anything yet/)).toBeVisible();
		expect(screen.getByText(/^With magnesium as well, calcium and magnesium/)).toBeVisible();
		expect(screen.getByText(/^With pH as well, it is worked out/)).toBeVisible();
		await type('pH', '8.1');
		expect(screen.queryByText(/cannot be held against anything yet/)).toBeNull();
		expect(screen.getByText('Worked out')).toBeVisible();
	});
	it('says of an empty page what each look takes', () => {
		render(TogetherScreen, { form: new TogetherForm(unitFor) });
		expect(
			screen.getByText(/^With calcium, magnesium and the salinity, calcium and/)
		).toBeVisible();
		expect(screen.getByText(/^With alkalinity, calcium, the salinity and pH, it/)).toBeVisible();
	});
	it('takes over what the log has', async () => {
		const latest = {
			words: 'alkalinity, just now; calcium, 2 days ago',
			texts: { alkalinity: '8.0', alkalinityU: '0.5', calcium: '415', calciumU: '15' },
			byDifference: new Set<Analyte>()
		};
		render(TogetherScreen, { form: new TogetherForm(unitFor), latest });
		await fireEvent.click(screen.getByRole('button', { name: 'Take these' }));
		expect(screen.getByLabelText('Calcium')).toHaveValue('415');
		expect(
			screen.getByText(/^What stands there cannot be held against anything yet\./)
		).toBeVisible();
	});
});

describe('the newest of the log', () => {
	const DAY = 86_400_000;
	const now = Date.UTC(2026, 4, 1);
	const header = (analyte: Analyte, daysAgo: number, more: object): TestHeader =>
		({
			id: `${analyte}-${daysAgo}`,
			analyte,
			startedAtEpochMs: now - daysAgo * DAY,
			state: 'kept',
			summary: {
				unit: units[analyte] ?? 'mmol/L',
				standardUncertainty: 1,
				repeatabilitySd: 1,
				values: [1],
				sampleVolumeMl: 5,
				isSuspect: false,
				...more
			}
		}) as unknown as TestHeader;
	const alkalinity = header('alkalinity', 0, { value: 8.04, expandedUncertainty: 0.52 });
	it('is one of each, magnesium from what is left by difference', () => {
		const hardness = header('hardness', 1, {
			value: 65,
			expandedUncertainty: 2,
			difference: {
				analyte: 'magnesium',
				value: 1310,
				unit: 'mg/L',
				standardUncertainty: 30,
				expandedUncertainty: 60,
				repeatabilitySd: 20,
				isSuspect: false,
				isAssumed: false
			}
		});
		expect(latestOf([alkalinity, hardness], unitFor, now)).toEqual({
			words: 'alkalinity, just now; magnesium, 24 h ago',
			texts: { alkalinity: '8.0', alkalinityU: '0.5', magnesium: '1310', magnesiumU: '60' },
			byDifference: new Set(['magnesium'])
		});
	});
	it('passes over what is doubted, old, or no water of the tank', () => {
		const calcium = { value: 410, expandedUncertainty: 15 };
		expect(
			latestOf([alkalinity, header('calcium', 1, { ...calcium, isSuspect: true })], unitFor, now)
		).toBeNull();
		expect(latestOf([alkalinity, header('calcium', 30, calcium)], unitFor, now)).toBeNull();
		expect(
			latestOf([alkalinity, header('calcium', 1, { ...calcium, water: 'known' })], unitFor, now)
		).toBeNull();
		expect(latestOf([alkalinity, header('calcium', 1, calcium)], unitFor, now)).not.toBeNull();
	});
});
