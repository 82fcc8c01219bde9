import { describe, expect, it } from 'vitest';
import {
	alkalinityOfProbeTitration,
	densityKgPerL,
	molPerKgFromDkh,
	probeFlagIds,
	type ProbeAlkalinityOptions,
	type ProbeFlagId,
	type ProbePoint
} from '../../src/lib/chemistry';
import { chanceOf } from '../studies/chance';
import dickson from '../reference/data/dickson-1981-table-1.json';
import { simulatedReadings, titration, type Simulated } from './probe-readings';

const { normal } = chanceOf(17);
const ordinary: Simulated = {
	alkalinityDkh: 8,
	offsetPh: 0.05,
	slope: 0.99,
	phSd: 0.005,
	decimals: 2,
	normal
};
const closed = { ...titration, vessel: 'closed' as const };
const judged = (points: readonly ProbePoint[], options: Partial<ProbeAlkalinityOptions> = {}) =>
	alkalinityOfProbeTitration(points, { ...closed, ...options });
const idsOf = (simulated: Partial<Simulated>, options: Partial<ProbeAlkalinityOptions> = {}) =>
	judged(simulatedReadings({ ...ordinary, ...simulated }), options).flags.map(({ id }) => id);
const known = (alkalinityDkh: number) => ({
	alkalinityMolPerKg: molPerKgFromDkh(alkalinityDkh, densityKgPerL(35, 25)),
	standardUncertaintyMolPerKg: 0.00001
});

describe('flags of a probe titration', () => {
	it('an ordinary one has none, closed or open, in at least 19 of 20', () => {
		for (const vessel of ['closed', 'open'] as const) {
			const flagged = Array.from({ length: 40 }, (_, i) =>
				idsOf({ alkalinityDkh: 6 + i / 8, readings: 40, reach: 1.6 }, { vessel })
			).filter((ids) => ids.length > 0);
			expect(flagged.length).toBeLessThanOrEqual(2);
		}
	});

	// Dickson 1981 (Deep-Sea Res. 28A:609), table 1: worked out, so that nothing strays and nothing drifts.
	it.each([6, 3, 2])('a published table without noise has none, to %i decimals', (decimals) => {
		const points = dickson.phFreeByAcidG.map(([acidG, ph]) => ({
			addedMl: acidG!,
			ph: Number(ph!.toFixed(decimals))
		}));
		for (const vessel of ['closed', 'open'] as const)
			for (const acid of [{ acidDensityKgPerL: 1, acidMatrix: 'sodiumChloride' as const }, {}])
				expect(
					alkalinityOfProbeTitration(points, {
						sampleMassG: dickson.sampleG,
						acidMolPerL: dickson.acidMolPerKg,
						salinity: 35,
						temperatureC: 25,
						vessel,
						...acid
					}).flags
				).toEqual([]);
	});

	it('of 200 ordinary ones, coarse and fine, long and short, at most 3 in 100 have any', () => {
		const meters = [
			{ phSd: 0.002, decimals: 3 },
			{ phSd: 0.005, decimals: 2 },
			{ phSd: 0.01, decimals: 2 },
			{ phSd: 0.02, decimals: 2 }
		];
		const flagged = Array.from({ length: 200 }, (_, i) =>
			idsOf(
				{
					...meters[i % 4]!,
					alkalinityDkh: 6 + i / 40,
					readings: [20, 28, 40][i % 3]!,
					reach: i % 2 ? 1.45 : 1.6,
					addedSdMl: 0.005
				},
				{ vessel: i % 5 < 3 ? 'closed' : 'open' }
			)
		).filter((ids) => ids.length > 0);
		expect(flagged.length).toBeLessThanOrEqual(6);
	});

	it('a reading off by 0.15 in the flat part is found in at least 9 of 10', () => {
		const found = Array.from({ length: 30 }, (_, i) => {
			const points = simulatedReadings({ ...ordinary, addedSdMl: 0.005, readings: 40, reach: 1.6 });
			// Past the end, where the curve is flat.
			const at = 28 + (i % 10);
			points[at] = { ...points[at]!, ph: points[at]!.ph + 0.15 };
			return judged(points).flags.some(
				({ id, points: at0 }) => id === 'outlier' && at0.includes(at)
			);
		});
		expect(found.filter(Boolean).length).toBeGreaterThanOrEqual(27);
	});

	it.each<[ProbeFlagId, Partial<Simulated>, Partial<ProbeAlkalinityOptions>]>([
		['tooFewPoints', { readings: 8 }, {}],
		['notFarEnough', { reach: 1.05 }, {}],
		['tooFewInWindow', { readings: 11, reach: 1.3 }, {}],
		['drift', { driftPh: 0.5 }, {}],
		['drift', { loss: 0.06 }, {}],
		['badSlope', { slope: 0.92 }, {}],
		['badSlope', { slope: 1.05 }, {}],
		['neverCalibrated', { offsetPh: 0.6 }, {}],
		['neverCalibrated', { offsetPh: -0.5 }, { vessel: 'open' }],
		['drift', { lag: 0.5 }, {}],
		['drift', { loss: 0.15 }, {}],
		['acidStrength', { acidFactor: 0.9 }, { known: known(8) }]
	])('%s: %j', (id, simulated, options) => {
		expect(idsOf(simulated, options)).toContain(id);
	});

	it('a reading written down wrong is found, and named by its place', () => {
		const points = simulatedReadings(ordinary);
		points[12] = { ...points[12]!, ph: points[12]!.ph + 0.3 };
		const shuffled = [...points.slice(12), ...points.slice(0, 12)];
		const { flags } = judged(shuffled);
		expect(flags.find(({ id }) => id === 'outlier')?.points).toEqual([0]);
		expect(flags.find(({ id }) => id === 'notFalling')?.points).toEqual([0]);
	});

	it('a strength of the acid that is wrong cannot be seen without a known solution', () => {
		for (const acidFactor of [0.95, 1.05]) {
			const ids = idsOf({ acidFactor });
			expect(ids).not.toContain('acidStrength');
			expect(ids).not.toContain('drift');
		}
		expect(idsOf({}, { known: known(8) })).not.toContain('acidStrength');
	});

	it('an acid a fifth weaker than is written on it gives its own known solution away by so much', () => {
		const points = simulatedReadings({ ...ordinary, acidFactor: 0.8, reach: 2 });
		const flag = judged(points, { known: known(8) }).flags.find(({ id }) => id === 'acidStrength');
		expect(flag?.figures['foundOverKnown']).toBeCloseTo(1.25, 1);
		expect(flag?.sentence).toContain('weaker');
	});

	// What the page says of it: how often it shows, and how far it moves the value.
	it.each<['closed' | 'open', Partial<Simulated>, [number, number], [number, number]]>([
		['closed', { driftPh: 0.2 }, [0, 2], [-0.3, 0.3]],
		['closed', { lag: 0.3 }, [0, 10], [2, 3]],
		['closed', { lag: 0.5 }, [19, 20], [4, 6]],
		['open', { driftPh: 0.2 }, [0, 2], [-2.3, -1.3]],
		['open', { driftPh: -0.2 }, [0, 2], [1, 2]],
		['open', { lag: 0.3 }, [0, 2], [3, 5]],
		['open', { lag: 0.5 }, [0, 2], [7, 10]]
	])(
		'%s, %j: shows in so many of 20, and moves the value by so many %%',
		(vessel, more, shows, by) => {
			const own = chanceOf(11);
			const judgedOnes = Array.from({ length: 20 }, () => {
				const loss = vessel === 'open' ? 0.1 : 0;
				const points = simulatedReadings({
					...ordinary,
					slope: 1,
					addedSdMl: 0.005,
					loss,
					...more,
					normal: own.normal
				});
				return judged(points, { vessel });
			});
			const seen = judgedOnes.filter(({ flags }) => flags.some(({ id }) => id === 'drift')).length;
			expect(seen).toBeGreaterThanOrEqual(shows[0]);
			expect(seen).toBeLessThanOrEqual(shows[1]);
			const found = judgedOnes.map(({ value }) => value?.alkalinityMolPerKg ?? Number.NaN);
			const mean = found.reduce((sum, each) => sum + each, 0) / found.length;
			const percentOff = 100 * (mean / known(8).alkalinityMolPerKg - 1);
			expect(percentOff).toBeGreaterThan(by[0]);
			expect(percentOff).toBeLessThan(by[1]);
		}
	);

	it('swapped columns are told, and nothing else is said of such readings', () => {
		const points = simulatedReadings(ordinary);
		const swapped = points.map(({ addedMl, ph }) => ({ addedMl: ph, ph: addedMl }));
		expect(judged(swapped).flags).toMatchObject([{ id: 'columnsSwapped', weight: 'unusable' }]);
		expect(judged(points).flags.map(({ id }) => id)).not.toContain('columnsSwapped');
		// From the lowest pH upwards it is a titration written backwards, and still no swap.
		expect(judged([...points].reverse()).flags.map(({ id }) => id)).not.toContain('columnsSwapped');
	});
	it('a pH that stands still is told first; one that falls by a tenth a step is none', () => {
		const still = Array.from({ length: 12 }, (_, i) => ({ addedMl: i / 4, ph: 8.1 }));
		expect(judged(still).flags).toMatchObject([
			{
				id: 'notFalling',
				weight: 'unusable',
				sentence: expect.stringMatching(/^The pH does not fall: it stays at about 8\.10/)
			}
		]);
		const falling = still.map(({ addedMl }, i) => ({ addedMl, ph: 8.1 - i / 10 }));
		expect(judged(falling).flags.map(({ id }) => id)).not.toContain('notFalling');
	});
	it.each([
		[0, /^No reading lies between pH 3 and 3\.5/],
		[1, /^Only 1 reading lies between/],
		[2, /^Only 2 readings lie between/]
	])('%i readings in the window are counted in good grammar', (count, words) => {
		const all = simulatedReadings(ordinary);
		const isInWindow = ({ ph }: ProbePoint) => ph >= 3 && ph <= 3.5;
		const kept = [
			...all.filter((each) => !isInWindow(each)),
			...all.filter(isInWindow).slice(0, count)
		];
		const found = judged(kept).flags.find(({ id }) => id === 'tooFewInWindow');
		expect(found?.sentence).toMatch(words);
	});

	it('carbon that seawater cannot hold is told', () => {
		// Half the carbon: the sample was a solution of carbonate, or most of its CO2 had left before.
		const points = simulatedReadings({ ...ordinary, ph: 9.4, phSd: 0.002 });
		expect(judged(points).flags.map(({ id }) => id)).toContain('carbonInconsistent');
		expect(judged(points, { matrix: 'sodiumChloride' }).flags.map(({ id }) => id)).not.toContain(
			'carbonInconsistent'
		);
	});

	it('each is a plain sentence with its figures', () => {
		const flags = [
			...judged(simulatedReadings({ ...ordinary, readings: 8, slope: 0.9, offsetPh: 1 })).flags,
			...judged(simulatedReadings({ ...ordinary, lag: 0.5, reach: 1.05 })).flags
		];
		expect(flags.length).toBeGreaterThan(3);
		for (const { id, sentence, figures } of flags) {
			expect(probeFlagIds).toContain(id);
			expect(sentence).toMatch(/^[A-Z].*[a-z].*\.$/u);
			expect(sentence).not.toMatch(/NaN|undefined|Infinity|\d\.\d{3}/u);
			for (const value of Object.values(figures)) expect(Number.isFinite(value)).toBe(true);
		}
	});
});

describe('the value to go by', () => {
	it('is that of the fit, with what nobody stated taken for home ware', () => {
		const { value, fit, assumed } = judged(simulatedReadings(ordinary));
		expect(value?.by).toBe('fit');
		expect(value?.alkalinityDkh).toBe(fit?.alkalinityDkh);
		expect(assumed).toEqual({ acid: 0.01, sample: 0.005, delivery: 0.005 });
		// One and twice half a per cent make 1.22 %.
		expect(value!.standardUncertaintyDkh / value!.alkalinityDkh).toBeGreaterThan(0.0122);
		expect(Math.abs(value!.alkalinityDkh - 8)).toBeLessThan(2 * value!.standardUncertaintyDkh);
	});

	it('takes what was stated as it was', () => {
		const { assumed, value } = judged(simulatedReadings(ordinary), {
			acidStandardUncertaintyMolPerL: 0,
			sampleRelativeStandardUncertainty: 0,
			deliveryRelativeStandardUncertainty: 0
		});
		expect(assumed).toEqual({});
		expect(value!.standardUncertaintyDkh / value!.alkalinityDkh).toBeLessThan(0.004);
	});

	it('is of the open vessel unless it is said to have been closed', () => {
		const points = simulatedReadings(ordinary);
		expect(alkalinityOfProbeTitration(points, titration).fit?.vessel).toBe('open');
		expect(judged(points).fit?.vessel).toBe('closed');
	});

	it('is the same in mol/kg and dKH at the density of the sample', () => {
		const { value } = judged(simulatedReadings(ordinary));
		expect(molPerKgFromDkh(value!.alkalinityDkh, densityKgPerL(35, 25))).toBeCloseTo(
			value!.alkalinityMolPerKg,
			12
		);
	});

	it('is that of the corrected line where a fit has too few readings, and none without both', () => {
		const points = simulatedReadings({ ...ordinary, readings: 80, reach: 1.6 });
		const three = points.filter(({ ph }) => ph >= 3 && ph <= 3.5).slice(2, 5);
		expect(three).toHaveLength(3);
		const byLine = judged(three, { vessel: 'open' });
		expect(byLine.fit).toBeNull();
		expect(byLine.value?.by).toBe('gran');
		const none = judged(points.slice(0, 3));
		expect(none.value).toBeNull();
		expect(none.flags.some(({ weight }) => weight === 'unusable')).toBe(true);
		expect(judged([]).value).toBeNull();
	});

	it('what was handed in wrongly is an error and no flag', () => {
		expect(() => judged([], { acidMolPerL: 0 })).toThrow('acidMolPerL');
		expect(() => judged([{ addedMl: -1, ph: 8 }])).toThrow('points[0].addedMl');
	});
});
