import { describe, expect, it, test } from 'vitest';
import { correctionPlan, type CorrectionInput, type CorrectionPlan } from '../../src/lib/judgement';
import { toAdjust } from './made-diagnosis';

/** 200 L at 5.5 dKH, to be brought to 8.0; what is used and what is dosed are in balance. */
const tank: Omit<CorrectionInput, 'means'> = {
	decision: toAdjust(),
	value: { value: 5.5, standardUncertainty: 0.15, unit: 'dKH' },
	target: 8,
	waterL: 200,
	waterExpandedUncertaintyL: 10,
	consumptionPerDay: 0,
	dosedPerDay: 0,
	salinity: 35,
	temperatureC: 25,
	ph: 8.1
};

// 2.5 dKH at 0.5 a day are 5 days. 1 dKH is 10 mg/L CaO over 28.04 mg/meq, 0.35665 meq/L:
// 0.5 × 0.35665 × 200 = 35.665 meq a day. NaHCO3 weighs 84.006 mg/meq, Na2CO3 105.988 / 2 = 52.994
// (IUPAC standard atomic weights).
test.each<[CorrectionInput['means'], number, number]>([
	// 35.665 × 84.006 / 1000 / 0.99
	[{ by: 'bicarbonate', purity: 0.99 }, 3.0263, 5],
	// 35.665 × 52.994 / 1000 / 0.995
	[{ by: 'carbonate', hydrate: 'anhydrous', purity: 0.995 }, 1.8995, 5],
	// What a product is made of is not known, so its pH is taken at the worst: smaller steps, 7 days.
	// 1 mL raises 100 L by 0.14, so 200 L by 0.07: 2.5 / 7 / 0.07
	[{ by: 'product', risePerMlIn100L: 0.14 }, 5.102, 7]
])('%o, day by day', (means, amount, days) => {
	const plan = correctionPlan({ ...tank, means });
	if (plan.kind === 'refused') throw new Error(plan.because.join(' '));
	expect(plan.days).toHaveLength(days);
	for (const day of plan.days) expect(day.amount).toBeCloseTo(amount, 3);
	expect(plan.totalAmount).toBeCloseTo(days * amount, 2);
	expect(plan.days.at(-1)?.expected).toBeCloseTo(8, 12);
});

describe('how far a retest may lie from what the plan expects', () => {
	const planned = (input: CorrectionInput): CorrectionPlan => {
		const plan = correctionPlan(input);
		if (plan.kind === 'refused') throw new Error(plan.because.join(' '));
		return plan;
	};
	const soda = { by: 'bicarbonate', purity: 0.99 } as const;

	// On day 2 1 dKH is in: of the value 2 × 0.15, of the volume 10 of 200 L, of the strength 2 % (judgement).
	// √(0.3² + 0.05² + 0.02²) = 0.3048; with a test of ± 0.5: √(0.3048² + 0.5²) = 0.5856.
	it('alkalinity: the ± of the test is in it', () => {
		const plan = planned({ ...tank, means: soda, testExpandedUncertainty: 0.5 });
		const second = plan.days[1];
		expect(second?.expectedExpandedUncertainty).toBeCloseTo(0.3048, 4);
		expect(second?.retestExpandedUncertainty).toBeCloseTo(0.5856, 4);
		expect(plan.wouldChange[0]).toMatch(/day 2 that reads away from 6\.5 ± 0\.6 dKH: stop/);
		for (const day of plan.days)
			expect(day.retestExpandedUncertainty !== undefined).toBe(day.isRetest);
	});
	// 350 to 420 mg/L at no more than 20 a day: 4 days of 17.5. On day 2 35 mg/L are in:
	// √((2 × 5)² + (35 × 0.05)² + (35 × 0.1)²) = 10.738; with a test of ± 20: √(10.738² + 20²) = 22.70.
	it('calcium: the same', () => {
		const plan = planned({
			...tank,
			analyte: 'calcium',
			decision: toAdjust(),
			value: { value: 350, standardUncertainty: 5, unit: 'mg/L' },
			target: 420,
			maxRisePerDay: 20,
			means: { by: 'calciumChloride', hydrate: 'dihydrate', purity: 1 },
			testExpandedUncertainty: 20
		});
		const second = plan.days[1];
		expect(second?.expected).toBeCloseTo(385, 9);
		expect(second?.expectedExpandedUncertainty).toBeCloseTo(10.738, 3);
		expect(second?.retestExpandedUncertainty).toBeCloseTo(22.7, 2);
		expect(plan.wouldChange[0]).toContain('away from 385 ± 23 mg/L: stop');
	});
	it('where nobody knows the ± of the test it is said to come on top', () => {
		const plan = planned({ ...tank, means: soda });
		expect(plan.wouldChange[0]).toContain('by more than the ± of the test as well');
		expect(plan.days[1]?.retestExpandedUncertainty).toBeUndefined();
	});
	it('a tank that may hold other values has none: the retest cannot tell them apart', () => {
		const plan = planned({
			...tank,
			means: soda,
			otherValues: [6.4],
			testExpandedUncertainty: 0.5
		});
		expect(plan.days.map((day) => day.retestExpandedUncertainty)).toEqual(
			plan.days.map(() => undefined)
		);
	});
	it('no test has a ± below nothing', () => {
		expect(() => correctionPlan({ ...tank, means: soda, testExpandedUncertainty: -1 })).toThrow(
			/testExpandedUncertainty/
		);
	});
});
