import { describe, expect, it } from 'vitest';
import {
	accountOf,
	benchReadyFor,
	cleanPlan,
	ledgerOf,
	reduce,
	type Account,
	type BenchAction,
	type BenchState,
	type Ledger,
	type Plan
} from '../../src/lib/bench';
import { mends, scatter } from '../../src/lib/bench/mend';
import { endOf, reportedOf } from '../../src/lib/bench/reported';
import { shapleyShares } from '../../src/lib/bench/shapley';
import { slipKinds, type Slip } from '../../src/lib/observation';
import { valueFromMark, type Kit } from '../../src/lib/kits';
import {
	benchWith,
	buretteKit,
	dropperKit,
	hueOnTheWay,
	lineOf,
	slipOf,
	syringeKit,
	truthOf,
	valueOf,
	worked
} from './house';

type Different = NonNullable<Parameters<typeof truthOf>[0]>;
function ledgerFor(
	kit: Kit,
	plan: Partial<Plan>,
	slips: readonly Slip[],
	different: Different = {},
	seed = 1
): Ledger {
	const run = worked(kit, plan, truthOf(different), seed);
	return ledgerOf(run.state, { marks: run.marks, value: run.value }, slips);
}
const sumOf = (ledger: Ledger) => ledger.lines.reduce((sum, line) => sum + line.amount, 0);
const halfGraduation = new Map([
	[syringeKit, 0.01 * 16],
	[buretteKit, 0.025 * 2.3],
	[dropperKit, 0.3]
]);

function permutations(items: readonly number[]): number[][] {
	if (items.length === 0) return [[]];
	return items.flatMap((item) =>
		permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest])
	);
}

describe('Shapley shares', () => {
	it('of two proportional faults are a + ab/2 and b + ab/2', () => {
		// By hand: (1 + a)(1 + b) − 1 = a + b + ab, and the joint part is split evenly.
		const [a, b] = [0.08, -0.05];
		const value = (set: number) => (set & 1 ? 1 + a : 1) * (set & 2 ? 1 + b : 1);
		const shares = shapleyShares(value, 2);
		expect(shares[0]).toBeCloseTo(a + (a * b) / 2, 12);
		expect(shares[1]).toBeCloseTo(b + (a * b) / 2, 12);
	});

	it('of the glove game are 2/3, 1/6, 1/6', () => {
		// One left glove and two right ones, a pair is worth 1; the textbook example of the value.
		const value = (set: number) => (set & 1 && set & 6 ? 1 : 0);
		const shares = shapleyShares(value, 3);
		for (const [i, share] of [2 / 3, 1 / 6, 1 / 6].entries())
			expect(shares[i]).toBeCloseTo(share, 12);
	});

	it('of a cause that changes nothing is nothing; of none there are none', () => {
		expect(shapleyShares((set) => (set & 1 ? 5 : 2), 2)[1]).toBe(0);
		expect(shapleyShares(() => 3, 0)).toEqual([]);
		expect(() => shapleyShares(() => 0, 21)).toThrow(/players must be a count between 0 and 20/);
	});
});

const situations: [string, Kit, Partial<Plan>, Slip[], Different][] = [
	['nothing wrong', syringeKit, {}, [], {}],
	['nothing wrong, dropper', dropperKit, {}, [], {}],
	['nothing wrong, burette', buretteKit, {}, [], {}],
	['mixed marks', syringeKit, { fillBy: 'line' }, [slipOf('mixedMarks')], {}],
	['read by the line', syringeKit, { readBy: 'line' }, [slipOf('mixedMarks')], {}],
	['line twice', syringeKit, { fillBy: 'line', readBy: 'line' }, [], {}],
	['tip late', syringeKit, { tipFitted: 'after' }, [slipOf('tipFittedLate')], {}],
	['tip loose', syringeKit, { tipFitted: 'loose' }, [slipOf('tipLoose')], {}],
	['air', syringeKit, { airDrawnMl: 0.04 }, [slipOf('airExpelled')], {}],
	['hanging', syringeKit, { wiped: false }, [slipOf('hangingAtStart')], {}],
	['flash', syringeKit, { dropsPastEnd: -3 }, [slipOf('stoppedAtFlash')], {}],
	['overshot', syringeKit, { dropsPastEnd: 2 }, [slipOf('overshot')], {}],
	['chased', syringeKit, { chaseRounds: 8 }, [slipOf('chasedColour')], {}],
	['still', syringeKit, { swirlMs: 0 }, [slipOf('swirledOddly')], {}],
	['short sample', syringeKit, { sampleOffMl: -0.3 }, [slipOf('sampleOff')], {}],
	['wet sampler', syringeKit, { rinseSampler: 'purified' }, [slipOf('wareNotRinsed')], {}],
	['indicator', syringeKit, { extraIndicator: 3 }, [slipOf('indicatorOff')], {}],
	['reversed', syringeKit, { scaleReversed: true }, [slipOf('scaleReversed')], {}],
	['misread', syringeKit, { readOff: 0.1 }, [slipOf('misread')], {}],
	['tilted', dropperKit, { tiltDegrees: 45 }, [slipOf('dropperTilted')], {}],
	['miscounted', dropperKit, { readOff: 2 }, [slipOf('dropsMiscounted')], {}],
	['strong acid', syringeKit, {}, [], { titrant: { strengthFactor: 1.08 } }],
	['grains', syringeKit, {}, [], { water: { carbonateGrainsMg: 1.5 } }],
	['plain water', syringeKit, {}, [], { water: { matrix: 'purified', salinity: 0, ph: 8.2 } }],
	[
		'many at once',
		syringeKit,
		{ fillBy: 'line', dropsPastEnd: 2, sampleOffMl: -0.3, extraIndicator: 1 },
		[slipOf('mixedMarks'), slipOf('overshot'), slipOf('sampleOff'), slipOf('indicatorOff')],
		{ titrant: { strengthFactor: 0.95 } }
	]
];

describe.each(situations)('the ledger of %s', (_name, kit, plan, slips, different) => {
	it('adds up to reported − true, and leaves less than half a graduation unnamed', () => {
		for (let seed = 1; seed <= 3; seed++) {
			const ledger = ledgerFor(kit, plan, slips, different, seed);
			expect(sumOf(ledger)).toBeCloseTo(ledger.reported - ledger.trueValue, 9);
			expect(Math.abs(lineOf(ledger, 'unnamed'))).toBeLessThan(halfGraduation.get(kit) ?? 0);
		}
	});
});

describe('a line of the ledger', () => {
	it('for a single slip is the plain difference that the slip made', () => {
		const wrong = worked(syringeKit, { fillBy: 'line' });
		const right = worked(syringeKit);
		const ledger = ledgerFor(syringeKit, { fillBy: 'line' }, [slipOf('mixedMarks')]);
		expect(lineOf(ledger, 'slip-mixedMarks')).toBeCloseTo(wrong.value - right.value, 6);
		expect(lineOf(ledger, 'slip-mixedMarks')).toBeCloseTo(-0.17 * 16, 6);
	});

	it('is nothing for a slip that made no difference', () => {
		// Nothing hung at the tip of these hands, wiped or not; no air was there either.
		const ledger = ledgerFor(syringeKit, {}, [slipOf('hangingAtStart'), slipOf('airExpelled')]);
		expect(lineOf(ledger, 'slip-hangingAtStart')).toBe(0);
		expect(lineOf(ledger, 'slip-airExpelled')).toBe(0);
	});

	it('is not there for a slip that was noticed and put right', () => {
		const ledger = ledgerFor(syringeKit, {}, [slipOf('mixedMarks', { provisional: true })]);
		expect(ledger.lines.map((line) => line.id)).toEqual(['resolution', 'method', 'unnamed']);
	});

	it('is the mean over all orders of mending, each world worked out anew', () => {
		const kinds = ['mixedMarks', 'sampleOff', 'overshot'] as const;
		const slips = kinds.map((kind) => slipOf(kind));
		const run = worked(syringeKit, { fillBy: 'line', sampleOffMl: -0.5, dropsPastEnd: 2 });
		const declared = { marks: run.marks, value: run.value };
		const ledger = ledgerOf(run.state, declared, slips);
		// The fourth player, scatter, is mended in its turn like the rest.
		const players = [
			...kinds.map((kind) => mends[kind]),
			(each: Account): Account =>
				scatter
					.filter(({ kind }) => kind !== 'sampleOff' && kind !== 'mixedMarks')
					.reduce((world, { mend }) => mend(world), each)
		];
		const account = accountOf(run.state, declared, slips);
		const valueOf = (mended: readonly number[]) => {
			const world = mended.reduce((each, i) => players[i]?.(each) ?? each, account);
			return reportedOf(world, endOf(world));
		};
		const orders = permutations([0, 1, 2, 3]);
		for (const [i, kind] of kinds.entries()) {
			const mean =
				orders.reduce((sum, order) => {
					const before = order.slice(0, order.indexOf(i));
					return sum + valueOf(before) - valueOf([...before, i]);
				}, 0) / orders.length;
			expect(lineOf(ledger, `slip-${kind}`)).toBeCloseTo(mean, 6);
		}
	});

	it('does not depend on the order in which slips were made', () => {
		const slips = [slipOf('mixedMarks'), slipOf('sampleOff'), slipOf('overshot')];
		const plan: Partial<Plan> = { fillBy: 'line', sampleOffMl: -0.4, dropsPastEnd: 1 };
		const there = ledgerFor(syringeKit, plan, slips);
		const back = ledgerFor(syringeKit, plan, [...slips].reverse());
		for (const line of there.lines) expect(lineOf(back, line.id)).toBeCloseTo(line.amount, 9);
	});

	it('of two proportional faults shares out what they did together', () => {
		const ledger = ledgerFor(
			syringeKit,
			{ sampleOffMl: -0.6 },
			[slipOf('sampleOff')],
			{ titrant: { strengthFactor: 1 / 1.1 } },
			3
		);
		// By hand: titrant used is (1 + a)(1 + b) times 8.3 dKH of it, less the 0.3 of the table;
		// here 8.3 is the truth plus that and the half-drop is not in proportion.
		const [a, b] = [-0.1, 0.1];
		const base = 8.3 - 0.168;
		expect(lineOf(ledger, 'slip-sampleOff')).toBeCloseTo(base * (a + (a * b) / 2), 1);
		expect(lineOf(ledger, 'titrantStrength')).toBeCloseTo(base * (b + (a * b) / 2), 1);
	});

	it('keeps bottle and ware apart from hands', () => {
		const bottle = ledgerFor(syringeKit, {}, [], { titrant: { strengthFactor: 1.08 } });
		expect(lineOf(bottle, 'titrantStrength')).toBeCloseTo((8.3 - 0.168) * (1 / 1.08 - 1), 1);
		const ware = ledgerFor(syringeKit, { rinseVial: 'none' }, [], {
			ware: { vialLeftMl: 0.0005, vialLeftMeqPerL: 8000 }
		});
		expect(lineOf(ware, 'strayWater')).toBeCloseTo(1.87, 1);
		const drops = ledgerFor(dropperKit, {}, [], { ware: { dropFactor: 1.1 } });
		expect(lineOf(drops, 'dropSize')).toBeLessThan(-0.5);
		const stuck = ledgerFor(syringeKit, {}, [], { ware: { stickyJumpMl: 0.09 } }, 4);
		expect(lineOf(stuck, 'stickySeal')).toBeGreaterThan(0.2);
	});

	it('calls a late stop without a slip what the eye could tell', () => {
		const ledger = ledgerFor(syringeKit, { dropsPastEnd: 3 }, []);
		expect(lineOf(ledger, 'eye')).toBeGreaterThan(2.4 * 0.336);
		expect(Math.abs(lineOf(ledger, 'resolution'))).toBeLessThan(0.2);
	});

	it('leaves unnamed what no slip explains', () => {
		// Filled short by 0.1 and read as if it had been full; nobody found the slip.
		const ledger = ledgerFor(syringeKit, { fillOffMl: -0.1 }, []);
		expect(lineOf(ledger, 'unnamed')).toBeCloseTo(1.6, 1);
		expect(Math.abs(lineOf(ledger, 'method'))).toBeLessThan(0.05);
	});

	it('of the method is what plain water at the same hue does: 0.1 to 0.3 low', () => {
		const ledger = ledgerFor(syringeKit, {}, [], {
			water: { matrix: 'purified', salinity: 0, ph: 8.2 }
		});
		expect(lineOf(ledger, 'method')).toBeLessThan(-0.1);
		expect(lineOf(ledger, 'method')).toBeGreaterThan(-0.3);
	});
});

describe('a titration that ran out and was filled again', () => {
	/** Hands that empty the syringe, fill it again, and go on to the end. */
	function refilled(toMl: number) {
		const truth = truthOf({ water: { alkalinityDkh: 19 } });
		let { state } = worked(syringeKit, {}, truth);
		const give = (action: BenchAction, waitMs: number) => {
			state = reduce(state, action, state.at + waitMs);
		};
		give({ type: 'titrant.draw', sealMl: toMl, end: 'inTitrant' }, 500);
		give({ type: 'tip.wipe' }, 500);
		const hueDegrees = syringeKit.endPoint.hueDegrees ?? 0;
		while (state.contents && hueOnTheWay(state.contents) < hueDegrees) {
			give({ type: 'flow.give', size: 'drop' }, 800);
			give({ type: 'swirl.start' }, 800);
			give({ type: 'swirl.stop' }, 1500);
		}
		const { sealMl } = standing(state);
		const value = valueFromMark(syringeKit, { markMl: 0 }).value + 16 * (toMl - sealMl);
		return { state, truth, declared: { marks: { sealMl }, value } };
	}
	const standing = (state: BenchState) => {
		if (state.delivery.by !== 'syringe') throw new Error('a syringe was expected');
		return { sealMl: Number(state.delivery.syringe.sealMl.toFixed(2)) };
	};

	it.each([1, 0.95])('to %s reads the same water, and leaves nothing unnamed', (toMl) => {
		const { state, declared } = refilled(toMl);
		expect(state.refilledMl).toBeCloseTo(toMl, 6);
		const ledger = ledgerOf(state, declared, []);
		expect(sumOf(ledger)).toBeCloseTo(declared.value - 19, 9);
		expect(Math.abs(declared.value - 19)).toBeLessThan(0.5);
		expect(Math.abs(lineOf(ledger, 'unnamed'))).toBeLessThan(0.16);
		expect(Math.abs(lineOf(ledger, 'resolution'))).toBeLessThan(0.4);
	});
});

it('half a drop wiped off on the way is scatter, and many of them are not', () => {
	const wiped = (halves: number) => {
		let state = benchReadyFor(benchWith(syringeKit), 'titrate', cleanPlan);
		for (let i = 0; i < halves; i++) {
			state = reduce(state, { type: 'flow.give', size: 'half' }, state.at + 1000);
			state = reduce(state, { type: 'tip.wipe' }, state.at + 1000);
		}
		while (state.contents && hueOnTheWay(state.contents) < 340)
			state = reduce(state, { type: 'flow.give', size: 'drop' }, state.at + 1200);
		state = reduce(state, { type: 'vial.look' }, state.at + 1200);
		if (state.delivery.by !== 'syringe') throw new Error('a syringe was expected');
		const sealMl = Number(state.delivery.syringe.sealMl.toFixed(2));
		const { value } = valueFromMark(syringeKit, { markMl: sealMl });
		return ledgerOf(state, { marks: { sealMl }, value }, [slipOf('swirledOddly')]);
	};
	expect(Math.abs(lineOf(wiped(1), 'unnamed'))).toBeLessThan(0.01);
	// Eight halves are 0.084 mL, 1.3 dKH.
	expect(lineOf(wiped(8), 'unnamed')).toBeCloseTo(8 * 0.0105 * 16, 1);
});

it('any set of slips, made or not, gives a ledger that adds up', () => {
	for (const [i, kind] of slipKinds.entries()) {
		const other = slipKinds[(i * 7 + 3) % slipKinds.length] ?? 'misread';
		for (const kit of [syringeKit, dropperKit, buretteKit]) {
			const run = worked(kit);
			const ledger = ledgerOf(run.state, { marks: run.marks, value: valueOf(kit, run) }, [
				slipOf(kind),
				slipOf(other)
			]);
			expect(sumOf(ledger)).toBeCloseTo(ledger.reported - 8, 9);
		}
	}
});

it('a reading without the mark it needs is refused by name', () => {
	const run = worked(syringeKit);
	expect(() => ledgerOf(run.state, { marks: {}, value: 8 }, [])).toThrow(
		'marks must hold the seal that was read'
	);
});
