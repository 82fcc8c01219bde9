import { describe, expect, it } from 'vitest';
import { bandOf, correctionInputOf, correctionPlan } from '../../src/lib/judgement';
import { madeDiagnosis, normalAt, toAdjust } from './made-diagnosis';

describe('the band', () => {
	it('is the person’s own where they said it', () => {
		expect(bandOf({ unit: 'meq/L', bandLow: 2.6, bandHigh: 3 }, 'dKH')).toEqual({
			low: 2.6,
			high: 3,
			unit: 'meq/L',
			isDefault: false
		});
	});
	it('is the default of the analyte where nothing was said, in the unit of the page', () => {
		expect(bandOf({}, 'dKH')).toEqual({ low: 7, high: 9, unit: 'dKH', isDefault: true });
	});
	it('is never the wrong way round when one end alone was said', () => {
		expect(bandOf({ bandLow: 9.5 }, 'dKH')).toMatchObject({ low: 9, high: 9.5 });
	});
});

describe('what a correction is computed from', () => {
	const tank = {
		unit: 'dKH',
		target: 8,
		waterL: 180,
		waterExpandedUncertaintyL: 10,
		consumptionPerDay: 0,
		dosedPerDay: 0,
		salinity: 35
	} as const;
	const made = {
		decision: toAdjust(),
		means: { by: 'bicarbonate', purity: 1 } as const,
		isUnitSure: true
	};
	it('begins with the value as it is shown: no finer than its ±', () => {
		const diagnosis = madeDiagnosis({ components: normalAt(6.4137, 0.2) });
		const input = correctionInputOf({ ...made, diagnosis, tank });
		expect(input.value.value).toBe(6.4);
		expect(input.value.standardUncertainty).toBeCloseTo(0.196, 3);
		const plan = correctionPlan(input);
		expect(plan.kind === 'plan' && plan.sum[0]).toBe('8 − 6.4 = 1.6 dKH to go');
	});
	it('is in the unit of the tank, whatever that of the diagnosis', () => {
		const diagnosis = madeDiagnosis({ components: normalAt(6.4, 0.2), unit: 'ppm CaCO3' });
		const input = correctionInputOf({ ...made, diagnosis, tank });
		expect(input.value.unit).toBe('dKH');
		expect(input.value.value).toBe(6.4);
	});
	it('leaves unknown what nobody said', () => {
		const diagnosis = madeDiagnosis({ components: normalAt(6.4, 0.2) });
		const plan = correctionPlan(correctionInputOf({ ...made, diagnosis, tank: {} }));
		expect(plan.kind === 'refused' && plan.because.join(' ')).toMatch(
			/salinity is not known.*volume of the water.*value to aim at/
		);
	});
	it.each([
		[{ by: 'vinegar' }, /^means\.by must be one of bicarbonate, carbonate, .*; found vinegar$/],
		[
			{ by: 'carbonate', purity: 1 },
			/^means\.hydrate must be one of anhydrous, monohydrate, decahydrate; found undefined$/
		],
		[
			{ by: 'calciumChloride', purity: 1, hydrate: 'wet' },
			/^means\.hydrate must be one of .*dihydrate.*; found wet$/
		],
		['vinegar', /^means must say by what, .*; found vinegar$/],
		[
			{ by: 'bicarbonate', purity: 1, hydrate: 'anhydrous' },
			/^means\.hydrate must be left out of bicarbonate, which has one form; found anhydrous$/
		],
		[
			{ by: 'bicarbonate' },
			/^means\.purity must be a number between 0\.01 and 1; found undefined$/
		],
		[{ by: 'product' }, /^means\.risePerMlIn100L must be a number .*; found undefined$/],
		[{ by: 'waterChange', newValue: 9 }, /^means\.share must be a number .*; found undefined$/],
		[{ by: 'waterChange', share: 0.1 }, /^means\.newValue must be a number .*; found undefined$/]
	])('refuses means of a case that are none: %o', (means, message) => {
		const diagnosis = madeDiagnosis({ components: normalAt(6.4, 0.2) });
		const input = { ...correctionInputOf({ ...made, diagnosis, tank }), means };
		const plan = () => correctionPlan(input as Parameters<typeof correctionPlan>[0]);
		expect(plan).toThrow(RangeError);
		expect(plan).toThrow(message);
	});
	it('refuses to plan for what is no analyte', () => {
		const diagnosis = madeDiagnosis({ components: normalAt(6.4, 0.2) });
		const input = { ...correctionInputOf({ ...made, diagnosis, tank }), analyte: 'iron' };
		const plan = () => correctionPlan(input as unknown as Parameters<typeof correctionPlan>[0]);
		expect(plan).toThrow(RangeError);
		expect(plan).toThrow(/^analyte must be one of alkalinity, .*; found iron$/);
	});
	it('tells a numeral in quotes from a number', () => {
		const diagnosis = madeDiagnosis({ components: normalAt(6.4, 0.2) });
		const input = { ...correctionInputOf({ ...made, diagnosis, tank }), waterL: '150' };
		expect(() => correctionPlan(input as unknown as Parameters<typeof correctionPlan>[0])).toThrow(
			/^waterL must be a number between 1 and 1000000; found the text '150'$/
		);
	});
});
