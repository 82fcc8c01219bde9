import { describe, expect, it } from 'vitest';
import { houseBuretteKit, houseSyringeKit, type Kit } from '$lib/kits';
import type { WalkEvent } from '$lib/observation';
import { refilledMlIn, refillsIn, startFillingOf } from '$lib/procedure';
import { timeline } from './house';
import { upKit } from './tank-kits';

const start: WalkEvent = { type: 'titrant.drawn', sealMl: 1 };
const drop: WalkEvent = { type: 'titrant.fell', drops: 1 };
const spent: WalkEvent = { type: 'titrant.spent' };
const turned: WalkEvent = { type: 'colour.turned' };
const again = (event: object) => ({ type: 'titrant.drawn', ...event }) as WalkEvent;
const drawnIn = (events: WalkEvent[], kit: Kit = houseSyringeKit) =>
	refilledMlIn(kit, timeline(events));

describe('what a refill drew in', () => {
	it.each([
		['seal before and after', again({ before: { sealMl: 0.1 }, sealMl: 1 }), 0.9],
		['line before and after', again({ before: { lineMl: 0.05 }, lineMl: 0.83 }), 0.78],
		['said outright', again({ drawnAgainMl: 0.7, sealMl: 1 }), 0.7],
		['a hair backwards, by the eye', again({ before: { sealMl: 1 }, sealMl: 0.995 }), 0],
		['nothing before', again({ before: {}, sealMl: 1 }), null],
		['nothing after', again({ before: { sealMl: 0.1 } }), null]
	])('%s', (_name, event, ml) => {
		const found = drawnIn([start, drop, event]);
		if (ml === null) expect(found).toBeNull();
		else expect(found).toBeCloseTo(ml, 10);
	});

	it('is told the same way on a scale that runs up, and on a burette', () => {
		expect(
			drawnIn([again({ sealMl: 0 }), drop, again({ before: { sealMl: 0.9 }, sealMl: 0 })], upKit)
		).toBeCloseTo(0.9, 10);
		const events = [again({ levelMl: 0 }), drop, again({ before: { levelMl: 9 }, levelMl: 0.5 })];
		expect(drawnIn(events, houseBuretteKit)).toBeCloseTo(8.5, 10);
	});

	it('adds up over several', () => {
		const refill = again({ before: { sealMl: 0.2 }, sealMl: 1 });
		expect(drawnIn([start, drop, refill, drop, refill])).toBeCloseTo(1.6, 10);
	});

	it('begins at the end of the barrel where it was pushed home, and nobody noted more', () => {
		expect(drawnIn([start, drop, spent, again({ sealMl: 1 })])).toBeCloseTo(1, 10);
		expect(drawnIn([again({ sealMl: 0 }), drop, spent, again({ sealMl: 0 })], upKit)).toBeCloseTo(
			1,
			10
		);
		// What was noted goes before what follows from a word.
		expect(
			drawnIn([start, drop, spent, again({ before: { sealMl: 0.04 }, sealMl: 1 })])
		).toBeCloseTo(0.96, 10);
	});

	it('is not known by one mark before and the other after, and that is said', () => {
		for (const event of [
			again({ before: { lineMl: 0.1 }, sealMl: 1 }),
			again({ before: { sealMl: 0.27 }, lineMl: 0.83 })
		]) {
			const [refill] = refillsIn(houseSyringeKit, timeline([start, drop, event]));
			expect(refill).toMatchObject({ refilledMl: null, isMixed: true, isBackwards: false });
		}
	});

	it('is not known where it went backwards', () => {
		const events = timeline([start, drop, again({ before: { sealMl: 1 }, sealMl: 0.1 })]);
		expect(refillsIn(houseSyringeKit, events)).toMatchObject([
			{ refilledMl: null, isBackwards: true }
		]);
	});
});

describe('a filling is a start', () => {
	it('as long as nothing was used, however often', () => {
		const events = timeline([again({ sealMl: 1.17 }), start, again({ sealMl: 0.98 })]);
		expect(startFillingOf(events)?.event.sealMl).toBe(0.98);
		expect(refillsIn(houseSyringeKit, events)).toEqual([]);
	});

	it.each([
		['a drop', drop],
		['an empty barrel', spent],
		['a flash that was noted', turned]
	])('and after %s a refill, said or not', (_name, sign) => {
		const events = timeline([start, sign, again({ sealMl: 0.99 })]);
		expect(startFillingOf(events)?.event.sealMl).toBe(1);
		expect(refillsIn(houseSyringeKit, events)).toHaveLength(1);
	});

	it('unless it says itself what stood there before', () => {
		const events = timeline([start, again({ before: { sealMl: 0.2 }, sealMl: 1 })]);
		expect(startFillingOf(events)?.event).toEqual(start);
		expect(drawnIn([start, again({ before: { sealMl: 0.2 }, sealMl: 1 })])).toBeCloseTo(0.8, 10);
	});
});
