import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	addAcid,
	addAlkalinity,
	addIndicator,
	addWater,
	carbonDioxideExcessMol,
	colourOf,
	compositionOf,
	densityKgPerL,
	dkhFromMolPerKg,
	fillVessel,
	loseCarbonDioxide,
	mediumIn,
	phOf,
	volumeMlOf,
	type Matrix,
	type Vessel
} from '../../src/lib/chemistry';

const number = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const sample = fillVessel({
	matrix: 'seawater',
	salinity: 35,
	temperatureC: 25,
	alkalinityMolPerKg: 0.0024,
	dicMolPerKg: 0.0021,
	volumeMl: 5
});
const dose = (addedAs: 'acid' | 'salt', molPerL = 1.4e-3) => ({
	volumeMl: 0.05,
	dyes: [{ dyeId: 'bromocresolGreen', molPerL, addedAs }]
});

const deed = fc.oneof(
	number(0, 0.5).map((volumeMl) => (v: Vessel) => addAcid(v, { volumeMl, molPerL: 0.1 })),
	number(0, 0.5).map(
		(volumeMl) => (v: Vessel) =>
			addWater(v, { volumeMl, alkalinityMolPerL: 0.003, dicMolPerL: 0.003 })
	),
	fc.constant((v: Vessel) => addIndicator(v, dose('salt'))),
	fc.constant((v: Vessel) => addIndicator(v, dose('acid'))),
	number(0, 1e-6).map(
		(mol) => (v: Vessel) => addAlkalinity(v, { alkalinityMol: 2 * mol, dicMol: mol })
	)
);

describe('what is in a vessel', () => {
	it('does not depend on the order in which it came', () => {
		fc.assert(
			fc.property(fc.array(deed, { maxLength: 12 }), (deeds) => {
				const there = deeds.reduce((vessel, each) => each(vessel), sample);
				const back = [...deeds].reverse().reduce((vessel, each) => each(vessel), sample);
				expect(back.massKg).toBeCloseTo(there.massKg, 14);
				expect(back.alkalinityMol).toBeCloseTo(there.alkalinityMol, 16);
				expect(Math.abs(phOf(back) - phOf(there))).toBeLessThan(1e-7);
			}),
			{ numRuns: 300 }
		);
	});

	it('keeps salt, carbon and dye through acid and water', () => {
		let vessel = addIndicator(sample, dose('salt'));
		for (let i = 0; i < 40; i++) vessel = addAcid(vessel, { volumeMl: 0.02, molPerL: 0.1 });
		vessel = addWater(vessel, { volumeMl: 1, alkalinityMolPerL: 0 });
		expect(vessel.saltKg).toBe(sample.saltKg);
		expect(vessel.dicMol).toBe(sample.dicMol);
		expect(vessel.dyes).toEqual([
			{ dyeId: 'bromocresolGreen', mol: (1.4e-3 * 0.05) / 1000, protonsWhenAdded: 0 }
		]);
		expect(vessel.alkalinityMol).toBeCloseTo(sample.alkalinityMol - (0.1 * 0.8) / 1000, 14);
		const waterKg = ((0.05 + 0.8 + 1) / 1000) * densityKgPerL(0, 25);
		expect(vessel.massKg).toBeCloseTo(sample.massKg + waterKg, 14);
		expect(mediumIn(vessel).salinity).toBeCloseTo((35 * sample.massKg) / vessel.massKg, 10);
	});

	it('is never changed in place', () => {
		const frozen = Object.freeze({ ...sample, dyes: Object.freeze([]) });
		const coloured = addIndicator(frozen, dose('salt'));
		const before = JSON.stringify(coloured);
		addIndicator(coloured, dose('salt'));
		loseCarbonDioxide(addAcid(coloured, { volumeMl: 0.1, molPerL: 0.1 }), 0.5);
		expect(JSON.stringify(coloured)).toBe(before);
	});

	it('has the volume that was filled in', () => {
		expect(volumeMlOf(sample)).toBeCloseTo(5, 12);
		const mixed = addWater(sample, { volumeMl: 1, alkalinityMolPerL: 0 });
		// Volumes of seawater and water add up within a ten-thousandth.
		expect(Math.abs(volumeMlOf(mixed) - 6)).toBeLessThan(0.0006);
	});

	it.each<[Matrix, number]>([
		['seawater', 0],
		['seawater', 45],
		['purified', 0],
		['sodiumChloride', 35],
		['sodiumChloride', 1]
	])('has a pH whatever is poured in: %s, salinity %d', (matrix, salinity) => {
		fc.assert(
			fc.property(
				number(-0.02, 0.02),
				number(0, 0.02),
				number(0, 40),
				fc.array(deed, { maxLength: 8 }),
				(alkalinityMolPerKg, dicMolPerKg, temperatureC, deeds) => {
					const filled = fillVessel({
						matrix,
						salinity,
						temperatureC,
						alkalinityMolPerKg,
						dicMolPerKg,
						volumeMl: 5
					});
					const vessel = deeds.reduce((each, next) => next(each), filled);
					const { ph, rgb } = colourOf(vessel, 2, 'white');
					expect(ph).toBeGreaterThan(0);
					expect(ph).toBeLessThan(14);
					for (const channel of [rgb.r, rgb.g, rgb.b]) {
						expect(channel).toBeGreaterThanOrEqual(0);
						expect(channel).toBeLessThanOrEqual(1);
					}
				}
			),
			{ numRuns: 200 }
		);
	});
});

describe('carbon dioxide', () => {
	const nearEnd = addAcid(sample, { volumeMl: 1.2, molPerL: 0.01 });

	it('leaves carbon only, never alkalinity', () => {
		const open = loseCarbonDioxide(nearEnd, 0.4);
		expect(open.alkalinityMol).toBe(nearEnd.alkalinityMol);
		expect(nearEnd.dicMol - open.dicMol).toBeCloseTo(0.4 * carbonDioxideExcessMol(nearEnd), 16);
		expect(phOf(open)).toBeGreaterThan(phOf(nearEnd));
	});

	it('comes in where there is less of it than air would give', () => {
		const starved = fillVessel({
			matrix: 'seawater',
			salinity: 35,
			temperatureC: 25,
			alkalinityMolPerKg: 0.0024,
			dicMolPerKg: 0.0015,
			volumeMl: 5
		});
		expect(carbonDioxideExcessMol(starved)).toBeLessThan(0);
		expect(phOf(loseCarbonDioxide(starved, 1))).toBeLessThan(phOf(starved));
	});

	// Common practice: seawater of usual alkalinity in outdoor air stands at pH 8.0 to 8.1 on the
	// total scale.
	it('in balance with air leaves seawater at pH 8.0 to 8.1', () => {
		let vessel = sample;
		for (let i = 0; i < 3000; i++) vessel = loseCarbonDioxide(vessel, 1);
		expect(Math.abs(carbonDioxideExcessMol(vessel) / vessel.massKg)).toBeLessThan(1e-9);
		expect(phOf(vessel)).toBeGreaterThan(8);
		expect(phOf(vessel)).toBeLessThan(8.1);
	});

	it('never leaves less carbon than none', () => {
		const sour = fillVessel({
			matrix: 'purified',
			salinity: 0,
			temperatureC: 25,
			alkalinityMolPerKg: -0.01,
			dicMolPerKg: 0.001,
			volumeMl: 5
		});
		expect(loseCarbonDioxide(sour, 1, 0).dicMol).toBeGreaterThanOrEqual(0);
	});
});

describe('a grain of carbonate', () => {
	it('raises alkalinity by two and carbon by one', () => {
		const mol = 1e-6;
		const dissolved = addAlkalinity(sample, { alkalinityMol: 2 * mol, dicMol: mol });
		const composition = compositionOf(dissolved);
		expect(composition.dicMolPerKg).toBeCloseTo(0.0021 + mol / sample.massKg, 12);
		expect(dissolved.alkalinityMol / dissolved.massKg).toBeCloseTo(
			0.0024 + (2 * mol) / sample.massKg,
			12
		);
		expect(phOf(dissolved)).toBeGreaterThan(phOf(sample));
	});
});

describe('the indicator in the balance of acid', () => {
	const acidTo = (vessel: Vessel, ph: number) => {
		let low = 0;
		let high = 3;
		for (let i = 0; i < 50; i++) {
			const middle = (low + high) / 2;
			if (phOf(addAcid(vessel, { volumeMl: middle, molPerL: 0.1 })) > ph) low = middle;
			else high = middle;
		}
		return low;
	};
	const dkhOf = (acidMl: number) =>
		dkhFromMolPerKg(((acidMl / 1000) * 0.1) / sample.massKg, densityKgPerL(35, 25));
	// The same volume without a dye, so that only the dye makes a difference.
	const plain = addWater(sample, { volumeMl: 0.05, alkalinityMolPerL: 0 });
	const shift = (addedAs: 'acid' | 'salt', ph: number) =>
		dkhOf(acidTo(addIndicator(sample, dose(addedAs)), ph)) - dkhOf(acidTo(plain, ph));

	it('added as its salt takes acid as it turns; added as its acid gives some', () => {
		expect(shift('salt', 4.3)).toBeGreaterThan(0);
		expect(shift('acid', 4.3)).toBeLessThan(0);
	});

	// Common practice, no source: a dose moves the demand by some hundredths of a degree.
	it('moves the demand by less than 0.05 dKH', () => {
		for (const ph of [5, 4.5, 4.3, 4])
			for (const addedAs of ['acid', 'salt'] as const)
				expect(Math.abs(shift(addedAs, ph))).toBeLessThan(0.05);
	});

	it('differs between the two forms by the whole of the dye', () => {
		const dyeDkh = dkhFromMolPerKg((1.4e-3 * 0.05) / 1000 / sample.massKg, densityKgPerL(35, 25));
		expect(shift('salt', 4.5) - shift('acid', 4.5)).toBeCloseTo(dyeDkh, 4);
	});

	it('at its own pK takes half of itself', () => {
		const { k } = compositionOf(addIndicator(sample, dose('salt'))).dyes[0]!;
		const dyeDkh = dkhFromMolPerKg((1.4e-3 * 0.05) / 1000 / sample.massKg, densityKgPerL(35, 25));
		// The dye's constant falls a little as the acid dilutes the salt.
		expect(Math.abs(shift('salt', -Math.log10(k[0]!)) / dyeDkh - 0.5)).toBeLessThan(0.03);
	});
});
