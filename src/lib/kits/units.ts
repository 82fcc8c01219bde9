import { densityKgPerL } from '../chemistry/density';
import {
	CACO3_G_PER_MOL,
	CALCIUM_G_PER_MOL,
	MAGNESIUM_G_PER_MOL,
	dkhFromPpmCaCO3,
	MEQ_PER_L_PER_DKH,
	meqPerLFromDkh
} from '../chemistry/units';
import type { Analyte, Unit } from './kit';

/** A unit of an analyte: how it is called, what it means, and its size in the analyte's base unit. */
export type UnitOfAnalyte = { name: string; explanation: string; size: number };

/** What is known of the units of an analyte. A further analyte is a further record. */
export type AnalyteUnits = {
	/** What it is called within a sentence. */
	name: string;
	/** The unit in which sizes are given, for people who read this file. */
	base: string;
	/** Those that a leaflet may use, the customary first, with the decimals customary for each. */
	units: Partial<Record<Unit, UnitOfAnalyte & { decimals: number }>>;
	/** Those in which a value may be given elsewhere, and which are easily taken for one of ours. */
	traps: readonly UnitOfAnalyte[];
	/** Between which a tank's value can plausibly lie, in the base unit. */
	plausible: { low: number; high: number };
};

const meqPerLFromPpmCaCO3 = (ppmCaCO3: number) => meqPerLFromDkh(dkhFromPpmCaCO3(ppmCaCO3));
/** HCO3, IUPAC standard atomic weights, g/mol. */
const BICARBONATE_G_PER_MOL = 61.0168;
/** A grain in mg and an imperial gallon in litres, both by definition (Units of Measurement Regulations 1995). */
const GRAIN_MG = 64.79891;
const IMPERIAL_GALLON_L = 4.54609;
const OCEAN_KG_PER_L = densityKgPerL(35, 25);

const PER_KG =
	'Millimoles in a kilogram of seawater, as oceanographers count: 2.3 % more in a litre.';
const mmolPerL = (of: string) => ({
	name: 'mmol/L',
	explanation: `Millimoles of ${of} in a litre.`,
	size: 1,
	decimals: 1
});
const mmolPerKg = {
	name: 'mmol/kg',
	explanation: PER_KG,
	size: OCEAN_KG_PER_L,
	decimals: 1
};
const asCalciumCarbonate = (explanation: string) => ({
	name: 'ppm CaCO₃',
	explanation,
	size: 1 / CACO3_G_PER_MOL
});
/** A German degree of total hardness is 10 mg of CaO in a litre: 1 / 56.077 g/mol. */
const GERMAN_HARDNESS = {
	name: 'German degrees',
	explanation: 'Total hardness: 10 mg of CaO in a litre, 0.178 mmol/L of calcium and magnesium.',
	size: 10 / 56.077
};

export const analyteUnits: Record<Analyte, AnalyteUnits> = {
	alkalinity: {
		name: 'alkalinity',
		base: 'meq/L',
		units: {
			dKH: {
				name: 'dKH',
				explanation:
					'German degrees of carbonate hardness: 1 dKH is the alkalinity of 10 mg of CaO in a litre, or 0.357 meq/L.',
				size: MEQ_PER_L_PER_DKH,
				decimals: 1
			},
			'meq/L': {
				name: 'meq/L',
				explanation: 'Milliequivalents in a litre: 1 meq/L takes up 1 mmol/L of acid; 2.80 dKH.',
				size: 1,
				decimals: 2
			},
			'ppm CaCO3': {
				name: 'ppm CaCO₃',
				explanation:
					'Milligrams of calcium carbonate in a litre that would take up as much acid; 17.8 ppm are 1 dKH.',
				size: meqPerLFromPpmCaCO3(1),
				decimals: 0
			},
			'mmol/L': {
				name: 'mmol/L',
				explanation: 'Millimoles of acid taken up by a litre: the same number as meq/L.',
				size: 1,
				decimals: 2
			}
		},
		traps: [
			{
				name: 'mmol/kg',
				explanation: 'Per kilogram of seawater, as oceanographers count: 2.3 % more in a litre.',
				size: OCEAN_KG_PER_L
			},
			{
				name: 'µmol/kg',
				explanation: 'Millionths of a mole in a kilogram of seawater: 1000 times mmol/kg.',
				size: OCEAN_KG_PER_L / 1000
			},
			{
				name: 'mmol/L CaCO₃',
				explanation: 'Millimoles of calcium carbonate, which take up two of acid: half of meq/L.',
				size: 2
			},
			{
				name: 'mg/L HCO₃',
				explanation: 'Milligrams of bicarbonate in a litre: 1.22 times the number in ppm CaCO₃.',
				size: 1 / BICARBONATE_G_PER_MOL
			},
			{
				name: 'English degrees',
				explanation: 'Grains of CaCO₃ in an imperial gallon: 14.25 mg/L each, 0.80 of a dKH.',
				size: meqPerLFromPpmCaCO3(GRAIN_MG / IMPERIAL_GALLON_L)
			},
			{
				name: 'French degrees',
				explanation: '10 mg/L CaCO₃ each, 0.56 of a dKH.',
				size: meqPerLFromPpmCaCO3(10)
			}
		],
		// 4 to 15 dKH: common practice, no source.
		plausible: { low: meqPerLFromDkh(4), high: meqPerLFromDkh(15) }
	},
	calcium: {
		name: 'calcium',
		base: 'mmol/L',
		units: {
			'mg/L': {
				name: 'mg/L',
				explanation: 'Milligrams of calcium in a litre, often called ppm; 40.08 mg/L are 1 mmol/L.',
				size: 1 / CALCIUM_G_PER_MOL,
				decimals: 0
			},
			'mmol/L': mmolPerL('calcium'),
			'mmol/kg': mmolPerKg
		},
		traps: [
			asCalciumCarbonate(
				'Milligrams of calcium carbonate: 2.5 times the number in mg/L of calcium.'
			),
			GERMAN_HARDNESS
		],
		// 250 to 600 mg/L: common practice, no source.
		plausible: { low: 250 / CALCIUM_G_PER_MOL, high: 600 / CALCIUM_G_PER_MOL }
	},
	magnesium: {
		name: 'magnesium',
		base: 'mmol/L',
		units: {
			'mg/L': {
				name: 'mg/L',
				explanation:
					'Milligrams of magnesium in a litre, often called ppm; 24.31 mg/L are 1 mmol/L.',
				size: 1 / MAGNESIUM_G_PER_MOL,
				decimals: 0
			},
			'mmol/L': mmolPerL('magnesium'),
			'mmol/kg': mmolPerKg
		},
		traps: [
			asCalciumCarbonate(
				'As if the magnesium were calcium carbonate: 4.1 times the number in mg/L.'
			)
		],
		// 900 to 1800 mg/L: common practice, no source.
		plausible: { low: 900 / MAGNESIUM_G_PER_MOL, high: 1800 / MAGNESIUM_G_PER_MOL }
	},
	hardness: {
		name: 'calcium and magnesium together',
		base: 'mmol/L',
		units: {
			'mmol/L': mmolPerL('calcium and magnesium together'),
			'mmol/kg': mmolPerKg,
			'mg/L': {
				name: 'mg/L as Mg',
				explanation:
					'Milligrams in a litre if calcium and magnesium were all magnesium; 24.31 are 1 mmol/L.',
				size: 1 / MAGNESIUM_G_PER_MOL,
				decimals: 0
			},
			'ppm CaCO3': {
				...asCalciumCarbonate(
					'Milligrams in a litre if calcium and magnesium were all calcium carbonate.'
				),
				decimals: 0
			}
		},
		traps: [GERMAN_HARDNESS],
		// Calcium and magnesium at the ends of what is plausible for each.
		plausible: {
			low: 250 / CALCIUM_G_PER_MOL + 900 / MAGNESIUM_G_PER_MOL,
			high: 600 / CALCIUM_G_PER_MOL + 1800 / MAGNESIUM_G_PER_MOL
		}
	}
};

/** The units that a leaflet for this analyte may use, the customary one first. */
export function unitsOf(analyte: Analyte): Unit[] {
	return Object.keys(analyteUnits[analyte].units) as Unit[];
}

/** What an analyte is called: within a sentence, or with a capital at the start of one. */
export function analyteName(analyte: Analyte, place: 'within' | 'start' = 'within'): string {
	const { name } = analyteUnits[analyte];
	return place === 'within' ? name : name.charAt(0).toUpperCase() + name.slice(1);
}

/** A unit that somebody prefers where this analyte is measured in it, else its customary one. */
export function unitFor(analyte: Analyte, preferred: Unit | undefined): Unit {
	const known = unitsOf(analyte);
	const [customary] = known;
	if (customary === undefined) throw new RangeError(`${analyte} must have a unit; found none`);
	return preferred !== undefined && known.includes(preferred) ? preferred : customary;
}

/**
 * How a unit is written, what it means, and how large it is for an analyte.
 *
 * @throws RangeError naming the unit when the analyte is not measured in it
 */
export function unitOf(
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): UnitOfAnalyte & { decimals: number } {
	const known = analyteUnits[analyte].units[unit];
	if (!known)
		throw new RangeError(
			`unit must be one of ${unitsOf(analyte).join(', ')} for ${analyte}; found ${unit}`
		);
	return known;
}

/** How a unit is written on the page. */
export function unitName(unit: Unit, analyte: Analyte = 'alkalinity'): string {
	return unitOf(unit, analyte).name;
}

/** A value, or a difference or uncertainty of one, in another unit of its analyte. */
export function convertValue(
	value: number,
	from: Unit,
	to: Unit,
	analyte: Analyte = 'alkalinity'
): number {
	if (from === to) return value;
	return (value * unitOf(from, analyte).size) / unitOf(to, analyte).size;
}

/** Between which a tank's value can plausibly lie, in a unit. */
export function plausibleRange(
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): { low: number; high: number } {
	const { low, high } = analyteUnits[analyte].plausible;
	const { size } = unitOf(unit, analyte);
	return { low: low / size, high: high / size };
}

/**
 * A value, or its expanded uncertainty, to the tens or hundreds where the uncertainty tells no more: the
 * coarsest that changes the uncertainty by no more than a quarter of it. Below 20 it stays as it is.
 */
export function roundedAs(value: number, expandedUncertainty: number | undefined): number {
	if (expandedUncertainty === undefined || !(expandedUncertainty >= 20)) return value;
	const step = 10 ** Math.floor(Math.log10(expandedUncertainty / 2) + 1e-9);
	return Math.round(value / step) * step;
}

/**
 * Decimals to show of a value and its expanded uncertainty: the fewest that change the uncertainty
 * by no more than a quarter of it; without one, those customary for the unit. From 0 to 4.
 */
export function decimalsFor(
	unit: Unit,
	expandedUncertainty?: number,
	analyte: Analyte = 'alkalinity'
): number {
	if (expandedUncertainty === undefined || !(expandedUncertainty > 0))
		return unitOf(unit, analyte).decimals;
	const decimals = Math.ceil(Math.log10(2 / expandedUncertainty) - 1e-9);
	return Math.min(4, Math.max(0, decimals));
}
