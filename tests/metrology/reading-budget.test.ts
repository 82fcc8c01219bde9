import { describe, expect, it } from 'vitest';
import { houseKitOf, valueFromMark, type Kit } from '../../src/lib/kits';
import { readingBudget, standardDeviation, studentTQuantile } from '../../src/lib/metrology';
import type { BudgetLineId } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';
import { drawnErrors } from './drawn';

const syringeKit = houseKitOf('house-syringe');
const dropperKit = houseKitOf('house-dropper');
const buretteKit = houseKitOf('house-burette');
const kits = [
	{ kit: syringeKit, middle: valueFromMark(syringeKit, { markMl: 0.5 }) },
	{ kit: dropperKit, middle: valueFromMark(dropperKit, { drops: 13 }) },
	{ kit: buretteKit, middle: valueFromMark(buretteKit, { markMl: 3.5 }) }
];
const lineOf = (budget: ReturnType<typeof readingBudget>, id: BudgetLineId) =>
	budget.lines.find((line) => line.id === id)?.contribution ?? Number.NaN;
const ids = (budget: ReturnType<typeof readingBudget>) => budget.lines.map(({ id }) => id);
const at = (value: number, valuePerMl = 16) => ({ value, valuePerMl });

describe('the budget of a reading', () => {
	it.each(kits)('$kit.name: lines add up in squares to u, and stand largest first', (each) => {
		const budget = readingBudget(each.kit, each.middle);
		const contributions = budget.lines.map((line) => line.contribution);
		expect(Math.hypot(...contributions)).toBeCloseTo(budget.standardUncertainty, 12);
		expect(contributions).toEqual([...contributions].sort((a, b) => b - a));
	});

	it.each(kits)('$kit.name: scatter lines make the repeatability, the rest is shared', (each) => {
		const budget = readingBudget(each.kit, each.middle);
		const scatter = budget.lines.filter(({ kind }) => kind === 'scatter');
		expect(Math.hypot(...scatter.map((line) => line.contribution))).toBeCloseTo(
			budget.repeatabilitySd,
			12
		);
		expect(scatter.length).toBeLessThan(budget.lines.length);
	});

	it.each(kits)('$kit.name: every line says where its figure comes from, once', (each) => {
		const { lines } = readingBudget(each.kit, each.middle);
		expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
		for (const { origin } of lines) expect(origin).toMatch(/[a-z]{3}/);
	});

	// Judged inputs are doubtful, so k is above 1.96; no one of them rules, so it is not far above.
	it.each(kits)('$kit.name: the coverage factor is that of its degrees of freedom', (each) => {
		const budget = readingBudget(each.kit, each.middle);
		expect(budget.coverageFactor).toBeCloseTo(studentTQuantile(0.975, budget.degreesOfFreedom), 12);
		expect(budget.coverageFactor).toBeGreaterThan(1.97);
		expect(budget.coverageFactor).toBeLessThan(2.2);
	});

	it('shares of the value grow with it; drops, eye and mark do not', () => {
		const low = readingBudget(syringeKit, at(4));
		const high = readingBudget(syringeKit, at(12));
		for (const id of ['sampleVolume', 'titrantStrength', 'settingSample'] as const)
			expect(lineOf(high, id)).toBeCloseTo(3 * lineOf(low, id), 12);
		for (const id of ['wholeDrops', 'judgingColour', 'endColour', 'readingMark'] as const)
			expect(lineOf(high, id)).toBeCloseTo(lineOf(low, id), 12);
	});

	it('a larger sample makes drops and mark count for less', () => {
		const normal = readingBudget(syringeKit, at(8));
		const fine = readingBudget(syringeKit, { ...at(8, 9.6), sampleVolumeMl: 10 });
		for (const id of ['wholeDrops', 'judgingColour', 'readingMark'] as const)
			expect(lineOf(fine, id)).toBeCloseTo(0.6 * lineOf(normal, id), 12);
		expect(fine.standardUncertainty).toBeLessThan(normal.standardUncertainty);
	});

	it('a drop of 0.34 dKH alone makes 0.10: drop/√12 (JCGM 100, F.2.2.1)', () => {
		expect(lineOf(readingBudget(syringeKit, at(8)), 'wholeDrops')).toBeCloseTo(
			0.336 / Math.sqrt(12),
			12
		);
	});

	it('a value near nothing keeps the uncertainty of its drops', () => {
		const budget = readingBudget(dropperKit, at(0, 0.6 / 0.043));
		// Whole drops 0.173 and two quarters of one, 0.15 each, by hand.
		expect(budget.standardUncertainty).toBeCloseTo(Math.hypot(0.6 / Math.sqrt(12), 0.15, 0.15), 12);
	});
});

describe('the syringe by its standard', () => {
	// Source: ISO 7886-1:2017, table 1: 1 mL syringe, half and more 5 % of what is expelled; below half
	// 1.5 % of the capacity and 2 % of what is expelled. Limits taken as triangular.
	it.each([
		{ usedMl: 0.8, limitMl: 0.04 },
		{ usedMl: 0.5, limitMl: 0.025 },
		{ usedMl: 0.25, limitMl: 0.02 }
	])('$usedMl mL of a 1 mL syringe: $limitMl mL', ({ usedMl, limitMl }) => {
		const budget = readingBudget(syringeKit, { ...at(16 * usedMl), usedMl });
		expect(lineOf(budget, 'deliveryScale')).toBeCloseTo((16 * limitMl) / Math.sqrt(6), 12);
	});
	it('two fillings: the same barrel errs twice the same way', () => {
		const budget = readingBudget(syringeKit, { ...at(20), usedMl: 1.25, refills: 1 });
		expect(lineOf(budget, 'deliveryScale')).toBeCloseTo((16 * (0.05 + 0.02)) / Math.sqrt(6), 12);
	});
	it('the sample syringe too: 4 % of 6 mL in one that holds 10', () => {
		const budget = readingBudget(syringeKit, at(8));
		expect(lineOf(budget, 'sampleVolume')).toBeCloseTo((8 * 0.04) / Math.sqrt(6), 12);
	});
});

describe('marks', () => {
	const markOf = (more: object) =>
		lineOf(readingBudget(syringeKit, { ...at(8), ...more }), 'readingMark') / (16 * 0.02);
	// An eye to a fifth of a division, half a division as step: by hand, in divisions.
	const read = Math.hypot(0.2, 0.5 / Math.sqrt(12));
	it('the full mark is set by eye, a start that was read is rounded as well', () => {
		expect(markOf({})).toBeCloseTo(Math.hypot(0.2, read), 12);
		expect(markOf({ isStartRead: true })).toBeCloseTo(Math.SQRT2 * read, 12);
	});
	it('each refill adds an end and a start', () => {
		expect(markOf({ refills: 1 })).toBeCloseTo(Math.SQRT2 * markOf({}), 12);
		expect(markOf({ refills: 3 })).toBeCloseTo(2 * markOf({}), 12);
	});
	it('and the line says how many marks that makes', () => {
		const named = (more: object) =>
			readingBudget(syringeKit, { ...at(8), ...more }).lines.find(({ id }) => id === 'readingMark')
				?.name;
		expect(named({})).toBe('reading the mark');
		expect(named({ refills: 1 })).toBe('reading the marks, 4 in all');
		expect(named({ refills: 2 })).toBe('reading the marks, 6 in all');
	});
	it('one mark is a quarter of a division, as a fine scale is read (from memory: 0.2 to 0.3)', () => {
		expect(read).toBeCloseTo(0.247, 3);
	});
	it('finer reading helps, but not the eye', () => {
		expect(markOf({ readToDivisions: 0.2 })).toBeLessThan(markOf({}));
		expect(markOf({ readToDivisions: 0.001 })).toBeGreaterThan(Math.SQRT2 * 0.2);
	});
	it('a dropper has none', () => {
		expect(ids(readingBudget(dropperKit, at(8, 14)))).not.toContain('readingMark');
	});
});

describe('what counts only sometimes', () => {
	it('the tip, when the count goes through it', () => {
		expect(ids(readingBudget(syringeKit, at(8)))).not.toContain('tipVolume');
		const budget = readingBudget(syringeKit, { ...at(8), tipSdMl: 0.02 });
		expect(lineOf(budget, 'tipVolume')).toBeCloseTo(0.32, 12);
	});
	it('warm water, when it adds more than a tenth of a percent', () => {
		expect(ids(readingBudget(syringeKit, { ...at(8), temperatureC: 22 }))).not.toContain(
			'temperature'
		);
		const warm = readingBudget(buretteKit, { ...at(8, 2.3), temperatureC: 30 });
		// Water 2.1e-4 and plastic 4e-4 per K, ten kelvin, even, of 8 dKH: by hand 0.028.
		expect(lineOf(warm, 'temperature')).toBeCloseTo((8 * 6.1e-3) / Math.sqrt(3), 12);
	});
	it('the last digit of a table of rows', () => {
		const rows = [
			{ at: 0, value: 0 },
			{ at: 1, value: 16.1 }
		];
		const coarse: Kit = { ...syringeKit, conversion: { kind: 'rows', column: 'usedMl', rows } };
		const lines = readingBudget(coarse, { ...at(8), sampleVolumeMl: 12 });
		expect(lineOf(lines, 'tableRounding')).toBeCloseTo(0.1 / Math.sqrt(12) / 2, 12);
		expect(ids(readingBudget(dropperKit, at(8, 14)))).not.toContain('tableRounding');
		// 2.0 and 16.0 are known ten times as well as 2 and 16.
		const even = [
			{ at: 0, value: 0 },
			{ at: 1, value: 16 }
		];
		const rounding = (more: { valueDecimals?: number }) =>
			lineOf(
				readingBudget(
					{ ...syringeKit, conversion: { kind: 'rows', column: 'usedMl', rows: even, ...more } },
					{ ...at(8), sampleVolumeMl: 6 }
				),
				'tableRounding'
			);
		expect(rounding({})).toBeCloseTo(1 / Math.sqrt(12), 12);
		expect(rounding({ valueDecimals: 1 })).toBeCloseTo(0.1 / Math.sqrt(12), 12);
	});
	it('half-drops: a smaller step, and the leaflet may still mean whole ones', () => {
		const whole = readingBudget(syringeKit, at(8));
		const halves = readingBudget(syringeKit, { ...at(8), endStepDrops: 0.5 });
		expect(lineOf(halves, 'wholeDrops')).toBeCloseTo(lineOf(whole, 'wholeDrops') / 2, 12);
		expect(lineOf(halves, 'leafletHalfDrop')).toBeCloseTo(0.336 / 4 / Math.sqrt(3), 12);
		expect(halves.repeatabilitySd).toBeLessThan(whole.repeatabilitySd);
	});
});

describe("the owner's figures take the place of the project's", () => {
	const owned = (assumed: Kit['assumed'], kit = syringeKit) =>
		readingBudget({ ...kit, assumed }, at(8));
	it.each([
		[{ sampleHalfWidth: 0.01 }, 'sampleVolume', (8 * 0.01) / Math.sqrt(3)],
		[{ deliveryHalfWidth: 0.01 }, 'deliveryScale', (8 * 0.01) / Math.sqrt(3)],
		[{ titrantSd: 0.005 }, 'titrantStrength', 0.04],
		[{ colourDrops: 0.1 }, 'judgingColour', 0.0336],
		[{ colourDrops: 0.1 }, 'endColour', 0.0336]
	] as const)('%o', (assumed, id, contribution) => {
		const budget = owned(assumed);
		expect(lineOf(budget, id)).toBeCloseTo(contribution, 12);
		expect(budget.lines.find((line) => line.id === id)?.origin).toBe("the owner's own figure");
	});
	it('a dropper whose drops were weighed', () => {
		expect(lineOf(owned({ dropSd: 0.01 }, dropperKit), 'dropSize')).toBeCloseTo(0.08, 12);
	});
	it('0 is a figure as well', () => {
		expect(lineOf(owned({ titrantSd: 0 }), 'titrantStrength')).toBe(0);
	});
});

// Source: JCGM 101:2008, propagation of distributions by drawing. Sizes typed again from their sources.
describe('drawn part by part, a test scatters as its budget says', () => {
	const tests = 40_000;
	const common = {
		strengthSd: 0.01,
		ownColourDrops: 0.25,
		colourDrops: 0.25,
		dropSpread: 0.042
	};
	it('syringe', () => {
		const errors = drawnErrors(
			{
				...common,
				valuePerMl: 16,
				truthMl: 0.55,
				dropMl: 0.021,
				sampleLimit: 0.04,
				scaleLimit: 0.05,
				settingHalfWidth: 10 / 160 / 6,
				graduationMl: 0.02
			},
			1,
			tests,
			chanceOf(20261125)
		);
		const budget = readingBudget(syringeKit, { ...at(16 * 0.55), usedMl: 0.55 + 0.0105 });
		// 40,000 draws tell a standard deviation to 0.4 %; the model is linear to another 1 %.
		expect(Math.abs(budget.standardUncertainty / standardDeviation(errors) - 1)).toBeLessThan(0.02);
		const held = errors.filter((error) => Math.abs(error) <= budget.expandedUncertainty).length;
		expect(held / tests).toBeGreaterThan(0.945);
		expect(held / tests).toBeLessThan(0.975);
	});
	it('dropper, its drops all of one size but chance', () => {
		const errors = drawnErrors(
			{
				...common,
				valuePerMl: 0.6 / 0.043,
				truthMl: 14 * 0.043,
				dropMl: 0.043,
				sampleLimit: 0,
				scaleLimit: 0,
				settingHalfWidth: (0.04 * Math.PI) / 7,
				graduationMl: 0
			},
			1,
			tests,
			chanceOf(3)
		);
		// What is counted is drops, so the spread of their sizes goes into the count, not out of it.
		const kit = { ...dropperKit, assumed: { sampleHalfWidth: 0, dropSd: 0 } };
		const budget = readingBudget(kit, at(14 * 0.6, 0.6 / 0.043));
		const without = Math.sqrt(budget.standardUncertainty ** 2 - lineOf(budget, 'dropsUnlike') ** 2);
		expect(Math.abs(without / standardDeviation(errors) - 1)).toBeLessThan(0.02);
	});
});

describe("a person's own scatter", () => {
	const reading = at(8);
	const judged = readingBudget(syringeKit, reading);
	it('takes the place of eye and mark; the step of a drop stays', () => {
		const own = readingBudget(syringeKit, reading, { sd: 0.3, degreesOfFreedom: 4 });
		expect(ids(own)).not.toContain('readingMark');
		expect(ids(own)).toContain('ownScatter');
		expect(lineOf(own, 'wholeDrops')).toBe(lineOf(judged, 'wholeDrops'));
	});
	it('one pair moves it by a fifth, many pairs rule', () => {
		const sd = 0.4;
		const of = (degreesOfFreedom: number) =>
			readingBudget(syringeKit, reading, { sd, degreesOfFreedom }).repeatabilitySd ** 2;
		const share = (dof: number) =>
			(of(dof) - judged.repeatabilitySd ** 2) / (sd ** 2 - judged.repeatabilitySd ** 2);
		// Weights 1 : 4 and 400 : 4. What repeats share of the last drop's error is 1 % here.
		expect(share(1)).toBeCloseTo(1 / 5, 1);
		expect(share(400)).toBeGreaterThan(0.98);
		expect(share(400)).toBeLessThan(1.02);
	});
	it('equal to the judged one changes nothing much', () => {
		const own = { sd: judged.repeatabilitySd, degreesOfFreedom: 30 };
		const budget = readingBudget(syringeKit, reading, own);
		expect(Math.abs(budget.standardUncertainty / judged.standardUncertainty - 1)).toBeLessThan(
			0.01
		);
	});
	it('of none at all leaves the step of a drop, which equal repeats cannot see', () => {
		const own = readingBudget(syringeKit, reading, { sd: 0, degreesOfFreedom: 1e6 });
		expect(own.repeatabilitySd).toBeCloseTo(0.336 / Math.sqrt(12), 2);
	});
	it('null is as good as none', () => {
		expect(readingBudget(syringeKit, reading, null)).toEqual(judged);
	});
});

it.each([
	[{ value: Number.NaN, valuePerMl: 16 }, 'value must be a number; found NaN'],
	[{ value: 8, valuePerMl: 0 }, 'valuePerMl must be above 0; found 0'],
	[{ ...at(8), refills: -1 }, 'refills must be 0 or above; found -1'],
	[{ ...at(8), tipSdMl: -0.1 }, 'tipSdMl must be 0 or above; found -0.1'],
	[{ ...at(8), sampleVolumeMl: 0 }, 'sampleVolumeMl must be above 0; found 0'],
	[{ ...at(8), endStepDrops: 0 }, 'endStepDrops must be above 0; found 0'],
	[{ ...at(8), temperatureC: 77 }, 'temperatureC must be between 0 and 45; found 77']
])('bad input is named (%#)', (reading, message) => {
	expect(() => readingBudget(syringeKit, reading)).toThrow(new RangeError(message));
});
it.each([
	[{ sd: -1, degreesOfFreedom: 3 }, 'own.sd must be 0 or above; found -1'],
	[{ sd: 0.2, degreesOfFreedom: 0 }, 'own.degreesOfFreedom must be above 0; found 0']
])('own scatter that cannot be is named (%#)', (own, message) => {
	expect(() => readingBudget(syringeKit, at(8), own)).toThrow(new RangeError(message));
});
