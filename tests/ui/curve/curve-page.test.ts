import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { dkhFromMolPerKg } from '../../../src/lib/chemistry';
import { EvidenceSchema, type Evidence } from '../../../src/lib/observation';
import { CurveForm } from '../../../src/lib/ui/curve/curve-form.svelte';
import CurveScreen from '../../../src/lib/ui/curve/CurveScreen.svelte';
import { simulatedReadings } from '../../chemistry/probe-readings';
import dickson from '../../reference/data/dickson-1981-table-1.json';

// Dickson 1981 (Deep-Sea Res. 28A:609), table 1: 200 g of seawater of 2450 µmol/kg, acid of 0.3 mol/kg
// in salt water. The page asks for millilitres: density of seawater of salinity 35 at 25 °C 1.02334 kg/L
// (Millero and Poisson 1981, from memory).
const DENSITY = 1.02334;
const published = dickson.phFreeByAcidG.map(([acid, ph]) => `${acid}\t${ph}`).join('\n');
const TRUE_DKH = dkhFromMolPerKg(dickson.alkalinityMolPerKg, DENSITY);
const publishedBlanks = {
	sample: (dickson.sampleG / DENSITY).toFixed(2),
	acid: String(dickson.acidMolPerKg),
	vessel: 'closed',
	acidWater: 'sodiumChloride'
};

function shown(blanks: Record<string, string> = {}, isForCheck = false) {
	const onuse = vi.fn<(evidence: Evidence) => void>();
	const form = new CurveForm(() => 'dKH');
	for (const [name, text] of Object.entries(blanks)) form.kept.set(name, text);
	const { unmount } = render(CurveScreen, { form, ...(isForCheck ? { onuse } : {}) });
	return { form, onuse, unmount, user: userEvent.setup() };
}
const value = () => screen.getByTestId('curve-value').textContent!.replace(/\s+/gu, ' ').trim();
const saidValue = () => {
	const [found, plusMinus] = value()
		.match(/[\d.]+/gu)!
		.map(Number);
	return { found: found!, plusMinus: plusMinus! };
};

beforeEach(() => localStorage.clear());
afterEach(() => localStorage.clear());

describe('a titration with a pH probe', () => {
	test('the published one comes out at what went in, and its ± is that of acid, sample and syringe', () => {
		shown({ ...publishedBlanks, readings: published });
		const { found, plusMinus } = saidValue();
		// 2450 µmol/kg are 7.03 dKH there; the page shows one hundredth, and the constants differ by 0.05 %.
		expect(Math.abs(found - TRUE_DKH)).toBeLessThan(0.01);
		// Twice the root of 1 %² (acid) + 0.5 %² (sample) + 0.5 %² (delivery), of the value: 0.172, shown to
		// one hundredth; what the readings add is less than half of that.
		const expected = 2 * Math.hypot(0.01, 0.005, 0.005) * TRUE_DKH;
		expect(Math.abs(plusMinus - expected)).toBeLessThan(0.01);
		expect(screen.getByText(/how well the acid’s strength is known/u)).toHaveTextContent(
			'the acid ± 2 %, the sample ± 1 %, the measuring of the acid ± 1 %'
		);
	});

	test('a table that was worked out raises no alarm, and what no curve can show is said', () => {
		shown({ ...publishedBlanks, readings: published });
		expect(screen.queryByRole('heading', { name: 'Look at this first' })).toBeNull();
		expect(screen.getByText(/^No reading lies far off the curve/u)).toHaveTextContent(
			'offset and slope are those of a meter that was set. That says nothing of the strength of the acid.'
		);
		expect(screen.getByText(/^No curve shows whether the acid/u)).toHaveTextContent(
			'Titrate a known solution with the same acid'
		);
	});
	test('with a known solution the acid’s strength is seen, and nothing is said of what cannot be', () => {
		shown({
			...publishedBlanks,
			readings: published,
			water: 'seawater',
			known: TRUE_DKH.toFixed(2),
			knownU: '0.05'
		});
		expect(screen.getByText(/the two agree within their ±/u)).toBeVisible();
		expect(screen.queryByText(/^No curve shows whether the acid/u)).toBeNull();
	});

	test('with its three drawings, each with a sentence and a table', async () => {
		const { user } = shown({ ...publishedBlanks, readings: published });
		for (const name of ['The curve', 'The straight line', 'What is left over'])
			expect(screen.getByRole('heading', { name })).toBeInTheDocument();
		// 2450 µmol/kg · 200 g / 0.3 mol/kg = 1.6333 g.
		expect(screen.getByText(/^The end is at 1\.63 mL of acid/u)).toHaveTextContent(
			'The curve goes by all 51 readings.'
		);
		for (const summary of screen.getAllByText('The same as a table')) await user.click(summary);
		expect(
			within(
				screen.getByRole('table', { name: 'Readings, and the pH of the fitted curve' })
			).getAllByRole('row')
		).toHaveLength(52);
		const line = () =>
			screen.getByRole('table', { name: /^Acid left over at each reading/u }).textContent;
		const corrected = line();
		await user.click(screen.getByLabelText('plain'));
		// The plain function takes no account of sulfate and carbon: its end lies elsewhere.
		expect(line()).not.toBe(corrected);
	});

	test('readings one by one, with comma or point, and taken out again', async () => {
		const { form, user } = shown();
		const volume = screen.getByLabelText('Acid so far');
		const ph = screen.getByLabelText('The meter shows');
		await user.type(volume, '0,5');
		await user.type(ph, '6,81');
		await user.click(screen.getByRole('button', { name: 'Add reading' }));
		expect(volume).toHaveFocus();
		expect(volume).toHaveValue('');
		await user.type(volume, '1.0');
		await user.type(ph, '6.42{Enter}');
		expect(form.pairs.pairs.map(({ addedMl, ph: each }) => [addedMl, each])).toEqual([
			[0.5, 6.81],
			[1, 6.42]
		]);
		await user.type(volume, '1.5');
		await user.type(ph, 'six{Enter}');
		expect(screen.getByText(/“six” is no number/u)).toBeInTheDocument();
		expect(ph).toHaveValue('six');
		await user.click(screen.getByText('2 readings are read'));
		await user.click(screen.getByRole('button', { name: 'Take out 0.5 mL, pH 6.81' }));
		expect(form.pairs.pairs.map(({ addedMl }) => addedMl)).toEqual([1]);
	});

	test('a line that cannot be read is named and stays', async () => {
		const { form, user } = shown();
		const box = screen.getByLabelText(/paste all of them/u);
		await user.click(box);
		await user.paste('mL\tpH\n0\t8,05\n0.5 7.1 6.9\n1,0\t6,4');
		expect(screen.getByText(/^Line 3/u)).toHaveTextContent(
			'Line 3, “0.5 7.1 6.9”: 3 columns were found'
		);
		expect(box).toHaveValue('mL\tpH\n0\t8,05\n0.5 7.1 6.9\n1,0\t6,4');
		expect(form.pairs.pairs).toHaveLength(2);
	});

	test('what is needed is named; a blank that cannot be is said once it has been left', async () => {
		const { user } = shown();
		expect(
			screen.getByText('Still needed: the sample, the strength of the acid and readings.')
		).toBeInTheDocument();
		await user.type(screen.getByLabelText('Sample'), '0');
		expect(screen.queryByText(/A sample in mL lies between/u)).toBeNull();
		await user.tab();
		expect(screen.getByText(/A sample in mL lies between 0.1 and 5000; found 0/u)).toBeVisible();
	});

	test('too few readings that stop too early bear no value, and say why', () => {
		const few = '0 8.05\n0.5 7.0\n1.0 6.5\n1.2 6.2';
		shown({ sample: '50', acid: '0.1', readings: few }, true);
		expect(screen.queryByTestId('curve-value')).toBeNull();
		expect(screen.getByText('No value can be taken from these readings yet.')).toBeVisible();
		expect(screen.getByText(/There are 4 readings/u)).toBeVisible();
		expect(screen.getByText(/The readings stop at pH 6.20/u)).toBeVisible();
		expect(screen.queryByRole('button', { name: 'Use in this check' })).toBeNull();
	});

	test('swapped columns, and a pH that stands still, are said before all else', () => {
		const swapped = '8.1\t0\n7.2\t0.5\n6.6\t1\n5.9\t1.4\n4.1\t1.6\n3.2\t1.8';
		const { unmount } = shown({ sample: '50', acid: '0.1', readings: swapped }, true);
		expect(screen.queryByTestId('curve-value')).toBeNull();
		expect(screen.getByText(/^The columns look swapped/u)).toBeVisible();
		expect(screen.queryByText(/The readings stop at pH/u)).toBeNull();
		unmount();
		shown({ sample: '50', acid: '0.1', readings: '0 8.1\n0.5 8.1\n1 8.1\n2 8.1' }, true);
		expect(screen.getByText(/^The pH does not fall: it stays at about 8.10/u)).toBeVisible();
		expect(screen.queryByText(/readings lie|reading lies/u)).toBeNull();
	});

	const list = (points: readonly { addedMl: number; ph: number }[]) =>
		points.map(({ addedMl, ph }) => `${addedMl.toFixed(4)} ${ph.toFixed(3)}`).join('\n');
	const usual = { sample: '50', acid: '0.1', vessel: 'closed' };

	test.each([
		['a worn electrode', { slope: 0.88 }, /^The electrode’s slope is off: it seems to give 8\d %/u],
		['an electrode that drifts', { driftPh: 0.13 }, /^The curve does not suit.* it drifted by/u],
		['an electrode that drifts far', { driftPh: 0.4 }, /they wander along it/u],
		[
			'a weak acid',
			{ acidFactor: 0.75, reach: 2 },
			/the acid is about 2\d % weaker than was typed/u
		]
	])('%s is said in a sentence', (_, more, sentence) => {
		const readings = list(
			simulatedReadings({ alkalinityDkh: 8, decimals: 3, offsetPh: 0.05, ...more })
		);
		shown({ ...usual, readings });
		expect(screen.getByRole('heading', { name: 'Look at this first' })).toBeInTheDocument();
		expect(screen.getByText(sentence)).toBeInTheDocument();
		expect(screen.queryByText(/No reading lies far off the curve/u)).toBeNull();
		expect(screen.getByText(/Only where nothing of what follows is so/u)).toBeVisible();
	});

	test('a meter that was not set is not held to what a set one shows', () => {
		const readings = list(simulatedReadings({ alkalinityDkh: 8, decimals: 3, offsetPh: 0.25 }));
		const { form } = shown({ ...usual, readings });
		expect(screen.getByText(/^The curve does not suit a meter that was set today/u)).toBeVisible();
		expect(screen.getByLabelText('today, on two buffers of pH 4, 7 or 10')).toBeChecked();
		form.set('meter', 'notSet');
		return vi.waitFor(() => {
			expect(screen.queryByText(/^The curve does not suit a meter/u)).toBeNull();
			expect(screen.getByText(/and the meter is not far off/u)).toHaveTextContent(
				'That says nothing of the strength of the acid.'
			);
		});
	});

	test('where no value is taken no end is drawn', () => {
		const five = '0 8.05\n0.5 6.9\n1 6.2\n1.2 5.2\n1.24 4.6';
		shown({ sample: '50', acid: '0.1', vessel: 'closed', readings: five });
		expect(screen.getByText('No value can be taken from these readings yet.')).toBeVisible();
		expect(screen.queryByText(/^The end is at|^Past the end/u)).toBeNull();
		expect(screen.queryByRole('heading', { name: 'The curve' })).toBeNull();
	});
	test('the end has no more digits than the readings', () => {
		const readings = simulatedReadings({ alkalinityDkh: 8, readings: 40, offsetPh: 0.05 })
			.map(({ addedMl, ph }) => `${addedMl.toFixed(1)} ${ph.toFixed(2)}`)
			.join('\n');
		shown({ ...usual, readings });
		expect(screen.getByText(/^The end is at/u)).toHaveTextContent(/at 1\.4 mL of acid/u);
		expect(screen.getByText(/^Past the end/u)).toHaveTextContent(/meets 1\.4 mL/u);
	});

	test.each(['closed', 'open'])(
		'what a %s vessel does not show is said, and what to do',
		(vessel) => {
			const readings = list(simulatedReadings({ alkalinityDkh: 8, decimals: 2 }));
			shown({ ...usual, vessel, readings });
			expect(screen.getByText(/Read one buffer before and once more after/u)).toBeVisible();
			const inTheOpen = screen.queryByText(/In an open vessel a meter that drifts/u);
			if (vessel === 'open') expect(inTheOpen).toBeVisible();
			else expect(inTheOpen).toBeNull();
			expect(screen.queryByText(/no drift/u)).toBeNull();
		}
	);

	test('a drift that was seen is not called one that hardly shows', () => {
		const readings = list(simulatedReadings({ alkalinityDkh: 8, decimals: 3, driftPh: 0.4 }));
		shown({ ...usual, readings });
		expect(screen.queryByText(/hardly shows/u)).toBeNull();
	});

	test('acid that is weaker than its label shows on a known solution only', () => {
		const readings = list(simulatedReadings({ alkalinityDkh: 8, acidFactor: 0.9, decimals: 3 }));
		const { unmount } = shown({ ...usual, readings });
		expect(screen.queryByText(/The acid is weaker than was typed/u)).toBeNull();
		unmount();
		localStorage.clear();
		shown({ ...usual, readings, water: 'seawater', known: '8', knownU: '0.1' });
		expect(screen.getByText(/The acid is weaker than was typed/u)).toBeInTheDocument();
		expect(screen.getByText(/the titration comes out 1[01] % above that/u)).toBeInTheDocument();
	});

	// The fitted offset of the electrode takes up what would show of it.
	test.each([
		[
			'5 %, in simulated readings',
			1.05,
			(share: number) => ({
				...usual,
				readings: list(simulatedReadings({ alkalinityDkh: 8, acidFactor: 1 / share, decimals: 3 }))
			})
		],
		[
			'a fifth, in the published readings',
			1.2,
			(share: number) => ({
				...publishedBlanks,
				acid: String(share * dickson.acidMolPerKg),
				readings: published
			})
		]
	])(
		'an acid off by %s moves the value as much and leaves no trace; that is said',
		(_, share, blanks) => {
			const told = (typed: number) => {
				const { unmount } = shown(blanks(typed));
				const acid = screen.getByText(/^No curve shows whether the acid/u);
				const said = { ...saidValue(), before: acid.previousElementSibling?.textContent ?? '' };
				unmount();
				localStorage.clear();
				return said;
			};
			const right = told(1);
			const wrong = told(share);
			expect(Math.abs(wrong.found / right.found / share - 1)).toBeLessThan(0.01);
			for (const { before } of [right, wrong])
				expect(before).toMatch(/That says nothing of the strength of the acid\.\s*$/u);
		}
	);

	test('goes to a check as what a probe says of the tank, with the ± of the page', async () => {
		const { onuse, user } = shown({ ...publishedBlanks, readings: published }, true);
		await user.click(screen.getByRole('button', { name: 'Use in this check' }));
		const evidence = EvidenceSchema.parse(onuse.mock.calls[0]?.[0]);
		expect(evidence).toMatchObject({
			kind: 'secondMethod',
			method: 'probe',
			coverageFactor: 2,
			reports: 'total',
			reading: { unit: 'dKH' }
		});
		if (evidence.kind !== 'secondMethod') throw new Error('another kind');
		const { found, plusMinus } = saidValue();
		expect(Math.abs(evidence.reading.value - found)).toBeLessThanOrEqual(0.005);
		expect(Math.abs(evidence.reading.expandedUncertainty - plusMinus)).toBeLessThanOrEqual(0.005);
	});

	test('without a check it says how it gets into one', () => {
		const { unmount } = shown({ ...publishedBlanks, readings: published });
		expect(screen.getByRole('link', { name: 'begin a check' })).toHaveAttribute(
			'href',
			expect.stringMatching(/\/check$/u)
		);
		unmount();
		shown({ ...publishedBlanks, readings: published }, true);
		expect(screen.queryByRole('link', { name: 'begin a check' })).toBeNull();
	});

	test('and of a known solution as that method’s reading of it', async () => {
		const readings = list(simulatedReadings({ alkalinityDkh: 8, decimals: 3 }));
		const { onuse, user } = shown(
			{ ...usual, readings, water: 'seawater', known: '8,0', knownU: '0,2' },
			true
		);
		await user.click(screen.getByRole('button', { name: 'Use in this check' }));
		expect(EvidenceSchema.parse(onuse.mock.calls[0]?.[0])).toMatchObject({
			kind: 'reference',
			nominal: 8,
			nominalExpandedUncertainty: 0.2,
			matrix: 'seawater',
			instrument: 'pH probe'
		});
	});

	test('what was typed is there on the next visit, and can be thrown away and brought back', () => {
		const { unmount } = shown({ ...publishedBlanks, readings: published });
		unmount();
		const again = shown();
		expect(again.form.kept.isAsLeft).toBe(true);
		expect(screen.getByTestId('curve-value')).toBeInTheDocument();
		again.form.kept.startOver();
		expect(again.form.pairs.pairs).toEqual([]);
		again.form.kept.bringBack();
		expect(again.form.pairs.pairs).toHaveLength(51);
	});
});
