import { describe, expect, it } from 'vitest';
import {
	alkalinityAt,
	densityKgPerL,
	dicFromAlkalinityAndPh,
	dkhFromMolPerKg,
	phAtAlkalinity,
	phFromAlkalinityAndDic,
	type Composition
} from '../../src/lib/chemistry';
import dickson from './data/dickson-1981-table-1.json';
import pyco2sys from './data/pyco2sys-states.json';

describe('pH of seawater from alkalinity and carbon', () => {
	it.each(pyco2sys.states)(
		'$alkalinityMicromolPerKg and $dicMicromolPerKg µmol/kg at salinity $salinity, $temperatureC °C',
		(state) => {
			const { salinity, temperatureC, alkalinityDkh } = state;
			const water = { salinity, temperatureC };
			const alkalinityMolPerKg = state.alkalinityMicromolPerKg * 1e-6;
			const dicMolPerKg = state.dicMicromolPerKg * 1e-6;
			const ph = phFromAlkalinityAndDic({ ...water, alkalinityMolPerKg, dicMolPerKg });
			expect(ph).toBeCloseTo(state.phSameChoices, 5);
			// Humphreys et al. 2022 chose otherwise for fluoride and water.
			expect(Math.abs(ph - state.phOtherProgram)).toBeLessThan(0.0005);

			const dic = dicFromAlkalinityAndPh({ ...water, alkalinityMolPerKg, ph: state.phSameChoices });
			expect(Math.abs(dic - dicMolPerKg)).toBeLessThan(1e-9);

			const density = densityKgPerL(salinity, temperatureC);
			expect(density * 1000).toBeCloseTo(state.densityKgPerM3, 3);
			expect(dkhFromMolPerKg(alkalinityMolPerKg, density)).toBeCloseTo(alkalinityDkh, 4);
		}
	);
});

/** Table 1 of Dickson 1981: constants stay as they are, every total is diluted. */
function dicksonAt(acidG: number): { alkalinityMolPerKg: number; composition: Composition } {
	const { sampleG, acidMolPerKg } = dickson;
	const kept = sampleG / (sampleG + acidG);
	const sulfateMolPerKg = dickson.sulfateMolPerKg * kept;
	const kS = 1 / dickson.betaHSO4;
	// Its constants stand on the free scale; ours are asked for on the total scale of the mixture.
	const toTotal = 1 + sulfateMolPerKg / kS;
	return {
		alkalinityMolPerKg:
			(dickson.alkalinityMolPerKg * sampleG - acidMolPerKg * acidG) / (sampleG + acidG),
		composition: {
			dicMolPerKg: dickson.dicMolPerKg * kept,
			dyes: [],
			medium: {
				matrix: 'seawater',
				salinity: 35,
				temperatureC: 25,
				ionicStrength: 0.72,
				dyePhShift: 0,
				totals: {
					borateMolPerKg: dickson.borateMolPerKg * kept,
					sulfateMolPerKg,
					fluorideMolPerKg: dickson.fluorideMolPerKg * kept,
					calciumMolPerKg: 0
				},
				constants: {
					k0: 1,
					k1: dickson.k1 * toTotal,
					k2: (dickson.k1TimesK2 / dickson.k1) * toTotal,
					kB: dickson.kB * toTotal,
					kW: dickson.kW * toTotal,
					kS,
					kF: 1 / dickson.betaHF
				}
			}
		}
	};
}

describe('the simulated titration of Dickson 1981 (Deep-Sea Res. 28A:609), table 1', () => {
	it.each(dickson.phFreeByAcidG.map(([acidG, phFree]) => ({ acidG: acidG!, phFree: phFree! })))(
		'$acidG g of acid: pH $phFree on the free scale',
		({ acidG, phFree }) => {
			const { alkalinityMolPerKg, composition } = dicksonAt(acidG);
			const { constants, totals } = composition.medium;
			const toFree = Math.log10(1 + totals.sulfateMolPerKg / constants.kS);
			const ph = phAtAlkalinity(alkalinityMolPerKg, composition);
			expect(ph + toFree).toBeCloseTo(phFree, 5);

			const out = { value: 0, slope: 0 };
			alkalinityAt(10 ** -(phFree - toFree), composition, out);
			// The printed pH has six decimals, worth this much in alkalinity.
			expect(Math.abs(out.value - alkalinityMolPerKg)).toBeLessThan(out.slope * 1e-6);
		}
	);
});
