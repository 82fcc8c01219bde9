import { describe, expect, it } from 'vitest';
import { houseKitOf, valueFromMark } from '../../src/lib/kits';
import { readingBudget, standardDeviation } from '../../src/lib/metrology';
import { randomNormal, randomUniform } from './seeded';

const syringeKit = houseKitOf('house-syringe');
const dropperKit = houseKitOf('house-dropper');
const buretteKit = houseKitOf('house-burette');
const kits = [
	{ kit: syringeKit, middle: valueFromMark(syringeKit, { markMl: 0.5 }) },
	{ kit: dropperKit, middle: valueFromMark(dropperKit, { drops: 13 }) },
	{ kit: buretteKit, middle: valueFromMark(buretteKit, { markMl: 3.5 }) }
];
const lineOf = (budget: ReturnType<typeof readingBudget>, name: string) =>
	budget.lines.find((line) => line.name === name)?.contribution ?? Number.NaN;

describe('the budget of a reading', () => {
	it.each(kits)('$kit.name: lines add up in squares to u, and stand largest first', (each) => {
		const budget = readingBudget(each.kit, each.middle);
		const contributions = budget.lines.map((line) => line.contribution);
		expect(Math.hypot(...contributions)).toBeCloseTo(budget.standardUncertainty, 12);
		expect(contributions).toEqual([...contributions].sort((a, b) => b - a));
		expect(budget.expandedUncertainty / budget.standardUncertainty).toBeCloseTo(1.96, 2);
	});

	// Source: JCGM 101:2008, propagation of distributions by drawing, for value = F · V / V_sample.
	it('is what drawing every input at random gives, to three in a hundred', () => {
		const { kit, middle } = kits[0] as (typeof kits)[0];
		const { delivery } = syringeKit;
		if (delivery.by !== 'syringe') throw new Error('the syringe kit has no syringe');
		const uniform = randomUniform(20261125);
		const normal = randomNormal(uniform);
		const even = (halfWidth: number) => (2 * uniform() - 1) * halfWidth;
		const values = Array.from({ length: 20000 }, () => {
			const offMl =
				(uniform() - 0.5) * delivery.dropMl +
				normal() * (delivery.dropMl / 4) +
				even(delivery.graduationMl / 4) -
				even(delivery.graduationMl / 4);
			const gain = ((1 + even(0.015)) * (1 + 0.01 * normal())) / (1 + even(0.02));
			return (middle.value + offMl * middle.valuePerMl) * gain;
		});
		const drawn = standardDeviation(values);
		const { standardUncertainty } = readingBudget(kit, middle);
		expect(Math.abs(standardUncertainty / drawn - 1)).toBeLessThan(0.03);
	});

	it('shares of the value grow with it; drops and mark do not', () => {
		const low = readingBudget(syringeKit, { value: 4, valuePerMl: 16 });
		const high = readingBudget(syringeKit, { value: 12, valuePerMl: 16 });
		for (const name of ['sample volume', 'titrant strength', 'syringe scale'])
			expect(lineOf(high, name)).toBeCloseTo(3 * lineOf(low, name), 12);
		for (const name of ['whole drops', 'judging the colour', 'reading the mark'])
			expect(lineOf(high, name)).toBeCloseTo(lineOf(low, name), 12);
	});

	it('a larger sample makes drops and mark count for less', () => {
		const normal = readingBudget(syringeKit, { value: 8, valuePerMl: 16 });
		const fine = readingBudget(syringeKit, { value: 8, valuePerMl: 9.6 });
		expect(fine.repeatabilitySd).toBeCloseTo(normal.repeatabilitySd * 0.6, 12);
		expect(fine.standardUncertainty).toBeLessThan(normal.standardUncertainty);
	});

	it('a drop of 0.34 dKH alone makes 0.10: drop/√12 (JCGM 100, F.2.2.1)', () => {
		const budget = readingBudget(syringeKit, { value: 8, valuePerMl: 16 });
		expect(lineOf(budget, 'whole drops')).toBeCloseTo(0.336 / Math.sqrt(12), 12);
	});

	it('a value near nothing keeps the uncertainty of its drops', () => {
		const budget = readingBudget(dropperKit, { value: 0, valuePerMl: 0.6 / 0.043 });
		expect(budget.standardUncertainty).toBeCloseTo(budget.repeatabilitySd, 12);
		expect(budget.expandedUncertainty).toBeGreaterThan(0.4);
	});
});

describe("a person's own scatter", () => {
	const reading = { value: 8, valuePerMl: 16 };
	it('takes the place of drops, eye and mark', () => {
		const own = readingBudget(syringeKit, reading, { sd: 0.3, degreesOfFreedom: 4 });
		expect(own.repeatabilitySd).toBe(0.3);
		expect(own.lines.map((line) => line.name)).not.toContain('whole drops');
		expect(lineOf(own, 'own scatter')).toBe(0.3);
	});
	it('known from few repeats only, widens the coverage factor', () => {
		const few = readingBudget(syringeKit, reading, { sd: 0.3, degreesOfFreedom: 2 });
		const many = readingBudget(syringeKit, reading, { sd: 0.3, degreesOfFreedom: 40 });
		expect(few.standardUncertainty).toBe(many.standardUncertainty);
		expect(few.coverageFactor).toBeGreaterThan(2.5);
		expect(many.coverageFactor).toBeLessThan(2.05);
	});
});

it.each([
	[{ value: Number.NaN, valuePerMl: 16 }, 'value must be a number; found NaN'],
	[{ value: 8, valuePerMl: 0 }, 'valuePerMl must be above 0; found 0']
])('bad input is named (%#)', (reading, message) => {
	expect(() => readingBudget(syringeKit, reading)).toThrow(new RangeError(message));
});
