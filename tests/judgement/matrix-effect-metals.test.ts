import { describe, expect, it } from 'vitest';
import { chelationEndVolumeMl, type EdtaTitration } from '../../src/lib/chemistry';
import {
	metalEffects,
	metalMatrixEffect,
	workedOutAtMetals
} from '../../src/lib/judgement/catalogue/matrix-effect-metals';
import { houseCalciumKit, houseHardnessKit } from '../../src/lib/kits';

/** Densities of seawater (S 35) and of purified water at 25 °C, kg/L: textbook. */
const [SEA, PURE] = [1.0233, 0.997];
const CALCIUM = 420 / 40.078;
type Water = Partial<EdtaTitration>;
const metals = (calcium: number, magnesium: number, kgPerL: number): Water => ({
	calciumMolPerKg: calcium / 1000 / kgPerL,
	magnesiumMolPerKg: magnesium / 1000 / kgPerL
});
const plain = { strontiumMolPerKg: 0 };
/** mg/L by the house calcium kit, mmol/L by that of both metals; offsets fall out of differences. */
const calciumRead = (water: Water) =>
	300 *
	(chelationEndVolumeMl({
		salinity: 35,
		temperatureC: 25,
		volumeMl: 8,
		edtaMolPerL: houseCalciumKit.contents?.titrant.molPerL ?? Number.NaN,
		edtaHydroxidePerMol: 2,
		base: { volumeMl: 0.63, hydroxideMolPerL: 2, carbonateMolPerL: 0.01 },
		indicator: { dyeId: 'hydroxynaphtholBlue', mol: 3e-7 },
		...water
	}) ?? Number.NaN);
const bothRead = (water: Water) =>
	40 *
	(chelationEndVolumeMl({
		salinity: 35,
		temperatureC: 25,
		volumeMl: 2.5,
		edtaMolPerL: houseHardnessKit.contents?.titrant.molPerL ?? Number.NaN,
		ammoniaBuffer: { volumeMl: 0.45, ammoniaMolPerL: 5, ammoniumMolPerL: 1 },
		indicator: { dyeId: 'eriochromeBlackT', mol: 1.2e-7 },
		...water
	}) ?? Number.NaN);

describe('a known solution of metals beside seawater of the same content, by the chemistry of the end', () => {
	it.each(workedOutAtMetals.calcium.map((mg, i) => [mg, i] as const))(
		'calcium without magnesium, %d mg/L',
		(mg, i) => {
			const sea = calciumRead({ calciumMolPerKg: mg / 40.078 / 1000 / SEA });
			const salt = calciumRead({ ...metals(mg / 40.078, 0, SEA), ...plain });
			const pure = calciumRead({ ...metals(mg / 40.078, 0, PURE), ...plain, salinity: 0 });
			expect(
				Math.abs(salt - sea - (metalEffects.calcium.sodiumChloride.value[i] ?? NaN))
			).toBeLessThan(0.3);
			expect(Math.abs(pure - sea - (metalEffects.calcium.purified.value[i] ?? NaN))).toBeLessThan(
				0.3
			);
		}
	);
	it.each(workedOutAtMetals.magnesium.map((mg, i) => [mg, i] as const))(
		'both metals, magnesium of %d mg/L',
		(mg, i) => {
			const amount = mg / 24.305;
			const sea = bothRead(metals(CALCIUM, amount, SEA));
			const salt = bothRead({ ...metals(CALCIUM, amount, SEA), ...plain }) - sea;
			const pure = bothRead({ ...metals(CALCIUM, amount, PURE), ...plain, salinity: 0 }) - sea;
			const { hardness, magnesium } = metalEffects;
			expect(Math.abs(salt - (hardness.sodiumChloride.value[i] ?? NaN))).toBeLessThan(0.03);
			expect(Math.abs(pure - (hardness.purified.value[i] ?? NaN))).toBeLessThan(0.03);
			expect(Math.abs(24.305 * pure - (magnesium.purified.value[i] ?? NaN))).toBeLessThan(1);
			expect(Math.abs(24.305 * salt - (magnesium.sodiumChloride.value[i] ?? NaN))).toBeLessThan(1);
		}
	);
	it('lies between its contents, and is flat beyond them', () => {
		const at = (mg: number) => metalMatrixEffect('calcium', 'purified', mg).mean;
		expect([at(200), at(300), at(420), at(500), at(900)]).toEqual([2.6, 2.6, 5, 6.7, 6.7]);
		expect(at(360)).toBeCloseTo(3.8, 6);
		expect(metalMatrixEffect('calcium', 'seawater', 420).mean).toBe(0);
		expect(() => at(Number.NaN)).toThrow(RangeError);
	});
});
