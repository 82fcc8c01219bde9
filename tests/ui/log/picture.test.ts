import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
	MOST_BANDS,
	MOST_MARKS,
	pictureOf,
	type PicturePoint
} from '../../../src/lib/ui/log/picture';

const DAY = 86_400_000;
const start = Date.UTC(2026, 0, 5);
const size = { width: 390, height: 232, left: 38, right: 10, top: 22, bottom: 30 };

const point = (day: number, value: number, more: Partial<PicturePoint> = {}): PicturePoint => ({
	id: `t${day}`,
	at: start + day * DAY,
	value,
	expandedUncertainty: 0.4,
	isSuspect: false,
	isDosed: false,
	...more
});

describe('picture of the log', () => {
	test('bars reach as far up and down as the ± says, on one scale with the values', () => {
		const { marks, yTicks } = pictureOf([point(0, 7), point(7, 8)], size);
		const [low, high] = marks;
		if (!low || !high) throw new Error('two marks');
		const pxPerUnit = low.y - high.y;
		expect(low.y - low.top).toBeCloseTo(0.4 * pxPerUnit, 6);
		expect(low.bottom - low.y).toBeCloseTo(0.4 * pxPerUnit, 6);
		const tick = yTicks.find(({ value }) => value === 8);
		expect(tick?.y).toBeCloseTo(high.y, 6);
	});

	test('a difference of a tenth does not fill the picture', () => {
		const flat = [0, 7].map((day) => point(day, 7.4 + day / 70, { expandedUncertainty: 0.05 }));
		const { marks } = pictureOf(flat, size, { leastSpan: 1 });
		const [a, b] = marks;
		expect((a?.y ?? 0) - (b?.y ?? 0)).toBeLessThan(0.15 * size.height);
	});

	test('twenty thousand readings become a few hundred marks that count them all', () => {
		const many = Array.from({ length: 20_000 }, (_, i) => point(i / 2, 7 + Math.sin(i / 40)));
		const { marks, bands, bandOf } = pictureOf(many, size);
		expect(marks).toHaveLength(MOST_MARKS);
		expect(marks.at(-1)?.id).toBe(many.at(-1)?.id);
		expect(bands.length).toBeGreaterThan(0);
		expect(bands.length).toBeLessThanOrEqual(MOST_BANDS + 1);
		expect(bands.reduce((sum, { count }) => sum + count, marks.length)).toBe(20_000);
		// 20 000 half days are 27 years: columns of a quarter.
		expect(bandOf).toBe('thirteen weeks');
	});

	test('a column goes from the lowest to the highest of its readings, with the middle one', () => {
		const older = [7, 9, 8].map((value, day) => point(day, value));
		const newer = Array.from({ length: MOST_MARKS }, (_, i) => point(30 + i, 8));
		const { bands, bandOf } = pictureOf([...older, ...newer], size);
		expect(bandOf).toBe('a week');
		expect(bands).toMatchObject([{ count: 3, lowest: 7, middle: 8, highest: 9 }]);
	});

	test('without older readings there is no column', () => {
		expect(pictureOf([point(0, 7)], size)).toMatchObject({ bands: [], bandOf: null });
	});

	test('everything lies within the picture, whatever the readings', () => {
		const reading = fc.record({
			day: fc.double({ min: 0, max: 4000, noNaN: true }),
			value: fc.double({ min: 0, max: 30, noNaN: true }),
			expandedUncertainty: fc.double({ min: 0.01, max: 5, noNaN: true })
		});
		fc.assert(
			fc.property(fc.array(reading, { minLength: 1, maxLength: 400 }), (given) => {
				const points = given
					.sort((a, b) => a.day - b.day)
					.map(({ day, value, expandedUncertainty }, i) =>
						point(day, value, { expandedUncertainty, id: `r${i}` })
					);
				const { marks, bands } = pictureOf(points, size);
				for (const { x, y, top, bottom } of marks) {
					expect(x).toBeGreaterThanOrEqual(size.left - 1e-6);
					expect(x).toBeLessThanOrEqual(size.width - size.right + 1e-6);
					expect(top).toBeGreaterThanOrEqual(size.top - 1e-6);
					expect(y).toBeGreaterThanOrEqual(top);
					expect(y).toBeLessThanOrEqual(bottom);
				}
				for (const { top, middleY, bottom } of bands) {
					expect(top).toBeGreaterThanOrEqual(size.top - 1e-6);
					expect(middleY).toBeGreaterThanOrEqual(top);
					expect(middleY).toBeLessThanOrEqual(bottom);
				}
			}),
			{ numRuns: 60 }
		);
	});
});
