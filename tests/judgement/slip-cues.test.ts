import { describe, expect, it } from 'vitest';
import { advance, reduce, type BenchState, type Plan } from '../../src/lib/bench';
import { slipCues, slipWords, type SlipCue } from '../../src/lib/judgement';
import { valueFromMark, type Kit } from '../../src/lib/kits';
import { slipKinds, type SlipKind } from '../../src/lib/observation';
import { dropperKit, meanOver, syringeKit, truthOf, worked } from '../bench/house';

const cues: Record<SlipKind, SlipCue> = slipCues;

describe.each(slipKinds.map((kind) => ({ kind, cue: cues[kind] })))('$kind', ({ kind, cue }) => {
	it('has a usual size that orders it among the others', () => {
		expect(cue.usualPercent).toBeGreaterThan(0);
		expect(cue.usualPercent).toBeLessThanOrEqual(100);
	});
	it('says in whole sentences what to do, without blame', () => {
		expect(cue.remedy).toMatch(/^[A-Z“].*[.”]$/);
		for (const words of [cue.name, cue.remedy, cue.shownBy])
			expect(words).not.toMatch(/\b(wrongly|careless|careful(ly)?|fault|you should|bad)\b/i);
	});
	it('has its own words for each variant, and the common ones for any other', () => {
		expect(slipWords({ kind })).toEqual({ name: cue.name, remedy: cue.remedy });
		expect(slipWords({ kind, variant: 'no such' })).toEqual({
			name: cue.name,
			remedy: cue.remedy
		});
		for (const [variant, words] of Object.entries(cue.variants ?? {}))
			expect(slipWords({ kind, variant })).toEqual(words);
	});
});

/**
 * Judgement never asks the bench; so its word about which way a slip goes is held against what the
 * bench does with the same hands, water and chance.
 */
describe('the direction that a cue names is the one the reading takes on the bench', () => {
	const shift = (kit: Kit, plan: Partial<Plan>) =>
		meanOver(8, (seed) => {
			const truth = truthOf({ water: { alkalinityDkh: 7.4 + 0.17 * seed } });
			return worked(kit, plan, truth, seed).value - worked(kit, {}, truth, seed).value;
		});
	const done: [SlipKind, Kit, Partial<Plan>][] = [
		['tipFittedLate', syringeKit, { tipFitted: 'after' }],
		['tipLoose', syringeKit, { tipFitted: 'loose' }],
		['airExpelled', syringeKit, { airDrawnMl: 0.05 }],
		['hangingAtStart', syringeKit, { wiped: false }],
		['dropperTilted', dropperKit, { tiltDegrees: 45 }],
		['dropperSqueezed', dropperKit, { squeezedHard: true }],
		['stoppedAtFlash', syringeKit, { dropsPastEnd: -3 }],
		['overshot', syringeKit, { dropsPastEnd: 2 }],
		['chasedColour', syringeKit, { chaseRounds: 24 }]
	];
	it.each(done)('%s', (kind, kit, plan) => {
		const moved = shift(kit, plan);
		expect(Math.abs(moved)).toBeGreaterThan(0.02);
		expect(Math.sign(moved)).toBe(cues[kind].direction);
	});
	it('hangingAtEnd: half a drop pushed out and left there is counted, and not in the vial', () => {
		const { state } = worked(syringeKit);
		const pushed = reduce(state, { type: 'flow.give', size: 'half' }, state.at + 500);
		const after = advance(pushed, state.at + 5000);
		const valueOf = ({ delivery }: BenchState) =>
			delivery.by === 'syringe'
				? valueFromMark(syringeKit, { markMl: delivery.syringe.sealMl }).value
				: Number.NaN;
		expect(after.inVialMl).toBe(state.inVialMl);
		expect(Math.sign(valueOf(after) - valueOf(state))).toBe(cues.hangingAtEnd.direction);
	});
	it('every slip that goes one way only is held against the bench', () => {
		const oneWay = slipKinds.filter((kind) => cues[kind].direction !== 0);
		expect([...done.map(([kind]) => kind), 'hangingAtEnd'].sort()).toEqual([...oneWay].sort());
	});
});
