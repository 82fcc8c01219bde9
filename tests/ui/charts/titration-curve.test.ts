import { describe, expect, test } from 'vitest';
import type { Curve } from '../../../src/lib/bench';
import {
	curveAt,
	curveMarks,
	curvePicture,
	decimalsApart
} from '../../../src/lib/ui/charts/titration-curve';

const grey = { r: 0.5, g: 0.5, b: 0.5 };
const rose = { r: 0.9, g: 0.6, b: 0.6 };
const curve: Curve = {
	readoutName: 'pH',
	points: [
		{ addedMl: 0, readout: 8, rgb: grey },
		{ addedMl: 0.5, readout: 6, rgb: grey },
		{ addedMl: 1, readout: 3, rgb: rose }
	],
	endMl: 0.8,
	stoppedMl: 0.7
};

describe('curvePicture', () => {
	const picture = curvePicture(curve, { width: 330, height: 200, left: 20, right: 10 });

	test('runs from the left end to the right end of the plot', () => {
		expect(picture.xOf(0)).toBe(20);
		expect(picture.xOf(1)).toBe(320);
		expect(picture.path.startsWith('M20,')).toBe(true);
	});

	test('the ribbon covers the plot without gaps', () => {
		const [first, second] = picture.ribbon;
		expect(first?.x).toBe(20);
		expect((first?.x ?? 0) + (first?.width ?? 0)).toBeCloseTo(second?.x ?? Number.NaN, 9);
		expect((second?.x ?? 0) + (second?.width ?? 0)).toBeCloseTo(320, 9);
	});

	test('an empty curve gives a picture without a path', () => {
		const empty = curvePicture(
			{ readoutName: 'pH', points: [], endMl: null, stoppedMl: 0 },
			{ width: 330, height: 200, left: 20, right: 10 }
		);
		expect(empty.path).toBe('');
		expect(empty.ribbon).toEqual([]);
	});
});

describe('curveAt', () => {
	test('draws pH straight between points and takes the colour of the nearer one', () => {
		expect(curveAt(curve.points, 0.6)).toEqual({ addedMl: 0.6, readout: 5.4, rgb: grey });
		expect(curveAt(curve.points, 0.9)?.rgb).toEqual(rose);
	});
	test('stays at the ends', () => {
		expect(curveAt(curve.points, -1)?.readout).toBe(8);
		expect(curveAt(curve.points, 2)?.readout).toBe(3);
		expect(curveAt([], 1)).toBeNull();
	});
});

describe('curveMarks', () => {
	test('on the right half words stand left, the farthest mark in the top row', () => {
		expect(curveMarks([{ x: 200 }, { x: 220 }], 330)).toEqual([
			{ x: 220, row: 0, isLeft: true },
			{ x: 200, row: 1, isLeft: true }
		]);
	});
	test('on the left half words stand right, the leftmost mark in the top row', () => {
		expect(curveMarks([{ x: 60 }, { x: 40 }], 330)).toEqual([
			{ x: 40, row: 0, isLeft: false },
			{ x: 60, row: 1, isLeft: false }
		]);
	});
});

describe('words that have no room on the common side', () => {
	test('stand on the other side of their line, in the top row', () => {
		const marks = [
			{ x: 80, wordsWidth: 140 },
			{ x: 230, wordsWidth: 140 }
		];
		expect(curveMarks(marks, 330).map(({ x, row, isLeft }) => ({ x, row, isLeft }))).toEqual([
			{ x: 230, row: 0, isLeft: true },
			{ x: 80, row: 1, isLeft: false }
		]);
	});
	test('lie within the picture wherever the marks are, if they can', () => {
		for (let first = 20; first <= 310; first += 10)
			for (let second = 20; second <= 310; second += 10) {
				const placed = curveMarks(
					[first, second].map((x) => ({ x, wordsWidth: 150 })),
					330
				);
				for (const { x, isLeft } of placed)
					expect(isLeft ? x - 150 : 330 - x - 150).toBeGreaterThanOrEqual(0);
			}
	});
});

describe('decimalsApart', () => {
	test('0.015 mL apart are told to a hundredth, a tenth apart to a tenth', () => {
		expect(decimalsApart([1.64, 1.655], 1)).toBe(2);
		expect(decimalsApart([1.64, 1.79], 1)).toBe(1);
		expect(decimalsApart([1.64], 1)).toBe(1);
	});
});
