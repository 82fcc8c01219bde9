import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { houseBuretteKit, houseDropperKit, houseSyringeKit } from '$lib/kits';
import {
	dropCheckOf,
	dropCauseWords,
	dropsAgainstTravel,
	dropsCountedIn,
	fromOtherEnd,
	otherEndMlOf,
	valueOfTitration,
	type ValuedTitration
} from '$lib/procedure';
import { baseKit, tankKits, upKit } from './tank-kits';
import { Played } from './tank-played';
import { timeline } from './house';

const kit = houseSyringeKit;

describe('31 drops against 0.35 mL', () => {
	const check = dropsAgainstTravel(kit, { drops: 31, usedMl: 0.35 });

	it('differ by more than the uncertainty of both, worked by hand after JCGM 100:2008, eq. 10', () => {
		expect(check.dropsMl).toBeCloseTo(0.651, 10);
		expect(check.travelMl).toBe(0.35);
		expect(check.differenceMl).toBeCloseTo(-0.301, 10);
		// Drop 10 %: 0.0651; counting 2/√3 drops: 0.0242; two readings: √2 · 0.01/√3 = 0.0082;
		// scale 0.015/√3 of 0.35: 0.0030; root sum of squares 0.0700, times 2.
		expect(check.expandedUncertaintyMl).toBeCloseTo(0.14, 3);
		expect(check.agrees).toBe(false);
	});

	it('fit when the scale is read from its other end, and that comes first', () => {
		expect(check.causes[0]).toBe('otherEnd');
		expect(check.causes.slice(-2)).toEqual(['miscounted', 'dropSize']);
	});
});

describe('likely causes', () => {
	const causesOf = (drops: number, usedMl: number, of = kit) =>
		dropsAgainstTravel(of, { drops, usedMl }).causes;

	it.each([
		// 15 drops are 0.315 mL; with a tip put on late the seal travels its 0.17 mL more.
		['the tip went on late', 15, 0.485, 'tipFittedLate'],
		['seal and line were mixed', 15, 0.145, 'mixedMarks'],
		['a numeral was taken for its neighbour', 10, 0.31, 'wrongNumeral']
	])('%s', (_name, drops, usedMl, cause) => {
		const causes = causesOf(drops, usedMl);
		expect(causes).toContain(cause);
		expect(causes.indexOf('miscounted')).toBeGreaterThan(causes.indexOf(cause as never));
	});

	it('are none when the two agree, and only the vague ones when nothing fits', () => {
		expect(causesOf(24, 0.5)).toEqual([]);
		expect(causesOf(45, 0.4)).toEqual(['miscounted', 'dropSize']);
	});

	it('know no seal and tip on a burette', () => {
		const all = causesOf(60, 3.4, houseBuretteKit);
		expect(all).not.toContain('tipFittedLate');
		expect(all).not.toContain('wrongRim');
	});

	it('all have words', () => {
		for (const words of Object.values(dropCauseWords)) expect(words).toMatch(/^[a-z].*[a-z]$/);
	});
});

test('clean hands are told apart about once in twenty times at most', () => {
	// Hands as the budget takes them, drawn at random with a fixed seed: JCGM 101:2008, clause 5.9.
	let state = 12345;
	const even = () => (state = (state * 48271) % 2147483647) / 2147483647;
	const normal = () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
	let told = 0;
	const tries = 4000;
	for (let i = 0; i < tries; i++) {
		const fallen = 10 + Math.floor(even() * 30);
		const usedMl = fallen * kit.delivery.dropMl * (1 + 0.1 * normal());
		const drops = Math.max(0, fallen + Math.round((even() * 2 - 1) * 2));
		const half = () => (even() * 2 - 1) * 0.01;
		const check = dropsAgainstTravel(kit, { drops, usedMl: usedMl + half() + half() });
		if (!check.agrees) told++;
	}
	// 4.6 % beyond two standard uncertainties of a normal distribution, three standard errors either way.
	expect(told / tries).toBeGreaterThan(0.0356);
	expect(told / tries).toBeLessThan(0.0554);
});

test('whatever is given: numbers, and a difference that agrees exactly within its uncertainty', () => {
	fc.assert(
		fc.property(
			fc.constantFrom(...tankKits.map(([, each]) => each)),
			fc.nat(200),
			fc.double({ min: -1, max: 12, noNaN: true }),
			(each, drops, usedMl) => {
				const check = dropsAgainstTravel(each, { drops, usedMl });
				expect(check.differenceMl).toBeCloseTo(check.travelMl - check.dropsMl, 10);
				expect(check.expandedUncertaintyMl).toBeGreaterThan(0);
				expect(check.agrees).toBe(Math.abs(check.differenceMl) <= check.expandedUncertaintyMl);
				expect(check.causes.length === 0).toBe(check.agrees);
				expect(new Set(check.causes).size).toBe(check.causes.length);
			}
		)
	);
});

test('the owner’s own figure for the size of a drop takes the place of the project’s', () => {
	const own = { ...kit, assumed: { dropSd: 0.02 } };
	const [usual, known] = [kit, own].map((each) =>
		dropsAgainstTravel(each, { drops: 24, usedMl: 0.6 })
	);
	expect(usual?.agrees).toBe(true);
	expect(known?.agrees).toBe(false);
});

it.each([
	[{ drops: -1, usedMl: 0.3 }, /drops must be a count of 0 or more; found -1/],
	[{ drops: Number.NaN, usedMl: 0.3 }, /drops .* found NaN/],
	[{ drops: 3, usedMl: Number.NaN }, /usedMl must be a number; found NaN/]
])('bad numbers are named: %o', (counted, message) => {
	expect(() => dropsAgainstTravel(kit, counted)).toThrow(message);
});

describe('drops as they were noted', () => {
	it('are those typed with the mark, else those that fell; unknown where one has no number', () => {
		const fell = { type: 'titrant.fell', drops: 2 } as const;
		expect(dropsCountedIn(timeline([fell, fell]))).toBe(4);
		expect(dropsCountedIn(timeline([fell, { type: 'titrant.fell' }]))).toBeNull();
		expect(dropsCountedIn([])).toBeNull();
		const typed = { type: 'marks.read', marks: { sealMl: 0.5, drops: 7 } } as const;
		expect(dropsCountedIn(timeline([fell, { type: 'titrant.fell' }, typed]))).toBe(7);
	});

	it('are not compared where the value rests on them alone', () => {
		const played = new Played(houseDropperKit).to('titrate').drops(13).ended();
		played.say({ type: 'marks.read', marks: { drops: 40 } });
		const { titration } = played;
		const valued = valueOfTitration(titration, titration.kit);
		expect(dropCheckOf(titration.kit, titration.events, valued)).toBeNull();
	});
});

describe('the other end of a scale', () => {
	it.each([
		['down', kit],
		['up', upKit]
	])('is the capacity less the numeral (%s), and back again', (_name, each) => {
		expect(fromOtherEnd(each, 0.38)).toBeCloseTo(0.62, 10);
		expect(fromOtherEnd(each, fromOtherEnd(each, 0.27))).toBeCloseTo(0.27, 10);
	});

	it('makes of 0.65 used 0.35, on either scale and from any start', () => {
		const used = (each: typeof kit, endMl: number, usedMl: number) =>
			otherEndMlOf(each, { usedMl, endMl } as ValuedTitration);
		expect(used(kit, 0.35, 0.65)).toBeCloseTo(0.35, 10);
		expect(used(upKit, 0.65, 0.65)).toBeCloseTo(0.35, 10);
		// From 0.90: 0.35 read is 0.55 used; 0.65 would be 0.25.
		expect(used(kit, 0.35, 0.55)).toBeCloseTo(0.25, 10);
		// From 0.60 down to 0.30: the other end, 0.70, lies before the start.
		expect(used(kit, 0.3, 0.3)).toBeNull();
		expect(otherEndMlOf(houseDropperKit, { usedMl: 0.3 } as ValuedTitration)).toBeNull();
	});
});

test('a kit with two reagents is checked like any other', () => {
	expect(dropsAgainstTravel(baseKit, { drops: 24, usedMl: 0.5 }).agrees).toBe(true);
});

test('more drops than one filling holds, and less travel: it was filled again, and nobody noted it', () => {
	// 60 drops are 1.26 mL, of a syringe of 1 mL; the mark says 0.26.
	expect(dropsAgainstTravel(kit, { drops: 60, usedMl: 0.26 }).causes[0]).toBe('refillNotNoted');
	// With the refill noted, 1.26 mL are travelled.
	expect(dropsAgainstTravel(kit, { drops: 60, usedMl: 1.26 }).causes).toEqual([]);
	expect(dropsAgainstTravel(kit, { drops: 40, usedMl: 0.26 }).causes).not.toContain(
		'refillNotNoted'
	);
});
