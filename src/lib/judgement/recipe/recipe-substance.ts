import { molarMasses } from '../catalogue/molar-masses';
import { unitOf, type Analyte, type Unit } from '../../kits';

/**
 * Powders of which a solution of known content can be made. A further one is a further record.
 * Molar masses from IUPAC standard atomic weights.
 */
export type Substance = {
	analyte: Analyte;
	/** For a sentence: 'weigh … of sodium bicarbonate'. */
	name: string;
	/** What it brings into the water beside the alkalinity: twice as much carbon dioxide, or once. */
	dissolvesAs: 'bicarbonate' | 'carbonate';
	gPerMol: number;
	/** Of the analyte in one mol: equivalents, where the base unit counts those. */
	perMol: number;
	/** What dissolves in a litre of cold water without waiting for it; below solubility at 5 °C. */
	mostGPerL: number;
	/** By how much a gram in a litre makes the water denser, g/mL per g/mL: 1 − molar volume / molar mass. */
	densityRise: number;
	/** The label's promise where it gives none: within 0.5 % of pure, any share alike (judgement). */
	purity: Purity;
};

/** Share of the substance in the powder and how far it may lie from it, any share alike: 1 and 0.005. */
export type Purity = { share: number; halfWidth: number };

const purity: Purity = { share: 1, halfWidth: 0.005 };

/**
 * Solubility in cold water, about 75 g/L of bicarbonate and 80 g/L of carbonate at 5 °C, and molar
 * volumes at infinite dilution, 22 and −7 mL/mol (Millero 1971, Chem. Rev. 71:147): from memory.
 */
export const substances = {
	sodiumBicarbonate: {
		analyte: 'alkalinity',
		name: 'sodium bicarbonate',
		dissolvesAs: 'bicarbonate',
		gPerMol: molarMasses.sodiumBicarbonate,
		perMol: 1,
		mostGPerL: 60,
		densityRise: 0.73,
		purity
	},
	driedSodiumCarbonate: {
		analyte: 'alkalinity',
		name: 'dried sodium carbonate',
		dissolvesAs: 'carbonate',
		gPerMol: molarMasses.sodiumCarbonate,
		perMol: 2,
		mostGPerL: 60,
		densityRise: 1.05,
		purity
	}
} as const satisfies Record<string, Substance>;
export type SubstanceId = keyof typeof substances;

/** @throws RangeError naming the substances there are */
export function substanceOf(id: SubstanceId): Substance {
	const known: Substance | undefined = substances[id];
	if (!known)
		throw new RangeError(
			`substance must be one of ${Object.keys(substances).join(', ')}; found ${String(id)}`
		);
	return known;
}

/** What a gram of the pure substance holds, in the unit, when it is dissolved to one litre. */
export function contentOfGramPerL(id: SubstanceId, unit: Unit): number {
	const { analyte, gPerMol, perMol } = substanceOf(id);
	return (1000 * perMol) / gPerMol / unitOf(unit, analyte).size;
}

/** Grams of the pure substance in a litre that holds `value` of the unit. */
export function gramsPerL(id: SubstanceId, value: number, unit: Unit): number {
	return value / contentOfGramPerL(id, unit);
}

/**
 * What is in the tin when it is not what it is taken for, and by which share the solution then
 * differs: −0.63 holds 63 % less. A range where it may be so in part. Computed from molar masses.
 */
export const mistakenFor = {
	sodiumBicarbonate: {
		partlyCarbonated: {
			low: 0,
			high: (2 * molarMasses.sodiumBicarbonate) / molarMasses.sodiumCarbonate - 1
		}
	},
	driedSodiumCarbonate: {
		monohydrate: one(
			molarMasses.sodiumCarbonate / (molarMasses.sodiumCarbonate + molarMasses.water) - 1
		),
		decahydrate: one(
			molarMasses.sodiumCarbonate / (molarMasses.sodiumCarbonate + 10 * molarMasses.water) - 1
		),
		stillBicarbonate: {
			low: molarMasses.sodiumCarbonate / (2 * molarMasses.sodiumBicarbonate) - 1,
			high: 0
		}
	}
} as const satisfies Record<SubstanceId, Record<string, { low: number; high: number }>>;

function one(share: number) {
	return { low: share, high: share };
}
