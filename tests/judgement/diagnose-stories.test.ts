import { describe, expect, it } from 'vitest';
import { diagnose, faults, type Diagnosis } from '../../src/lib/judgement';
import { houseKitsFor } from '../../src/lib/kits';
import { methodFiguresOf } from '../../src/lib/metrology';
import type { Evidence } from '../../src/lib/observation';
import { earlier, reading, reference, second, test } from './diagnosed';

/** What a sound judgement of ordinary stories must come to; common practice, no source, but where it is said. */
const scopeOf = new Map(faults.map(({ id, scope }) => [id, scope]));
const sumOf = ({ faults: found }: Diagnosis, is: (id: string) => boolean) =>
	Object.entries(found).reduce((sum, [id, p]) => sum + (is(id) ? p : 0), 0);
const oneOff = (diagnosis: Diagnosis) => sumOf(diagnosis, (id) => scopeOf.get(id) === 'oneTest');
const top = ({ explanations }: Diagnosis) => explanations[0]?.id;

describe.each(houseKitsFor('alkalinity'))('by the $name', (kit) => {
	const options = { method: methodFiguresOf(kit, { value: 8 }) };

	it('what agrees all round leaves nothing to explain', () => {
		const diagnosis = diagnose(
			[test('a', 8), test('b', 8.1, 'repeatFull'), reference('r', 8), earlier('e', 8.1, 7)],
			options
		);
		expect(top(diagnosis)).toBe('none');
		expect(Math.abs(diagnosis.trueValue.median - 8.05)).toBeLessThan(0.15);
		// Faults of other ware are not thought of.
		const isSyringe = kit.delivery.by === 'syringe';
		expect('filledByLine' in diagnosis.faults).toBe(isSyringe);
		expect('dropperTilted' in diagnosis.faults).toBe(kit.delivery.by === 'dropper');
	});
});

describe('a fresh bottle', () => {
	const old = [test('a', 7.4), test('b', 7.3, 'repeatFull')];
	const before = diagnose(old);
	const off = diagnose([...old, test('c', 8.0, 'freshLot'), test('d', 8.1, 'freshLot')]);
	const same = diagnose([...old, test('c', 7.4, 'freshLot'), test('d', 7.3, 'freshLot')]);

	it('that reads otherwise convicts the old one', () => {
		expect(off.classes.reagent).toBeGreaterThan(0.7);
		expect(off.classes.reagent).toBeGreaterThan(5 * before.classes.reagent);
	});
	it('that reads the same clears it', () => {
		expect(same.classes.reagent).toBeLessThan(before.classes.reagent / 2);
	});
	it('the value then is that of the fresh one', () => {
		expect(Math.abs(off.trueValue.mean - 8.05)).toBeLessThan(0.2);
	});
});

describe('repeats alone', () => {
	// A repeat shares every bias (ISO 5725-1: repeatability is no trueness).
	it('make neither a lasting fault nor its absence near certain', () => {
		for (const count of [1, 3, 6]) {
			const repeats = Array.from({ length: count }, (_, i) => test(`r${i}`, 7.4, 'repeatFull'));
			const diagnosis = diagnose([test('a', 7.4), ...repeats]);
			expect(diagnosis.nothingWrong).toBeLessThan(0.75);
			for (const [id, probability] of Object.entries(diagnosis.faults))
				if (scopeOf.get(id) !== 'oneTest') expect(probability, id).toBeLessThan(0.5);
			expect(diagnosis.isIndependent).toBe(false);
			// What ware, bottle and hands do alike stays however often it is repeated.
			expect(diagnosis.trueValue.standardDeviation).toBeGreaterThan(0.3);
		}
	});

	it('three counts on the same drop are hardly more than one', () => {
		// A dropper of 1 dKH a drop in very steady hands: all end on the same drop.
		const method = {
			analyte: 'alkalinity' as const,
			unit: 'dKH' as const,
			delivery: 'dropper' as const,
			valuePerMl: 20,
			sampleVolumeMl: 5,
			dropMl: 0.05,
			graduationMl: null,
			tipMl: null,
			fullScale: null,
			endStepDrops: 1,
			sampleWareSd: 0.01,
			titrantWareSd: 0.02,
			lotSd: 0.01,
			endPointSd: 0.05,
			scatterSd: 0.05,
			sampleSettingSd: 0.005
		};
		const claims = { expandedUncertainty: 0.8, repeatabilitySd: 0.05 };
		const count = (id: string, from: 'first' | 'repeatFull') => ({
			...test(id, 8, from),
			reading: reading(id, 8, claims)
		});
		const options = { method, faults: [], cues: [], realChangePrior: 0, noneOfThesePrior: 0 };
		const one = diagnose([count('a', 'first')], options).trueValue.standardDeviation;
		const three = diagnose(
			[count('a', 'first'), count('b', 'repeatFull'), count('c', 'repeatFull')],
			options
		).trueValue.standardDeviation;
		// An even error of a drop has a standard deviation of 0.289 drops.
		expect(three).toBeGreaterThan(0.28);
		expect(three).toBeGreaterThan(0.9 * one);
	});
});

describe('a slip', () => {
	it('first odd, repeats fine: a single slip, not a lasting fault', () => {
		const diagnosis = diagnose([
			test('a', 7.1),
			test('b', 8.2, 'repeatFull'),
			test('c', 8.1, 'repeatFull')
		]);
		expect(oneOff(diagnosis)).toBeGreaterThan(0.85);
		expect(diagnosis.nothingWrong).toBeLessThan(0.05);
		expect(diagnosis.classes.reagent).toBeLessThan(0.1);
		expect(Math.abs(diagnosis.trueValue.mean - 8.15)).toBeLessThan(0.15);
	});

	it('in a repeat leaves the test in question alone', () => {
		const diagnosis = diagnose([
			test('a', 8.2),
			test('b', 7.1, 'repeatFull'),
			test('c', 8.2, 'repeatFull')
		]);
		expect(top(diagnosis)).toBe('none');
		expect(Math.abs(diagnosis.trueValue.mean - 8.2)).toBeLessThan(0.15);
	});

	it('mixed filling is known by the size of the tip, and splits the value in two', () => {
		const tip = 0.17 * 16;
		const history = [earlier('e', 8.1, 7), earlier('f', 8, 14)];
		const diagnosis = diagnose([test('a', 8.1 - tip), ...history]);
		expect(
			sumOf(diagnosis, (id) => id === 'filledByLine' || id === 'filledByLineOnce')
		).toBeGreaterThan(0.5);
		expect(diagnosis.trueValue.humps.length).toBe(2);
		expect(Math.abs((diagnosis.trueValue.humps[0]?.mean ?? 0) - 8.1)).toBeLessThan(0.2);
		// A drop of the same size that is not the tip's is not taken for it so easily.
		const other = diagnose([test('a', 8.1 - 1.6), ...history]);
		expect(other.faults['filledByLineOnce']).toBeLessThan(0.05);
	});

	it('a double sample tells a volume from a share', () => {
		const volume = diagnose([
			test('a', 5.4),
			test('b', 5.3, 'repeatFull'),
			test('c', 6.7, 'largerSample')
		]);
		expect(volume.faults['filledByLine']).toBeGreaterThan(0.5);
		const share = diagnose([
			test('a', 5.4),
			test('b', 5.3, 'repeatFull'),
			test('c', 5.4, 'largerSample')
		]);
		expect(share.faults['filledByLine']).toBeLessThan(0.02);
	});
});

describe('the ratio of a mistaken unit or row', () => {
	it.each([
		['meq/L written as dKH', 2.89],
		['ppm written as dKH', 145]
	])('%s', (_, value) => {
		const diagnosis = diagnose([test('a', value), earlier('e', 8.1, 7)]);
		expect(diagnosis.faults['unitTaken']).toBeGreaterThan(0.6);
		expect(Math.abs(diagnosis.trueValue.median - 8.1)).toBeLessThan(0.25);
	});

	it('half of the repeat', () => {
		const diagnosis = diagnose([test('a', 4.0), test('b', 8.0, 'repeatFull')]);
		expect(diagnosis.faults['wrongRow']).toBeGreaterThan(0.5);
	});

	it('used taken for left: full scale less the value', () => {
		const diagnosis = diagnose([
			test('a', 16 - 0.3 - 10),
			test('b', 10, 'repeatFull'),
			test('c', 10.1, 'repeatFull')
		]);
		const rivals = Object.entries(diagnosis.faults).sort(([, a], [, b]) => b - a);
		expect(rivals.slice(0, 2).map(([id]) => id)).toContain('usedForLeftOnce');
	});
});

describe('known solutions', () => {
	it('plain water reads low with a sound kit, and convicts nobody', () => {
		const diagnosis = diagnose([test('a', 8), reference('r', 7.8, { matrix: 'purified' })]);
		expect(top(diagnosis)).toBe('none');
		expect(Math.abs(diagnosis.trueValue.median - 8)).toBeLessThan(0.1);
		// The same reading on a solution in salt water says more against the kit.
		const salted = diagnose([test('a', 8), reference('r', 7.8)]);
		expect(salted.nothingWrong).toBeLessThan(diagnosis.nothingWrong);
	});

	it('washing soda weighed as dry carbonate is known by its share', () => {
		const diagnosis = diagnose([test('a', 8), reference('r', 3)]);
		expect(diagnosis.faults['referenceWashingSoda']).toBeGreaterThan(0.6);
		expect(diagnosis.isIndependent).toBe(false);
	});

	it('evaporated titrant: repeats low, the solution low by the same share, a fresh bottle higher', () => {
		const diagnosis = diagnose([
			test('a', 7.4),
			test('b', 7.4, 'repeatFull'),
			reference('r', 7.4),
			test('c', 8, 'freshLot')
		]);
		expect(top(diagnosis)).toBe('titrantStronger');
		expect(diagnosis.classes.reagent).toBeGreaterThan(0.7);
		expect(diagnosis.isIndependent).toBe(true);
		const group = diagnosis.groups.find((each) => each.faults.includes('titrantStronger'));
		expect(group?.faults).toContain('lotOff');
	});

	it('too much sample and weak titrant cannot be told apart by tests; weighing would', () => {
		const priors = Object.fromEntries(faults.map(({ id }) => [id, 0]));
		const diagnosis = diagnose(
			[test('a', 8.5), test('b', 8.5, 'repeatFull'), reference('r', 8.5)],
			{ priors: { ...priors, titrantWatered: 0.05, sampleScaleOff: 0.05 }, realChangePrior: 0 }
		);
		const [group] = diagnosis.groups;
		expect(group?.faults).toEqual(['sampleScaleOff', 'titrantWatered']);
		expect(['weighSampleWare', 'freshLot']).toContain(group?.splitBy);
		const weighed: Evidence = {
			kind: 'weighing',
			ware: 'sample',
			foundOverNominal: 1.06,
			expandedUncertainty: 0.01
		};
		const after = diagnose(
			[test('a', 8.5), test('b', 8.5, 'repeatFull'), reference('r', 8.5), weighed],
			{ priors: { ...priors, titrantWatered: 0.05, sampleScaleOff: 0.05 }, realChangePrior: 0 }
		);
		expect(after.faults['sampleScaleOff']).toBeGreaterThan(0.75);
		expect(after.faults['titrantWatered']).toBeLessThan(0.3);
	});
});

describe('another method', () => {
	it('two that agree within what both claim leave nothing to explain', () => {
		const diagnosis = diagnose([test('a', 7.6), second('s', 8.2, 0.4)]);
		expect(top(diagnosis)).toBe('none');
		expect(diagnosis.isIndependent).toBe(true);
	});

	it('a report of carbonate alone is lower by the borate, and no disagreement', () => {
		const carbonate = diagnose([
			test('a', 7.7),
			second('s', 7.3, 0.2, { method: 'laboratory', reports: 'carbonate' })
		]);
		const total = diagnose([test('a', 7.7), second('s', 7.3, 0.2, { method: 'laboratory' })]);
		expect(top(carbonate)).toBe('none');
		expect(carbonate.nothingWrong).toBeGreaterThan(1.5 * total.nothingWrong);
	});

	it('one that differs from a kit that reads a known solution and repeats is itself in doubt', () => {
		const diagnosis = diagnose([
			test('a', 8),
			test('b', 8, 'repeatFull'),
			reference('r', 8),
			second('s', 9.2, 0.5, { method: 'photometer' })
		]);
		expect(diagnosis.classes.secondMethod).toBeGreaterThan(0.7);
		expect(Math.abs(diagnosis.trueValue.median - 8)).toBeLessThan(0.25);
	});
});

describe('the water itself', () => {
	const history = [earlier('e', 8.2, 7), earlier('f', 8.1, 14)];
	const low = [test('a', 6.3), test('b', 6.3, 'repeatFull')];

	it('a drop that repeats is likely real, and the likelier once a known solution reads right', () => {
		const before = diagnose([...low, ...history]);
		const after = diagnose([...low, ...history, reference('r', 8)]);
		expect(after.waterChanged).toBeGreaterThan(0.9);
		expect(after.waterChanged).toBeGreaterThan(before.waterChanged);
		expect(Math.abs(after.trueValue.mean - 6.35)).toBeLessThan(0.25);
	});

	it('what was dosed and consumed is reckoned with', () => {
		const expected = [
			earlier('e', 8.2, 7, { expectedChange: -1.9 }),
			earlier('f', 8.2, 7.5, { expectedChange: -1.9 })
		];
		expect(diagnose([...low, ...expected]).waterChanged).toBeLessThan(0.25);
	});

	it('a history by the same bad kit proves little: the value is not surer than the kit', () => {
		const diagnosis = diagnose([
			test('a', 8),
			...Array.from({ length: 6 }, (_, i) => earlier(`e${i}`, 8, 7 * (i + 1)))
		]);
		expect(diagnosis.trueValue.standardDeviation).toBeGreaterThan(0.25);
		expect(diagnosis.isIndependent).toBe(false);
	});

	it('a portion taken after dosing shows in a fresh one', () => {
		const diagnosis = diagnose([
			test('a', 9.9),
			test('b', 9.8, 'repeatFull'),
			test('c', 8.3, 'freshSample'),
			test('d', 8.3, 'freshSample')
		]);
		expect(diagnosis.classes.sampling).toBeGreaterThan(0.7);
		expect(Math.abs(diagnosis.trueValue.median - 8.3)).toBeLessThan(0.2);
	});
});
