import { describe, expect, it } from 'vitest';
import { houseKitOf, type Kit } from '../../src/lib/kits';
import { combineRepeats, mean, readingBudget, standardDeviation } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';
import { drawnErrors } from './drawn';

const syringeKit = houseKitOf('house-syringe');
const dropperKit = houseKitOf('house-dropper');
const at = (value: number) => ({ value, valuePerMl: 16 });
const drops = (count: number) => ({ value: 0.6 * count - 0.45, valuePerMl: 0.6 / 0.043 });
const of = (...values: number[]) => combineRepeats(syringeKit, values.map(at));
const partsOf = (result: ReturnType<typeof combineRepeats>, kind: 'shared' | 'scatter') =>
	Math.hypot(...result.lines.filter((l) => l.kind === kind).map((l) => l.contribution));

describe('repeats of one water', () => {
	it('of one reading is its own budget', () => {
		const { value, n, spread, outlier, next, of: kind, ...budget } = of(8);
		expect(budget).toEqual(readingBudget(syringeKit, at(8)));
		expect({ value, n, spread, outlier, kind }).toEqual({
			value: 8,
			n: 1,
			spread: null,
			outlier: null,
			kind: 'mean'
		});
		expect(next.expandedUncertainty).toBeLessThan(budget.expandedUncertainty);
	});
	it('what ware and bottles do alike stays, scatter shrinks by about √n', () => {
		const one = of(9);
		const own = { sd: one.repeatabilitySd, degreesOfFreedom: 1e6 };
		const four = combineRepeats(syringeKit, [8.9, 9, 9, 9.1].map(at), own);
		expect(partsOf(four, 'shared')).toBeCloseTo(partsOf(one, 'shared'), 12);
		// The last drop's error is shared to 1 %, so not quite half.
		expect(partsOf(four, 'scatter') / partsOf(one, 'scatter')).toBeGreaterThan(0.5);
		expect(partsOf(four, 'scatter') / partsOf(one, 'scatter')).toBeLessThan(0.51);
	});
	it('never ends below what they share', () => {
		const many = combineRepeats(
			syringeKit,
			Array.from({ length: 10 }, () => at(8))
		);
		expect(many.standardUncertainty).toBeGreaterThan(partsOf(of(8), 'shared'));
	});
	it('mean of readings that agree, in any order', () => {
		expect(of(7.9, 8.2).value).toBeCloseTo(8.05, 12);
		expect(of(8.2, 7.9)).toEqual(of(7.9, 8.2));
	});
	it('a line that only one of them has counts for its part of the mean, in any order', () => {
		const throughTip = { ...at(8), tipSdMl: 0.02 };
		for (const readings of [
			[at(8), throughTip],
			[throughTip, at(8)]
		]) {
			const { lines } = combineRepeats(syringeKit, readings);
			expect(lines.find(({ id }) => id === 'tipVolume')?.contribution).toBeCloseTo(0.16, 12);
		}
	});
	it('different samples of one water combine too', () => {
		const fine = { value: 8.1, valuePerMl: 9.6, sampleVolumeMl: 10 };
		const both = combineRepeats(syringeKit, [at(7.9), fine]);
		expect(both.value).toBeCloseTo(8, 12);
		expect(both.repeatabilitySd).toBeLessThan(of(7.9, 8.1).repeatabilitySd);
	});
});

describe('two or three results do not say how they scatter', () => {
	it('two equal ones do not make the ± vanish, two apart do not blow it up', () => {
		const equal = of(8, 8);
		const apart = of(7.85, 8.15);
		expect(equal.expandedUncertainty).toBeGreaterThan(0.85 * apart.expandedUncertainty);
		// By their own s alone: 12.7 · 0.21/√2 = 1.9 dKH.
		expect(apart.expandedUncertainty).toBeLessThan(0.7);
	});
	it('three equal drop counts are less sure than their scatter alone would have it', () => {
		// A hand so steady that all counts fall on one drop: they share the error of the last one.
		const steady: Kit = { ...dropperKit, assumed: { colourDrops: 0 } };
		const own = { sd: 0, degreesOfFreedom: 1e6 };
		const three = combineRepeats(steady, [drops(14), drops(14), drops(14)], own);
		const last = three.lines.find(({ id }) => id === 'wholeDrops')?.contribution;
		expect(last).toBeCloseTo(0.6 / Math.sqrt(12), 3);
	});
	it('where hands scatter over half a drop, each count rounds for itself', () => {
		const own = { sd: 0.4, degreesOfFreedom: 1e6 };
		const three = combineRepeats(dropperKit, [drops(13), drops(14), drops(15)], own);
		const last = three.lines.find(({ id }) => id === 'wholeDrops')?.contribution;
		expect(last).toBeCloseTo(0.6 / Math.sqrt(12) / Math.sqrt(3), 3);
	});
	it('at n = 3 the outlier test says little, and nothing is deleted', () => {
		const three = of(8, 8, 8.3);
		expect(three.outlier).toMatchObject({ isSuspect: true, saysLittle: true, suspect: 2 });
		expect(three.value).toBeCloseTo(8.1, 12);
		expect(of(8, 8.1).outlier).toBeNull();
	});
});

// Source: ISO 5725-6:1994, 5.2.2 (from memory); sigma 0.1, so CR(2) 0.28, CR(3) 0.33, CR(4) 0.36.
describe('ISO 5725-6: acceptance of results', () => {
	// A kit whose scatter is all in its owner's repeats: 0.1, with hardly a drop to round to.
	const fine: Kit = {
		...syringeKit,
		delivery: { ...syringeKit.delivery, dropMl: 1e-4 } as Kit['delivery']
	};
	const own = { sd: 0.1, degreesOfFreedom: 1e9 };
	it.each([
		[[8.1, 8.3], 8.2, 'mean', 'accept'],
		[[8.1, 8.45], 8.275, 'mean', 'takeOneMore'],
		[[8.1, 8.45, 8.3], 8.3, 'median', 'takeOneMore'],
		[[8.1, 8.45, 8.3, 8.25], 8.275, 'mean', 'accept'],
		[[8.0, 8.5, 8.2, 8.1], 8.15, 'median', 'median']
	] as const)('%j → %d, %s, %s', (values, value, kind, toDo) => {
		const result = combineRepeats(fine, values.map(at), own);
		expect(result.value).toBeCloseTo(value, 12);
		expect(result.of).toBe(kind);
		expect(result.spread?.toDo).toBe(toDo);
		expect(result.spread?.agrees).toBe(toDo === 'accept');
	});
	it('a median of four is less sure than their mean, by 1/0.838 in variance', () => {
		const scatter = (...values: number[]) =>
			partsOf(combineRepeats(fine, values.map(at), own), 'scatter') ** 2;
		expect(scatter(8, 8.5, 8.2, 8.1) / scatter(8, 8.1, 8.2, 8.1)).toBeCloseTo(1 / 0.838, 4);
	});
	it('counts one drop apart never disagree, however steady the hands', () => {
		const own = { sd: 0, degreesOfFreedom: 1e6 };
		const pair = combineRepeats(dropperKit, [drops(13), drops(14)], own);
		expect(pair.spread?.criticalRange).toBeLessThan(0.6);
		expect(pair.spread?.agrees).toBe(true);
	});
});

describe('whether another is worth the reagent', () => {
	it('two that agree: the shared errors rule, and it is not', () => {
		expect(of(8, 8.1).next).toMatchObject({ isWorthIt: false, why: 'sharedDominates' });
	});
	it('after the first it is, and where ware was weighed also after the second', () => {
		expect(of(8).next).toMatchObject({ isWorthIt: true, why: 'shrinks' });
		const assumed = { sampleHalfWidth: 0.003, deliveryHalfWidth: 0.003, titrantSd: 0.003 };
		const pair = combineRepeats({ ...syringeKit, assumed }, [at(8), at(8.1)]);
		expect(pair.next).toMatchObject({ isWorthIt: true, why: 'shrinks' });
	});
	it('two that disagree ask for a third, whatever it gains', () => {
		expect(of(8, 9).next).toMatchObject({ isWorthIt: true, why: 'disagree' });
	});
	it('the ± foretold is the ± that comes, when the next lands in the middle', () => {
		const own = { sd: 0.2, degreesOfFreedom: 1e6 };
		const two = combineRepeats(syringeKit, [at(8.9), at(9.1)], own);
		const three = combineRepeats(syringeKit, [at(8.9), at(9.1), at(9)], own);
		expect(three.expandedUncertainty).toBeCloseTo(two.next.expandedUncertainty, 4);
	});
});

// Source: JCGM 101:2008, propagation of distributions by drawing, whole drops and all.
describe('the mean of drawn repeats scatters as combineRepeats says', () => {
	const drawn = {
		valuePerMl: 16,
		truthMl: 0.55,
		dropMl: 0.021,
		sampleLimit: 0.04,
		scaleLimit: 0.05,
		strengthSd: 0.01,
		settingHalfWidth: 10 / 160 / 6,
		ownColourDrops: 0.25,
		colourDrops: 0.25,
		dropSpread: 0.042,
		graduationMl: 0.02
	};
	const value = 16 * 0.55;
	/** Scatter known for certain to be as judged, so that the draws differ from it by nothing else. */
	const certain = (kit: Kit) => ({
		sd: readingBudget(kit, at(value)).repeatabilitySd,
		degreesOfFreedom: 1e9
	});
	it.each([1, 2, 3, 5])('%d repeats', (n) => {
		const errors = drawnErrors(drawn, n, 20_000, chanceOf(n));
		const readings = Array.from({ length: n }, () => ({ ...at(value), usedMl: 0.5605 }));
		const { standardUncertainty } = combineRepeats(syringeKit, readings, certain(syringeKit));
		expect(Math.abs(standardUncertainty / standardDeviation(errors) - 1)).toBeLessThan(0.025);
	});
	it('a steady hand with coarse drops: repeats share much of the error of the last one', () => {
		const steady = {
			...drawn,
			dropMl: 0.05,
			colourDrops: 0,
			ownColourDrops: 0,
			settingHalfWidth: 0,
			sampleLimit: 0,
			scaleLimit: 0,
			strengthSd: 0
		};
		const kit: Kit = {
			...syringeKit,
			conversion: { kind: 'perMl', valuePerMl: 16, offset: 0 },
			delivery: { ...syringeKit.delivery, dropMl: 0.05 } as Kit['delivery'],
			assumed: { colourDrops: 0, sampleHalfWidth: 0, deliveryHalfWidth: 0, titrantSd: 0 }
		};
		const [one = [], three = []] = [1, 3].map((n) =>
			drawnErrors(steady, n, 60_000, chanceOf(10 + n))
		);
		const [v1, v3] = [standardDeviation(one) ** 2, standardDeviation(three) ** 2];
		// One test: shared and shown; three: shared and a third of it. What is shown follows.
		const own = { sd: Math.sqrt(1.5 * (v1 - v3)), degreesOfFreedom: 1e9 };
		const budget = combineRepeats(kit, [at(value), at(value), at(value)], own);
		expect(Math.abs(budget.standardUncertainty / Math.sqrt(v3) - 1)).toBeLessThan(0.03);
		// Taken for independent, it would come out a fifth too small.
		expect(Math.sqrt(v1 / 3) / Math.sqrt(v3)).toBeLessThan(0.85);
	});
	it('none of it leans to a side', () => {
		const errors = drawnErrors(drawn, 2, 20_000, chanceOf(4));
		// The curve of 1/strength adds a ten-thousandth; three standard errors of 20,000 draws.
		expect(Math.abs(mean(errors))).toBeLessThan(0.008);
	});
});

it('no reading at all is named', () => {
	expect(() => combineRepeats(syringeKit, [])).toThrow(
		new RangeError('readings must hold at least 1 reading; found 0')
	);
});
