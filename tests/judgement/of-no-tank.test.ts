import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, diagnose, diagnoseAndRank } from '../../src/lib/judgement';
import {
	houseCalciumKit,
	houseHardnessKit,
	houseSyringeKit,
	unitsOf,
	type Analyte
} from '../../src/lib/kits';
import { differenceFiguresOf, methodFiguresOf } from '../../src/lib/metrology';
import type { Evidence, Reading } from '../../src/lib/observation';
import { bareMethod, fault, only, reading, test } from './diagnosed';

const methods = {
	alkalinity: methodFiguresOf(houseSyringeKit),
	calcium: methodFiguresOf(houseCalciumKit),
	magnesium: differenceFiguresOf(houseHardnessKit, { value: 420, unit: 'mg/L' })
};
type Tried = keyof typeof methods;
const bands: Record<Tried, { low: number; high: number }> = {
	alkalinity: { low: 7, high: 9 },
	calcium: { low: 400, high: 450 },
	magnesium: { low: 1250, high: 1400 }
};
/** What is believed of tanks beforehand, as it is stated beside the figures of the water. */
const priors: Record<Tried, { mean: number; sd: number }> = {
	alkalinity: { mean: 8.2, sd: 2 },
	calcium: { mean: 420, sd: 40 },
	magnesium: { mean: 1320, sd: 100 }
};
const unitOf = (analyte: Analyte) => unitsOf(analyte)[0]!;

const read = (analyte: Tried, id: string, value: number, plusMinus: number): Reading => ({
	...{ id, label: id, value, unit: unitOf(analyte) },
	expandedUncertainty: plusMinus
});
const tested = (
	analyte: Tried,
	value: number,
	plusMinus: number,
	from: 'first' | 'freshSample' = 'first'
): Evidence => ({ kind: 'test', from, reading: read(analyte, from, value, plusMinus) });
const laboratory = (analyte: Tried, value: number, plusMinus: number): Evidence => ({
	kind: 'secondMethod',
	method: 'laboratory',
	reading: read(analyte, 'laboratory', value, plusMinus)
});
const solution = (analyte: Tried, value: number, nominal: number, plusMinus: number): Evidence => ({
	kind: 'reference',
	matrix: 'seawater',
	nominal,
	nominalExpandedUncertainty: plusMinus / 3,
	reading: read(analyte, 'solution', value, plusMinus)
});

function adviceOn(analyte: Tried, evidence: readonly Evidence[]) {
	const method = methods[analyte];
	const band = { ...bands[analyte], unit: unitOf(analyte) };
	const { diagnosis, ranking } = diagnoseAndRank(evidence, { method, unit: band.unit, band });
	const decision = decide({
		...{ diagnosis, band, analyte, livestock: 'well', salinity: 35 },
		...{ next: ranking.next, ranked: ranking.ranked, isEnough: ranking.isEnough }
	});
	return { diagnosis, ranking, decision, words: decision.because.join(' ') };
}

const cases: [string, Tried, Evidence[]][] = [
	[
		'calcium of 20 that a laboratory finds in the same cup',
		'calcium',
		[tested('calcium', 20, 18), laboratory('calcium', 21, 4), solution('calcium', 413, 415, 18)]
	],
	[
		'magnesium in mmol/L typed as mg/L throughout',
		'magnesium',
		[
			tested('magnesium', 58, 1),
			laboratory('magnesium', 58.2, 0.8),
			solution('magnesium', 63.5, 63.4, 2)
		]
	],
	[
		'the same by a laboratory that claims less',
		'magnesium',
		[
			tested('magnesium', 58, 1),
			laboratory('magnesium', 58.2, 5),
			solution('magnesium', 63.5, 63.4, 2)
		]
	],
	[
		'alkalinity of about nothing',
		'alkalinity',
		[
			tested('alkalinity', 0.4, 0.3),
			laboratory('alkalinity', 0.4, 0.1),
			solution('alkalinity', 8, 8, 0.5)
		]
	]
];

describe('water of another cup', () => {
	it.each(cases)(
		'%s says nothing of the tank: a fresh sample is asked for',
		(_, analyte, evidence) => {
			const { diagnosis, ranking, decision, words } = adviceOn(analyte, evidence);
			const { mean, sd } = priors[analyte];
			expect(Math.abs(diagnosis.trueValue.mean - mean)).toBeLessThan(0.15 * sd);
			expect(diagnosis.trueValue.standardDeviation).toBeGreaterThan(0.95 * sd);
			expect(decision.verdict).toBe('check');
			expect(decision.check).toMatchObject({ kind: 'checks', checks: ['freshSample'] });
			expect(ranking.isEnough).toBe(false);
			expect(ranking.next).toEqual(decision.check);
			expect(decision.isVerified).toBe(false);
			expect(words).toContain('fresh sample');
			expect(words).not.toMatch(/water holds|Within your band|speaks for it|same water again/);
		}
	);

	it('a fresh sample that reads as tanks do settles it, and what it reads is believed', () => {
		const [, analyte, evidence] = cases[0]!;
		const { diagnosis, decision } = adviceOn(analyte, [
			...evidence,
			tested('calcium', 431, 18, 'freshSample')
		]);
		expect(diagnosis.isBeyondAnyTank).toBe(false);
		expect(diagnosis.isTankUnread).toBe(false);
		expect(Math.abs(diagnosis.trueValue.mean - 431)).toBeLessThan(8);
		expect(decision.verdict).toBe('leave');
	});

	it('a value that tanks do hold, however low, is none of these', () => {
		const { diagnosis } = adviceOn('alkalinity', [tested('alkalinity', 4.5, 0.5)]);
		expect(diagnosis.isBeyondAnyTank).toBe(false);
		expect(diagnosis.isTankUnread).toBe(false);
	});

	it('whatever is found in it and whoever finds it, the tank stays as wide as before and nothing is done', () => {
		const share = fc.double({ min: -0.02, max: 0.08, noNaN: true });
		fc.assert(
			fc.property(
				fc.constantFrom<Tried>('alkalinity', 'calcium', 'magnesium'),
				share,
				fc.double({ min: 0.001, max: 0.02, noNaN: true }),
				fc.boolean(),
				(analyte, holds, plusMinus, isAgreed) => {
					const { mean, sd } = priors[analyte];
					const [value, reach] = [holds * mean, plusMinus * mean];
					const evidence = [
						tested(analyte, value, reach),
						...(isAgreed ? [laboratory(analyte, value, reach)] : [])
					];
					const { diagnosis, ranking, decision } = adviceOn(analyte, evidence);
					expect(diagnosis.trueValue.standardDeviation).toBeGreaterThanOrEqual(0.8 * sd);
					expect(decision.verdict).toBe('check');
					expect(ranking.isEnough).toBe(false);
				}
			),
			{ numRuns: 12, seed: 20 }
		);
	}, 60_000);
});

describe('the content of another water, integrated out', () => {
	// Other water holds 0.03 ± 0.03 of what tanks do, 8.2 ± 2 (stated beside the figures); both vials the same.
	const other = fault('other', {
		target: 'water',
		scope: 'sampling',
		prior: 0.1,
		sizes: [{ weight: 1, mean: 0.03, sd: 0.03, of: 'otherWater' }]
	});
	const thinned = {
		target: 'gain',
		scope: 'lot',
		sizes: [{ weight: 1, mean: -0.9, sd: 0.03, of: 'share' }]
	} as const;
	const larger = [{ weight: 1, mean: 0.2, sd: 0.02, of: 'share' }] as const;
	const SCATTER = 0.2;
	const density = (x: number, mean: number, sd: number) =>
		Math.exp(-0.5 * ((x - mean) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
	const [first, again] = [0.5, 0.9];
	const claims = { expandedUncertainty: 2 * SCATTER, repeatabilitySd: SCATTER };
	const one = { ...test('a', first), reading: reading('a', first, claims) };
	const two = { ...test('b', again, 'repeatFull'), reading: reading('b', again, claims) };
	const explained = (evidence: Evidence[], faults: Parameters<typeof only>[0]) => {
		const { explanations } = diagnose(evidence, only(faults, { method: bareMethod }));
		return (id: string) => explanations.find((each) => each.id === id)!;
	};
	const STEP = 0.002;
	/** Sum over what the other water holds. */
	const overContent = (each: (holds: number) => number) => {
		let sum = 0;
		for (let holds = -1.5; holds < 2; holds += STEP)
			sum += density(holds, 0.03 * 8.2, 0.03 * 8.2) * STEP * each(holds);
		return sum;
	};

	it('one water in two vials has the odds of a plain sum, against a known share', () => {
		const of = explained([one, two], [other, fault('share', { ...thinned, prior: 0.1 })]);
		/** Both readings of so much; the second with or without a slip of its own (0.05, of size 1). */
		const both = (holds: number) =>
			density(first, holds, SCATTER) *
			(density(again, holds, SCATTER) +
				(0.05 / 0.95) * density(again, holds, Math.hypot(SCATTER, 1)));
		let ofTank = 0;
		for (let tank = 0; tank < 18; tank += 0.02)
			for (let share = -1; share < -0.7; share += STEP)
				ofTank +=
					density(tank, 8.2, 2) *
					0.02 *
					density(share, -0.9, 0.03) *
					STEP *
					both((1 + share) * tank);
		const expected = overContent(both) / ofTank;
		expect(Math.abs(of('other').probability / of('share').probability / expected - 1)).toBeLessThan(
			0.01
		);
	});
	it('together with a share of the titrant it is stretched by that', () => {
		const of = explained(
			[one],
			[other, fault('stretched', { ...thinned, sizes: larger, prior: 0.2 })]
		);
		let stretched = 0;
		for (let share = 0.08; share < 0.32; share += STEP)
			stretched +=
				density(share, 0.2, 0.02) *
				STEP *
				overContent((holds) => density(first, (1 + share) * holds, SCATTER));
		const expected =
			(0.4 * (0.2 / 0.8) * stretched) / overContent((holds) => density(first, holds, SCATTER));
		const found = of('other+stretched').probability / of('other').probability;
		expect(Math.abs(found / expected - 1)).toBeLessThan(0.01);
	});
	it('leaves the tank what it was', () => {
		const { trueValue } = explained([one, two], [other])('other');
		expect(trueValue.mean).toBeCloseTo(8.2, 6);
		expect(trueValue.standardUncertainty).toBeCloseTo(2, 6);
	});
});
