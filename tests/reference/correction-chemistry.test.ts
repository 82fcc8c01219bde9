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

describe('amounts of calcium and magnesium salts', () => {
	/** As far in 100 L as one may go in two days. */
	function inTwoDays(
		analyte: 'calcium' | 'magnesium',
		[from, to]: readonly [number, number],
		means: CorrectionInput['means']
	) {
		return correctionPlan({
			decision: toAdjust(),
			analyte,
			value: { value: from, standardUncertainty: 5, unit: 'mg/L' },
			target: to,
			band: { low: to, high: to + 50, unit: 'mg/L' },
			waterL: 100,
			waterExpandedUncertaintyL: 0,
			consumptionPerDay: 0,
			dosedPerDay: 0,
			means,
			salinity: 35
		});
	}
	// 40 mg/L in 100 L are 4 g of calcium, 4 / 40.078 = 0.099805 mol; 100 mg/L of magnesium 10 g,
	// 10 / 24.305 = 0.41144 mol. Molar masses from IUPAC standard atomic weights 2021 (Cl 35.45, S 32.06,
	// Mg 24.305), added by hand.
	it.each([
		[
			'CaCl2, 110.978',
			'calcium',
			{ by: 'calciumChloride', hydrate: 'anhydrous', purity: 1 },
			11.0762
		],
		[
			'CaCl2·2H2O, 147.008',
			'calcium',
			{ by: 'calciumChloride', hydrate: 'dihydrate', purity: 1 },
			14.6722
		],
		[
			'CaCl2·6H2O, 219.068',
			'calcium',
			{ by: 'calciumChloride', hydrate: 'hexahydrate', purity: 1 },
			21.8642
		],
		[
			'80 % of the dihydrate',
			'calcium',
			{ by: 'calciumChloride', hydrate: 'dihydrate', purity: 0.8 },
			18.3402
		],
		[
			'MgCl2·6H2O, 203.295',
			'magnesium',
			{ by: 'magnesiumChloride', hydrate: 'hexahydrate', purity: 1 },
			83.643
		],
		[
			'MgSO4·7H2O, 246.466',
			'magnesium',
			{ by: 'magnesiumSulfate', hydrate: 'heptahydrate', purity: 1 },
			101.405
		]
	] as const)('%s', (_, analyte, means, grams) => {
		const plan = inTwoDays(analyte, analyte === 'calcium' ? [380, 420] : [1200, 1300], means);
		if (plan.kind !== 'plan') throw new Error(plan.because.join(' '));
		expect(plan.days).toHaveLength(2);
		expect(plan.amountUnit).toBe('g');
		expect(Math.abs(plan.totalAmount / grams - 1)).toBeLessThan(2e-4);
		// No alkali, no pH.
		expect(plan.days.map(({ phChange }) => phChange)).toEqual([0, 0]);
		expect(plan.cautions.join(' ')).not.toMatch(/alkali,|watch pH/);
		expect(plan.sum.join(' ')).toContain('mmol in all the water');
	});
	it('nothing that raises something else is planned with, and nothing by the sum of two', () => {
		const wrong = inTwoDays('calcium', [380, 420], { by: 'bicarbonate', purity: 1 });
		expect(wrong).toMatchObject({ kind: 'refused' });
		if (wrong.kind === 'refused')
			expect(wrong.because.join(' ')).toMatch(/sodium bicarbonate.* does not raise calcium/);
		const sum = correctionPlan({
			decision: toAdjust(),
			analyte: 'hardness',
			value: { value: 58, standardUncertainty: 0.5, unit: 'mmol/L' },
			target: 62,
			waterL: 100,
			means: { by: 'product', risePerMlIn100L: 0.1 },
			salinity: 35
		});
		expect(sum).toMatchObject({ kind: 'refused' });
	});
	// Common practice, no source: 20 mg/L of calcium and 50 of magnesium a day at most.
	it.each([
		['calcium', 20, { by: 'calciumChloride', hydrate: 'dihydrate', purity: 1 }],
		['magnesium', 50, { by: 'magnesiumChloride', hydrate: 'hexahydrate', purity: 1 }]
	] as const)('%s rises by no more than %s mg/L a day', (analyte, most, means) => {
		const [from, to] = analyte === 'calcium' ? ([360, 430] as const) : ([1150, 1330] as const);
		const plan = inTwoDays(analyte, [from, to], means);
		if (plan.kind !== 'plan') throw new Error(plan.because.join(' '));
		expect(plan.risePerDay).toBeLessThanOrEqual(most);
		expect(plan.days).toHaveLength(Math.ceil((to - from) / most));
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
