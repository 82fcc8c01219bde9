import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { houseDropperKit, houseSyringeKit, KitSchema, stepsOf, type Kit } from '$lib/kits';
import { spoken, spokenInstruction, tankInstruction, type TankInstruction } from '$lib/procedure';
import { anyKit, baseKit, calciumKit, hardnessKit, tankKits, upKit } from './tank-kits';
import { Played } from './tank-played';

const wordsIn = (text: string) => text.trim().split(/\s+/).length;

/** Every instruction of a whole walk, in order; of a repeat when asked. */
function allOf(kit: Kit, isRepeat = false): (TankInstruction & { spoken: string })[] {
	const played = new Played(kit);
	const walk = () => {
		const said: (TankInstruction & { spoken: string })[] = [];
		for (;;) {
			const instruction = tankInstruction(played.titration);
			if (!instruction) return said;
			said.push({ ...instruction, spoken: spokenInstruction(played.titration) ?? '' });
			if (instruction.step.kind === 'read')
				played.say({ type: 'marks.read', marks: { sealMl: 0.5, levelMl: 3, drops: 12 } });
			if (instruction.step.kind === 'titrate') played.say({ type: 'colour.stayed' });
			played.done();
		}
	};
	const first = walk();
	if (!isRepeat) return first;
	played.add({
		in: 'test',
		event: { type: 'titration.begun', titration: 1, purpose: 'repeat' }
	});
	return walk();
}

describe.each(tankKits)('the words beside the tank for %s', (_id, kit) => {
	it('go through its steps one by one, and stop with the walk', () => {
		const said = allOf(kit);
		expect(said.map(({ step }) => step)).toEqual(stepsOf(kit));
		expect(said.map(({ n }) => n)).toEqual(said.map((_each, i) => i + 1));
		expect(new Set(said.map(({ of }) => of))).toEqual(new Set([stepsOf(kit).length]));
	});

	it('are fewer when it is done again, and leave the trap out', () => {
		const [first, again] = [allOf(kit), allOf(kit, true)];
		for (const [i, { text, trap, isRepeat }] of again.entries()) {
			expect(isRepeat).toBe(true);
			expect(trap).toBeNull();
			expect(wordsIn(text)).toBeLessThanOrEqual(wordsIn(first[i]?.text ?? ''));
		}
		const sum = (said: readonly TankInstruction[]) =>
			said.reduce((total, { text }) => total + wordsIn(text), 0);
		expect(sum(again)).toBeLessThan(0.8 * sum(first));
	});
});

test('of any kit at most fourteen words are said at once, and none of them is a symbol', () => {
	fc.assert(
		fc.property(anyKit, fc.boolean(), (kit, isRepeat) => {
			expect(KitSchema.safeParse(kit).success).toBe(true);
			for (const { text, trap, spoken: aloud } of allOf(kit, isRepeat)) {
				for (const words of [text, trap ?? 'none.']) {
					expect(wordsIn(words), words).toBeLessThanOrEqual(14);
					expect(words).toMatch(/[.?]$/);
					expect(words).not.toMatch(/undefined|NaN|null|\bclose\b|almost|nearly/);
				}
				expect(aloud).not.toMatch(/[^\w\s.,;:?'-]|\bmL\b|\d[.,]\d|\d s\b/);
			}
		}),
		{ numRuns: 60 }
	);
});

describe('the words', () => {
	const textsOf = (kit: Kit) =>
		Object.fromEntries(allOf(kit).map((each) => [each.step.id, each])) as Record<
			string,
			TankInstruction & { spoken: string }
		>;

	it('come from the kit: its volumes, names, amounts, colours and times', () => {
		const said = textsOf(baseKit);
		expect(said['measure']?.text).toContain('6 mL');
		expect(said['dose-base']?.text).toContain('2 level spoons of base');
		expect(said['dose-indicator']?.text).toContain('3 drops of indicator');
		expect(said['wait-base']?.text).toContain('60 seconds');
		expect(said['titrate']?.text).toContain('mauve stays 25 seconds');
		expect(said['fill']?.text).toContain('1.00');
		expect(textsOf(houseDropperKit)['titrate']?.text).toMatch(/^Count drops/);
	});

	it('say what to beware of at the moment it is in the hand, aloud as well', () => {
		const calcium = textsOf(calciumKit);
		expect(calcium['dose-base']?.trap).toMatch(/^Strong base: keep it off eyes and skin\./);
		expect(calcium['dose-base']?.spoken).toMatch(
			/base to the vial\. Strong base: keep it off eyes/
		);
		expect(calcium['dose-dye']?.text).toBe('Add one level spoon of dye powder to the vial.');
		expect(calcium['dose-dye']?.trap).not.toMatch(/base|skin/);
		expect(calcium['wait-base']?.trap).toMatch(/fine cloud.*magnesium/);
		expect(calcium['mix-dye']?.trap).toBe('Now it should be wine red.');
		expect(calcium['titrate']?.text).toContain('blue stays 30 seconds');
		const both = textsOf(hardnessKit);
		expect(both['dose-buffer']?.trap).toMatch(/^Ammonia: do not breathe over it\./);
		expect(both['dose-buffer']?.spoken).toContain('Ammonia: do not breathe over it.');
		// Of acid nothing of the kind is said.
		expect(textsOf(houseSyringeKit)['dose-indicator']?.spoken).not.toMatch(/base|ammonia/i);
	});

	it('name the start colour once all is in, and not before', () => {
		const said = textsOf(baseKit);
		expect(said['mix-indicator']?.trap).toBe('Now it should be teal.');
		expect(said['wait-base']?.trap).not.toContain('teal');
		expect(said['mix-base']?.trap).toBeNull();
	});

	it('say where 0 is, and where full is, on either scale', () => {
		expect(textsOf(houseSyringeKit)['read']?.trap).toContain('0 is at the tip');
		expect(textsOf(upKit)['read']?.trap).toContain('0 is at the far end');
		expect(textsOf(upKit)['fill']?.text).toContain('0.00');
	});

	it('speak of the sample in use', () => {
		const played = new Played(houseSyringeKit);
		played.say({ type: 'sample.chosen', volumeId: 'fine' }).to('measure');
		expect(tankInstruction(played.titration)?.text).toContain('10 mL');
	});
});

describe('read aloud', () => {
	it.each([
		['Draw 6 mL of it.', 'Draw 6 millilitres of it.'],
		['1 mL, then 0.05 mL', '1 millilitre, then 0 point 0 5 millilitres'],
		['0.1 mL', '0 point 1 millilitres'],
		['Wait 60 s.', 'Wait 60 seconds.'],
		['Wait 1 s.', 'Wait 1 second.'],
		['seal at 1.00, wipe', 'seal at 1 point 0 0, wipe'],
		['7,4 ± 0,4 dKH', '7 point 4 plus or minus 0 point 4 degrees of carbonate hardness'],
		['25 °C', '25 degrees Celsius'],
		['12 min since', '12 minutes since'],
		['2.6 meq/L', '2 point 6 milliequivalents per litre'],
		['130 ppm CaCO3', '130 parts per million as calcium carbonate']
	])('%s', (text, aloud) => {
		expect(spoken(text)).toBe(aloud);
	});
});
