import { describe, expect, test } from 'vitest';
import { contentOf } from '../../../src/lib/judgement';
import { solutionOf } from '../../../src/lib/ui/recipe/solution';
import { stepsOf } from '../../../src/lib/ui/recipe/steps';

const linesOf = (blanks: Record<string, string>) => {
	const { recipe } = solutionOf(blanks, 'dKH');
	if (!recipe) throw new Error('a recipe expected');
	return stepsOf(recipe, (stage) => contentOf(recipe, [], stage)).map(({ words }) =>
		words.map((part) => (typeof part === 'string' ? part : part.amount)).join('')
	);
};

/** g of powder dissolved, and how much solution they are in. */
type Vessel = { powderG: number; totalG: number };

/**
 * Hands that know nothing do what the steps say, one sentence after the other, with a bottle on a scale.
 * Salt that is in before the scale is set to zero is weight that the scale does not show.
 */
function done(lines: readonly string[], saltGPerL: number): number {
	const grams = (text: string, after: string): number => {
		const found = new RegExp(`${after}\\D*([\\d.]+)\\s(g|mL)`, 'u').exec(text);
		if (!found) throw new Error(`no amount after '${after}' in '${text}'`);
		// A millilitre of a stock weighs a gram, and 0.7 % more (bicarbonate, 12 g in a litre).
		return Number(found[1]) * (found[2] === 'mL' ? 1.007 : 1);
	};
	let before: Vessel | null = null;
	let inCupG = 0;
	let hiddenG = 0;
	let saltG = 0;
	let isZero = false;
	for (const line of lines) {
		for (const sentence of line.split(/(?<=\.)\s+(?=[A-Z])/u)) {
			if (/^(Weigh|Draw)/u.test(sentence)) inCupG = grams(sentence, '^(?:Weigh|Draw)');
			if (sentence.startsWith('Set a clean, empty bottle to zero')) {
				hiddenG = saltG;
				isZero = true;
			}
			if (sentence.includes('plain salt')) saltG = grams(sentence, '^Put');
			if (sentence.startsWith('Rinse')) {
				const totalG: number = grams(sentence, 'fill up to') + hiddenG;
				expect(isZero).toBe(true);
				const powderG: number = before ? (before.powderG / before.totalG) * inCupG : inCupG;
				before = { powderG, totalG };
				isZero = false;
			}
		}
	}
	if (!before) throw new Error('nothing was made');
	expect(saltG).toBe(saltGPerL);
	// Density of sodium chloride in water, 3.4 % by weight at 20 °C: 1.0225 g/mL (from memory, the usual
	// tables); of water 0.998.
	const litres = before.totalG / (saltGPerL > 0 ? 1.0225 : 0.998) / 1000;
	// NaHCO3: 84.007 g/mol; 1 meq/L is 2.8039 dKH (half of 56.077 g/mol CaO, 10 mg/L of it a degree).
	return (before.powderG / 84.007 / litres) * 1000 * 2.8039;
}

describe('the steps, done in the order in which they stand', () => {
	const scales = ['hundredth', 'thousandth', 'tenth', 'whole'];
	test.each(
		scales.flatMap((scale) => [
			[scale, 'purified', 0] as const,
			[scale, 'sodiumChloride', 35] as const
		])
	)('scale %s, %s: what is made holds what was asked for', (scale, matrix, saltGPerL) => {
		// Rounded to whole grams on the coarsest scale; salt before the zero would be 3.4 % off.
		const lines = linesOf({ scale, matrix });
		expect(Math.abs(done(lines, saltGPerL) / 8 - 1)).toBeLessThan(0.008);
	});
	test('by a line too the salt is dissolved before the water is filled up to it', () => {
		for (const waterWay of ['cylinder', 'jug']) {
			const lines = linesOf({ waterWay, matrix: 'sodiumChloride' });
			const salt = lines.findIndex((line) => line.includes('plain salt into the vessel'));
			expect(salt).toBeGreaterThan(-1);
			expect(lines[salt]).not.toContain('scale');
			expect(lines[salt + 1]).toMatch(
				/^Rinse .* until the salt is dissolved, and fill up to the line/u
			);
		}
	});
});
