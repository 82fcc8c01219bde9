import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	createBench,
	endMovedBy,
	ledgerOf,
	PlanSchema,
	runHands,
	type Ledger,
	type Plan
} from '../../src/lib/bench';
import { houseKits, valueFromMark, type Kit } from '../../src/lib/kits';
import type { SlipKind } from '../../src/lib/observation';
import { lineOf, slipOf, truthOf } from './house';

/** Slips that a log may show of one stop, whatever the stop. */
const stopSlips: readonly SlipKind[] = ['stoppedAtFlash', 'overshot', 'chasedColour', 'wrongLight'];

function stopped(kit: Kit, plan: Partial<Plan>, kinds: readonly SlipKind[], seed = 1) {
	const run = runHands(createBench({ kit, truth: truthOf(), seed }), PlanSchema.parse(plan));
	const { sealMl, lineMl, levelMl, drops } = run.marks;
	const { value } = valueFromMark(kit, {
		markMl: sealMl ?? lineMl ?? levelMl,
		drops,
		refilledMl: run.refilledMl,
		sampleVolumeMl: run.sampleVolumeMl
	});
	const slips = kinds.map((kind) => slipOf(kind));
	return {
		state: run.state,
		slips,
		ledger: ledgerOf(run.state, { marks: run.marks, value }, slips)
	};
}
const amountOf = ({ lines }: Ledger, kind: SlipKind) =>
	lines.find(({ id }) => id === `slip-${kind}`)?.amount;

describe.each(houseKits.map((kit) => [kit.name, kit] as const))('the stop of %s', (_name, kit) => {
	it('past the end is never laid at a flash, short of it never at drops too many', () => {
		fc.assert(
			fc.property(
				fc.subarray([...stopSlips]),
				fc.integer({ min: -4, max: 5 }),
				fc.constantFrom(0, 400, 2000),
				fc.constantFrom(0, 3),
				fc.integer({ min: 1, max: 30 }),
				(kinds, dropsPastEnd, swirlMs, chaseRounds, seed) => {
					const plan = { dropsPastEnd, swirlMs, chaseRounds };
					const { ledger, state, slips } = stopped(kit, plan, kinds, seed);
					expect(amountOf(ledger, 'stoppedAtFlash') ?? 0).toBeLessThanOrEqual(1e-9);
					expect(amountOf(ledger, 'overshot') ?? 0).toBeGreaterThanOrEqual(-1e-9);
					expect(amountOf(ledger, 'chasedColour') ?? 0).toBeGreaterThanOrEqual(-1e-9);
					const moved = endMovedBy(state, slips);
					expect(moved.get('stoppedAtFlash') ?? 0).toBeLessThanOrEqual(1e-9);
					expect(moved.get('overshot') ?? 0).toBeGreaterThanOrEqual(-1e-9);
					const sum = ledger.lines.reduce((all, { amount }) => all + amount, 0);
					expect(sum).toBeCloseTo(ledger.reported - ledger.trueValue, 9);
				}
			),
			{ numRuns: 40, seed: 11 }
		);
	});

	it('three drops past an end that had not stood its time: the drops, or the eye, and the wait nothing', () => {
		const late = { dropsPastEnd: 3 };
		const both = stopped(kit, late, ['stoppedAtFlash', 'overshot']).ledger;
		const alone = stopped(kit, late, ['stoppedAtFlash']).ledger;
		expect(lineOf(both, 'slip-overshot')).toBeGreaterThan(0);
		expect(lineOf(both, 'slip-stoppedAtFlash')).toBe(0);
		expect(alone.lines).toContainEqual(expect.objectContaining({ kind: 'eye', stop: 'late' }));
		expect(lineOf(alone, 'eye')).toBeCloseTo(lineOf(both, 'slip-overshot'), 9);
		expect(lineOf(alone, 'slip-stoppedAtFlash')).toBe(0);
	});

	it('three drops short of it: the flash, whatever else was seen', () => {
		const { ledger } = stopped(kit, { dropsPastEnd: -3 }, ['overshot', 'stoppedAtFlash']);
		expect(lineOf(ledger, 'slip-stoppedAtFlash')).toBeLessThan(0);
		expect(lineOf(ledger, 'slip-overshot')).toBe(0);
		expect(ledger.lines.map(({ id }) => id)).not.toContain('eye');
	});
});
