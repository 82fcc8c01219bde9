import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, emergencyPath, livestockRatios, type DecideInput } from '../../src/lib/judgement';
import { livestockLooks } from '../../src/lib/observation';
import { convertValue } from '../../src/lib/kits';
import { madeCheck, madeDiagnosis, normalAt } from './made-diagnosis';

const band = { low: 7, high: 9, unit: 'dKH' } as const;

/** A verified value, of which everything is known unless it is said otherwise. */
function inputFor(mean: number, sd: number, more: Partial<DecideInput> = {}): DecideInput {
	return {
		diagnosis: madeDiagnosis({ components: normalAt(mean, sd) }),
		band,
		livestock: 'notLooked',
		next: null,
		isEnough: true,
		isSalinityKnown: true,
		...more
	};
}
const unverified = (mean: number, sd: number) =>
	madeDiagnosis({ components: normalAt(mean, sd), isIndependent: false });

describe('a value that may be one of two', () => {
	const split = (late: number) =>
		madeDiagnosis({
			components: [
				{ weight: 1 - late, mean: 10.5, sd: 0.4 },
				{ weight: late, mean: 8.2, sd: 0.3 }
			]
		});
	const said = (late: number, livestock: DecideInput['livestock']) => {
		const decision = decide(inputFor(0, 0, { diagnosis: split(late), livestock }));
		const line = decision.because.find((each) => each.includes('the water holds'));
		return { line, within: decision.probabilities!.within };
	};
	it('is told as one of two where both are about as likely', () => {
		expect(said(0.48, 'notLooked').line).toBe(
			'It is one of two: the water holds 10.5 ± 0.8 dKH or 8.2 ± 0.6 dKH, about as likely.'
		);
		expect(said(0.4, 'notLooked').line).toBe(
			'Most likely the water holds 10.5 ± 0.8 dKH; if not that, 8.2 ± 0.6 dKH.'
		);
	});
	it('the first named is on the side that the chances name, however the animals look', () => {
		// Animals that look well halve the odds of what lies outside: 0.48 comes to 0.65.
		const well = said(0.48, 'well');
		expect(well.within).toBeCloseTo(0.48 / (0.48 + 0.52 / 2), 1);
		expect(well.line).toBe(
			'Most likely the water holds 8.2 ± 0.6 dKH; if not that, 10.5 ± 0.8 dKH.'
		);
		for (const livestock of livestockLooks)
			for (const late of [0.2, 0.35, 0.5, 0.65, 0.8]) {
				const { line, within } = said(late, livestock);
				if (line!.startsWith('Most likely'))
					expect([late, livestock, line!.indexOf('8.2') < line!.indexOf('10.5')]).toEqual([
						late,
						livestock,
						within > 0.5
					]);
				else expect(Math.abs(within - 0.5)).toBeLessThan(0.07);
			}
	});
});

describe('the verdict', () => {
	it.each<[string, DecideInput, string, string | null]>([
		['within the band', inputFor(8, 0.2), 'leave', null],
		['at its edge', inputFor(6.9, 0.2), 'leave', null],
		['clearly below, verified', inputFor(6, 0.2), 'adjust', 'raise'],
		['clearly above, verified', inputFor(10.5, 0.2), 'adjust', 'lower'],
		[
			'clearly below, nobody else asked',
			inputFor(6, 0.2, { diagnosis: unverified(6, 0.2) }),
			'check',
			null
		],
		[
			'clearly below, nobody else asked, one check left',
			inputFor(6, 0.2, { diagnosis: unverified(6, 0.2), next: madeCheck(), isEnough: false }),
			'check',
			null
		],
		[
			'clearly below, nobody else asked, and what is left tells next to nothing',
			inputFor(6, 0.2, {
				diagnosis: unverified(6, 0.2),
				next: { ...madeCheck(), information: 0.01 },
				isEnough: false
			}),
			'check',
			null
		],
		[
			'within, unverified, and checking is worth it',
			inputFor(7.4, 0.6, { diagnosis: unverified(7.4, 0.6), next: madeCheck(), isEnough: false }),
			'check',
			null
		],
		[
			'within, unverified, and no check would change it',
			inputFor(8, 0.3, { diagnosis: unverified(8, 0.3), next: madeCheck(0.01) }),
			'leave',
			null
		],
		[
			'below, verified, but one more check may well turn it',
			inputFor(6, 0.2, { next: madeCheck(0.4), isEnough: false }),
			'check',
			null
		],
		[
			'below, verified, and one more check would hardly turn it',
			inputFor(6, 0.2, { next: madeCheck(0.05), isEnough: false }),
			'adjust',
			'raise'
		],
		['unit doubted', inputFor(6, 0.2, { isUnitSure: false }), 'check', null],
		['below, salinity unknown', inputFor(6, 0.2, { isSalinityKnown: false }), 'check', null],
		['within, salinity unknown', inputFor(8, 0.2, { isSalinityKnown: false }), 'leave', null],
		['below, salinity of the sea', inputFor(6, 0.2, { salinity: 35 }), 'adjust', 'raise'],
		['below, salinity not known', inputFor(6, 0.2, { salinity: null }), 'check', null],
		['outside by less than its ±', inputFor(6.7, 0.25), 'leave', null],
		['outside by more than its ±', inputFor(6.5, 0.2), 'adjust', 'raise'],
		['above by more than its ±', inputFor(9.5, 0.2), 'adjust', 'lower'],
		['outside by less than a tank swings in a day', inputFor(6.85, 0.05), 'leave', null],
		[
			'outside by less than its ±, nobody else asked',
			inputFor(6.7, 0.25, { diagnosis: unverified(6.7, 0.25), next: madeCheck(), isEnough: false }),
			'check',
			null
		],
		['very low, though not known well: waiting harms', inputFor(4.5, 1.6), 'adjust', 'raise'],
		['below, salinity far below the sea', inputFor(6, 0.2, { salinity: 20 }), 'check', null],
		['below, salinity too high', inputFor(6, 0.2, { salinity: 39 }), 'check', null],
		['above, salinity too high', inputFor(10.5, 0.2, { salinity: 39 }), 'check', null],
		['within, salinity too low', inputFor(8, 0.2, { salinity: 30 }), 'leave', null],
		['a sitter, below', inputFor(6, 0.2, { who: 'sitter' }), 'leave', null],
		['a child, below', inputFor(6, 0.2, { who: 'child' }), 'leave', null],
		[
			'a new tank without stony corals, below',
			inputFor(5.5, 0.2, { hasStonyCorals: false }),
			'leave',
			null
		],
		['an emergency', inputFor(8, 0.2, { isEmergency: true }), 'emergency', null]
	])('%s', (_, input, verdict, direction) => {
		const decision = decide(input);
		expect([decision.verdict, decision.direction]).toEqual([verdict, direction]);
	});
	it('a look of the animals that is none of the list is named', () => {
		const look = 'fine' as DecideInput['livestock'];
		expect(() => decide(inputFor(8, 0.2, { livestock: look }))).toThrow(
			/^livestock must be one of well, .*; found fine/
		);
	});
	it('a check comes with the check to make, and with no other verdict', () => {
		const next = madeCheck();
		const diagnosis = unverified(6, 0.2);
		expect(decide(inputFor(6, 0.2, { diagnosis, next, isEnough: false })).check).toBe(next);
		expect(decide(inputFor(8, 0.2, { next })).check).toBeNull();
	});
	it.each<[string, DecideInput, string | null]>([
		[
			'the unit, before all else',
			inputFor(6, 0.2, { isUnitSure: false, next: madeCheck() }),
			'unit'
		],
		[
			'the salinity, once the value is verified and its checks are enough',
			inputFor(6, 0.2, { isSalinityKnown: false, next: madeCheck() }),
			'salinity'
		],
		[
			'nothing beside a check that may well turn it: the reading comes before the salinity',
			inputFor(6, 0.2, { isSalinityKnown: false, next: madeCheck(0.4), isEnough: false }),
			null
		],
		[
			'something independent, where no check that is left would tell',
			inputFor(6, 0.2, { diagnosis: unverified(6, 0.2), next: madeCheck(0.01) }),
			'independent'
		],
		[
			'something independent, where what is left tells next to nothing',
			inputFor(6, 0.2, {
				diagnosis: unverified(6, 0.2),
				next: { ...madeCheck(), information: 0.01 },
				isEnough: false
			}),
			'independent'
		],
		[
			'a check of the ranking is nothing beside it',
			inputFor(6, 0.2, {
				diagnosis: unverified(6, 0.2),
				isSalinityKnown: false,
				next: madeCheck(),
				isEnough: false
			}),
			null
		],
		[
			'a salinity put right',
			inputFor(6, 0.2, { salinity: 30, next: madeCheck() }),
			'salinityRight'
		],
		['nothing, to leave it', inputFor(8, 0.2, { isSalinityKnown: false }), null]
	])('what lacks: %s', (_, input, lacks) => {
		const decision = decide(input);
		expect(decision.lacks).toBe(lacks);
		if (lacks) expect(decision.check).toBeNull();
	});
	it.each([0, 1.026, 53, Number.NaN])('a salinity of %s is refused', (salinity) => {
		for (const mean of [6, 8])
			expect(() => decide(inputFor(mean, 0.2, { salinity }))).toThrow(
				new RangeError(`salinity must be between 5 and 45; found ${salinity}`)
			);
	});
	it('a salinity that is off is put right first, whatever is said of the value', () => {
		const right = /^The salinity of 30 is outside 33 to 37\. Put that right first/;
		const low = decide(inputFor(6, 0.2, { salinity: 30 }));
		expect(low.because[0]).toMatch(right);
		expect(low.because).toContain('Nothing goes into the tank before that is right.');
		expect(low.wouldChange.join(' ')).toMatch(/salinity near that of the sea/);
		expect(decide(inputFor(8, 0.2, { salinity: 30 })).because[0]).toMatch(right);
	});
	it('a salinity that nobody spoke of is not known; one that was given or said to be known is', () => {
		const { isSalinityKnown: _, ...unsaid } = inputFor(6, 0.2);
		expect(decide(unsaid)).toMatchObject({ verdict: 'check', lacks: 'salinity' });
		expect(decide({ ...unsaid, salinity: 35 }).verdict).toBe('adjust');
		expect(decide({ ...unsaid, isSalinityKnown: true }).verdict).toBe('adjust');
	});
	it('an emergency needs no diagnosis; anything else does', () => {
		const decision = decide(inputFor(8, 0.2, { diagnosis: null, isEmergency: true }));
		expect(decision).toMatchObject({ verdict: 'emergency', probabilities: null, retestInDays: 0 });
		expect(decision.because).toEqual(expect.arrayContaining([...emergencyPath().steps]));
		expect(() => decide(inputFor(8, 0.2, { diagnosis: null }))).toThrow(
			new RangeError('diagnosis must be given unless isEmergency; found null')
		);
	});
});

describe('evidence that does not fit together', () => {
	const apart = (between: 'methods' | 'tests' | 'days' | 'solution', mean = 8) => ({
		...madeDiagnosis({ components: normalAt(mean, 0.3) }),
		contradictions: [{ at: [0, 1], between, difference: -2, ordinary: 0.6 }]
	});
	it.each([
		['methods', /^Two methods .*cannot both be right\.$/],
		['tests', /^Two tests lie further apart/],
		['solution', /^A known solution read further/]
	] as const)('%s: something independent verifies nothing then', (between, words) => {
		for (const mean of [8, 6]) {
			const diagnosis = apart(between, mean);
			const decision = decide(inputFor(0, 0, { diagnosis, next: madeCheck(0.1), isEnough: false }));
			expect(decision.verdict).toBe('check');
			expect(decision.because[0]).toMatch(words);
		}
	});
	it('readings of two days may both be so: the water may have changed', () => {
		const diagnosis = apart('days');
		const decision = decide(inputFor(0, 0, { diagnosis, next: madeCheck(0.1), isEnough: false }));
		expect(decision.verdict).toBe('leave');
	});
	it('it is left at that where no check would change the advice', () => {
		const diagnosis = apart('methods');
		expect(decide(inputFor(0, 0, { diagnosis, next: madeCheck(0.01) })).verdict).toBe('leave');
	});
});

describe('the reasons', () => {
	it('begin with where it lies, in tenths', () => {
		expect(decide(inputFor(8, 0.8)).because.slice(0, 2)).toEqual([
			'Within your band of 7.0 to 9.0 dKH: the chances are about 8 in 10.',
			'The water holds about 8.0 ± 1.6 dKH.'
		]);
	});
	it('two humps are both told', () => {
		const diagnosis = madeDiagnosis({
			components: [
				{ weight: 0.6, mean: 7.4, sd: 0.15 },
				{ weight: 0.4, mean: 9.3, sd: 0.15 }
			],
			isIndependent: false
		});
		expect(decide(inputFor(0, 0, { diagnosis })).because).toContain(
			'Most likely the water holds 7.4 ± 0.3 dKH; if not that, 9.3 ± 0.3 dKH.'
		);
	});
	it('far below, that waiting harms too', () => {
		expect(decide(inputFor(4.6, 0.2)).because.join(' ')).toContain(
			'Below 5.0 dKH waiting harms too'
		);
		expect(decide(inputFor(8, 0.2)).because.join(' ')).not.toContain('waiting');
	});
	it('too high: pause dosing, add nothing', () => {
		const { because } = decide(inputFor(10.5, 0.2));
		expect(because[0]).toBe(
			'Pause what is dosed and let the animals use it up. Nothing is added to bring it down.'
		);
	});
	it.each([
		['outside by less than its ±', 6.7, 0.25, /by no more than its ±/],
		['above by less than its ±', 9.3, 0.25, /by no more than its ±/],
		['outside by very little', 6.85, 0.05, /outside your band by very little/]
	])(
		'left though likely outside: %s is said why, and nothing to do beside it',
		(_, mean, sd, why) => {
			const { verdict, because } = decide(inputFor(mean, sd));
			expect(verdict).toBe('leave');
			expect(because[0]).toMatch(why);
			expect(because.join(' ')).not.toMatch(/Pause|Nothing goes/);
		}
	);
	it('left within the band needs no such reason', () => {
		expect(decide(inputFor(8, 0.2)).because[0]).toMatch(/^Within your band/);
	});
	it('too high and not borne out yet: dosing is paused until that is checked', () => {
		const { because } = decide(
			inputFor(10.5, 0.2, {
				diagnosis: unverified(10.5, 0.2),
				next: madeCheck(),
				isEnough: false
			})
		);
		expect(because[0]).toMatch(/^Pause what is dosed until that is checked\./);
	});
	it('a sitter is asked to tell', () => {
		expect(decide(inputFor(6, 0.2, { who: 'sitter' })).because[0]).toContain('Tell the keeper');
	});
	it.each([
		[0.05, 0.2, 'tooSmallToTell', 'too small'],
		[-0.3, 0.2, 'likelyReal', 'likely real']
	])('a change of %s ± %s a day is %s', (perDay, expandedUncertainty, change, words) => {
		const decision = decide(inputFor(8, 0.2, { rate: { perDay, expandedUncertainty } }));
		expect(decision.change).toBe(change);
		expect(decision.because.join(' ')).toContain(words);
	});
	it.each([
		[0.5, 'notSettled', 'not settled. The chances are about 5 in 10'],
		[0.9, 'likelyReal', 'likely real'],
		[0.05, 'tooSmallToTell', 'too small']
	])('where the water has changed by %s in 1, a wide rate is %s', (waterChanged, change, words) => {
		const input = inputFor(8, 0.8, { rate: { perDay: -0.2, expandedUncertainty: 0.4 } });
		const decision = decide({ ...input, diagnosis: { ...input.diagnosis!, waterChanged } });
		expect(decision.change).toBe(change);
		expect(decision.because.join(' ')).toContain(words);
	});
	it('a real change that the usual drift can make is told so: the likeliest account is that nothing is wrong', () => {
		const input = inputFor(8, 0.2, { rate: { perDay: -0.1, expandedUncertainty: 0.05 } });
		const of = (nothingWrong: number, waterChanged: number) =>
			decide({ ...input, diagnosis: { ...input.diagnosis!, nothingWrong, waterChanged } });
		expect(of(0.4, 0.3).because.join(' ')).toContain(
			'likely real: over so many days the usual drift'
		);
		expect(of(0.3, 0.4).because.join(' ')).toContain('likely real.');
	});
	it('much consumption: a test a week is too rare', () => {
		const decision = decide(inputFor(8, 0.2, { consumptionPerDay: 0.7 }));
		expect(decision.retestInDays).toBe(1);
		expect(decision.because.join(' ')).toContain('a test a week is too rare');
		expect(decide(inputFor(8, 0.2, { consumptionPerDay: 0.1 })).retestInDays).toBe(7);
	});
});

const anyComponents = fc.array(
	fc.record({
		weight: fc.double({ min: 0.05, max: 1, noNaN: true }),
		mean: fc.double({ min: 3, max: 13, noNaN: true }),
		sd: fc.double({ min: 0.05, max: 1.5, noNaN: true })
	}),
	{ minLength: 1, maxLength: 3 }
);

describe('any diagnosis', () => {
	it('probabilities sum to one and none of them is nothing or certain', () => {
		fc.assert(
			fc.property(anyComponents, fc.constantFrom(...livestockLooks), (components, livestock) => {
				const diagnosis = madeDiagnosis({ components });
				const { probabilities } = decide(inputFor(0, 0, { diagnosis, livestock }));
				const all = Object.values(probabilities ?? {});
				expect(all).toHaveLength(3);
				expect(all.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
				all.forEach((p) => {
					expect(p).toBeGreaterThan(0);
					expect(p).toBeLessThan(1);
				});
			})
		);
	});
	it('the look of the animals moves the odds by a factor of 2 at most', () => {
		fc.assert(
			fc.property(anyComponents, fc.constantFrom(...livestockLooks), (components, livestock) => {
				const diagnosis = madeDiagnosis({ components });
				const oddsWith = (look: DecideInput['livestock']) => {
					const { within } = decide(inputFor(0, 0, { diagnosis, livestock: look }))
						.probabilities ?? { within: 0 };
					return within / (1 - within);
				};
				const moved = oddsWith(livestock) / oddsWith('notLooked');
				expect(moved).toBeLessThanOrEqual(2 + 1e-6);
				expect(moved).toBeGreaterThanOrEqual(0.5 - 1e-6);
			})
		);
		expect(livestockRatios.notLooked).toBe(1);
	});
	it('never adjusts what nothing independent bears out, in which unit or where salinity is unknown or off, or for a sitter or child', () => {
		fc.assert(
			fc.property(
				anyComponents,
				fc.record({
					isIndependent: fc.boolean(),
					isUnitSure: fc.boolean(),
					isSalinityKnown: fc.boolean(),
					salinity: fc.option(fc.double({ min: 5, max: 45, noNaN: true }), { nil: undefined }),
					who: fc.constantFrom('keeper' as const, 'sitter' as const, 'child' as const)
				}),
				(components, { isIndependent, ...said }) => {
					const diagnosis = madeDiagnosis({ components, isIndependent });
					const decision = decide(inputFor(0, 0, { diagnosis, ...said }));
					const { salinity = 35 } = said;
					const may =
						isIndependent &&
						said.isUnitSure &&
						said.isSalinityKnown &&
						salinity >= 33 &&
						salinity <= 37 &&
						said.who === 'keeper';
					if (!may) expect(decision.verdict).not.toBe('adjust');
					if (decision.verdict === 'adjust') expect(decision.isVerified).toBe(true);
					else expect(decision.direction).toBeNull();
				}
			)
		);
	});
	it('says the same of the same water in another unit', () => {
		fc.assert(
			fc.property(anyComponents, fc.constantFrom(...livestockLooks), (components, livestock) => {
				const there = decide(
					inputFor(0, 0, { diagnosis: madeDiagnosis({ components, unit: 'meq/L' }), livestock })
				);
				const bandThere = {
					low: convertValue(7, 'dKH', 'ppm CaCO3'),
					high: convertValue(9, 'dKH', 'ppm CaCO3'),
					unit: 'ppm CaCO3' as const
				};
				const here = inputFor(0, 0, { diagnosis: madeDiagnosis({ components }), livestock });
				const elsewhere = decide({ ...here, band: bandThere });
				const { verdict, probabilities } = decide(here);
				expect([there.verdict, elsewhere.verdict]).toEqual([verdict, verdict]);
				expect(there.probabilities?.below).toBeCloseTo(probabilities?.below ?? 0, 9);
				expect(elsewhere.probabilities?.above).toBeCloseTo(probabilities?.above ?? 0, 9);
			})
		);
	});
	it('the lower the water, the less it is left alone or lowered', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 3, max: 13, noNaN: true }),
				fc.double({ min: 0, max: 5, noNaN: true }),
				(mean, less) => {
					const order = { raise: 0, leave: 1, lower: 2 };
					const at = (where: number) => order[decide(inputFor(where, 0.3)).direction ?? 'leave'];
					expect(at(mean - less)).toBeLessThanOrEqual(at(mean));
				}
			)
		);
	});
});

describe('what cannot be', () => {
	it.each<[Partial<DecideInput>, string]>([
		[
			{ band: { low: 9, high: 7, unit: 'dKH' } },
			'band.low must be at most band.high; found 9 and 7'
		],
		[{ consumptionPerDay: -1 }, 'consumptionPerDay must be 0 or above; found -1'],
		[
			{ rate: { perDay: 0.1, expandedUncertainty: -1 } },
			'rate must be a change a day with an expandedUncertainty of 0 or above; found 0.1 and -1'
		]
	])('is named (%#)', (more, message) => {
		expect(() => decide(inputFor(8, 0.2, more))).toThrow(new RangeError(message));
	});
	it('a band that lacks, or an end of it, is named', () => {
		const { band: _, ...bandless } = inputFor(8, 0.2);
		expect(() => decide(bandless as DecideInput)).toThrow(
			new RangeError('band must give low, high and unit; found nothing')
		);
		const half = { low: 7, unit: 'dKH' } as unknown as DecideInput['band'];
		expect(() => decide(inputFor(8, 0.2, { band: half }))).toThrow(
			new RangeError('band must give low, high and unit; found {"low":7,"unit":"dKH"}')
		);
	});
});
