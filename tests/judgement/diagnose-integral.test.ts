import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/lib/judgement';
import { bareMethod, fault, only, reading, reference, test } from './diagnosed';

/**
 * The same posteriors by plain sums over grids, written without any of the room's code. What is taken
 * from there is stated: the prior of the tank 8.2 ± 2, portions of the tank 0.04 apart, a slip of its
 * own in every other test with probability 0.05 and a size of 1, a pair 0.4 as likely as by chance.
 */
const density = (x: number, mean: number, sd: number) =>
	Math.exp(-0.5 * ((x - mean) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
const steps = (from: number, to: number, count: number) =>
	Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 0.5)) / count);
const sumOver = (nodes: readonly number[], each: (node: number) => number) =>
	nodes.reduce((sum, node) => sum + each(node), 0);

const PAIR = 0.4;
const SLIP = 0.05 / 0.95;
const SCATTER = 0.2;
const odds = (prior: number) => prior / (1 - prior);
const claims = { expandedUncertainty: 0.4, repeatabilitySd: SCATTER };

const near = (found: number | undefined, expected: number, share: number) => {
	expect(expected).toBeGreaterThan(1e-4);
	expect(Math.abs((found ?? Number.NaN) / expected - 1)).toBeLessThan(share);
};

/** Tank, portion of it and what is in the vials: a fine sum over the tank's value. */
const tankNodes = steps(0.2, 16.2, 1600);
const TANK_STEP = 0.01;

describe('sizes that are normal, integrated out exactly', () => {
	// Two tests of one water; one fault of the hands in both, one slip in the first alone.
	const habit = fault('habit', {
		target: 'endPoint',
		scope: 'hands',
		prior: 0.1,
		sizes: [{ weight: 1, mean: 0.5, sd: 0.2, of: 'customaryUnit' }]
	});
	const slip = fault('slip', {
		target: 'constant',
		scope: 'oneTest',
		prior: 0.15,
		sizes: [
			{ weight: 0.7, mean: -1, sd: 0.4, of: 'customaryUnit' },
			{ weight: 0.3, mean: 0.8, sd: 0.3, of: 'customaryUnit' }
		]
	});
	const [y1, y2] = [7.4, 8.1];
	const { explanations, trueValue } = diagnose(
		[
			{ ...test('a', y1), reading: reading('a', y1, claims) },
			{ ...test('b', y2, 'repeatFull'), reading: reading('b', y2, claims) }
		],
		only([habit, slip], { method: bareMethod })
	);
	const of = (id: string) => explanations.find((each) => each.id === id);

	/** Likelihood of both readings, and its first moment in the tank's value. */
	function moments(hasHabit: boolean, slipSize: number | null, otherSlips: boolean) {
		const shared = hasHabit ? steps(-0.5, 1.5, 80) : [0];
		const [portions, other] = [
			steps(-0.16, 0.16, 16),
			otherSlips ? Math.hypot(SCATTER, 1) : SCATTER
		];
		const own =
			slipSize === null
				? [[0, SCATTER, 1]]
				: slip.sizes.map(({ weight, mean, sd }) => [mean, Math.hypot(SCATTER, sd), weight]);
		let whole = 0;
		let first = 0;
		for (const tank of tankNodes) {
			const prior = density(tank, 8.2, 2) * TANK_STEP;
			for (const portion of portions) {
				const p = prior * density(portion, 0, 0.04) * (0.32 / 16);
				for (const d of shared) {
					const q = hasHabit ? p * density(d, 0.5, 0.2) * (2 / 80) : p;
					const here = own.reduce(
						(sum, [mean, sd, weight]) =>
							sum + weight! * density(y1, tank + portion + d + mean!, sd!),
						0
					);
					const likelihood = q * here * density(y2, tank + portion + d, other);
					whole += likelihood;
					first += likelihood * tank;
				}
			}
		}
		return { whole, first };
	}
	const accounts = [
		{ id: 'none', odds: 1, parts: [moments(false, null, false), moments(false, null, true)] },
		{
			id: 'habit',
			odds: odds(0.1),
			parts: [moments(true, null, false), moments(true, null, true)]
		},
		{ id: 'slip', odds: odds(0.15), parts: [moments(false, 0, false), moments(false, 0, true)] },
		{
			id: 'habit+slip',
			odds: PAIR * odds(0.1) * odds(0.15),
			parts: [moments(true, 0, false), moments(true, 0, true)]
		}
	].map(({ id, odds: before, parts }) => ({
		id,
		weight: before * (parts[0]!.whole + SLIP * (parts[1]?.whole ?? 0)),
		first: before * (parts[0]!.first + SLIP * (parts[1]?.first ?? 0))
	}));
	const all = accounts.reduce((sum, { weight }) => sum + weight, 0);

	it.each(accounts)('$id has its share', ({ id, weight, first }) => {
		near(of(id)?.probability, weight / all, 2e-4);
		expect(Math.abs((of(id)?.trueValue.mean ?? 0) - first / weight)).toBeLessThan(2e-3);
	});

	it('the true value is the mixture of them', () => {
		const mean = accounts.reduce((sum, { first }) => sum + first, 0) / all;
		expect(Math.abs(trueValue.mean - mean)).toBeLessThan(2e-3);
	});
});

describe('factors, on their grid', () => {
	// The tank and a known solution of 8 ± 0.1 (sd) by one bottle, which may be off by a share.
	const lot = fault('lot', {
		target: 'gain',
		scope: 'lot',
		prior: 0.1,
		sizes: [
			{ weight: 0.8, mean: -0.06, sd: 0.025, of: 'share' },
			{ weight: 0.2, mean: 0.06, sd: 0.02, of: 'share' }
		]
	});
	const shareDensity = (share: number) =>
		lot.sizes.reduce((sum, { weight, mean, sd }) => sum + weight * density(share, mean, sd), 0);
	// A solution in salt water reads so much more than it holds; from the chemistry of its end.
	const matrix = 0.018;
	const matrixSd = 0.035;

	it('a single factor: its probability, and the tank under it', () => {
		const [y1, yR] = [7.3, 7.35];
		const { explanations } = diagnose(
			[
				{ ...test('a', y1), reading: reading('a', y1, claims) },
				reference('r', yR, { reading: reading('r', yR, claims), nominalExpandedUncertainty: 0.2 })
			],
			only([lot], { method: bareMethod })
		);
		const solutions = steps(7.5, 8.5, 100);
		function moments(shares: readonly number[], weightOf: (share: number) => number) {
			let whole = 0;
			let first = 0;
			for (const share of shares) {
				const factor = 1 + share;
				let slipless = 0;
				let slipped = 0;
				for (const content of solutions) {
					const p = density(content, 8, 0.1) * 0.01;
					slipless += p * density(yR, factor * content + matrix, Math.hypot(SCATTER, matrixSd));
					slipped += p * density(yR, factor * content + matrix, Math.hypot(SCATTER, matrixSd, 1));
				}
				const known = slipless + SLIP * slipped;
				for (const tank of tankNodes) {
					const sd = Math.hypot(SCATTER, factor * 0.04);
					const p =
						weightOf(share) *
						known *
						density(tank, 8.2, 2) *
						TANK_STEP *
						density(y1, factor * tank, sd);
					whole += p;
					first += p * tank;
				}
			}
			return { whole, first };
		}
		const none = moments([0], () => 1);
		const count = 240;
		const off = moments(steps(-0.24, 0.24, count), (share) => shareDensity(share) * (0.48 / count));
		const before = odds(0.1);
		near(
			explanations.find(({ id }) => id === 'lot')?.probability,
			(before * off.whole) / (none.whole + before * off.whole),
			1e-3
		);
		const found = explanations.find(({ id }) => id === 'lot')?.trueValue.mean ?? 0;
		expect(Math.abs(found - off.first / off.whole)).toBeLessThan(0.003);
	});

	it('two factors that touch different readings', () => {
		// First test with both, a fresh bottle without the one, other sample ware without the other.
		const ware = fault('ware', {
			target: 'gain',
			scope: 'sampleWare',
			prior: 0.08,
			sizes: [{ weight: 1, mean: 0.07, sd: 0.025, of: 'share' }]
		});
		const [y1, y2, y3] = [8.0, 8.6, 7.4];
		const { explanations } = diagnose(
			[
				{ ...test('a', y1), reading: reading('a', y1, claims) },
				{ ...test('b', y2, 'freshLot'), reading: reading('b', y2, claims) },
				{
					...test('c', y3, 'repeatFull', { sampleWare: 'other' }),
					reading: reading('c', y3, claims)
				}
			],
			only([lot, ware], { method: bareMethod })
		);
		const nodes = steps(2, 15, 650);
		const step = 0.02;
		function likelihood(lotFactor: number, wareFactor: number, other2 = 0, other3 = 0) {
			// A portion of the water differs from the tank by 0.04, which is next to nothing here.
			const by = [lotFactor * wareFactor, wareFactor, lotFactor] as const;
			return sumOver(
				nodes,
				(tank) =>
					density(tank, 8.2, Math.hypot(2, 0.04)) *
					step *
					density(y1, by[0] * tank, SCATTER) *
					density(y2, by[1] * tank, Math.hypot(SCATTER, other2)) *
					density(y3, by[2] * tank, Math.hypot(SCATTER, other3))
			);
		}
		const withSlips = (l: number, w: number) =>
			likelihood(l, w) + SLIP * (likelihood(l, w, 1) + likelihood(l, w, 0, 1));
		const lotShares = steps(-0.18, 0.18, 60);
		const wareShares = steps(-0.03, 0.17, 34);
		const [dLot, dWare] = [0.36 / 60, 0.2 / 34];
		const wareDensity = (share: number) => density(share, 0.07, 0.025);
		const weights = {
			none: withSlips(1, 1),
			lot: odds(0.1) * sumOver(lotShares, (s) => shareDensity(s) * dLot * withSlips(1 + s, 1)),
			ware: odds(0.08) * sumOver(wareShares, (s) => wareDensity(s) * dWare * withSlips(1, 1 + s)),
			'lot+ware':
				PAIR *
				odds(0.1) *
				odds(0.08) *
				sumOver(lotShares, (s) =>
					sumOver(
						wareShares,
						(t) => shareDensity(s) * dLot * wareDensity(t) * dWare * withSlips(1 + s, 1 + t)
					)
				)
		};
		const all = Object.values(weights).reduce((sum, each) => sum + each, 0);
		// What may have happened besides a pair is judged by its single faults: good to a few hundredths.
		for (const [id, weight] of Object.entries(weights))
			near(
				explanations.find((each) => each.id === id)?.probability,
				weight / all,
				id === 'lot+ware' ? 0.04 : 0.005
			);
	});
});

// Ordinary spreads are taken as shares of what was read; here they are factors on what is there.
it('ordinary spreads as shares of the reading err by less than four in a thousand of the value', () => {
	const y1 = 7.1;
	const { trueValue } = diagnose(
		[{ ...test('a', y1), reading: reading('a', y1, { ...claims, expandedUncertainty: 0.3 }) }],
		only([], { method: { ...bareMethod, titrantWareSd: 0.04 } })
	);
	let [whole, first, second] = [0, 0, 0];
	for (const tank of tankNodes)
		for (const share of steps(-0.2, 0.2, 80)) {
			const p =
				density(tank, 8.2, 2) * density(share, 0, 0.04) * density(y1, (1 + share) * tank, SCATTER);
			whole += p;
			first += p * tank;
			second += p * tank * tank;
		}
	const mean = first / whole;
	const sd = Math.sqrt(second / whole - mean ** 2);
	expect(Math.abs(trueValue.mean - mean)).toBeLessThan(0.004 * mean);
	expect(Math.abs(trueValue.standardDeviation / sd - 1)).toBeLessThan(0.02);
});
