import { expect, it } from 'vitest';
import {
	demingRegression,
	jointLineTest,
	lineAt,
	linearRegression,
	standardAdditionLine,
	yorkRegression,
	youdenLine
} from '../../src/lib/metrology';

const line3 = [0, 1, 2].map((x) => ({ x, y: x }));
it.each([
	[() => linearRegression(line3.slice(1)), 'linearRegression requires at least 3 points; found 2'],
	[
		() => linearRegression([...line3, { x: Number.NaN, y: 1 }]),
		'points[3].x must be a number; found NaN'
	],
	[
		() => linearRegression(line3.map(({ y }) => ({ x: 5, y }))),
		'linearRegression requires x that differ; found 5 only'
	],
	[
		() =>
			linearRegression(
				line3.map(({ y }) => ({ x: 0, y })),
				{ throughOrigin: true }
			),
		'linearRegression requires an x other than 0; found 0 only'
	],
	[
		() => linearRegression(line3, { confidence: 95 }),
		'confidence must lie between 0 and 1; found 95'
	],
	[() => lineAt(linearRegression(line3), Number.NaN), 'x must be a number; found NaN'],
	[
		() =>
			jointLineTest(linearRegression(line3, { throughOrigin: true }), { intercept: 0, slope: 1 }),
		'fit must have an intercept; found a line through the origin'
	],
	[() => demingRegression(line3, { lambda: 0 }), 'lambda must be above 0; found 0'],
	[
		() => demingRegression(line3.map(() => ({ x: 1, y: 1 }))),
		'demingRegression requires points with a direction; found none in them'
	],
	[
		() =>
			demingRegression([
				{ x: 1, y: 1 },
				{ x: 1, y: 1 },
				{ x: 2, y: 3 }
			]),
		'demingRegression requires points with a direction; found none without points[2]'
	],
	[
		() => yorkRegression(line3.map((each) => ({ ...each, ux: 0, uy: 0 }))),
		'points[0].ux and uy must not both be 0'
	],
	[
		() => yorkRegression(line3.map((each) => ({ ...each, ux: -1, uy: 1 }))),
		'points[0].ux must be 0 or above; found -1'
	],
	[
		() => yorkRegression(line3.map((each) => ({ ...each, ux: 1, uy: 1, r: 1 }))),
		'points[0].r must lie between -1 and 1; found 1'
	],
	[
		() => youdenLine([{ sampleVolume: 5, titrantVolume: 0.5 }]),
		'youdenLine requires at least 3 points; found 1'
	],
	[
		() => youdenLine([0, 5, 10].map((sampleVolume) => ({ sampleVolume, titrantVolume: 1 }))),
		'points[0].sampleVolume must be above 0; found 0'
	],
	[
		() => youdenLine([5, 5, 5].map((sampleVolume) => ({ sampleVolume, titrantVolume: 1 }))),
		'youdenLine requires sample volumes that differ; found 5 only'
	],
	[
		() => standardAdditionLine([0, 1, 2].map((added) => ({ added, signal: 3 }))),
		'signal must change with what is added; found a slope of 0'
	],
	[
		() => standardAdditionLine([0, -1, 2].map((added) => ({ added, signal: added }))),
		'points[1].added must be 0 or above; found -1'
	]
])('bad input of a line is named (%#)', (call, message) => {
	expect(call).toThrow(new RangeError(message));
});
