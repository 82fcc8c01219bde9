import { describe, expect, it } from 'vitest';
import { houseKits, houseSyringeKit } from '../../src/lib/kits';
import {
	constantSensitivity,
	expectedReading,
	methodFiguresOf,
	readingBudget,
	readingScatter,
	roundingCorrelation,
	usualMethodFigures
} from '../../src/lib/metrology';

const nothing = { logFactor: 0, amount: 8, constantMl: 0, endPoint: 0, method: 0 };

describe('figures of a method', () => {
	// Two accounts of one uncertainty: the budget adds lines, the equation keeps causes apart.
	it.each(houseKits)('$name: its figures add up to the budget of a reading', (kit) => {
		const value = 8;
		const figures = methodFiguresOf(kit, { value });
		const budget = readingBudget(kit, { value, valuePerMl: figures.valuePerMl });
		const { variance } = readingScatter(figures, { value });
		// The equation takes both marks at a rounded 0.32 divisions, the budget adds them up.
		expect(Math.abs(Math.sqrt(variance) / budget.repeatabilitySd - 1)).toBeLessThan(0.01);
		const { sampleWareSd, titrantWareSd, lotSd, endPointSd } = figures;
		const u = Math.sqrt(
			variance +
				value ** 2 * (sampleWareSd ** 2 + titrantWareSd ** 2 + lotSd ** 2) +
				endPointSd ** 2
		);
		// Rounding of the leaflet's table is in the budget only: a hundredth at most.
		expect(Math.abs(u / budget.standardUncertainty - 1)).toBeLessThan(0.01);
	});

	it('twice the sample halves what a mL of titrant stands for', () => {
		const fine = methodFiguresOf(houseSyringeKit, { sampleVolumeMl: 12 });
		expect(fine.valuePerMl).toBeCloseTo(usualMethodFigures.valuePerMl / 2, 12);
		expect(fine.fullScale).toBeCloseTo((usualMethodFigures.fullScale ?? 0) / 2, 12);
		expect(constantSensitivity(usualMethodFigures, 2)).toBeCloseTo(fine.valuePerMl, 12);
	});

	it('names the field that is wrong', () => {
		expect(() => methodFiguresOf(houseSyringeKit, { volumeId: 'huge' })).toThrow(
			'volumeId must be one of normal, fine; found huge'
		);
		expect(() => methodFiguresOf(houseSyringeKit, { value: -1 })).toThrow(
			'value must be above 0; found -1'
		);
		expect(() => constantSensitivity(usualMethodFigures, 0)).toThrow('sampleRatio');
	});
});

describe('the measurement equation', () => {
	// Textbook: a proportional error keeps its share in any sample, a constant one shrinks as the
	// sample grows, one of the end point does neither (Youden 1947).
	it('tells proportional, constant and end-point effects apart by the sample', () => {
		const read = (effects: Partial<typeof nothing>, ratio: number) =>
			expectedReading(usualMethodFigures, { ...nothing, ...effects }, ratio) - 8;
		expect(read({ logFactor: Math.log(0.92) }, 1)).toBeCloseTo(-0.64, 12);
		expect(read({ logFactor: Math.log(0.92) }, 2)).toBeCloseTo(-0.64, 12);
		expect(read({ constantMl: -0.17 }, 1)).toBeCloseTo(-0.17 * 16, 1);
		expect(read({ constantMl: -0.17 }, 2) / read({ constantMl: -0.17 }, 1)).toBeCloseTo(0.5, 12);
		expect(read({ endPoint: 0.2 }, 2)).toBeCloseTo(0.2, 12);
		expect(read({ method: -0.4 }, 2)).toBeCloseTo(-0.4, 12);
	});

	it('a scatter below what the step of a drop leaves is not believed', () => {
		const step = usualMethodFigures.valuePerMl * usualMethodFigures.dropMl;
		const { variance, sharedStepVariance } = readingScatter(usualMethodFigures, {
			value: 8,
			repeatabilitySd: 0.001
		});
		expect(variance).toBeCloseTo(step ** 2 / 12, 12);
		// Nothing moves the end against the steps, so repeats share all of it.
		expect(sharedStepVariance).toBeCloseTo(variance, 12);
	});

	// Shares to be expected: 0.44 at a tenth of the step, 0.05 at a quarter (from the series itself).
	it.each([
		[0.1, 0.44],
		[0.25, 0.05]
	])('scatter of %d steps shares %d of the rounding', (ratio, share) => {
		const step = usualMethodFigures.valuePerMl * usualMethodFigures.dropMl;
		const repeatabilitySd = Math.hypot(step / Math.sqrt(12), ratio * step);
		const { sharedStepVariance } = readingScatter(usualMethodFigures, {
			value: 8,
			repeatabilitySd
		});
		expect(sharedStepVariance / (step ** 2 / 12)).toBeCloseTo(share, 2);
		expect(roundingCorrelation(ratio)).toBeCloseTo(share, 2);
	});
});
