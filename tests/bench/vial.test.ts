import { describe, expect, it } from 'vitest';
import {
	advance,
	benchReadyFor,
	cleanPlan,
	colourDistance,
	factsOf,
	observe,
	reduce,
	type BenchAction,
	type BenchState
} from '../../src/lib/bench';
import { phOf } from '../../src/lib/chemistry';
import { acidIn, asContents, benchWith, hueOnTheWay, syringeKit, truthOf, worked } from './house';

const ready = (different?: Parameters<typeof truthOf>[0], seed = 1) =>
	benchReadyFor(benchWith(syringeKit, truthOf(different), seed), 'titrate', cleanPlan);
const after = (state: BenchState, waitMs: number, action: BenchAction) =>
	reduce(state, action, state.at + waitMs);
const swirled = (state: BenchState, ms: number) =>
	after(after(state, 100, { type: 'swirl.start' }), ms, { type: 'swirl.stop' });
const vesselOf = (state: BenchState) => acidIn(state.contents);
const hueOf = (state: BenchState) => hueOnTheWay(asContents(vesselOf(state)));
/** Ready, with so many drops given and mixed in. */
function dripped(drops: number, different?: Parameters<typeof truthOf>[0], seed = 1): BenchState {
	let state = ready(different, seed);
	for (let i = 0; i < drops; i++) state = after(state, 1200, { type: 'flow.give', size: 'drop' });
	return advance(state, state.at + 1200);
}

describe('a drop that falls', () => {
	const flash = () => {
		const before = dripped(23);
		const falling = after(swirled(before, 3000), 500, { type: 'flow.give', size: 'drop' });
		return { before, landedAt: falling.at + 1000, falling };
	};

	it('shows for seconds where it fell, and is gone in tenths when swirled', () => {
		const { falling, landedAt } = flash();
		const fresh = observe(falling, landedAt).vial;
		expect(fresh.plumeShare).toBeGreaterThan(0.8);
		expect(colourDistance(fresh.plume, fresh.bulk)).toBeGreaterThan(5);
		expect(observe(falling, landedAt + 3000).vial.plumeShare).toBeGreaterThan(0.4);
		const swirling = reduce(falling, { type: 'swirl.start' }, landedAt);
		expect(observe(swirling, landedAt + 1000).vial.plumeShare).toBeLessThan(0.08);
	});

	it('flashes towards the end colour before the bulk has it', () => {
		const { falling, landedAt } = flash();
		const { plume, bulk } = observe(falling, landedAt).vial;
		// Redder, less green, than what is round it.
		expect(plume.r - plume.g).toBeGreaterThan(bulk.r - bulk.g + 0.05);
	});

	it('is seen on its way for a tenth of a second', () => {
		const state = after(ready(), 500, { type: 'flow.start' });
		let seen = 0;
		for (let ms = 0; ms < 1400; ms += 5)
			if (observe(state, state.at + ms).fallingDrop !== null) seen += 5;
		// √(2 · 0.05 m / g) = 101 ms a drop; two drops fall in this time.
		expect(seen).toBeGreaterThan(180);
		expect(seen).toBeLessThan(225);
	});

	it('that is let go too early hangs, and goes in when it is touched off', () => {
		const half = after(after(ready(), 500, { type: 'flow.start' }), 300, { type: 'flow.stop' });
		const hanging = factsOf(half).hangingMl;
		expect(hanging).toBeCloseTo(0.0105, 6);
		expect(half.inVialMl).toBe(0);
		const wiped = after(half, 500, { type: 'tip.wipe' });
		expect(factsOf(wiped).hangingMl).toBe(0);
		expect(wiped.inVialMl).toBe(0);
		const touched = after(half, 500, { type: 'tip.touchOff' });
		expect(touched.inVialMl).toBeCloseTo(hanging, 12);
		expect(touched.drops).toHaveLength(1);
	});

	it('conserves titrant: what left the syringe is in the vial, in the air or at the tip', () => {
		const start = ready({}, 9);
		if (start.delivery.by !== 'syringe') throw new Error('a syringe was expected');
		let state = after(start, 500, { type: 'flow.start' });
		for (const ms of [300, 900, 1777, 4000, 6000]) {
			const now = advance(state, start.at + 500 + ms);
			if (now.delivery.by !== 'syringe') throw new Error('a syringe was expected');
			const inAir = now.falling.reduce((sum, drop) => sum + drop.volumeMl, 0);
			const left = start.delivery.syringe.liquidMl - now.delivery.syringe.liquidMl;
			expect(now.inVialMl + inAir + now.delivery.hangingMl).toBeCloseTo(left, 10);
		}
		state = after(state, 30000, { type: 'flow.stop' });
		expect(factsOf(state).isEmpty).toBe(true);
	});
});

describe('carbon dioxide', () => {
	it('leaves while the vial is swirled, so a true end fades back towards violet', () => {
		// A seed whose last drop overshoots little; pH climbs from about 4.3 (common practice, no source).
		const ends = Array.from({ length: 12 }, (_, i) => worked(syringeKit, {}, truthOf(), i).state);
		const nearest = ends.reduce((a, b) => (hueOf(a) < hueOf(b) ? a : b));
		const before = vesselOf(nearest);
		const swirledOn = swirled(nearest, 60000);
		const later = vesselOf(swirledOn);
		expect(phOf(later)).toBeGreaterThan(phOf(before) + 0.1);
		expect(hueOf(swirledOn)).toBeLessThan(hueOf(nearest) - 8);
		expect(later.alkalinityMol).toBe(before.alkalinityMol);
	});

	it('hardly leaves a vial that stands: the colour holds for half a minute', () => {
		const { state } = worked(syringeKit);
		const seenNow = observe(state, state.at).vial.bulk;
		const seenLater = observe(state, state.at + 30000).vial.bulk;
		expect(colourDistance(seenNow, seenLater)).toBeLessThan(1);
	});
});

describe('grains of carbonate', () => {
	const withGrains = () => dripped(28, { water: { carbonateGrainsMg: 3 } });

	it('bring the start colour back for minutes, and take up no more than they hold', () => {
		const state = withGrains();
		const start = vesselOf(state);
		const hues = [0, 60, 120, 180].map((seconds) =>
			hueOf(advance(state, state.at + seconds * 1000))
		);
		for (const [i, hue] of hues.entries()) if (i > 0) expect(hue).toBeLessThan(hues[i - 1] ?? 0);
		const done = advance(state, state.at + 3600_000);
		const gainedMol = vesselOf(done).alkalinityMol - start.alkalinityMol;
		expect(gainedMol).toBeCloseTo(2 * (state.grainsMol - done.grainsMol), 12);
		expect(done.grainsMol).toBeGreaterThanOrEqual(0);
	});

	it('lie still in water that is not acid', () => {
		const state = ready({ water: { carbonateGrainsMg: 3 } });
		expect(advance(state, state.at + 600_000).grainsMol).toBe(state.grainsMol);
	});
});

describe('light', () => {
	const seenUnder = (lamp: 'white' | 'red' | 'blue' | 'dim', drops: number) => {
		const state = after(dripped(drops), 100, { type: 'lamp.set', lamp });
		return observe(swirled(state, 2000), state.at + 3000).vial.bulk;
	};
	it('red goes from dark to bright at the end, in one hue', () => {
		const early = seenUnder('red', 18);
		const late = seenUnder('red', 28);
		expect(late.r).toBeGreaterThan(early.r + 0.1);
		expect(late.g).toBeLessThan(0.25);
	});
	it('blue or dim shows less of the difference than white', () => {
		const across = (lamp: 'white' | 'blue' | 'dim') =>
			colourDistance(seenUnder(lamp, 18), seenUnder(lamp, 28));
		expect(across('dim')).toBeLessThan(0.8 * across('white'));
		expect(across('blue')).toBeLessThan(0.8 * across('white'));
	});
	it('is that of the place until a lamp is switched on', () => {
		expect(observe(benchWith(syringeKit, truthOf({ light: 'blue' })), 0).lamp).toBe('blue');
	});
});

it('a bench made ready has its time and nothing under way', () => {
	const start = { ...benchWith(syringeKit), at: 70_000 };
	for (const part of ['measure', 'dose', 'fill', 'titrate', 'read'] as const) {
		const state = benchReadyFor(start, part, cleanPlan);
		expect(state.at).toBe(70_000);
		expect(state.flow).toBeNull();
		expect(state.falling).toEqual([]);
		for (const drop of state.drops) expect(drop.at).toBeLessThanOrEqual(70_000);
		expect(advance(state, 71_000).drops).toHaveLength(state.drops.length);
	}
});
