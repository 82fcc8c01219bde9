import { describe, expect, it } from 'vitest';
import { seawater } from '../../src/lib/chemistry';
import { correctionPlan, phChangeAtOnce, type CorrectionInput } from '../../src/lib/judgement';
import { toAdjust } from '../judgement/made-diagnosis';

/** One dKH up in 100 L in two days, by these means. */
function oneDkhIn100L(means: CorrectionInput['means'], more: Partial<CorrectionInput> = {}) {
	const plan = correctionPlan({
		decision: toAdjust(),
		value: { value: 7, standardUncertainty: 0.2, unit: 'dKH' },
		target: 8,
		waterL: 100,
		waterExpandedUncertaintyL: 0,
		consumptionPerDay: 0,
		dosedPerDay: 0,
		means,
		salinity: 35,
		temperatureC: 25,
		ph: 8.1,
		...more
	});
	if (plan.kind !== 'plan') throw new Error(plan.because.join(' '));
	return plan;
}

describe('amounts for 1 dKH in 100 L', () => {
	// 1 dKH is 10 mg/L CaO, 2 × 10 / 56.077 = 0.35665 meq/L: 35.665 meq in 100 L. Molar masses from
	// IUPAC standard atomic weights 2021 (Na 22.990, H 1.008, C 12.011, O 15.999), added by hand.
	it.each([
		['bicarbonate, 84.006 g/mol, one each', { by: 'bicarbonate', purity: 1 }, 2.9961],
		[
			'carbonate without water, 105.988 g/mol, two each',
			{ by: 'carbonate', hydrate: 'anhydrous', purity: 1 },
			1.89
		],
		['its monohydrate, 124.003', { by: 'carbonate', hydrate: 'monohydrate', purity: 1 }, 2.2113],
		['its decahydrate, 286.138', { by: 'carbonate', hydrate: 'decahydrate', purity: 1 }, 5.1025]
	] as const)('%s', (_, means, grams) => {
		const plan = oneDkhIn100L(means);
		expect(plan.amountUnit).toBe('g');
		expect(plan.totalAmount).toBeCloseTo(grams, 3);
	});
	it('a powder of 95 % takes a twentieth more, over 0.95', () => {
		expect(oneDkhIn100L({ by: 'bicarbonate', purity: 0.95 }).totalAmount).toBeCloseTo(
			2.9961 / 0.95,
			3
		);
	});
	// Ca(OH)2 saturated at 25 °C holds 0.0203 mol/L: Bates, Bower and Smith 1956, J. Res. NBS 56:305
	// (the pH standard; from memory). 40.6 meq/L: 35.665 / 40.6 = 0.8784 L; 113.8 dKH in a litre.
	it('limewater, 114 dKH in a litre', () => {
		const plan = oneDkhIn100L({ by: 'limewater' }, { ph: 7.9 });
		expect(plan.amountUnit).toBe('L');
		expect(plan.totalAmount).toBeCloseTo(0.8784, 3);
		expect(100 / plan.totalAmount).toBeCloseTo(113.8, 0);
	});
	// Half a mole of calcium with each equivalent: 0.35665 / 2 × 40.078 = 7.147 mg/L with each dKH.
	it('limewater brings 7.15 mg/L of calcium with each dKH', () => {
		const plan = oneDkhIn100L({ by: 'limewater' }, { ph: 7.9 });
		const line = plan.sum.find((each) => each.includes('calcium')) ?? '';
		const perDay = Number(/= ([\d.]+) mg\/L/.exec(line)?.[1]);
		expect(perDay * plan.days.length).toBeCloseTo(7.147, 2);
	});
	// By its label: 0.1 dKH for 1 mL in 100 L makes 10 mL of 1 dKH.
	it('a product by its label', () => {
		const plan = oneDkhIn100L({ by: 'product', risePerMlIn100L: 0.1 });
		expect([plan.totalAmount, plan.amountUnit]).toEqual([expect.closeTo(10, 9), 'mL']);
	});
	// ΔA = f (A_mix − A_tank): 0.5 of 3 dKH apart is a sixth, then 0.5 of 2.5 a fifth: 36.67 L.
	it('a change of water', () => {
		const plan = oneDkhIn100L({ by: 'waterChange', newValue: 10, share: 0.25 });
		expect(plan.days.map(({ amount }) => amount)).toEqual([
			expect.closeTo(100 / 6, 9),
			expect.closeTo(20, 9)
		]);
	});
});

describe('pH at once', () => {
	const water = { value: 6.65, unit: 'dKH', ph: 8.1, salinity: 35, temperatureC: 25 } as const;
	// +1 dKH at once in open-ocean water (6.65 dKH, pH 8.1, S 35, 25 °C) at constant carbon but for what
	// comes along: two digits, computed elsewhere with the constants of the Guide (PICES Special
	// Publication 3, chapter 5). Half of the last digit.
	it.each([
		['bicarbonate lowers it a little', 1, -0.05],
		['carbonate lifts it', 0.5, 0.18],
		['lime lifts it most', 0, 0.38]
	])('%s', (_, carbonPerEquivalent, expected) => {
		const change = phChangeAtOnce({ ...water, rise: 1, carbonPerEquivalent });
		expect(Math.abs(change - expected)).toBeLessThanOrEqual(0.005);
		// By the definition of alkalinity (Dickson 1981): what stands at the new pH is what was there
		// and what was added.
		expect(alkalinityAfter(change, 1, carbonPerEquivalent)).toBeCloseTo(7.65, 6);
	});
	it.each([
		[{ by: 'bicarbonate', purity: 1 } as const, 1],
		[{ by: 'carbonate', hydrate: 'monohydrate', purity: 1 } as const, 0.5],
		[{ by: 'limewater' } as const, 0],
		[{ by: 'product', risePerMlIn100L: 0.2 } as const, 0]
	])('a plan gives that of each day’s addition (%#)', (means, carbonPerEquivalent) => {
		const { days } = oneDkhIn100L(means, { ph: 7.9 });
		const rise = 1 / days.length;
		expect(days[0]?.phChange).toBeCloseTo(
			phChangeAtOnce({ ...water, value: 7, ph: 7.9, rise, carbonPerEquivalent }),
			12
		);
	});
});

/** Alkalinity, dKH, of water at 6.65 dKH and 8.1 once pH has changed so and carbon has come along. */
function alkalinityAfter(phChange: number, rise: number, carbonPerEquivalent: number): number {
	const water = seawater({ salinity: 35, temperatureC: 25 });
	const { k1, k2, kB, kW, kS, kF } = water.constants;
	const molPerKgPerDkh = 0.0003566503 / water.densityKgPerL;
	const parts = (h: number) => {
		const d = h * h + k1 * h + k1 * k2;
		const free = h / (1 + water.totals.sulfateMolPerKg / kS);
		return {
			perCarbon: (k1 * h + 2 * k1 * k2) / d,
			rest:
				(water.totals.borateMolPerKg * kB) / (kB + h) +
				kW / h -
				free -
				(water.totals.sulfateMolPerKg * free) / (kS + free) -
				(water.totals.fluorideMolPerKg * free) / (kF + free)
		};
	};
	const before = parts(10 ** -8.1);
	const carbon = (6.65 * molPerKgPerDkh - before.rest) / before.perCarbon;
	const after = parts(10 ** -(8.1 + phChange));
	const total = carbon + carbonPerEquivalent * rise * molPerKgPerDkh;
	return (total * after.perCarbon + after.rest) / molPerKgPerDkh;
}
