import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/lib/judgement';
import type { Evidence, EvidenceOf } from '../../src/lib/observation';
import { reading, reference, test } from './diagnosed';

type Water = EvidenceOf<'blank'>['matrix'];
const blank = (value: number, matrix: Water): Evidence => ({
	kind: 'blank',
	reading: reading('blank', value),
	matrix
});

describe('a blank of the water in which the known solution was made', () => {
	// 0.3 ± 0.2 read on the water: by the maker of solutions it holds 0 to 0.5, so 0.25 is in the content.
	const made = [
		test('a', 7.4),
		reference('r', 8.2, { matrix: 'purified', nominal: 8.25, nominalExpandedUncertainty: 0.3 })
	];
	const meanOf = (evidence: readonly Evidence[]) => diagnose(evidence).trueValue.mean;

	it('is in the content of the solution, and does not count a second time', () => {
		const without = meanOf(made);
		const ofThisWater = Math.abs(meanOf([...made, blank(0.3, 'purified')]) - without);
		const ofOtherWater = Math.abs(meanOf([...made, blank(0.3, 'sodiumChloride')]) - without);
		expect(ofThisWater).toBeLessThan(ofOtherWater / 2);
		expect(ofOtherWater).toBeGreaterThan(0.01);
	});

	it('tells a kit that reads all of it too high from a solution that holds more', () => {
		// The kit reads 2.4 too much on either: by itself, or because the solution was made too strong.
		const both = [
			test('a', 10.6),
			reference('r', 10.6, {
				matrix: 'purified',
				nominal: 8.25,
				nominalExpandedUncertainty: 0.3
			})
		];
		const isOfTheKit = (evidence: readonly Evidence[]) => {
			const { classes } = diagnose(evidence);
			return classes.technique + classes.ware + classes.method;
		};
		expect(isOfTheKit([...both, blank(0.3, 'purified')])).toBeLessThan(isOfTheKit(both) - 0.2);
		expect(meanOf([...both, blank(0.3, 'purified')])).toBeGreaterThan(meanOf(both) + 1);
		expect(meanOf([...both, blank(2.7, 'purified')])).toBeLessThan(meanOf(both));
	});

	it('still shows what no water explains: 2.7 dKH in pure water is the kit’s', () => {
		const gross = [test('a', 7.4), reference('r', 10.6, { matrix: 'purified' })];
		const high = ({ faults }: ReturnType<typeof diagnose>) =>
			(faults['readByLine'] ?? 0) + (faults['tipFittedLate'] ?? 0) + (faults['baseTrace'] ?? 0);
		const before = diagnose(gross);
		const after = diagnose([...gross, blank(2.7, 'purified')]);
		expect(high(after)).toBeGreaterThan(high(before));
		expect(after.nothingWrong).toBeLessThan(0.01);
	});
});
