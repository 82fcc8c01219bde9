import { describe, expect, it } from 'vitest';
import {
	advance,
	createBench,
	reduce,
	TruthSchema,
	type BenchAction,
	type BenchState
} from '../../src/lib/bench';
import type { Kit } from '../../src/lib/kits';
import { witness, witnessIdle } from '../../src/lib/procedure';
import { buretteKit, dropperKit, syringeKit } from './house';

const truth = TruthSchema.parse({ water: { alkalinityDkh: 8 } });

/** Deeds one after the other, and what an onlooker wrote down of each. */
function watched(kit: Kit, deeds: readonly BenchAction[], msApart = 1000) {
	let bench: BenchState = createBench({ kit, truth, seed: 2 });
	return deeds.map((action) => {
		const before = bench;
		bench = reduce(before, action, before.at + msApart);
		return { bench, events: witness(before, action, bench) };
	});
}
const lastOf = <T>(all: readonly T[]): T => all[all.length - 1]!;
const filled: BenchAction[] = [
	{ type: 'sample.draw', toMl: 6 },
	{ type: 'sample.pour' },
	{ type: 'tip.fit', firm: true },
	{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' },
	{ type: 'tip.wipe' }
];

describe('what is witnessed at the bench', () => {
	it('a syringe filled dry by the seal: seal at 1.00, line at 0.83', () => {
		const [event] = watched(syringeKit, filled)[3]!.events;
		expect(event).toMatchObject({ type: 'titrant.drawn', tip: 'fitted', sealMl: 1, tipAirMl: 0 });
		// Common practice, no source: with a tip of 0.15 to 0.20 mL the line stands at 0.80 to 0.85.
		expect(event).toHaveProperty('lineMl', expect.closeTo(0.83, 9));
	});

	it('the sample with what went along', () => {
		const rinsed: BenchAction[] = [
			{ type: 'ware.rinse', ware: 'sampler', with: 'purified' },
			{ type: 'ware.rinse', ware: 'vial', with: 'sample' },
			{ type: 'sample.draw', toMl: 0.2, nose: 'inAir' },
			{ type: 'sample.draw', toMl: 6 },
			{ type: 'sample.pour' }
		];
		const [, , , drawnOnly, poured] = watched(syringeKit, rinsed);
		expect(drawnOnly?.events).toEqual([]);
		expect(poured?.events).toMatchObject([{ type: 'sample.measured', volumeMl: 6, airMl: 0.2 }]);
		const [measured] = poured!.events;
		if (measured?.type !== 'sample.measured') throw new Error('no sample was measured');
		expect(measured.strayInMeasureMl).toBeGreaterThan(0.1);
		expect(measured.strayWaterMl).toBeGreaterThanOrEqual(measured.strayInMeasureMl!);
	});

	it('drops that fell while a hand pressed are there when it lets go, with their volume', () => {
		const watch = watched(
			syringeKit,
			[...filled, { type: 'flow.start' }, { type: 'flow.stop' }],
			1400
		);
		const { bench, events } = lastOf(watch);
		expect(bench.drops.length).toBeGreaterThan(0);
		expect(events).toMatchObject([{ type: 'titrant.fell', drops: bench.drops.length }]);
		const [fell] = events;
		expect(fell?.type === 'titrant.fell' ? fell.volumeMl : 0).toBeCloseTo(bench.inVialMl, 12);
	});

	it('a drop still in the air falls when time goes on, with no deed at all', () => {
		const watch = watched(syringeKit, [...filled, { type: 'flow.give', size: 'drop' }]);
		const { bench } = lastOf(watch);
		const later = advance(bench, bench.at + 5000);
		expect(witnessIdle(bench, later)).toMatchObject([{ type: 'titrant.fell', drops: 1 }]);
		expect(witnessIdle(later, advance(later, later.at + 5000))).toEqual([]);
	});

	it('what is touched off is a part of a drop, apart from what fell before', () => {
		const deeds: BenchAction[] = [
			...filled,
			{ type: 'flow.give', size: 'drop' },
			{ type: 'flow.give', size: 'half' },
			{ type: 'tip.touchOff' },
			{ type: 'tip.touchOff' }
		];
		const watch = watched(syringeKit, deeds);
		const [, half, touched, again] = watch.slice(-4);
		expect(half?.events).toMatchObject([{ type: 'titrant.fell', drops: 1 }]);
		const [part] = touched!.events;
		if (part?.type !== 'drop.touchedOff') throw new Error('nothing was touched off');
		expect(part.volumeMl! / syringeKit.delivery.dropMl).toBeGreaterThan(0.3);
		expect(part.volumeMl! / syringeKit.delivery.dropMl).toBeLessThan(0.7);
		// Nothing hangs there any more: nothing is written down.
		expect(again?.events).toEqual([]);
	});

	it('a swirl with how long it took, when it ends', () => {
		const watch = watched(syringeKit, [{ type: 'swirl.start' }, { type: 'swirl.stop' }], 2500);
		expect(watch[0]?.events).toEqual([]);
		expect(watch[1]?.events).toEqual([{ type: 'vial.swirled', seconds: 2.5 }]);
	});

	it('a tip put on a filled syringe, and one that was only seated anew', () => {
		const bare: BenchAction[] = [
			{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' },
			{ type: 'tip.fit', firm: true },
			{ type: 'tip.fit', firm: true }
		];
		const [, late, anew] = watched(syringeKit, bare);
		expect(late?.events).toEqual([{ type: 'tip.fitted', firm: true, liquidInside: true }]);
		expect(anew?.events).toEqual([{ type: 'tip.fitted', firm: true, liquidInside: false }]);
	});

	it('how a bottle was held when its drop fell', () => {
		const watch = watched(dropperKit, [
			{ type: 'sample.fillToLine', levelMl: 7 },
			{ type: 'dropper.tilt', degrees: 40 },
			{ type: 'flow.give', size: 'drop' },
			{ type: 'vial.look' }
		]);
		expect(lastOf(watch).events).toMatchObject([
			{ type: 'titrant.fell', drops: 1, tiltDegrees: 40, squeezedHard: false }
		]);
	});

	it('the level of a burette as its numeral, and the air in its jet', () => {
		const watch = watched(buretteKit, [
			{ type: 'burette.fill', levelMl: 0 },
			{ type: 'burette.runOut', volumeMl: 0.5 }
		]);
		const [full, run] = watch.map(({ events }) => events[0]);
		expect(full).toMatchObject({ type: 'titrant.drawn', levelMl: 0 });
		expect(full).toHaveProperty('tipAirMl', expect.closeTo(0.2, 9));
		expect(run).toMatchObject({ type: 'titrant.drawn', tipAirMl: 0 });
		expect(run).toHaveProperty('levelMl', expect.closeTo(0.5, 9));
	});

	it('how far the seal went back to draw in more on the way', () => {
		const watch = watched(
			syringeKit,
			[
				...filled,
				{ type: 'flow.give', size: 'stream' },
				{ type: 'eye.move', degrees: 0 },
				{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }
			],
			3000
		);
		const before = watch.at(-2)!.bench;
		const sealMl = before.delivery.by === 'syringe' ? before.delivery.syringe.sealMl : 0;
		const refill = lastOf(watch).events.find((event) => event.type === 'titrant.drawn');
		expect(sealMl).toBeLessThan(0.9);
		expect(refill).toHaveProperty('drawnAgainMl', expect.closeTo(1 - sealMl, 9));
	});

	it('that the titrant is spent, once', () => {
		const stream = (n: number): BenchAction[] =>
			Array.from({ length: n }, () => ({ type: 'flow.give', size: 'stream' }));
		const watch = watched(syringeKit, [...filled, ...stream(9)], 3000);
		const spent = watch.flatMap(({ events }) =>
			events.filter(({ type }) => type === 'titrant.spent')
		);
		expect(spent).toHaveLength(1);
	});

	it('nothing of what a deed says nothing about', () => {
		const quiet: BenchAction[] = [
			{ type: 'eye.move', degrees: 3 },
			{ type: 'vial.look' },
			{ type: 'sample.draw', toMl: 6 }
		];
		expect(watched(syringeKit, quiet).flatMap(({ events }) => events)).toEqual([]);
	});
});
