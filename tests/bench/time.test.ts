import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { advance, observe, reduce, type BenchAction, type BenchState } from '../../src/lib/bench';
import { benchWith, buretteKit, dropperKit, syringeKit, truthOf } from './house';

const ready: BenchAction[] = [
	{ type: 'sample.draw', toMl: 6 },
	{ type: 'sample.pour' },
	{ type: 'reagent.dose', reagentId: 'indicator' },
	{ type: 'tip.fit', firm: true },
	{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }
];
const anyDeed = fc.constantFrom<BenchAction>(
	{ type: 'flow.start' },
	{ type: 'flow.stop' },
	{ type: 'flow.give', size: 'drop' },
	{ type: 'flow.give', size: 'half' },
	{ type: 'flow.give', size: 'stream' },
	{ type: 'swirl.start' },
	{ type: 'swirl.stop' },
	{ type: 'tip.touchOff' },
	{ type: 'tip.wipe' },
	{ type: 'tip.fit', firm: false },
	{ type: 'titrant.draw', sealMl: 0.9, end: 'inTitrant' },
	{ type: 'titrant.draw', sealMl: 1.05, end: 'inAir' },
	{ type: 'titrant.purge', sealMl: 0.8 },
	{ type: 'reagent.dose', reagentId: 'indicator' },
	{ type: 'lamp.set', lamp: 'red' },
	{ type: 'eye.move', degrees: 3 },
	{ type: 'comparison.make' }
);
const script = fc.array(fc.record({ waitMs: fc.integer({ min: 0, max: 9000 }), deed: anyDeed }), {
	minLength: 1,
	maxLength: 18
});
type Script = { waitMs: number; deed: BenchAction }[];

function play(start: BenchState, deeds: Script, between: (state: BenchState) => BenchState) {
	let state = start;
	let at = state.at;
	for (const { waitMs, deed } of deeds) {
		at += waitMs;
		state = reduce(between(state), deed, at);
	}
	return advance(state, at + 5000);
}
const started = (truth = truthOf()) =>
	ready.reduce((state, deed) => reduce(state, deed, state.at + 300), benchWith(syringeKit, truth));

const waters = [
	truthOf(),
	truthOf({ water: { carbonateGrainsMg: 1 } }),
	truthOf({ ware: { stickyJumpMl: 0.06 } })
];

describe('time', () => {
	it.each(waters)('gives the same to the last digit for the same seed and deeds (%#)', (truth) => {
		fc.assert(
			fc.property(script, (deeds) => {
				const one = play(started(truth), deeds, (state) => state);
				const two = play(started(truth), deeds, (state) => state);
				expect(two).toStrictEqual(one);
			}),
			{ numRuns: 25 }
		);
	});

	it.each(waters)('looked at in any frames, changes nothing (%#)', (truth) => {
		fc.assert(
			fc.property(script, fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (deeds, frames) => {
				const plain = play(started(truth), deeds, (state) => state);
				let n = 0;
				const looked = play(started(truth), deeds, (state) => {
					observe(state, state.at + 1000 * (frames[n++ % Math.max(1, frames.length)] ?? 0));
					return state;
				});
				expect(looked).toStrictEqual(plain);
			}),
			{ numRuns: 25 }
		);
	});

	it.each(waters)('cut into frames, runs to the same state to the last digit (%#)', (truth) => {
		fc.assert(
			fc.property(script, fc.integer({ min: 1, max: 40 }), (deeds, cuts) => {
				let at = started(truth).at;
				const ends = deeds.map(({ waitMs }) => (at += waitMs));
				const plain = play(started(truth), deeds, (state) => state);
				let n = 0;
				const cut = play(started(truth), deeds, (state) => {
					const end = ends[n++] ?? state.at;
					let each = state;
					const from = state.at;
					for (let i = 1; i < cuts; i++) each = advance(each, from + ((end - from) * i) / cuts);
					return each;
				});
				expect(cut).toStrictEqual(plain);
			}),
			{ numRuns: 25 }
		);
	});

	it('is not disturbed by an eye or a lamp that moves while a drop swells and falls', () => {
		const flowing = reduce(started(), { type: 'flow.start' }, 3000);
		const still = advance(flowing, 6000);
		let busy = flowing;
		for (let at = 3010; at < 6000; at += 7)
			busy = reduce(busy, { type: 'eye.move', degrees: at % 9 }, at);
		busy = advance(reduce(busy, { type: 'eye.move', degrees: still.eyeDegrees }, 5999), 6000);
		expect(busy).toStrictEqual(still);
	});

	it('does not run backwards', () => {
		const state = advance(started(), 5000);
		expect(() => advance(state, 4999)).toThrow(/at must not be before the bench's own time 5000/);
		expect(() => reduce(state, { type: 'swirl.start' }, 10)).toThrow(RangeError);
		expect(() => advance(state, Number.NaN)).toThrow(RangeError);
	});
});

describe('a deed that cannot be', () => {
	it('on glass that the kit does not have is refused by name', () => {
		const dropper = benchWith(dropperKit);
		expect(() => reduce(dropper, { type: 'tip.fit', firm: true }, 1)).toThrow(
			'tip.fit needs a syringe; this kit delivers by dropper'
		);
		expect(() => reduce(benchWith(buretteKit), { type: 'dropper.tilt', degrees: 9 }, 1)).toThrow(
			'dropper.tilt needs a dropper; this kit delivers by burette'
		);
	});

	it('with an unknown id or no number is refused by name of the field', () => {
		const bench = benchWith(syringeKit);
		expect(() => reduce(bench, { type: 'reagent.dose', reagentId: 'base' }, 1)).toThrow(
			'reagentId must be one of indicator; found base'
		);
		expect(() => reduce(bench, { type: 'sample.choose', volumeId: 'huge' }, 1)).toThrow(
			'volumeId must be one of normal, fine; found huge'
		);
		expect(() => reduce(bench, { type: 'sample.draw', toMl: Number.NaN }, 1)).toThrow(
			'toMl of sample.draw must be a number; found NaN'
		);
	});

	it('past the end of the glass is held by the glass', () => {
		const far = reduce(
			benchWith(syringeKit),
			{ type: 'titrant.draw', sealMl: 99, end: 'inTitrant' },
			1
		);
		const seen = observe(far, 1).delivery;
		expect(seen.by === 'syringe' && seen.sealMl).toBe(1.24);
	});
});
