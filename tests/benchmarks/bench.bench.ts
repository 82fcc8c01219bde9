import { bench, describe } from 'vitest';
import {
	accountOf,
	benchReadyFor,
	cleanPlan,
	createBench,
	ledgerOf,
	observe,
	PlanSchema,
	reduce,
	runHands,
	TruthSchema
} from '../../src/lib/bench';
import { mends } from '../../src/lib/bench/mend';
import { endOf, reportedOf } from '../../src/lib/bench/reported';
import { houseSyringeKit, valueFromMark } from '../../src/lib/kits';
import type { Slip, SlipKind } from '../../src/lib/observation';

const kinds: SlipKind[] = [
	'mixedMarks',
	'sampleOff',
	'indicatorOff',
	'tipFittedLate',
	'wareNotRinsed',
	'swirledOddly',
	'hangingAtStart',
	'overshot'
];
const slips = kinds.map((kind): Slip => ({
	kind,
	nature: 'handling',
	entryId: 'e',
	provisional: false
}));
const truth = TruthSchema.parse({ water: { alkalinityDkh: 8 } });
const start = createBench({ kit: houseSyringeKit, truth, seed: 1 });
const run = runHands(
	start,
	PlanSchema.parse({
		fillBy: 'line',
		sampleOffMl: -0.3,
		extraIndicator: 1,
		rinseSampler: 'purified',
		wiped: false,
		dropsPastEnd: 2
	})
);
const value = valueFromMark(houseSyringeKit, { markMl: run.marks.sealMl }).value;
const declared = { marks: run.marks, value };

/** Shares by their definition: every set of slips for every slip, each world's chemistry anew. */
function plainLedger(): number[] {
	const account = accountOf(run.state, declared, slips);
	const valueOf = (set: number) => {
		const world = kinds.reduce(
			(each, kind, i) => (set & (1 << i) ? each : mends[kind](each)),
			account
		);
		return reportedOf(world, endOf(world));
	};
	const n = kinds.length;
	const factorial = (m: number): number => (m <= 1 ? 1 : m * factorial(m - 1));
	return kinds.map((_, i) => {
		let share = 0;
		for (let set = 0; set < 1 << n; set++) {
			if (set & (1 << i)) continue;
			const size = kinds.filter((_kind, j) => set & (1 << j)).length;
			share +=
				((factorial(size) * factorial(n - size - 1)) / factorial(n)) *
				(valueOf(set | (1 << i)) - valueOf(set));
		}
		return share;
	});
}

// The summary prints how many times faster the first is than the second, in the same run.
describe('the ledger of eight slips', () => {
	bench(
		'chemistry kept over the slips it depends on',
		() => void ledgerOf(run.state, declared, slips),
		{ time: 500 }
	);
	bench('every world worked out anew', () => void plainLedger(), {
		time: 0,
		iterations: 5,
		warmupIterations: 1,
		warmupTime: 0
	});
});

describe('one frame', () => {
	const ready = benchReadyFor(start, 'titrate', cleanPlan);
	const flowing = reduce(ready, { type: 'flow.start' }, ready.at + 100);
	let ms = 0;
	bench('seen while drops fall', () => void observe(flowing, flowing.at + 1000 + (ms++ % 2000)));
	const still = run.state;
	bench('seen while the vial stands', () => void observe(still, still.at + (ms++ % 20000)));
});

describe('a whole test by simulated hands', () => {
	bench('syringe kit, 8 dKH', () => void runHands(start, cleanPlan), { time: 500 });
});
