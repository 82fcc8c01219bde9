import { describe, expect, it } from 'vitest';
import { fitAlkalinityTitration, granEndPoint, type GranOptions } from '../../src/lib/chemistry';
import dickson from './data/dickson-1981-table-1.json';

// Dickson 1981 (Deep-Sea Res. 28A:609), table 1: a simulated titration of 200 g of seawater with
// 0.3 mol/kg of acid, pH on the free scale to six decimals. What went in is printed with it.
const points = dickson.phFreeByAcidG.map(([acidG, ph]) => ({ addedMl: acidG!, ph: ph! }));
const TRUE_ALKALINITY = dickson.alkalinityMolPerKg;
const toTotal = 1 + dickson.sulfateMolPerKg * dickson.betaHSO4;

/** Acid is given in grams there: at 1 kg/L a gram is a millilitre. */
const usual = {
	sampleMassG: dickson.sampleG,
	acidMolPerL: dickson.acidMolPerKg,
	acidDensityKgPerL: 1,
	acidMatrix: 'sodiumChloride' as const,
	salinity: 35,
	temperatureC: 25
};
/** The paper's constants are on the free scale, ours on the total scale. */
const withItsConstants = {
	...usual,
	sampleChemistry: {
		constants: {
			k1: dickson.k1 * toTotal,
			k2: (dickson.k1TimesK2 / dickson.k1) * toTotal,
			kB: dickson.kB * toTotal,
			kW: dickson.kW * toTotal,
			kS: 1 / dickson.betaHSO4,
			kF: 1 / dickson.betaHF
		},
		totals: {
			borateMolPerKg: dickson.borateMolPerKg,
			sulfateMolPerKg: dickson.sulfateMolPerKg,
			fluorideMolPerKg: dickson.fluorideMolPerKg
		}
	}
};
const micro = (molPerKg: number) => molPerKg * 1e6;

describe('the fit on the published titration', () => {
	it('finds 2450 and 2200 µmol/kg with the constants of the paper, and no offset', () => {
		const fit = fitAlkalinityTitration(points, withItsConstants);
		// pH is printed to 0.000001, of which a thousandth of a µmol/kg is left in 51 readings.
		expect(Math.abs(micro(fit.alkalinityMolPerKg - TRUE_ALKALINITY))).toBeLessThan(0.001);
		expect(Math.abs(micro(fit.dicMolPerKg - dickson.dicMolPerKg))).toBeLessThan(0.001);
		expect(Math.abs(fit.offsetPh)).toBeLessThan(1e-6);
		expect(Math.abs(fit.slope - 1)).toBeLessThan(1e-6);
		expect(fit.isSlopeFitted).toBe(true);
		expect(fit.isConverged).toBe(true);
		for (const { residualPh } of fit.points) expect(Math.abs(residualPh)).toBeLessThan(1e-6);
	});

	it('and by the last part alone, as of an open vessel, within 0.02', () => {
		const fit = fitAlkalinityTitration(points, { ...withItsConstants, vessel: 'open' });
		expect(Math.abs(micro(fit.alkalinityMolPerKg - TRUE_ALKALINITY))).toBeLessThan(0.02);
	});

	it('finds a meter that shows 0.2 too much with 97 % of the slope, and the same alkalinity', () => {
		const shown = points.map(({ addedMl, ph }) => ({ addedMl, ph: 4.2 + 0.97 * (ph - 4) }));
		const fit = fitAlkalinityTitration(shown, withItsConstants);
		expect(fit.offsetPh).toBeCloseTo(0.2, 5);
		expect(fit.slope).toBeCloseTo(0.97, 5);
		expect(Math.abs(micro(fit.alkalinityMolPerKg - TRUE_ALKALINITY))).toBeLessThan(0.001);
	});

	// With constants of its own (pK1 0.05 lower, hydrogen sulfate weaker by a quarter than in the paper)
	// the fit has to bend; what the difference costs is what wrong constants can cost at all.
	it.each(['closed', 'open'] as const)(
		'with the constants that this project takes, %s: within 0.05 %',
		(vessel) => {
			const fit = fitAlkalinityTitration(points, { ...usual, vessel });
			expect(Math.abs(fit.alkalinityMolPerKg / TRUE_ALKALINITY - 1)).toBeLessThan(0.0005);
		}
	);
});

describe('Gran functions on the published titration', () => {
	/** As a meter would show it that is set to the total scale, for which the windows are meant. */
	const onTotalScale = points.map(({ addedMl, ph }) => ({ addedMl, ph: ph - Math.log10(toTotal) }));
	const errorPercent = (options: Partial<GranOptions>) =>
		100 *
		(granEndPoint(onTotalScale, { ...withItsConstants, ...options }).alkalinityMolPerKg /
			TRUE_ALKALINITY -
			1);

	// The plain function is low in a closed vessel; the sizes looked for were worked out beforehand by
	// a separate program for other constants, and weights.
	it.each([
		[3.0, 3.5, -0.3],
		[3.5, 4.0, -1.3]
	])('the plain one, pH %d to %d: about %d %', (low, high, percent) => {
		const found = errorPercent({ windowPh: { low, high } });
		console.log(`plain Gran, pH ${low} to ${high}: ${found.toFixed(2)} %`);
		expect(Math.abs(found - percent)).toBeLessThan(0.15);
	});

	it('the corrected one, given the carbon: within 0.01 %, in any window', () => {
		for (const [low, high] of [
			[3.0, 3.5],
			[3.0, 4.0],
			[3.3, 4.3]
		] as const)
			expect(
				Math.abs(
					errorPercent({
						granFunction: 'hanssonJagner1973',
						windowPh: { low, high },
						dicMolPerKg: dickson.dicMolPerKg
					})
				)
			).toBeLessThan(0.01);
	});

	it('the corrected one with carbon taken for granted: within 0.05 % from 3.0 to 3.5', () => {
		expect(Math.abs(errorPercent({ granFunction: 'hanssonJagner1973' }))).toBeLessThan(0.05);
	});
});
