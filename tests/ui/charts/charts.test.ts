import { fireEvent, render, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import LedgerPicture from '../../../src/lib/ui/charts/LedgerPicture.svelte';
import ReadingsLine from '../../../src/lib/ui/charts/ReadingsLine.svelte';
import TitrationCurve from '../../../src/lib/ui/charts/TitrationCurve.svelte';

describe('ReadingsLine', () => {
	test('says in a table what the picture shows', () => {
		render(ReadingsLine, {
			caption: 'Readings so far',
			readings: [
				{
					id: 'a',
					label: 'Your first test',
					value: 7.14,
					expandedUncertainty: 0.38,
					shape: 'circle',
					isUncertain: true
				},
				{
					id: 'b',
					label: 'Known solution',
					value: 7.8,
					expandedUncertainty: 0.4,
					shape: 'circle',
					isUncertain: false,
					nominal: { value: 8, expandedUncertainty: 0.1 }
				}
			]
		});
		const table = screen.getByRole('table', { name: 'Readings so far' });
		const cells = within(table)
			.getAllByRole('row')
			.map((row) => row.textContent?.replace(/\s+/g, ' ').trim());
		expect(cells[1]).toContain('Your first test');
		expect(cells[1]).toContain('7.1');
		expect(cells[2]).toContain('said to hold 8.0 ± 0.1');
	});

	test('a label and its value stand side by side in one line of words, outside the drawing', () => {
		const { container } = render(ReadingsLine, {
			caption: 'Readings',
			readings: [
				{
					id: 'a',
					label: 'A laboratory’s report, both metals together',
					value: 55.6,
					expandedUncertainty: 1.5,
					shape: 'square',
					isUncertain: false
				}
			]
		});
		const [label, value] = [...(container.querySelector('.drawing p')?.children ?? [])];
		// Words of a drawing neither wrap nor make room for each other.
		expect(label).toHaveTextContent('A laboratory’s report, both metals together');
		expect(label?.closest('svg')).toBeNull();
		expect(value).toHaveTextContent(/^55\.6\s±\s1\.5$/);
	});

	test('draws the reading in question hollow', () => {
		const { container } = render(ReadingsLine, {
			caption: 'Readings',
			readings: [
				{
					id: 'a',
					label: 'One',
					value: 7,
					expandedUncertainty: 0.4,
					shape: 'circle',
					isUncertain: true
				},
				{
					id: 'b',
					label: 'Two',
					value: 7,
					expandedUncertainty: 0.4,
					shape: 'circle',
					isUncertain: false
				}
			]
		});
		const circles = [...container.querySelectorAll('circle')];
		expect(circles.map((circle) => circle.classList.contains('hollow'))).toEqual([true, false]);
	});
});

describe('LedgerPicture', () => {
	test('every row has a word and a signed number, and the sum stands below', () => {
		render(LedgerPicture, {
			ledger: {
				rows: [
					{
						id: 'slip-mixedMarks',
						kind: 'slip',
						label: 'Filled by one mark, read by the other',
						group: 'your hands',
						printed: -1.9,
						from: 0,
						to: 0.9,
						isNext: true
					},
					{
						id: 'method',
						kind: 'method',
						label: 'The kit',
						group: 'the kit',
						printed: 0.2,
						from: 0.9,
						to: 1,
						isNext: false
					}
				],
				unitName: 'dKH',
				decimals: 1,
				zero: 0.9,
				printedReported: 7.1,
				printedTrue: 8.8,
				printedTotal: -1.7,
				without: []
			}
		});
		const rows = screen.getAllByRole('row').map((row) => row.textContent?.replace(/\s+/g, ' '));
		expect(rows[1]).toContain('mend this first');
		expect(rows[1]).toContain('−1.9');
		expect(rows[2]).toContain('+0.2');
		expect(rows[2]).not.toContain('mend this first');
		expect(rows[3]).toContain('These add up to');
		expect(rows[3]).toContain('−1.7');
	});
});

describe('TitrationCurve', () => {
	const colour = { r: 0.3, g: 0.75, b: 0.75 };
	const curve = {
		readoutName: 'pH',
		points: [
			{ addedMl: 0, readout: 8, rgb: colour },
			{ addedMl: 1, readout: 3, rgb: { r: 0.95, g: 0.6, b: 0.6 } }
		],
		endMl: 0.6,
		stoppedMl: 0.5
	};

	const dkh = { unit: { name: 'dKH', decimals: 1 }, titrant: 'acid' };

	test('the cursor reads pH, colour and what the leaflet would have said', async () => {
		render(TitrationCurve, { ...dkh, curve, valueAt: (ml: number) => 16 * ml });
		const cursor = screen.getByRole('slider', { name: 'Move along the titration' });
		expect(cursor).toHaveAttribute('aria-valuetext', expect.stringContaining('0.50 mL: pH 5.5'));
		await fireEvent.input(cursor, { target: { value: '0.2' } });
		const text = cursor.getAttribute('aria-valuetext');
		expect(text).toContain('0.20 mL: pH 7.0, teal');
		expect(text).toContain('the leaflet says 3.2 dKH');
	});

	test('reads pM of a titration of metals, and its value in its own unit', () => {
		render(TitrationCurve, {
			curve: { ...curve, readoutName: 'pM' },
			valueAt: (ml: number) => 300 * ml,
			unit: { name: 'mg/L', decimals: 0 },
			titrant: 'EDTA'
		});
		const text = screen.getByRole('slider').getAttribute('aria-valuetext');
		expect(text).toContain('0.50 mL: pM 5.5');
		expect(text).toContain('the leaflet says 150 mg/L');
		expect(screen.getByText('mL EDTA')).toBeInTheDocument();
	});

	test('names the end and where one stopped in words', () => {
		render(TitrationCurve, { ...dkh, curve });
		expect(screen.getByText(/the end, 0.60 mL/)).toBeInTheDocument();
		expect(screen.getByText(/you stopped, 0.50 mL/)).toBeInTheDocument();
	});

	test('an end within a hundredth of a mL of the stop is told finer', () => {
		render(TitrationCurve, { ...dkh, curve: { ...curve, endMl: 0.505 } });
		expect(screen.getByText(/the end, 0.505 mL/)).toBeInTheDocument();
		expect(screen.getByText(/you stopped, 0.500 mL/)).toBeInTheDocument();
	});

	test('before the page is laid out nothing of it is narrower than nothing', () => {
		// Here nothing is ever laid out: every width is 0.
		const { container } = render(TitrationCurve, { ...dkh, curve });
		const widths = [...container.querySelectorAll('rect')].map((rect) =>
			Number(rect.getAttribute('width'))
		);
		expect(widths.length).toBeGreaterThan(1);
		for (const width of widths) expect(width).toBeGreaterThanOrEqual(0);
	});

	test('a titration without an end says nothing of one', () => {
		render(TitrationCurve, { ...dkh, curve: { ...curve, endMl: null } });
		expect(screen.queryByText(/the end/)).not.toBeInTheDocument();
	});
});
