import { describe, expect, it } from 'vitest';
import {
	addAcid,
	densityKgPerL,
	dicFromAlkalinityAndPh,
	dkhFromMeqPerL,
	fillVessel,
	loseCarbonDioxide,
	mediumOf,
	molPerKgFromDkh,
	phAtAlkalinity,
	phOf,
	seawater,
	titrateWithAcid,
	type Vessel
} from '../../src/lib/chemistry';

// What an end point at one pH reads, and the pH at equivalence. No table of this is published: the
// figures below were worked out beforehand by a separate program with the equations of Dickson,
// Sabine & Christian 2007 and the acid made up in plain water. They are printed to 0.01.

const water = { salinity: 35, temperatureC: 25 };
const density = densityKgPerL(35, 25);
const sampleVolumeMl = 10;
const acidMolPerL = 0.05;

function waterOf(alkalinityDkh: number) {
	const alkalinityMolPerKg = molPerKgFromDkh(alkalinityDkh, density);
	const dicMolPerKg = dicFromAlkalinityAndPh({ ...water, alkalinityMolPerKg, ph: 8.1 });
	return { ...water, alkalinityMolPerKg, dicMolPerKg };
}
const equivalenceMl = (alkalinityDkh: number) =>
	(molPerKgFromDkh(alkalinityDkh, density) * density * sampleVolumeMl) / acidMolPerL;
const readDkh = (addedMl: number) =>
	dkhFromMeqPerL((1000 * acidMolPerL * addedMl) / sampleVolumeMl);

/** Where a falling pH passes the one looked for. */
function whereIs(ph: number, phAt: (x: number) => number, high: number): number {
	let low = 0;
	for (let i = 0; i < 60; i++) {
		const middle = (low + high) / 2;
		if (phAt(middle) > ph) low = middle;
		else high = middle;
	}
	return low;
}

/** Half the last printed digit, and a little for the last but one of ours. */
const PRINTED = 0.0055;

describe('a closed vessel', () => {
	const closed = (alkalinityDkh: number, addedMl: number) =>
		titrateWithAcid({ ...waterOf(alkalinityDkh), sampleVolumeMl, acidMolPerL }, [addedMl])[0]!.ph;

	it.each([
		[3, 4.48],
		[5, 4.36],
		[7, 4.29],
		[9, 4.24],
		[12, 4.18],
		[16, 4.12]
	])('%d dKH is at pH %d when alkalinity has become nothing', (alkalinityDkh, ph) => {
		expect(Math.abs(closed(alkalinityDkh, equivalenceMl(alkalinityDkh)) - ph)).toBeLessThan(
			PRINTED
		);
	});

	it.each([
		[4.2, [0.14, 0.1, 0.07, 0.03, -0.02, -0.09]],
		[4.5, [-0.01, -0.08, -0.16, -0.23, -0.34, -0.49]],
		[4.8, [-0.15, -0.3, -0.44, -0.58, -0.8, -1.08]],
		[5.1, [-0.34, -0.61, -0.88, -1.14, -1.54, -2.06]]
	])('stopped at pH %d the reading is off by %j dKH at 3, 5, 7, 9, 12, 16', (ph, errors) => {
		const found = [3, 5, 7, 9, 12, 16].map((dkh) => {
			const endMl = whereIs(ph, (addedMl) => closed(dkh, addedMl), 3 * equivalenceMl(dkh));
			return readDkh(endMl) - dkh;
		});
		found.forEach((error, i) => expect(Math.abs(error - errors[i]!)).toBeLessThan(PRINTED));
	});
});

describe('an open vessel, 7 dKH, CO2 leaving after each of forty drops to equivalence', () => {
	const dropMl = equivalenceMl(7) / 40;
	const start = fillVessel({ matrix: 'seawater', ...waterOf(7), volumeMl: sampleVolumeMl });
	const withAcid = (vessel: Vessel, volumeMl: number, loss: number) =>
		loseCarbonDioxide(addAcid(vessel, { volumeMl, molPerL: acidMolPerL }), loss);

	it.each([
		[0, 4.29, -0.16],
		[0.05, 4.46, -0.02],
		[0.1, 4.58, 0.04],
		[0.2, 4.75, 0.07],
		[0.5, 5.02, 0.09],
		[1, null, 0.1]
	])('losing %d of the excess: pH %d at equivalence, %d dKH at pH 4.5', (loss, ph, error) => {
		let vessel = start;
		let endMl: number | null = null;
		for (let drops = 1; drops <= 50; drops++) {
			const before = vessel;
			const phAt = (volumeMl: number) => phOf(withAcid(before, volumeMl, loss));
			if (endMl === null && phAt(dropMl) < 4.5)
				endMl = (drops - 1) * dropMl + whereIs(4.5, phAt, dropMl);
			vessel = withAcid(vessel, dropMl, loss);
			if (drops === 40 && ph !== null) expect(Math.abs(phOf(vessel) - ph)).toBeLessThan(PRINTED);
		}
		expect(endMl).not.toBeNull();
		expect(Math.abs(readDkh(endMl!) - 7 - error)).toBeLessThan(PRINTED);
	});

	it('comes to pH 5.38 at equivalence when the CO2 is that of air', () => {
		let vessel = addAcid(start, { volumeMl: 40 * dropMl, molPerL: acidMolPerL });
		for (let swirl = 0; swirl < 30; swirl++) vessel = loseCarbonDioxide(vessel, 1);
		expect(Math.abs(phOf(vessel) - 5.38)).toBeLessThan(0.01);
	});
});

describe('the model of the constants under dilution', () => {
	/** The other usual model: constants of the sample on the free scale, totals diluted. */
	function phWithSaltyAcid(alkalinityDkh: number, acidL: number, addedMl: number): number {
		const sample = waterOf(alkalinityDkh);
		const { constants, totals } = seawater(water);
		const sampleKg = (sampleVolumeMl / 1000) * density;
		const massKg = sampleKg + (addedMl / 1000) * densityKgPerL(0, 25);
		const kept = sampleKg / massKg;
		const toFree = 1 + totals.sulfateMolPerKg / constants.kS;
		const toTotal = 1 + (totals.sulfateMolPerKg * kept) / constants.kS;
		const change = toTotal / toFree;
		return phAtAlkalinity(
			(sample.alkalinityMolPerKg * sampleKg - (acidL * addedMl) / 1000) / massKg,
			{
				dicMolPerKg: sample.dicMolPerKg * kept,
				dyes: [],
				medium: {
					...mediumOf('seawater', 35, 25, 0),
					totals: {
						borateMolPerKg: totals.borateMolPerKg * kept,
						sulfateMolPerKg: totals.sulfateMolPerKg * kept,
						fluorideMolPerKg: totals.fluorideMolPerKg * kept,
						calciumMolPerKg: totals.calciumMolPerKg * kept
					},
					constants: {
						...constants,
						k1: constants.k1 * change,
						k2: constants.k2 * change,
						kB: constants.kB * change,
						kW: constants.kW * change
					}
				}
			}
		);
	}
	const differenceDkh = (alkalinityDkh: number, acidL: number) => {
		const sample = waterOf(alkalinityDkh);
		const most = (3 * equivalenceMl(alkalinityDkh) * acidMolPerL) / acidL;
		const inWater = (addedMl: number) =>
			titrateWithAcid({ ...sample, sampleVolumeMl, acidMolPerL: acidL }, [addedMl])[0]!.ph;
		const inSalt = (addedMl: number) => phWithSaltyAcid(alkalinityDkh, acidL, addedMl);
		const endMl = [whereIs(4.5, inWater, most), whereIs(4.5, inSalt, most)];
		const [one, other] = endMl.map((ml) => dkhFromMeqPerL((1000 * acidL * ml) / sampleVolumeMl));
		return { dkh: Math.abs(one! - other!), dilution: endMl[0]! / sampleVolumeMl };
	};

	it('matters less than 0.006 dKH at pH 4.5 up to 13 dKH and a dilution of 15 %', () => {
		for (const alkalinityDkh of [4, 7, 10, 13])
			for (const dilution of [0.05, 0.1, 0.15]) {
				const acidL = (equivalenceMl(alkalinityDkh) * acidMolPerL) / (dilution * sampleVolumeMl);
				const found = differenceDkh(alkalinityDkh, acidL);
				expect(Math.abs(found.dilution - dilution)).toBeLessThan(0.01);
				expect(found.dkh).toBeLessThan(0.006);
			}
	});

	it('matters about 0.02 dKH at a dilution of half', () => {
		const acidL = (equivalenceMl(7) * acidMolPerL) / (0.5 * sampleVolumeMl);
		const { dkh } = differenceDkh(7, acidL);
		expect(dkh).toBeGreaterThan(0.01);
		expect(dkh).toBeLessThan(0.03);
	});
});
