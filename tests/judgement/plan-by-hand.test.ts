import { expect, test } from 'vitest';
import { correctionPlan, type CorrectionInput } from '../../src/lib/judgement';
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
