import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/lib/kits';
import { instructionFor } from '../../src/lib/procedure';
import { allKits, dropperKit, syringeKit } from './house';

const wordsIn = (text: string) => text.split(/\s+/).length;

describe.each(allKits)('the words for the steps of %s', (_id, kit) => {
	it.each(stepsOf(kit).map((step) => [step.id, step] as const))('%s are short', (_step, step) => {
		const { text, trap } = instructionFor(step, kit);
		for (const words of [text, trap ?? 'none.']) {
			expect(wordsIn(words)).toBeLessThanOrEqual(14);
			expect(words).toMatch(/[.?]$/);
			expect(words).not.toMatch(/undefined|NaN|\bclose\b|almost/);
		}
	});
});

describe('the words', () => {
	const textOf = (kit: typeof syringeKit, kind: string, sampleVolumeMl?: number) =>
		instructionFor(
			stepsOf(kit).find((step) => step.kind === kind)!,
			kit,
			sampleVolumeMl
		).text;

	it('come from the kit: volumes, drops, colour, time, full mark', () => {
		expect(textOf(syringeKit, 'measure')).toContain('6 mL');
		expect(textOf(syringeKit, 'measure', 10)).toContain('10 mL');
		expect(textOf(dropperKit, 'measure')).toContain('7 mL');
		expect(textOf(syringeKit, 'dose')).toContain('3 drops');
		expect(textOf(syringeKit, 'fill')).toContain('1.00');
		expect(textOf(syringeKit, 'titrate')).toContain(syringeKit.endPoint.endColour);
		expect(textOf(syringeKit, 'titrate')).toContain('25 seconds');
	});
});
