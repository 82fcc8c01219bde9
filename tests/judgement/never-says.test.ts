import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	amountInWords,
	chanceInWords,
	correctionPlan,
	decide,
	emergencyPath,
	measured,
	type Decision,
	type DecideInput
} from '../../src/lib/judgement';
import { livestockLooks } from '../../src/lib/observation';
import { anyComplete, anyInput } from './any-correction';
import { fixedWordsIn } from './fixed-words';
import { madeCheck, madeDiagnosis, toAdjust } from './made-diagnosis';

/** Each thing that is never said: how it would sound, and sentences that must be caught or let by. */
const never: { what: string; sounds: RegExp; caught: string[]; letBy?: string[] }[] = [
	{
		what: 'that a reading is correct',
		sounds:
			/\b(reading|value|result)s? (is|are|was|were) (quite |surely )?(correct|right|true|accurate)\b/i,
		caught: ['Your reading is correct.', 'The value was right.'],
		letBy: ['A known solution read right.']
	},
	{
		what: 'that a kit is good or bad',
		sounds:
			/\bkits? (is|are|was|were) (a |very |quite )?(good|bad|poor|fine|reliable|unreliable|excellent|faulty|broken|useless)\b|\b(good|bad|poor|reliable|unreliable|useless) kits?\b/i,
		caught: ['Your kit is good.', 'A bad kit.', 'This kit is reliable.'],
		letBy: ['With this bottle and these hands the kit read low.']
	},
	{
		what: 'a certain probability, or one of nothing',
		sounds:
			/\b(0|100|99\.\d+) ?(%|per cent|percent)(?! pure)|\b(0|10) in 10\b|\b(certainly|definitely|undoubtedly|guaranteed?|impossible|surely is|without (any )?doubt)\b/i,
		caught: [
			'The chances are 10 in 10.',
			'It is certainly the bottle.',
			'That is impossible.',
			'100 %'
		],
		letBy: ['about 6 in 10', 'more than 49 in 50', '100 % pure']
	},
	{
		what: 'a probability with decimals',
		sounds: /\d[.,]\d+ in \d+|\d[.,]\d+ ?% (chance|likely|sure|probab)/i,
		caught: ['about 6.3 in 10', '63.4 % likely'],
		letBy: ['about 6 in 10']
	},
	{
		what: 'that two that agree are both right',
		sounds: /\bagree\b.*\b(both|so|therefore|hence)\b.*\b(right|correct|true)\b/i,
		caught: ['They agree, so both are right.'],
		letBy: ['Two methods agree within what both claim.']
	},
	{
		what: 'that animals that look well make a value right',
		sounds:
			/\b(animals?|corals?|livestock|fish)\b.*\b(look|are|seem) (well|fine|good|healthy)\b.*\b(so|therefore|hence|means?|proves?|shows?)\b.*\b(right|correct|true|fine|value|reading)\b/i,
		caught: ['The corals look well, so the value is right.'],
		letBy: [
			'The animals look well. That counts, though for less than a test: they lag behind the water by a week or two.'
		]
	},
	{
		what: 'a factor for a lot',
		sounds: /\b(lot|correction|kit) factor\b|\bmultiply (all|each|every|your)\b/i,
		caught: ['Use a lot factor of 1.03.', 'Multiply every reading by 1.05.']
	},
	{
		what: 'a safe dose',
		sounds: /\bsafe(ly)?\b|\bharmless (dose|amount|addition)/i,
		caught: ['A safe dose is 3 g.', 'This can safely be added.']
	},
	{
		what: 'acid or another chemical to bring it down',
		sounds:
			/(?<!\b(no|never|nor|not)\b[^.]*)\b(add|dose|pour|use|drip)\b[^.]*\b(acid|vinegar|chemicals?)\b[^.]*\b(lower|down|reduce|tank)\b|\b(lower|bring down|reduce)\b[^.]* (by|with) [^.]*\b(acid|vinegar)\b/i,
		caught: [
			'Add acid to lower it.',
			'Lower it with a little vinegar.',
			'Pour hydrochloric acid into the tank.'
		],
		letBy: ['Add no acid.', 'Never pour acid into the tank.']
	},
	{
		what: 'to catch up on what was not added',
		sounds:
			/(?<!\b(no|never|not)\b[^.]*)\bcatch(ing)?[- ]up\b|(?<!\bnot )\bmade? up for\b|(?<!\bnever )\bmake up for\b|\bdouble (the|your) (dose|amount)|\btwice the (dose|amount)\b/i,
		caught: [
			'Catch up on the missed day.',
			'Double the dose tomorrow.',
			'Make up for it the next day.'
		],
		letBy: [
			'What was left out one day is not made up for on the next.',
			'No double doses to catch up.'
		]
	},
	{
		what: 'to mix parts',
		sounds:
			/(?<!\b(never|not|no)\b[^.]*)\b(mix|pour|put|combine)\b[^.]*\b(parts|supplements|both (bottles|products|powders))\b|\bin one vessel\b(?<!\bnever in one vessel)/i,
		caught: ['Mix the parts first.', 'Pour both bottles together.'],
		letBy: ['Never in one vessel with anything else that is dosed.', 'Never mix the parts.']
	},
	{
		what: 'diseases of corals, or what will survive',
		sounds:
			/\b(disease|diseased|infection|parasites?|necrosis|bleach(ing|ed)?|pathogens?|surviv\w+|will (recover|live|thrive|die)|recovery of (the )?corals?)\b/i,
		caught: ['This is a disease.', 'The corals will recover.', 'Your fish will survive.'],
		letBy: ['Recovery of what was added.']
	},
	{
		what: 'medicine beyond rinsing and help',
		sounds:
			/\b(if swallowed|swallow (it|water|milk)|vomit\w*|antidotes?|medicines?|poison control|painkillers?|neutrali[sz]e the (skin|eye)|eye drops)\b/i,
		caught: ['If swallowed, drink milk.', 'Do not induce vomiting.'],
		letBy: ['Alkali or acid in an eye: rinse at once with running water, and get help.']
	},
	{
		what: 'drinking or pool water',
		sounds: /\b(drinking[- ]water|potable|swimming|pools?|spa|drinkable)\b/i,
		caught: ['Also for pool water.', 'Is it drinkable?']
	},
	{
		what: 'an end point by blue light, under glare or from a photo',
		sounds:
			/(?<!\b(no|never|not|nor)\b[^.]*)\b(judge|read|see|tell|take)\b[^.]*\b(colour|end( point)?)\b[^.]*\b(blue light|glare|photo(graph)?)\b/i,
		caught: ['Judge the colour from a photo.', 'Read the end point in blue light.'],
		letBy: ['Never judge the colour in blue light.']
	}
];

function expectSaysNone(lines: readonly string[], where = '') {
	for (const { what, sounds } of never)
		for (const line of lines) {
			if (sounds.test(line)) throw new Error(`${where} says ${what}: ${line}`);
		}
}

describe('the ear for what is never said', () => {
	it.each(never)('hears $what', ({ sounds, caught, letBy = [] }) => {
		caught.forEach((line) => expect(line).toMatch(sounds));
		letBy.forEach((line) => expect(line).not.toMatch(sounds));
	});
});

describe('all fixed words of judgement', () => {
	const words = fixedWordsIn('src/lib/judgement');
	it('are found', () => {
		expect(words.length).toBeGreaterThan(200);
		expect(words.map((each) => each.words)).toContain(emergencyPath().steps[0]);
	});
	it.each(never)('never say $what', ({ sounds }) => {
		expect(words.filter((each) => sounds.test(each.words))).toEqual([]);
	});
});

const anyDecideInput: fc.Arbitrary<DecideInput> = fc
	.record({
		components: fc.array(
			fc.record({
				weight: fc.double({ min: 0.05, max: 1, noNaN: true }),
				mean: fc.double({ min: 2, max: 14, noNaN: true }),
				sd: fc.double({ min: 0.05, max: 1.5, noNaN: true })
			}),
			{ minLength: 1, maxLength: 3 }
		),
		unit: fc.constantFrom('dKH' as const, 'meq/L' as const, 'ppm CaCO3' as const),
		isIndependent: fc.boolean(),
		rest: fc.record({
			livestock: fc.constantFrom(...livestockLooks),
			next: fc.constantFrom(null, madeCheck(), madeCheck(0.05)),
			isEnough: fc.boolean(),
			rate: fc.option(
				fc.record({
					perDay: fc.double({ min: -1, max: 1, noNaN: true }),
					expandedUncertainty: fc.double({ min: 0, max: 1, noNaN: true })
				}),
				{ nil: null }
			),
			consumptionPerDay: fc.option(fc.double({ min: 0, max: 2, noNaN: true }), { nil: null }),
			isUnitSure: fc.boolean(),
			isSalinityKnown: fc.boolean(),
			isEmergency: fc.boolean(),
			hasStonyCorals: fc.boolean(),
			who: fc.constantFrom('keeper' as const, 'sitter' as const, 'child' as const)
		})
	})
	.map(({ components, unit, isIndependent, rest }) => ({
		diagnosis: madeDiagnosis({ components, isIndependent, unit }),
		band: { low: 7, high: 9, unit: 'dKH' as const },
		...rest
	}));

/** Decimals that stand in a number as printed. */
const decimalsIn = (text: string) => text.split('.')[1]?.length ?? 0;

/** Every 'x ± U' in a line: both with the same decimals, and U with no more than two digits. */
function expectNoFinerThanItsUncertainty(line: string) {
	for (const [, value = '', expanded = ''] of line.matchAll(/([\d.]+) ± ([\d.]+)/g)) {
		expect(decimalsIn(value)).toBe(decimalsIn(expanded));
		expect(expanded.replace('.', '').replace(/^0+/, '').length).toBeLessThanOrEqual(
			decimalsIn(expanded) === 0 ? 3 : 2
		);
	}
}

const linesOf = ({ because, wouldChange, check }: Decision) => [
	...because,
	...wouldChange,
	...(check ? [check.because] : [])
];

describe('any decision', () => {
	it('says nothing of the kind, nothing finer than its ±, and speaks in whole sentences', () => {
		fc.assert(
			fc.property(anyDecideInput, (input) => {
				const lines = linesOf(decide(input));
				expectSaysNone(lines, 'a decision');
				lines.forEach((line) => {
					expectNoFinerThanItsUncertainty(line);
					expect(line).toMatch(/^[A-Z][^…]*[.?]$/);
				});
				expect(lines.length).toBeGreaterThanOrEqual(3);
				expect(new Set(lines).size).toBe(lines.length);
			})
		);
	});
});

describe('any plan or refusal', () => {
	it('says nothing of the kind and nothing finer than its ±', () => {
		fc.assert(
			fc.property(fc.oneof(anyComplete, anyInput), (input) => {
				const plan = correctionPlan(input);
				const lines =
					plan.kind === 'refused'
						? plan.because
						: [...plan.sum, ...plan.cautions, ...plan.wouldChange, plan.meansName];
				expectSaysNone(lines, 'a plan');
				lines.forEach(expectNoFinerThanItsUncertainty);
			})
		);
	});
	it('no plan on what is unverified, of unclear unit or unknown salinity, above the cap, of unknown strength, or for a child or sitter', () => {
		const lacks = fc.constantFrom<Partial<Parameters<typeof correctionPlan>[0]>>(
			{ decision: { ...toAdjust(), isVerified: false } },
			{ isUnitSure: false },
			{ salinity: null },
			{ maxRisePerDay: 1.01 },
			{ means: { by: 'product', risePerMlIn100L: null } },
			{ who: 'child' },
			{ who: 'sitter' }
		);
		fc.assert(
			fc.property(anyComplete, lacks, (input, lack) => {
				expect(correctionPlan({ ...input, ...lack }).kind).toBe('refused');
			})
		);
	});
	it('nothing that is added ever brings it down', () => {
		fc.assert(
			fc.property(anyComplete, (input) => {
				const plan = correctionPlan({ ...input, decision: toAdjust('lower') });
				if (plan.kind === 'plan') expect(input.means?.by).toBe('waterChange');
			})
		);
	});
});

describe('words for numbers', () => {
	it('no probability is nothing, certain or finer than a tenth', () => {
		fc.assert(
			fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (probability) => {
				expect(chanceInWords(probability)).toMatch(
					/^(about [1-9] in 10|about (1|19) in 20|less than 1 in 50|more than 49 in 50)$/
				);
			})
		);
	});
	it.each([
		[0, 'less than 1 in 50'],
		[0.05, 'about 1 in 20'],
		[0.63, 'about 6 in 10'],
		[0.95, 'about 19 in 20'],
		[1, 'more than 49 in 50']
	])('%s is %s', (probability, words) => {
		expect(chanceInWords(probability)).toBe(words);
	});
	it('a value is told with the decimals of its ±', () => {
		expect(measured(7.4236, 0.372, 'dKH')).toBe('7.4 ± 0.4 dKH');
		expect(measured(132.47, 12.3, 'ppm CaCO3')).toBe('132 ± 12 ppm CaCO₃');
	});
	it('an amount is told in two digits', () => {
		expect(amountInWords(3.2684, 'g')).toBe('3.3 g');
		expect(amountInWords(132.47, 'mL')).toBe('130 mL');
		expect(amountInWords(0.03268, 'L')).toBe('0.033 L');
	});
});
