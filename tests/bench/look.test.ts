import { describe, expect, it } from 'vitest';
import {
	benchReadyFor,
	cleanEnd,
	cleanPlan,
	colourDistance,
	colourPathOf,
	hueName,
	kindOf,
	lookWords,
	NOTICEABLE,
	observe,
	reduce,
	shownColour,
	titrantPortion,
	type BenchState,
	type Seen
} from '../../src/lib/bench';
import { addAcid } from '../../src/lib/chemistry';
import { houseCalciumKit, houseHardnessKit, type Kit } from '../../src/lib/kits';
import { acidIn, asContents, benchWith, dropperKit, syringeKit, truthOf, worked } from './house';

/** The same vial with its bulk in another colour, and nothing unmixed. */
const inColour = (seen: Seen, bulk: Seen['vial']['bulk']): Seen => ({
	...seen,
	vial: { ...seen.vial, bulk, plume: bulk, plumeShare: 0 }
});
const seenOf = (state: BenchState) => observe(state, state.at);
const start = () => benchReadyFor(benchWith(syringeKit), 'titrate', cleanPlan);

/** What a clean titration looks like after each of its drops. */
function wayToTheEnd(): Seen[] {
	const vessel = acidIn(start().contents);
	const seen = seenOf(start());
	return Array.from({ length: 30 }, (_, drop) =>
		inColour(
			seen,
			shownColour(
				syringeKit,
				asContents(addAcid(vessel, { volumeMl: 0.021 * drop, molPerL: 0.034 })),
				'white'
			)
		)
	);
}

describe('a look in words', () => {
	it('names a colour at first, then only the difference', () => {
		const seen = seenOf(start());
		expect(lookWords(seen, null, 1)).toBe('teal');
		expect(lookWords(seen, seen, 1)).toBe('same as before');
	});

	it('says clearly redder across the end, and clearly bluer the other way', () => {
		const way = wayToTheEnd();
		const [early, late] = [way[20], way[28]] as [Seen, Seen];
		expect(lookWords(late, early, 1)).toContain('clearly redder than before');
		expect(lookWords(early, late, 1)).toContain('clearly bluer than before');
	});

	it('does not tell what no eye would notice', () => {
		const seen = seenOf(start());
		const { r, g, b } = seen.vial.bulk;
		const near = inColour(seen, { r: r + 0.002, g, b });
		expect(colourDistance(near.vial.bulk, seen.vial.bulk)).toBeLessThan(NOTICEABLE / 4);
		expect(lookWords(near, inColour(seen, seen.vial.bulk), 1)).toBe('same as before');
	});

	it('gives the same answer however often it is asked, so asking cannot average it away', () => {
		const way = wayToTheEnd();
		const [one, other] = [way[24], way[25]] as [Seen, Seen];
		const asked = new Set(Array.from({ length: 50 }, () => lookWords(other, one, 4)));
		expect(asked.size).toBe(1);
	});

	it('wavers from run to run where a difference is barely to be seen', () => {
		const seen = seenOf(start());
		const { r, g, b } = seen.vial.bulk;
		let step = 0;
		while (colourDistance({ r: r + step, g, b }, seen.vial.bulk) < NOTICEABLE) step += 0.001;
		const barely = inColour(seen, { r: r + step, g, b });
		const said = new Set(
			Array.from({ length: 40 }, (_, seed) =>
				lookWords(barely, inColour(seen, seen.vial.bulk), seed)
			)
		);
		expect(said.size).toBe(2);
	});

	it('tells the comparison vial, and a vial past it, apart', () => {
		const made = reduce(start(), { type: 'comparison.make' }, start().at + 100);
		expect(lookWords(seenOf(made), null, 1)).toContain('clearly bluer than the comparison vial');
		const seen = seenOf(made);
		const alike = inColour(seen, seen.comparison ?? seen.vial.bulk);
		expect(lookWords(alike, null, 1)).toContain('like the comparison vial');
	});

	it('under the red lamp speaks of light and dark only', () => {
		const { state } = worked(syringeKit);
		const red = (bench: BenchState) =>
			seenOf(reduce(bench, { type: 'lamp.set', lamp: 'red' }, bench.at));
		const words = lookWords(red(state), red(start()), 1);
		expect(words).toContain('brighter than before');
		expect(words).not.toMatch(/redder|bluer|rose|teal/);
	});

	it('speaks of a streak, of haze and of grains when they are there', () => {
		const hazy = truthOf({ water: { haze: 0.5, carbonateGrainsMg: 2 } });
		const bench = benchReadyFor(benchWith(syringeKit, hazy), 'titrate', cleanPlan);
		const words = lookWords(seenOf(bench), null, 1);
		expect(words).toContain('cloudy');
		expect(words).toContain('grains at the bottom');
		const dripping = reduce(start(), { type: 'flow.give', size: 'stream' }, start().at + 100);
		expect(lookWords(observe(dripping, dripping.at + 1300), null, 1)).toMatch(/a streak/);
	});
});

describe('the way of the colours', () => {
	it.each([syringeKit, dropperKit])(
		'$name: only grows from drop to drop, by some 60 in all',
		(kit) => {
			const bench = benchReadyFor(benchWith(kit), 'titrate', cleanPlan);
			const vessel = acidIn(bench.contents);
			const pathAt = colourPathOf(kit, 'white');
			const acidMol = vessel.alkalinityMol * 1.06;
			const places = Array.from({ length: 40 }, (_, i) =>
				pathAt(
					shownColour(
						kit,
						asContents(
							addAcid(vessel, { volumeMl: (acidMol * 1000 * i) / 39 / 0.1, molPerL: 0.1 })
						),
						'white'
					)
				)
			);
			for (const [i, place] of places.entries())
				expect(place).toBeGreaterThanOrEqual((places[i - 1] ?? 0) - 0.3);
			expect(places[0]).toBeLessThan(2);
			expect(places[39]).toBeGreaterThan(50);
			expect(places[39]).toBeLessThan(80);
		}
	);

	it('under the red lamp is a way from dark to bright', () => {
		const { state } = worked(syringeKit);
		const pathAt = colourPathOf(syringeKit, 'red');
		const early = start().contents;
		if (!state.contents || !early) throw new Error('there is nothing in the vial');
		expect(pathAt(shownColour(syringeKit, state.contents, 'red'))).toBeGreaterThan(
			pathAt(shownColour(syringeKit, early, 'red')) + 10
		);
	});
});

// Too much dye makes the end of an acid kit deep: red, then orange (ISCC-NBS puts a hue angle of
// 40° among reddish oranges; from memory), never the name of a metal dye's start or of yellow.
it('calls a deep colour past the end of an acid kit red or orange, as it is shown', () => {
	const plan = { ...cleanPlan, extraIndicator: 3 };
	const vessel = acidIn(benchReadyFor(benchWith(syringeKit), 'titrate', plan).contents);
	const names = [1.06, 1.2, 1.6].map((share) => {
		const portion = { volumeMl: vessel.alkalinityMol * 1000 * 10 * share, molPerL: 0.1 };
		return hueName(shownColour(syringeKit, asContents(addAcid(vessel, portion)), 'white'));
	});
	expect(names).toEqual(['red', 'orange', 'orange']);
});

describe('a titration with EDTA', () => {
	/** Mixed and at rest, at shares of the titrant that a clean hand needs. */
	function coloursOf(kit: Kit, shares: readonly number[]) {
		const kind = kindOf(kit);
		const molPerL = kit.contents?.titrant.molPerL ?? Number.NaN;
		const { contents } = benchReadyFor(benchWith(kit), 'titrate', cleanPlan);
		const { endMl, passed } = cleanEnd(kit, truthOf().water);
		if (!contents || endMl === null) throw new Error('there is no end to see');
		const start = kind.withPassed(contents, passed);
		return shares.map((share) =>
			shownColour(kit, kind.titratedTo(start, titrantPortion(kit, share * endMl, molPerL)), 'white')
		);
	}
	const kits = [houseCalciumKit, houseHardnessKit];

	// Wine red, purple, blue: what textbooks call the colours of these dyes; common practice, no source.
	it.each(kits)('$name: is wine red, then purple for a drop or two, then blue', (kit) => {
		const names = coloursOf(kit, [0, 0.5, 0.9, 1.01, 1.1, 1.5]).map(hueName);
		expect(names).toEqual(['wine red', 'wine red', 'wine red', 'blue', 'blue', 'blue']);
		const between = coloursOf(
			kit,
			Array.from({ length: 50 }, (_, i) => 0.9 + 0.002 * i)
		).map(hueName);
		expect(between).toContain('purple');
		expect(new Set(between)).not.toContain('rose');
	});

	/** Names in the vial at so many drops beside the end, in a water. */
	function namesAlong(kit: Kit, truth: ReturnType<typeof truthOf>, drops: readonly number[]) {
		const kind = kindOf(kit);
		const molPerL = kit.contents?.titrant.molPerL ?? Number.NaN;
		const { contents } = benchReadyFor(benchWith(kit, truth), 'titrate', cleanPlan);
		const { endMl, passed } = cleanEnd(kit, truth.water);
		if (!contents || endMl === null) throw new Error('there is no end to see');
		const start = kind.withPassed(contents, passed);
		return drops.map((drop) => {
			const ml = endMl + drop * kit.delivery.dropMl;
			const there = kind.titratedTo(start, titrantPortion(kit, ml, molPerL));
			return hueName(shownColour(kit, there, 'white'));
		});
	}
	const half = { alkalinityDkh: 4, salinity: 17.5, calciumMgPerL: 212, magnesiumMgPerL: 655 };
	const waters = [{}, half, { temperatureC: 10 }, { calciumMgPerL: 330, magnesiumMgPerL: 1050 }];

	// Whoever goes by words stops at the first drop that is called blue; the ledger lets a stop pass that is
	// from half a drop short of the end to a drop and a half past it.
	it.each(kits.flatMap((kit) => waters.map((water) => [kit.name, water, kit] as const)))(
		'%s, %o: is called blue from the end on, never more than half a drop before it',
		(_name, water, kit) => {
			const truth = truthOf({ water });
			const before = Array.from({ length: 40 }, (_, i) => -0.65 - i / 4);
			for (const name of namesAlong(kit, truth, before)) expect(name).not.toBe('blue');
			const after = Array.from({ length: 20 }, (_, i) => 0.05 + i / 2);
			expect(new Set(namesAlong(kit, truth, after))).toEqual(new Set(['blue']));
		}
	);

	it('between purple and blue a metal indicator at pH 10 is violet blue', () => {
		const steps = Array.from({ length: 81 }, (_, i) => -3 + i / 20);
		const names = namesAlong(houseHardnessKit, truthOf(), steps);
		const inOrder = names.filter((name, i) => name !== names[i - 1]);
		expect(inOrder).toEqual(['wine red', 'purple', 'violet blue', 'blue']);
	});

	it.each(kits)('$name: each change on the way is bluer, and back it is redder', (kit) => {
		const seen = seenOf(benchReadyFor(benchWith(kit), 'titrate', cleanPlan));
		const [red, purple, blue] = coloursOf(kit, [0.5, 0.985, 1.05]).map((rgb) =>
			inColour(seen, rgb)
		);
		if (!red || !purple || !blue) throw new Error('three colours were expected');
		expect(lookWords(purple, red, 1)).toMatch(/bluer than before/);
		expect(lookWords(blue, purple, 1)).toMatch(/bluer than before/);
		expect(lookWords(purple, blue, 1)).toMatch(/redder than before/);
	});

	it.each(kits)('$name: its way only grows, by as much as that of an acid kit', (kit) => {
		const pathAt = colourPathOf(kit, 'white');
		const places = coloursOf(
			kit,
			Array.from({ length: 40 }, (_, i) => (i * 1.05) / 39)
		).map(pathAt);
		for (const [i, place] of places.entries())
			expect(place).toBeGreaterThanOrEqual((places[i - 1] ?? 0) - 0.5);
		expect(places.at(-1) ?? 0).toBeGreaterThan(40);
	});

	it('the cloud that base makes is told while there is no colour, and grows with the wait', () => {
		const based = benchReadyFor(benchWith(houseCalciumKit), 'dose', cleanPlan);
		const clear = seenOf(based);
		expect(lookWords(clear, null, 1)).toBe('clear');
		const dose = houseCalciumKit.reagents[0]?.dose;
		let bench = based;
		for (let drop = 0; drop < (dose?.amount ?? 0); drop++)
			bench = reduce(bench, { type: 'reagent.dose', reagentId: 'base' }, bench.at + 500);
		const cloudy = observe(bench, bench.at + 61_000);
		expect(lookWords(cloudy, null, 1)).toBe('a white cloud');
		expect(lookWords(cloudy, clear, 1)).toMatch(/^a white cloud$/);
		expect(lookWords(clear, cloudy, 1)).toBe('no longer cloudy');
		expect(cloudy.vial.haze).toBeGreaterThan(observe(bench, bench.at + 2000).vial.haze);
	});

	it('magnesium hydroxide makes the calcium kit’s vial cloudy; the other stays clear', () => {
		const words = (kit: Kit) =>
			lookWords(seenOf(benchReadyFor(benchWith(kit), 'titrate', cleanPlan)), null, 1);
		expect(words(houseCalciumKit)).toBe('wine red; cloudy');
		expect(words(houseHardnessKit)).toBe('wine red');
	});
});

it.each([syringeKit, dropperKit])(
	'$name: an indicator of acid goes from teal by blue and violet to mauve and rose',
	(kit) => {
		const vessel = acidIn(benchReadyFor(benchWith(kit), 'titrate', cleanPlan).contents);
		const names = Array.from({ length: 400 }, (_, i) => {
			const portion = {
				volumeMl: vessel.alkalinityMol * 1000 * 10 * (0.5 + i / 650),
				molPerL: 0.1
			};
			return hueName(shownColour(kit, asContents(addAcid(vessel, portion)), 'white'));
		});
		expect(names.filter((name, i) => name !== names[i - 1])).toEqual([
			'teal',
			'blue',
			'violet blue',
			'violet',
			'mauve',
			'rose'
		]);
	}
);

it.each([syringeKit, dropperKit])(
	'$name: an indicator of acid is not called by names of metal dyes',
	(kit) => {
		const { state } = worked(kit, { dropsPastEnd: 8 });
		const names = [start().contents, state.contents].map((contents) => {
			if (!contents) throw new Error('there is nothing in the vial');
			return hueName(shownColour(kit, contents, 'white'));
		});
		expect(names).toEqual(['teal', 'rose']);
	}
);
