import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createBench, observe, reduce, ScenarioSchema, type Seen } from '../../../src/lib/bench';
import { houseKitOf, houseKits } from '../../../src/lib/kits';
import { conversionWords } from '../../../src/lib/ui/bench/conversion-words';
import { earFor } from '../../../src/lib/ui/bench/ear';
import {
	benchDeeds,
	deedOf,
	defaultKeys,
	isForFocus,
	remapped
} from '../../../src/lib/ui/bench/keys';
import { toldAtLook } from '../../../src/lib/ui/bench/look-told';
import { typedMarks } from '../../../src/lib/ui/bench/marks-form';
import {
	fillingInWords,
	placeInWords,
	sampleInWords
} from '../../../src/lib/ui/bench/place-in-words';
import { keyTravel, PlungerDrag } from '../../../src/lib/ui/bench/plunger';

const syringeKit = houseKitOf('house-syringe');

describe('a plunger under the hand', () => {
	const glass = { pxPerMl: 200, outward: 1, lowMl: 0, highMl: 1.2 } as const;
	test('goes as far as the hand, from wherever it is held, and stops at its ends', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0, max: 1.2, noNaN: true }),
				fc.integer({ min: -900, max: 900 }),
				fc.integer({ min: 0, max: 800 }),
				(positionMl, upPx, y) => {
					const drag = new PlungerDrag({ positionMl, y }, glass);
					drag.moveTo(y - upPx);
					expect(drag.positionMl).toBeCloseTo(
						Math.min(1.2, Math.max(0, positionMl + upPx / 200)),
						9
					);
				}
			)
		);
	});
	test('does not snap: a pixel is a two hundredth of a millilitre', () => {
		const drag = new PlungerDrag({ positionMl: 0.5, y: 100 }, glass);
		drag.moveTo(99);
		expect(drag.positionMl).toBeCloseTo(0.505, 9);
	});
	test('turned tip-up it is pushed upward', () => {
		const drag = new PlungerDrag({ positionMl: 1, y: 100 }, { ...glass, outward: -1 });
		drag.moveTo(80);
		expect(drag.positionMl).toBeCloseTo(0.9, 9);
	});
	test('a turn of direction is told once, with the place where it turned', () => {
		const drag = new PlungerDrag({ positionMl: 0, y: 300 }, glass);
		const turns = [200, 100, 80, 90, 120, 140].map((y) => drag.moveTo(y));
		expect(turns.filter((turn) => turn !== null)).toEqual([1.1]);
	});
	test('a tremor is no turn', () => {
		const drag = new PlungerDrag({ positionMl: 0, y: 300 }, glass);
		expect([200, 199, 201, 198, 200, 150].map((y) => drag.moveTo(y))).toEqual([
			null,
			null,
			null,
			null,
			null,
			null
		]);
	});
	test('keys move it by 0.01, 0.05 with Shift, 0.10 by page', () => {
		expect(keyTravel({ key: 'ArrowUp', shiftKey: false })).toBe(0.01);
		expect(keyTravel({ key: 'ArrowDown', shiftKey: true })).toBe(-0.05);
		expect(keyTravel({ key: 'PageUp', shiftKey: false })).toBe(0.1);
		expect(keyTravel({ key: 'a', shiftKey: false })).toBeNull();
	});
});

describe('keys', () => {
	test('each deed keeps a key of its own, however they are changed', () => {
		const change = fc.tuple(
			fc.constantFrom(...benchDeeds),
			fc.constantFrom('Space', 'KeyS', 'KeyX', 'Enter', 'KeyT', 'Digit1', 'Tab', 'Escape')
		);
		fc.assert(
			fc.property(fc.array(change, { maxLength: 12 }), (changes) => {
				const keys = changes.reduce((all, [deed, code]) => remapped(all, deed, code), defaultKeys);
				expect(new Set(Object.values(keys)).size).toBe(benchDeeds.length);
				expect(Object.values(keys)).not.toContain('Tab');
				expect(Object.values(keys)).not.toContain('Escape');
			})
		);
	});
	test('a key finds its deed', () => {
		expect(deedOf('KeyT', defaultKeys)).toBe('touchOff');
		expect(deedOf('KeyQ', defaultKeys)).toBeNull();
	});
	test('typing and other buttons keep their keys; the pad gives Space and Enter to the bench', () => {
		document.body.innerHTML =
			'<input id="i"><button id="b">x</button><button id="p" data-pad>y</button><p id="t">z</p>';
		const of = (id: string) => document.getElementById(id);
		expect(isForFocus(of('i'), 'KeyS')).toBe(true);
		expect(isForFocus(of('b'), 'Enter')).toBe(true);
		expect(isForFocus(of('b'), 'KeyS')).toBe(false);
		expect(isForFocus(of('p'), 'Enter')).toBe(false);
		expect(isForFocus(of('t'), 'Space')).toBe(false);
	});
});

describe('typed marks', () => {
	test('a syringe needs one of its marks; what is wrong stands at its own field', () => {
		const fields = (seal: string, line: string) => [
			{ key: 'sealMl' as const, text: seal },
			{ key: 'lineMl' as const, text: line }
		];
		expect(typedMarks(syringeKit, fields('0,42', '')).marks).toEqual({ sealMl: 0.42 });
		expect(typedMarks(syringeKit, fields('', '0.25')).marks).toEqual({ lineMl: 0.25 });
		expect(typedMarks(syringeKit, fields('0.42', '0.25')).marks).toEqual({
			sealMl: 0.42,
			lineMl: 0.25
		});
		expect(Object.keys(typedMarks(syringeKit, fields('', '')).problems)).toEqual(['sealMl']);
		const mixed = typedMarks(syringeKit, fields('0.42', 'x'));
		expect(mixed.marks).toBeNull();
		expect(Object.keys(mixed.problems)).toEqual(['lineMl']);
	});
	test('drops are whole', () => {
		const kit = houseKitOf('house-dropper');
		expect(typedMarks(kit, [{ key: 'drops', text: '13' }]).marks).toEqual({ drops: 13 });
		expect(typedMarks(kit, [{ key: 'drops', text: '13.5' }]).problems.drops).toContain('whole');
	});
});

describe('the leaflet in words', () => {
	test.each(houseKits.map((kit) => [kit.id, kit] as const))(
		'%s says how a value comes about',
		(_id, kit) => {
			const words = conversionWords(kit, null);
			expect(words.rows !== null || words.sentences.length > 0).toBe(true);
			if (kit.conversion.kind === 'rows')
				expect(words.rows?.cells).toHaveLength(kit.conversion.rows.length);
		}
	);
	test('for another sample volume it says by what to multiply', () => {
		const [nominal, other] = syringeKit.sample.volumes;
		const said = conversionWords(syringeKit, other!.id).sentences.join(' ');
		expect(said).toContain(`multiply the value by ${nominal!.volumeMl / other!.volumeMl}`);
		expect(conversionWords(syringeKit, nominal!.id).sentences.join(' ')).not.toContain('multiply');
	});
});

const truth = ScenarioSchema.shape.truth.parse({ water: { alkalinityDkh: 8 } });
function ready(): { bench: ReturnType<typeof createBench>; at: number } {
	let bench = createBench({ kit: syringeKit, truth, seed: 7 });
	let at = 0;
	const act = (action: Parameters<typeof reduce>[1]) =>
		(bench = reduce(bench, action, (at += 500)));
	act({ type: 'sample.draw', toMl: 6 });
	act({ type: 'sample.pour' });
	for (let i = 0; i < 3; i++) act({ type: 'reagent.dose', reagentId: 'indicator' });
	act({ type: 'tip.fit', firm: true });
	act({ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' });
	act({ type: 'eye.move', degrees: 0 });
	return { bench, at };
}

describe('words for what stands where', () => {
	test('name the printed lines and leave the number to the reader', () => {
		const { bench, at } = ready();
		const seen = observe(bench, at);
		expect(placeInWords(syringeKit, seen, 'seal')).toBe(
			'The leading edge of the seal stands on the long line marked 1.'
		);
		expect(placeInWords(syringeKit, seen, 'line')).toContain('the long line marked 0.8');
		expect(fillingInWords(syringeKit, seen)).not.toContain('No tip');
	});
	test('from above the same seal seems to stand higher', () => {
		const { bench, at } = ready();
		const seen = observe(reduce(bench, { type: 'eye.move', degrees: 30 }, at), at);
		expect(placeInWords(syringeKit, seen, 'seal')).not.toContain(
			'stands on the long line marked 1.'
		);
	});
	test('say that there is no tip, or that something hangs', () => {
		const { bench, at } = ready();
		const seen = observe(bench, at);
		const bare = { ...seen, delivery: { ...seen.delivery, tip: 'off', hangingMl: 0.015 } } as Seen;
		expect(fillingInWords(syringeKit, bare)).toContain('No tip is on.');
		expect(fillingInWords(syringeKit, bare)).toContain('something hangs at the tip');
	});
	test('tell a vial against its line', () => {
		const kit = houseKitOf('house-dropper');
		const { bench, at } = ready();
		const at7 = (levelMl: number) => {
			const seen = observe(bench, at);
			return sampleInWords(kit, { ...seen, vial: { ...seen.vial, levelMl } }, 7);
		};
		expect(at7(7.02)).toBe('The surface touches the line.');
		expect(at7(7.2)).toBe('The surface is a little above the line.');
		expect(at7(6.5)).toBe('The surface is clearly below the line.');
		expect(at7(2)).toBe('The surface is far below the line.');
	});
});

describe('a look', () => {
	test('tells whether drops fell, and is the same however often it is asked', () => {
		let { bench, at } = ready();
		const before = observe(bench, at);
		bench = reduce(bench, { type: 'flow.give', size: 'drop' }, (at += 500));
		const now = observe(bench, at + 1500);
		const told = toldAtLook(syringeKit, now, before, 7);
		expect(told).toContain('one drop has fallen');
		expect(toldAtLook(syringeKit, now, before, 7)).toBe(told);
		expect(toldAtLook(syringeKit, before, before, 7)).toContain('no drop has fallen');
	});
	test('holds no figure', () => {
		const { bench, at } = ready();
		expect(toldAtLook(syringeKit, observe(bench, at), null, 7)).not.toMatch(/\d/);
	});
});

describe('the ear', () => {
	test('hears equal sights alike, and no more than the sight', () => {
		const { bench, at } = ready();
		const hear = earFor(syringeKit);
		const seen = observe(bench, at);
		expect(hear(seen)).toEqual(hear(structuredClone(seen)));
		expect(hear({ ...seen, dropsFallen: 40 })).toEqual(hear(seen));
	});
	test('rises from the first colour to well past the end by about 67 units of 12 cents', () => {
		let { bench, at } = ready();
		const hear = earFor(syringeKit);
		const first = hear(observe(bench, at)).toneHz;
		bench = reduce(bench, { type: 'flow.start' }, at);
		bench = reduce(bench, { type: 'flow.stop' }, (at += 9000));
		bench = reduce(bench, { type: 'swirl.start' }, at);
		const seen = observe(bench, at + 6000);
		const cents = 1200 * Math.log2(hear(seen).toneHz / first);
		// The way of the colour, about 67 CIEDE2000 for this indicator by the project's own spectra.
		expect(cents).toBeGreaterThan(0.7 * 67 * 12);
		expect(cents).toBeLessThan(1.3 * 67 * 12);
	});
	test('the grace note dies with the streak', () => {
		let { bench, at } = ready();
		const hear = earFor(syringeKit);
		bench = reduce(bench, { type: 'flow.give', size: 'drop' }, at);
		const fresh = hear(observe(bench, (at += 800))).grace;
		const later = hear(observe(bench, (at += 6000))).grace;
		expect(fresh).toBeGreaterThan(0.5);
		expect(later).toBeLessThan(fresh / 2);
		expect(hear(observe(bench, at + 60000)).grace).toBe(0);
	});
});
