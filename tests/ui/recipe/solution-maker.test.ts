import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { flushSync } from 'svelte';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { referenceReading } from '../../../src/lib/chemistry';
import { houseKitsFor, houseSyringeKit, type Kit, type Unit } from '../../../src/lib/kits';
import { EvidenceSchema } from '../../../src/lib/observation';
import { RecipeForm } from '../../../src/lib/ui/recipe/recipe-form.svelte';
import { dominantParts } from '../../../src/lib/ui/recipe/content-words';
import { betterWith } from '../../../src/lib/ui/recipe/better-with';
import { solutionOf } from '../../../src/lib/ui/recipe/solution';
import SolutionMaker from '../../../src/lib/ui/recipe/SolutionMaker.svelte';
import type { UsedPart } from '../../../src/lib/ui/recipe/used-part';

const KEY = 'halfdrop.known-solution';

function shown(over: { unit?: Unit; isForCheck?: boolean } = {}) {
	const onuse = vi.fn<(used: UsedPart) => void>();
	const form = new RecipeForm(() => over.unit ?? 'dKH');
	const { unmount } = render(SolutionMaker, {
		form,
		...(over.isForCheck ? { onuse } : {})
	});
	return { form, onuse, unmount, user: userEvent.setup() };
}
const content = () => screen.getByTestId('content').textContent?.replace(/\s+/gu, ' ').trim();
const firstWeighed = () => screen.getAllByLabelText('Really weighed')[0]!;

beforeEach(() => localStorage.clear());
afterEach(() => localStorage.clear());

describe('making a known solution', () => {
	test('begins with a plan for an ordinary scale: a stock, a weighed portion, 8 dKH', () => {
		shown();
		expect(screen.getByText('11.99 g')).toBeInTheDocument();
		expect(screen.getByText('20.00 g')).toBeInTheDocument();
		expect(content()).toBe('It will hold 8.00 ± 0.08 dKH');
	});

	test('what was really weighed decides, with comma or point', async () => {
		const { user } = shown();
		await user.type(firstWeighed(), '12,59');
		// 5 % more powder than planned.
		expect(content()).toBe('It holds 8.40 ± 0.08 dKH');
		await user.clear(firstWeighed());
		await user.type(firstWeighed(), '12.59');
		expect(content()).toBe('It holds 8.40 ± 0.08 dKH');
	});

	test('the kit is to read less on it, and the reason is said; in salt water it is not', async () => {
		const { user } = shown();
		const expected = () => screen.getByTestId('expected').textContent?.replace(/\s+/gu, ' ');
		expect(expected()).toMatch(/ordinary kit should read about 7\.8\d? ± 0\.1\d? dKH/u);
		expect(expected()).toContain('the colour turns a little early');
		expect(expected()).toContain('no fault of the kit');
		await user.click(screen.getByLabelText('with 35 g of plain salt in a litre'));
		expect(expected()).toMatch(/ordinary kit should read about 8\.0\d? ± 0\.1\d? dKH/u);
		expect(expected()).toContain('turns as it does in water from the tank');
		const salt = screen.getByText('35 g').closest('li');
		expect(salt).toHaveTextContent('Salt without additives only');
	});

	test('a wrong blank is told beside it once left, nothing typed is lost, and no content is claimed', async () => {
		const { user, unmount } = shown();
		await user.type(firstWeighed(), '1,2,5');
		expect(firstWeighed()).not.toHaveAttribute('aria-invalid');
		await user.tab();
		expect(firstWeighed()).toHaveAccessibleDescription(/more than a decimal sign/u);
		expect(firstWeighed()).toHaveValue('1,2,5');
		expect(screen.queryByTestId('content')).not.toBeInTheDocument();
		unmount();
		shown();
		expect(firstWeighed()).toHaveValue('1,2,5');
		expect(firstWeighed()).toHaveAttribute('aria-invalid', 'true');
	});

	test('a mass far from the plan is asked about', async () => {
		const { user } = shown();
		await user.type(firstWeighed(), '1199');
		await user.tab();
		expect(firstWeighed()).toHaveAccessibleDescription(/Planned were 11\.99\sg/u);
	});

	test('a coarse scale is told so, and what would help; the ways stand with their ±', async () => {
		const { user } = shown();
		await user.click(screen.getByLabelText('1 g only'));
		expect(screen.getByText(/too little to judge a kit by/u)).toBeInTheDocument();
		expect(screen.getByText(/With a pocket scale to 0.01 g it would be/u)).toBeInTheDocument();
		await user.click(screen.getByLabelText('0.1 g'));
		expect(screen.queryByText(/too little to judge a kit by/u)).not.toBeInTheDocument();
		await user.click(screen.getByText(/Ways to make it/u));
		await user.click(
			screen.getByRole('button', { name: 'Take it: powder straight into the water' })
		);
		expect(screen.getByText('0.2 g')).toBeInTheDocument();
		expect(screen.getByText(/too little to judge a kit by/u)).toBeInTheDocument();
	});

	test('each trap stands at the step where it lies in wait', async () => {
		const { user } = shown();
		const step = (text: RegExp) => {
			const item = screen.getByText(text).closest('li');
			if (!item) throw new Error('a step expected');
			return within(item);
		};
		expect(
			step(/Baking powder is not/u).getByText(/of sodium bicarbonate in a small dry cup/u)
		).toBeInTheDocument();
		await user.click(screen.getByLabelText('dried sodium carbonate'));
		expect(screen.queryByText(/Baking powder is not/u)).not.toBeInTheDocument();
		expect(
			step(/Washing soda in crystals/u).getByText(/of dried sodium carbonate/u)
		).toBeInTheDocument();
		// 8 dKH less 63 %, and the little that the water does.
		expect(screen.getByText(/About 2\.9 dKH/u)).toBeInTheDocument();
	});

	test('the blank of the water is reckoned with', async () => {
		const { user } = shown();
		await user.click(screen.getByLabelText('I tested it with my kit'));
		await user.type(screen.getByLabelText('On the water alone the kit read'), '0.2');
		await user.type(screen.getByLabelText('± of that reading'), '0,2');
		// Anything from 0 to 0.4: half of that is in it, and its spread makes the ± larger.
		expect(content()).toMatch(/It will hold 8\.0 ± 0\.2 dKH/u);
	});

	test('in another unit the same solution, and what was typed keeps its unit', async () => {
		const { user, unmount } = shown({ unit: 'meq/L' });
		expect(content()).toBe('It will hold 2.85 ± 0.03 meq/L');
		await user.type(screen.getByLabelText('It shall hold'), '3');
		unmount();
		shown({ unit: 'dKH' });
		expect(content()).toBe('It will hold 3.00 ± 0.03 meq/L');
	});

	test('started over, it can be brought back', async () => {
		const { form, user } = shown();
		await user.type(screen.getByLabelText('It shall hold'), '10');
		form.startOver();
		expect(form.isBegun).toBe(false);
		expect(form.isThrown).toBe(true);
		form.bringBack();
		expect(form.text('target')).toBe('10');
	});

	test('rubbish in storage is left aside', () => {
		localStorage.setItem(
			KEY,
			JSON.stringify({ target: 3, scale: 'tenth', litres: 'x'.repeat(999) })
		);
		const { form } = shown();
		expect(form.text('target')).toBe('');
		expect(form.text('litres')).toBe('');
		expect(screen.getByLabelText('0.1 g')).toBeChecked();
	});
});

describe('which kit will read it', () => {
	const said = () => screen.getByTestId('expected').textContent?.replace(/\s+/gu, ' ').trim();
	const ownKit: Kit = {
		...houseSyringeKit,
		id: 'own',
		name: 'Mine',
		invented: false,
		unit: 'meq/L',
		conversion: { kind: 'perMl', valuePerMl: 5, offset: 0 },
		contents: undefined,
		endPoint: { startColour: 'green', endColour: 'pink', holdsSeconds: 20 }
	} as Kit;

	test('nobody says: the page says what kit it holds for', () => {
		shown();
		expect(said()).toMatch(/^An ordinary kit should read/u);
		expect(screen.getByTestId('holds-for')).toHaveTextContent(/^That is for a sample of 5 mL/u);
	});
	test('one’s own is chosen, and its value and ± stand in its own unit; it is there after a reload', async () => {
		const { form, user, unmount } = shown();
		form.kits = [ownKit, houseSyringeKit];
		flushSync();
		await user.selectOptions(screen.getByLabelText('Which kit will read it?'), 'Mine');
		// 8.00 dKH are 2.853 meq/L (2.8039 dKH each), of which plain water hides some hundredths.
		expect(said()).toMatch(/^Mine should read about 2\.[78]\d? ± 0\.0\d meq\/L on it/u);
		expect(screen.getByTestId('holds-for')).toHaveTextContent(
			/What is in its indicator no leaflet says/u
		);
		unmount();
		const again = shown();
		again.form.kits = [ownKit, houseSyringeKit];
		flushSync();
		expect(screen.getByLabelText('Which kit will read it?')).toHaveValue('own');
	});
	test('the kit of the check stands there beforehand, until another is chosen', async () => {
		const { form, user } = shown({ isForCheck: true });
		form.kits = [ownKit, houseSyringeKit];
		form.checksKit = houseSyringeKit;
		flushSync();
		const choice = screen.getByLabelText('Which kit will read it?');
		expect(choice).toHaveValue('house-syringe');
		expect(said()).toMatch(/^House syringe kit should read about/u);
		await user.selectOptions(choice, 'Another one, or not sure yet');
		expect(said()).toMatch(/^An ordinary kit/u);
	});
	test('what plain water does to it is worked out by its own sample, titrant, dyes and end colour', () => {
		const effect = (kit: Kit | null) => solutionOf({}, 'dKH', kit).expected!.effect;
		for (const kit of houseKitsFor('alkalinity')) {
			const [reagent] = kit.reagents;
			const { dose, id } = reagent!;
			const { differenceDkh, standardUncertaintyDkh } = referenceReading(
				{ alkalinityDkh: 8, matrix: 'purified', madeWith: 'bicarbonate', temperatureC: 20 },
				{
					sampleVolumeMl: kit.sample.volumes[0]!.volumeMl,
					acidMolPerL: (kit.contents!.titrant as { molPerL: number }).molPerL,
					indicator: { volumeMl: dose.amount * dose.unitMl!, dyes: kit.contents!.dyes[id]! },
					end: { hueDegrees: kit.endPoint.hueDegrees!, halfWidthDegrees: 15 }
				}
			);
			// The leaflet gives the titrant's strength to a percent or two: of an effect of 0.2, less than a thousandth.
			expect(effect(kit).value).toBeCloseTo(differenceDkh, 3);
			expect(effect(kit).standardUncertainty).toBeCloseTo(standardUncertaintyDkh, 3);
		}
		// A bluer end comes at a higher pH, where plain water is nearer to seawater.
		const bluer = {
			...houseSyringeKit,
			endPoint: { ...houseSyringeKit.endPoint, hueDegrees: 290 }
		};
		expect(Math.abs(effect(bluer).value - effect(houseSyringeKit).value)).toBeGreaterThan(0.02);
	});
});

describe('what makes the ±', () => {
	test('its shares sum to the whole, whatever the water is measured with', () => {
		for (const waterWay of ['kitchen', 'cylinder', 'jug']) {
			const { content } = solutionOf({ waterWay }, 'dKH');
			const shares = dominantParts(content!).map(({ share }) => share);
			expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
			expect(shares).toEqual([...shares].sort((a, b) => b - a));
		}
		const byJug = solutionOf({ waterWay: 'jug' }, 'dKH').content!;
		expect(dominantParts(byJug)[0]?.name).toMatch(/measuring the water/u);
	});

	test('what would help is the least change that does', () => {
		expect(betterWith({ waterWay: 'jug' }, 'dKH')?.words).toBe(
			'Weigh the water on a kitchen scale:'
		);
		expect(betterWith({ scale: 'whole' }, 'dKH')?.words).toBe('With a pocket scale to 0.01 g');
		expect(betterWith({}, 'dKH')).toBeNull();
	});
});

describe('adding to water from the tank', () => {
	async function addition(over: Parameters<typeof shown>[0] = {}) {
		const made = shown(over);
		await made.user.type(screen.getByLabelText('Your tank reads'), '8');
		await made.user.type(screen.getByLabelText('± of your tank’s reading'), '0,4');
		return made;
	}
	const rise = () => screen.getByTestId('rise').textContent?.replace(/\s+/gu, ' ');

	test('says how much of the stock, what it raises, and what it can and cannot show', async () => {
		await addition();
		// 11.99 g in 1000 g make 994.1 mL (1.0070 g/mL) of 402.6 dKH. Into 200 mL: 8 · 200/(402.6 − 16)
		// = 4.139 mL, 4.163 g.
		expect(screen.getByText('4.16 g')).toBeInTheDocument();
		expect(rise()).toMatch(/It rises by 8\.\d+ ± 0\.\d+ dKH/u);
		expect(rise()).toMatch(/the kit should read about 16\.\d ± 0\.\d dKH/u);
		expect(screen.getByText(/It cannot show what is wrong by the same amount/u)).toBeVisible();
	});

	test('stays within the scale of the kit', async () => {
		const { user } = await addition();
		await user.type(screen.getByLabelText('Top of the kit’s scale'), '15');
		expect(screen.getByText(/scale ends before twice your reading/u)).toBeInTheDocument();
		expect(rise()).toMatch(/should read about 1[34]\.\d/u);
		await user.clear(screen.getByLabelText('Top of the kit’s scale'));
		await user.type(screen.getByLabelText('Top of the kit’s scale'), '9');
		await user.tab();
		expect(screen.getByLabelText('Top of the kit’s scale')).toHaveAccessibleDescription(
			/no room for a rise/u
		);
		expect(screen.queryByTestId('rise')).not.toBeInTheDocument();
	});

	// 1 dKH is 0.3566 meq/L and 17.85 ppm CaCO3 (one German degree is 10 mg/L of CaO, DIN 38409-6, from memory).
	test.each([
		['dKH', /A ± is above 0: in dKH from 0\.02 to 5; found 0\.$/u, '0.02'],
		['meq/L', /A ± is above 0: in meq\/L from 0\.0071 to 1\.8; found 0\.$/u, '0.0071'],
		['ppm CaCO3', /A ± is above 0: in ppm CaCO.? from 0\.36 to 89; found 0\.$/u, '0.36']
	] as const)('a ± of 0 in %s is told the smallest, which is taken', async (unit, said, low) => {
		const { user } = shown({ unit });
		const blank = screen.getByLabelText('± of your tank’s reading');
		await user.type(blank, '0');
		await user.tab();
		expect(blank).toHaveAccessibleDescription(said);
		await user.clear(blank);
		await user.type(blank, low);
		await user.tab();
		expect(blank).not.toHaveAccessibleDescription(/above 0/u);
	});

	test('without a stock of one’s own its strength is asked for', async () => {
		const { user } = await addition();
		await user.click(screen.getByLabelText('another solution'));
		expect(screen.queryByTestId('rise')).not.toBeInTheDocument();
		await user.type(screen.getByLabelText('The stock holds'), '800');
		await user.type(screen.getByLabelText('± of the stock'), '8');
		expect(rise()).toMatch(/It rises by [78]\.\d/u);
	});
});

describe('for a check', () => {
	test('alone it offers no use; with one it hands over what was made', async () => {
		const { unmount } = shown();
		expect(screen.queryByRole('button', { name: /in the check/u })).not.toBeInTheDocument();
		unmount();
		const { onuse, user } = shown({ isForCheck: true });
		await user.type(firstWeighed(), '12,59');
		await user.click(screen.getByRole('button', { name: 'Use this solution in the check' }));
		expect(onuse).toHaveBeenCalledOnce();
		const used = onuse.mock.calls[0]![0];
		expect(used.unit).toBe('dKH');
		const reading = {
			id: 'r',
			label: 'Known solution',
			value: 8,
			expandedUncertainty: 0.4,
			unit: used.unit
		};
		const evidence = EvidenceSchema.parse({ ...used.part, reading });
		if (evidence.kind !== 'reference') throw new Error('a reference expected');
		expect(evidence.nominal).toBeCloseTo(8.4, 1);
		expect(evidence.matrix).toBe('purified');
	});

	test('an unfit solution is not offered; blank and addition are', async () => {
		const { onuse, user } = shown({ isForCheck: true });
		await user.click(screen.getByLabelText('I tested it with my kit'));
		await user.type(screen.getByLabelText('On the water alone the kit read'), '0');
		await user.type(screen.getByLabelText('± of that reading'), '0.1');
		await user.click(screen.getByRole('button', { name: 'Use the blank in the check' }));
		expect(screen.getByText(/figure above already, and does not count twice/u)).toBeVisible();
		expect(onuse.mock.calls[0]![0]).toEqual({
			part: { kind: 'blank', matrix: 'purified' },
			unit: 'dKH',
			reading: { value: 0, expandedUncertainty: 0.1 }
		});
		await user.type(screen.getByLabelText('Your tank reads'), '8');
		await user.type(screen.getByLabelText('± of your tank’s reading'), '0.4');
		await user.click(screen.getByRole('button', { name: 'Use this addition in the check' }));
		expect(onuse.mock.calls[1]![0].part).toMatchObject({ kind: 'addition' });
		await user.click(screen.getByLabelText('1 g only'));
		expect(
			screen.queryByRole('button', { name: 'Use this solution in the check' })
		).not.toBeInTheDocument();
	});
});
