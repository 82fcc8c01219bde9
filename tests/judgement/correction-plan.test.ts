import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	correctionPlan,
	limitsOf,
	type CorrectionInput,
	type CorrectionPlan
} from '../../src/lib/judgement';
import { anyComplete, anyInput, inUnit } from './any-correction';
import { toAdjust } from './made-diagnosis';

/** Bicarbonate for a tank at 6.4 dKH, in which 0.3 a day are used and 0.1 dosed. */
const plain: CorrectionInput = {
	decision: toAdjust(),
	value: { value: 6.4, standardUncertainty: 0.15, unit: 'dKH' },
	target: 8,
	waterL: 180,
	waterExpandedUncertaintyL: 18,
	consumptionPerDay: 0.3,
	dosedPerDay: 0.1,
	means: { by: 'bicarbonate', purity: 0.99 },
	salinity: 35,
	temperatureC: 25,
	ph: 8.1
};

function planned(input: CorrectionInput): CorrectionPlan {
	const plan = correctionPlan(input);
	if (plan.kind !== 'plan') throw new Error(plan.because.join(' '));
	return plan;
}

function refused(more: Partial<CorrectionInput>): string {
	const plan = correctionPlan({ ...plain, ...more });
	if (plan.kind === 'plan') throw new Error('a plan was made');
	return plan.because.join(' ');
}

describe('one plan by hand', () => {
	const plan = planned(plain);
	// 1.6 dKH at no more than 0.5 a day: 4 days of 0.4. Each day 0.4 + 0.3 − 0.1 = 0.6 dKH to bring in:
	// 0.6 × 0.35665 × 180 = 38.518 meq; × 84.006 / 1000 / 0.99 = 3.2684 g.
	it('days, steps and grams', () => {
		expect(plan.days).toHaveLength(4);
		expect(plan.risePerDay).toBeCloseTo(0.4, 12);
		expect(plan.additionPerDay).toBeCloseTo(0.6, 12);
		plan.days.forEach(({ amount }) => expect(amount).toBeCloseTo(3.2684, 3));
		expect(plan.totalAmount).toBeCloseTo(4 * 3.2684, 3);
		expect(plan.days.map(({ expected }) => expected)).toEqual([
			expect.closeTo(6.8, 12),
			expect.closeTo(7.2, 12),
			expect.closeTo(7.6, 12),
			expect.closeTo(8, 12)
		]);
	});
	// Of the value 2 × 0.15; of 4 × 0.6 added, 10 % of the volume and 2 % of the strength; 30 % of
	// 4 × 0.3 used and of 4 × 0.1 dosed: √(0.3² + 0.24² + 0.048² + 0.36² + 0.12²) = 0.5421.
	it('the ± on the last day', () => {
		expect(plan.days.at(-1)?.expectedExpandedUncertainty).toBeCloseTo(0.5421, 4);
	});
	it('a retest every second day and at the end', () => {
		expect(plan.days.map(({ isRetest }) => isRetest)).toEqual([false, true, false, true]);
	});
	it('what lacks is taken and said', () => {
		const { cautions } = planned({
			...plain,
			waterExpandedUncertaintyL: null,
			consumptionPerDay: null,
			dosedPerDay: null,
			ph: null
		});
		const said = cautions.slice(0, 4).join(' ');
		expect(said).toMatch(
			/a tenth.*not known.*in balance, within 0\.3 dKH a day.*judgement.*8\.1 was taken/
		);
	});
	it('what is not known of consumption and dosing makes the plan no surer than what is', () => {
		const plans = [
			{ consumptionPerDay: null, dosedPerDay: null },
			{ consumptionPerDay: 0.6, dosedPerDay: 0.6 },
			{ consumptionPerDay: 0, dosedPerDay: 0 }
		].map((said) => planned({ ...plain, ...said }));
		const widths = plans.map(({ days }) => days[1]?.expectedExpandedUncertainty ?? Infinity);
		const [neither, both, none] = widths as [number, number, number];
		expect(neither).toBeGreaterThanOrEqual(both);
		// By hand: 0.3 dKH a day on top of what is there without any, in quadrature.
		expect(neither).toBeCloseTo(Math.hypot(none, 2 * 0.3), 6);
		expect(plans[0]!.days.length).toBeLessThanOrEqual(plans[1]!.days.length);
	});
});

/** A figure of a sum, and how far rounding to four digits may have moved it. */
function read(text: string): { value: number; within: number } {
	const value = Number(text.replace('−', '-'));
	return { value, within: 10 ** (Math.floor(Math.log10(Math.abs(value) || 1)) - 3) / 2 };
}

/** Works out 'a × b ÷ c' from left to right, with how far the rounding of its figures may move it. */
function workOut(terms: string): { value: number; within: number } {
	const [first, ...rest] = terms.trim().split(/ ([×÷+−]) /);
	let { value, within } = read(first ?? '');
	for (let i = 0; i < rest.length; i += 2) {
		const next = read((rest[i + 1] ?? '').split(' ')[0] ?? '');
		const before = value;
		const share = within / Math.abs(before) + next.within / Math.abs(next.value);
		if (rest[i] === '×') value *= next.value;
		else if (rest[i] === '÷') value /= next.value;
		else value += rest[i] === '+' ? next.value : -next.value;
		within = '×÷'.includes(rest[i] ?? '') ? Math.abs(value) * share : within + next.within;
	}
	return { value, within };
}

describe('the sum to check by hand', () => {
	it('comes to the amount of the first day, line by line', () => {
		fc.assert(
			fc.property(anyComplete, (input) => {
				const plan = correctionPlan(input);
				if (plan.kind === 'refused') return;
				const lines = plan.sum.filter((line) => line.includes(' = '));
				expect(lines.length).toBeGreaterThanOrEqual(4);
				const results = lines.map((line) => {
					const [left = '', right = ''] = line.split(' = ');
					const worked = workOut(left);
					const printed = read(right.split(' ')[0] ?? '');
					expect(Math.abs(worked.value - printed.value)).toBeLessThanOrEqual(
						(worked.within + printed.within) * 1.001 + 1e-9
					);
					return printed.value;
				});
				const amount = plan.days[0]?.amount ?? 0;
				expect(results.some((result) => Math.abs(result / amount - 1) < 6e-4)).toBe(true);
			}),
			{ numRuns: 300 }
		);
	});
	it('each line begins with figures that stand above it or were told', () => {
		expect(planned(plain).sum).toEqual([
			'8 − 6.4 = 1.6 dKH to go',
			'1.6 ÷ 4 = 0.4 dKH each day, on 4 days',
			'0.4 + 0.3 − 0.1 = 0.6 dKH to bring in each day: more what is used up, less what is dosed',
			'0.6 × 0.3566 = 0.214 meq in a litre',
			'0.214 × 180 = 38.52 meq in all the water',
			'38.52 × 84.01 ÷ 1000 = 3.236 g of the pure powder',
			'3.236 ÷ 0.99 = 3.268 g of yours',
			'4 × 3.268 = 13.07 g in all',
			'Measure out 3.3 g a day: no volume of a tank is known more closely.'
		]);
	});
});

describe('refused, with the reason', () => {
	it.each<[string, Partial<CorrectionInput>, RegExp]>([
		['not to adjust', { decision: { ...toAdjust(), verdict: 'leave' } }, /not to adjust/],
		['unverified', { decision: { ...toAdjust(), isVerified: false } }, /Nothing independent/],
		['unit doubted', { isUnitSure: false }, /which unit/],
		['a sitter', { who: 'sitter' }, /stands in for the keeper/],
		['a child', { who: 'child' }, /child/],
		['salinity unknown', { salinity: null }, /salinity is not known/],
		['salinity off', { salinity: 31 }, /outside 33 to 37/],
		['pH off', { ph: 8.7 }, /pH is outside/],
		['volume unknown', { waterL: null }, /volume of the water is not known/],
		['volume hardly known', { waterExpandedUncertaintyL: 95 }, /too poorly/],
		['consumption without dosing', { dosedPerDay: null }, /Say both/],
		['no means', { means: null }, /by which means/],
		[
			'product strength unknown',
			{ means: { by: 'product', risePerMlIn100L: null } },
			/How strong the product is/
		],
		['no target', { target: null }, /No value to aim at/],
		['target outside the band', { target: 9.5 }, /outside your band of 7\.0 to 9\.0 dKH/],
		[
			'target not sensible',
			{ target: 12.5, band: { low: 7, high: 13, unit: 'dKH' } },
			/between 6\.0 dKH and 12\.0 dKH/
		],
		['the other way', { value: { ...plain.value, value: 8.6 } }, /the other way/],
		[
			'± larger than the way',
			{ value: { ...plain.value, standardUncertainty: 0.9 } },
			/no larger than the ± of the value, 6\.4 ± 1\.8 dKH/
		],
		['over the cap', { maxRisePerDay: 1.2 }, /More than 1\.0 dKH a day is never planned/],
		[
			'lowering by anything added',
			{ decision: toAdjust('lower'), value: { ...plain.value, value: 10 } },
			/Nothing is added to bring it down\. Pause what is dosed/
		],
		[
			'new water that holds less',
			{ means: { by: 'waterChange', newValue: 6, share: 0.2 } },
			/must hold more/
		],
		['dosers that do it already', { dosedPerDay: 0.75 }, /already bring it there/],
		['dosers too fast', { dosedPerDay: 0.9 }, /as fast as is allowed/],
		[
			'pH too near its limit',
			{ means: { by: 'limewater' }, ph: 8.45, consumptionPerDay: 0.5 },
			/lift pH above 8\.5/
		],
		[
			'pH lifted too far',
			{ means: { by: 'limewater' }, ph: 7.8, consumptionPerDay: 0.9 },
			/lift pH by more than 0\.2/
		],
		[
			'more limewater than evaporates',
			{ means: { by: 'limewater' }, evaporationLPerDay: 0.2 },
			/evaporates in a day/
		],
		[
			'water that does not bring it there',
			{ means: { by: 'waterChange', newValue: 7, share: 0.2 } },
			/does not bring it there/
		]
	])('%s', (_, more, reason) => {
		expect(refused(more)).toMatch(reason);
	});
	it('all reasons at once', () => {
		expect(refused({ salinity: null, waterL: null, who: 'child' }).split('. ').length).toBe(3);
	});
	it.each<[Partial<CorrectionInput>, string]>([
		[{ waterL: -3 }, 'waterL must be between 1 and 1000000; found -3'],
		[{ salinity: 90 }, 'salinity must be between 0 and 60; found 90'],
		[
			{ consumptionPerDay: Number.NaN },
			'consumptionPerDay must be between 0 and 1000000; found NaN'
		],
		[
			{ means: { by: 'bicarbonate', purity: 1.4 } },
			'means.purity must be between 0.01 and 1; found 1.4'
		]
	])('a figure that no tank has is named (%#)', (more, message) => {
		expect(() => correctionPlan({ ...plain, ...more })).toThrow(new RangeError(message));
	});
	it('what there is no doing without is named where it lacks', () => {
		const without = (value: object) =>
			correctionPlan({ ...plain, value } as unknown as typeof plain);
		expect(() => without({ value: 6, unit: 'dKH' })).toThrow(
			new RangeError(
				'value.standardUncertainty must be a number between 0 and 1000000; found undefined'
			)
		);
		expect(() => without({ standardUncertainty: 0.2, unit: 'dKH' })).toThrow(/^value\.value must/);
		expect(() => without({ value: 6, standardUncertainty: 0.2 })).toThrow(/^value\.unit must/);
		expect(() =>
			correctionPlan({ ...plain, decision: undefined } as unknown as typeof plain)
		).toThrow(/^decision must/);
	});
});

describe('water that is too high', () => {
	it('comes down by a change of water that holds less, as slowly', () => {
		const plan = planned({
			...plain,
			decision: toAdjust('lower'),
			value: { ...plain.value, value: 10 },
			target: 8.5,
			dosedPerDay: 0,
			means: { by: 'waterChange', newValue: 7, share: 0.2 }
		});
		expect(plan.risePerDay).toBeLessThan(0);
		expect(plan.risePerDay).toBeGreaterThanOrEqual(-0.5);
		expect(plan.days.at(-1)?.expected).toBeCloseTo(8.5, 12);
	});
});

/** All plans among many inputs must hold; some must be plans. */
function forPlans(check: (plan: CorrectionPlan, input: CorrectionInput) => void) {
	let made = 0;
	fc.assert(
		fc.property(anyComplete, (input) => {
			const plan = correctionPlan(input);
			if (plan.kind === 'refused') return;
			made += 1;
			check(plan, input);
		}),
		{ numRuns: 200 }
	);
	expect(made).toBeGreaterThan(20);
}

describe('any plan', () => {
	const limits = limitsOf('alkalinity');
	it('never moves faster than the cap, even with as little water as may be', () => {
		forPlans((plan, input) => {
			const waterL = input.waterL ?? 0;
			const waterExpandedUncertaintyL = input.waterExpandedUncertaintyL ?? 0;
			const most = waterL / (waterL - waterExpandedUncertaintyL);
			const drift = (input.dosedPerDay ?? 0) - (input.consumptionPerDay ?? 0);
			const net = plan.additionPerDay * most + drift;
			expect(Math.abs(net)).toBeLessThanOrEqual(limits.rise.hardCapPerDay + 1e-6);
			expect(Math.abs(plan.risePerDay)).toBeLessThanOrEqual((input.maxRisePerDay ?? 0.5) + 1e-6);
		});
	});
	it('never lifts pH by more than 0.2 at once, nor above 8.5', () => {
		forPlans((plan, input) => {
			const highest = Math.max(...plan.days.map(({ phChange }) => phChange));
			expect(highest).toBeLessThanOrEqual(0.2);
			if (highest > 0) expect((input.ph ?? 0) + highest).toBeLessThanOrEqual(8.5);
		});
	});
	it('its days add up to the total and end at the target, or where it cannot be foreseen any more', () => {
		forPlans((plan, input) => {
			const sum = plan.days.reduce((total, { amount }) => total + amount, 0);
			expect(sum).toBeCloseTo(plan.totalAmount, 9);
			const way = (input.target ?? 0) - input.value.value;
			expect(plan.days.at(-1)?.expected).toBeCloseTo(
				input.value.value + (way * plan.days.length) / plan.daysInAll,
				9
			);
			expect(plan.daysInAll > plan.days.length).toBe(
				plan.cautions.some((line) => line.includes('short of'))
			);
			expect(plan.days.every(({ amount }) => amount > 0)).toBe(true);
			expect(plan.days.at(-1)?.isRetest).toBe(true);
		});
	});
	it('no day makes up for another: what is added each day is the same', () => {
		forPlans((plan, input) => {
			if (input.means?.by === 'waterChange') return;
			const amounts = plan.days.map(({ amount }) => amount);
			expect(Math.max(...amounts) - Math.min(...amounts)).toBeLessThan(1e-9 * plan.totalAmount);
		});
	});
	it('the ± grows from day to day and is never less than that of the value', () => {
		forPlans((plan, input) => {
			let before = 2 * input.value.standardUncertainty;
			for (const { expectedExpandedUncertainty } of plan.days) {
				expect(expectedExpandedUncertainty).toBeGreaterThanOrEqual(before);
				before = expectedExpandedUncertainty;
			}
		});
	});
	it('twice the water takes twice the amount, and nothing else changes', () => {
		forPlans((plan, input) => {
			const doubled = planned({
				...input,
				waterL: 2 * (input.waterL ?? 0),
				waterExpandedUncertaintyL: 2 * (input.waterExpandedUncertaintyL ?? 0),
				evaporationLPerDay: null
			});
			// Evaporation may have made the first plan longer.
			if (doubled.daysInAll !== plan.daysInAll) return;
			expect(doubled.totalAmount).toBeCloseTo(2 * plan.totalAmount, 6);
			expect(doubled.days.map(({ expected }) => expected)).toEqual(
				plan.days.map(({ expected }) => expected)
			);
		});
	});
	it('in another unit it asks for the same amounts', () => {
		forPlans((plan, input) => {
			for (const unit of ['meq/L', 'ppm CaCO3', 'mmol/L'] as const) {
				const other = planned(inUnit(input, unit));
				expect(other.days.map(({ amount }) => amount)).toEqual(
					plan.days.map(({ amount }) => expect.closeTo(amount, 6))
				);
			}
		});
	});
	it('knowing the value or the volume less well never makes it faster or surer', () => {
		forPlans((plan, input) => {
			const vaguer = correctionPlan({
				...input,
				value: {
					...input.value,
					standardUncertainty: 1.3 * input.value.standardUncertainty
				},
				waterExpandedUncertaintyL: 1.3 * (input.waterExpandedUncertaintyL ?? 0)
			});
			if (vaguer.kind === 'refused') return;
			expect(vaguer.daysInAll).toBeGreaterThanOrEqual(plan.daysInAll);
			// One that was cut short says less far ahead.
			if (vaguer.daysInAll > vaguer.days.length || plan.daysInAll > plan.days.length) return;
			expect(vaguer.days.length).toBeGreaterThanOrEqual(plan.days.length);
			expect(Math.abs(vaguer.risePerDay)).toBeLessThanOrEqual(Math.abs(plan.risePerDay) + 1e-12);
			expect(vaguer.days.at(-1)?.expectedExpandedUncertainty).toBeGreaterThanOrEqual(
				(plan.days.at(-1)?.expectedExpandedUncertainty ?? 0) - 1e-12
			);
		});
	});
});

describe('what cannot be foreseen', () => {
	/** Limewater where little evaporates: the way takes weeks, and what is used up adds to its ±. */
	const slow: CorrectionInput = {
		...plain,
		value: { value: 6, standardUncertainty: 0.2, unit: 'dKH' },
		consumptionPerDay: 0.45,
		dosedPerDay: 0.45,
		maxRisePerDay: 0.08,
		means: { by: 'limewater' },
		evaporationLPerDay: 2.5
	};
	it('a plan of weeks ends where its ± has become as wide as the band, and says so first', () => {
		const plan = planned(slow);
		expect(plan.daysInAll).toBe(25);
		expect(plan.days.length).toBeLessThan(plan.daysInAll);
		// The band is 7 to 9: a value that is known to ± 1 may lie anywhere in it.
		const last = plan.days.at(-1)!;
		expect(last.expectedExpandedUncertainty).toBeLessThanOrEqual(1 + 1e-9);
		// Of the value 0.4, of each 0.45 a day 30 %; what is added makes little beside: day 5 passes ± 1.
		expect(Math.hypot(0.4, 0.135 * 5, 0.135 * 5)).toBeGreaterThan(1);
		expect(plan.days.length).toBeLessThan(5);
		expect(last.isRetest).toBe(true);
		expect(plan.cautions[0]).toMatch(/^It ends after 4 days, at about 6\.\d ± .*short of 8\.0 dKH/);
		expect(plan.totalAmount).toBeCloseTo(plan.days.length * plan.days[0]!.amount, 9);
		expect(plan.sum[1]).toContain('on 25 days, the first 4 of them here');
	});
	it('the same way in a week is planned whole', () => {
		const plan = planned({ ...plain, consumptionPerDay: 0.1, dosedPerDay: 0 });
		expect(plan.days.length).toBe(plan.daysInAll);
		expect(plan.cautions.join(' ')).not.toContain('short of');
	});
	it('where not even a day can be foreseen there is no plan', () => {
		expect(
			refused({
				...slow,
				consumptionPerDay: 4,
				dosedPerDay: 4,
				means: { by: 'bicarbonate', purity: 1 }
			})
		).toMatch(/could not be foreseen where the value is/);
	});
});

describe('limewater', () => {
	const limewater: Partial<CorrectionInput> = {
		means: { by: 'limewater' },
		consumptionPerDay: 0.1,
		dosedPerDay: 0,
		maxRisePerDay: 0.2
	};
	it('is compared with what evaporates, by the number that was said', () => {
		const plan = planned({ ...plain, ...limewater, evaporationLPerDay: 3 });
		const said = plan.cautions.join(' ');
		expect(said).toMatch(/Of the 3 L that evaporate in a day it takes the place of 0\.\d+ L/);
		expect(said).not.toContain('Compare');
	});
	it('or has to be, where nobody said it', () => {
		const said = planned({ ...plain, ...limewater }).cautions.join(' ');
		expect(said).toMatch(/Compare 0\.\d+ L with what evaporates in a day/);
	});
	it('what holds its steps down is said: pH, or what evaporates', () => {
		const fast = { ...plain, ...limewater, consumptionPerDay: 0, maxRisePerDay: 0.8 };
		const slowedBy = (plan: CorrectionPlan) =>
			plan.cautions.filter((line) => line.startsWith('The steps are smaller than the rate allows'));
		const plan = planned(fast);
		expect(plan.risePerDay).toBeCloseTo(0.4, 9);
		expect(slowedBy(plan)).toEqual([
			'The steps are smaller than the rate allows, so that pH rises by no more than 0.2 in a day, also with as little water as its ± allows. A means that lifts pH less goes faster.'
		]);
		// One day less, of larger steps, would pass it: with a tenth less water each does a ninth more.
		const steeper = (plan.daysInAll / (plan.daysInAll - 1)) * (10 / 9);
		expect(plan.days[0]!.phChange * (10 / 9)).toBeLessThanOrEqual(0.2);
		expect(plan.days[0]!.phChange * steeper).toBeGreaterThan(0.2);
		expect(slowedBy(planned({ ...fast, evaporationLPerDay: 0.25 }))[0]).toMatch(
			/no more limewater is taken than evaporates/
		);
		expect(slowedBy(planned(plain))).toEqual([]);
	});
});

describe('whatever lacks', () => {
	it('there is no plan, and it is said why', () => {
		fc.assert(
			fc.property(anyInput, (input) => {
				const plan = correctionPlan(input);
				const lacks =
					input.target === null ||
					input.waterL === null ||
					input.means === null ||
					input.salinity === null ||
					(input.consumptionPerDay === null) !== (input.dosedPerDay === null) ||
					input.isUnitSure === false ||
					!input.decision.isVerified ||
					input.who !== 'keeper';
				if (lacks) expect(plan.kind).toBe('refused');
				if (plan.kind === 'refused') {
					expect(plan.because.length).toBeGreaterThan(0);
					expect(Object.keys(plan).sort()).toEqual(['because', 'kind']);
				}
			}),
			{ numRuns: 400 }
		);
	});
});
