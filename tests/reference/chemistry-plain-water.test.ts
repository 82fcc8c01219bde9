import { describe, expect, it } from 'vitest';
import {
	addAcid,
	addIndicator,
	colourOf,
	densityKgPerL,
	dicAtAlkalinityAndPh,
	dkhFromMeqPerL,
	fillVessel,
	loseCarbonDioxide,
	mediumOf,
	molPerKgFromDkh,
	phAtAlkalinity,
	phOf,
	type Matrix,
	type SeenColour,
	type Vessel
} from '../../src/lib/chemistry';

const pKOf = (matrix: Matrix, salinity: number, temperatureC: number, saltMolPerKg = 0) => {
	const { constants } = mediumOf(matrix, salinity, temperatureC, saltMolPerKg);
	return [constants.k1, constants.k2, constants.kW].map((k) => -Math.log10(k)) as [
		number,
		number,
		number
	];
};

describe('constants of water without sea salt', () => {
	// Thermodynamic constants. 25 °C: CRC Handbook of Chemistry and Physics (pKw 13.995). Others:
	// Harned & Davis 1943 (J. Am. Chem. Soc. 65:2030) and Harned & Scholes 1941 (63:1706), tables,
	// from memory.
	it.each([
		[5, 6.517, 10.557],
		[15, 6.419, 10.43],
		[25, 6.352, 10.329],
		[35, 6.309, 10.25]
	])('%d °C: pK1 %d, pK2 %d', (temperatureC, pK1, pK2) => {
		const found = pKOf('purified', 0, temperatureC);
		expect(Math.abs(found[0] - pK1)).toBeLessThan(0.005);
		expect(Math.abs(found[1] - pK2)).toBeLessThan(0.007);
		if (temperatureC === 25) expect(Math.abs(found[2] - 13.995)).toBeLessThan(0.005);
	});

	// Thurmond & Millero 1982 (J. Solution Chem. 11:447), table IV, measured in NaCl at 25 °C. The
	// model is made of the values at 0.5 and 0.7; those at 1.0 it has to meet by itself.
	it.each([
		[0.7, 5.984, 9.53, 0.001],
		[0.5, 5.997, 9.58, 0.001],
		[1, 5.97, 9.48, 0.02]
	])('NaCl of %d mol/kg: pK1 %d, pK2 %d', (molPerKg, pK1, pK2, tolerance) => {
		const found = pKOf('sodiumChloride', molPerKg * 58.44, 25);
		expect(Math.abs(found[0] - pK1)).toBeLessThan(tolerance);
		expect(Math.abs(found[1] - pK2)).toBeLessThan(tolerance);
	});

	// Mean activity coefficients of NaCl at 25 °C: Robinson & Stokes 1959, from memory.
	it.each([
		[0.001, 0.965, 0.002],
		[0.01, 0.902, 0.003],
		[0.1, 0.778, 0.006]
	])('at ionic strength %d the activity coefficient of one charge is %d', (i, gamma, tolerance) => {
		const { dyePhShift } = mediumOf('purified', 0, 25, i);
		expect(Math.abs(10 ** -dyePhShift - gamma)).toBeLessThan(tolerance);
	});

	it('does not jump where one model of activity takes over from the other', () => {
		for (const seam of [0.1, 0.5]) {
			const below = mediumOf('purified', 0, 25, seam - 1e-7);
			const above = mediumOf('purified', 0, 25, seam + 1e-7);
			expect(Math.abs(below.dyePhShift - above.dyePhShift)).toBeLessThan(1e-6);
			expect(Math.abs(below.constants.k1 / above.constants.k1 - 1)).toBeLessThan(1e-5);
			expect(Math.abs(below.constants.k2 / above.constants.k2 - 1)).toBeLessThan(1e-5);
		}
	});
});

describe('pH of known solutions', () => {
	// Primary standard of pH: 0.025 mol/kg each of NaHCO3 and Na2CO3, pH 10.012 at 25 °C (Bates
	// 1973, Determination of pH; also NIST and IUPAC). Its ionic strength is 0.1.
	it('carbonate buffer: 10.012', () => {
		const medium = mediumOf('purified', 0, 25, 0.1);
		const ph = phAtAlkalinity(0.075, { medium, dicMolPerKg: 0.05, dyes: [] });
		expect(Math.abs(ph + medium.dyePhShift - 10.012)).toBeLessThan(0.03);
	});

	// Textbook: pure water left in air comes to pH 5.6.
	it('water in air: 5.6', () => {
		let vessel: Vessel = fillVessel({
			matrix: 'purified',
			salinity: 0,
			temperatureC: 25,
			alkalinityMolPerKg: 0,
			dicMolPerKg: 1e-4,
			volumeMl: 100
		});
		for (let swirl = 0; swirl < 40; swirl++) vessel = loseCarbonDioxide(vessel, 1);
		expect(Math.abs(phOf(vessel) - 5.6)).toBeLessThan(0.03);
	});
});

// A reference of 8 dKH in plain water, titrated as seawater is. The sizes looked for were worked out
// beforehand by a separate program and are no published figures; that the fresh-water colour comes
// at a higher pH follows from Yao & Byrne 1998.
describe('a known solution of 8 dKH against seawater of 8 dKH', () => {
	const acidMolPerL = 0.1;
	const dropMl = 0.02;
	const sampleMl = 5;
	const dose = {
		volumeMl: 0.05,
		dyes: [
			{ dyeId: 'bromocresolGreen', molPerL: 1.433e-3, addedAs: 'salt' as const },
			{ dyeId: 'methylRed', molPerL: 0.743e-3, addedAs: 'salt' as const }
		]
	};
	type Solution = 'seawater' | 'bicarbonate' | 'carbonate' | 'bicarbonateInNaCl';

	function sampleOf(solution: Solution): Vessel {
		const matrix: Matrix =
			solution === 'seawater'
				? 'seawater'
				: solution === 'bicarbonateInNaCl'
					? 'sodiumChloride'
					: 'purified';
		const salinity = matrix === 'purified' ? 0 : 35;
		const alkalinityMolPerKg = molPerKgFromDkh(8, densityKgPerL(salinity, 25));
		const dicMolPerKg =
			solution === 'seawater'
				? dicAtAlkalinityAndPh(alkalinityMolPerKg, 8.1, {
						medium: mediumOf('seawater', 35, 25, 0),
						dyes: []
					})
				: alkalinityMolPerKg / (solution === 'carbonate' ? 2 : 1);
		const water = { matrix, salinity, temperatureC: 25, alkalinityMolPerKg, dicMolPerKg };
		return addIndicator(fillVessel({ ...water, volumeMl: sampleMl }), dose);
	}

	/** dKH read when the vial first looks as wanted, CO2 leaving by a share of its excess per drop. */
	function readDkh(solution: Solution, loss: number, isAtEnd: (seen: SeenColour) => boolean) {
		const withAcid = (vessel: Vessel, volumeMl: number) =>
			loseCarbonDioxide(addAcid(vessel, { volumeMl, molPerL: acidMolPerL }), loss);
		const isPast = (vessel: Vessel) => isAtEnd(colourOf(vessel, 2, 'white'));
		let vessel = sampleOf(solution);
		let addedMl = 0;
		while (!isPast(withAcid(vessel, dropMl))) {
			vessel = withAcid(vessel, dropMl);
			addedMl += dropMl;
		}
		let low = 0;
		let high = dropMl;
		for (let i = 0; i < 30; i++) {
			const middle = (low + high) / 2;
			if (isPast(withAcid(vessel, middle))) high = middle;
			else low = middle;
		}
		return dkhFromMeqPerL((1000 * acidMolPerL * (addedMl + high)) / sampleMl);
	}
	const atHue = (hue: number) => (seen: SeenColour) => {
		const { hueDegrees } = seen.lab;
		return (hueDegrees < 150 ? hueDegrees + 360 : hueDegrees) >= hue;
	};
	const losses = [0, 0.05, 0.1];
	const differences = (solution: Solution, hue: number) =>
		losses.map(
			(loss) => readDkh(solution, loss, atHue(hue)) - readDkh('seawater', loss, atHue(hue))
		);

	it.each([320, 330, 340, 350])(
		'to hue %d, bicarbonate in purified water reads 0.1 to 0.3 dKH low',
		(hue) => {
			for (const difference of differences('bicarbonate', hue)) {
				expect(difference).toBeLessThan(-0.1);
				expect(difference).toBeGreaterThan(-0.3);
			}
		}
	);

	it('reads lower the rosier the colour waited for', () => {
		const [mauve, rose] = [325, 355].map((hue) => differences('bicarbonate', hue));
		mauve!.forEach((difference, i) => {
			expect(difference).toBeGreaterThan(-0.2);
			expect(rose![i]!).toBeLessThan(-0.2);
		});
	});

	it('made in 35 g/L of NaCl it reads as seawater does, within 0.06 dKH', () => {
		for (const hue of [320, 340, 360])
			for (const difference of differences('bicarbonateInNaCl', hue))
				expect(Math.abs(difference)).toBeLessThan(0.06);
	});

	it('carbonate, which brings half the CO2, reads about 0.1 above bicarbonate in a closed vial', () => {
		for (const hue of [330, 345, 360]) {
			const difference =
				readDkh('carbonate', 0, atHue(hue)) - readDkh('bicarbonate', 0, atHue(hue));
			expect(difference).toBeGreaterThan(0.05);
			expect(difference).toBeLessThan(0.2);
		}
	});

	it('by a meter to pH 4.5 instead of by colour, it reads high', () => {
		const { dyePhShift } = mediumOf('purified', 0, 25, 0.0029);
		// A meter set on buffers shows pH by activity; in seawater that is 0.1 to 0.15 above the
		// total scale (from memory).
		for (const seawaterShift of [0, 0.13]) {
			const plain = readDkh('bicarbonate', 0, ({ ph }) => ph + dyePhShift <= 4.5);
			const sea = readDkh('seawater', 0, ({ ph }) => ph + seawaterShift <= 4.5);
			expect(plain - sea).toBeGreaterThan(0.05);
			expect(plain - sea).toBeLessThan(0.25);
		}
	});
});
