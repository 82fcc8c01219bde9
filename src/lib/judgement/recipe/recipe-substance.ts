import { unitOf, type Analyte, type Unit } from '../../kits';
import { molarMasses } from '../catalogue/molar-masses';

const { sodiumBicarbonate, sodiumCarbonate, water } = molarMasses;
const { calciumChloride, magnesiumChloride, magnesiumSulfate } = molarMasses;

/** What takes it up in a test: acid, or EDTA. */
type TakenUp =
	| {
			analyte: 'alkalinity';
			/** What it brings into the water beside the alkalinity: twice as much carbon dioxide, or once. */
			dissolvesAs: 'bicarbonate' | 'carbonate';
	  }
	| { analyte: 'calcium' | 'hardness'; dissolvesAs: null };

/**
 * Powders of which a solution of known content can be made. A further one is a further record.
 * Molar masses from IUPAC standard atomic weights.
 */
export type Substance = TakenUp & {
	/** For a sentence: 'weigh … of sodium bicarbonate'. */
	name: string;
	gPerMol: number;
	/** Of the analyte in one mol: equivalents, where the base unit counts those. */
	perMol: number;
	/** What dissolves in a litre of cold water without waiting for it; below solubility at 5 °C. */
	mostGPerL: number;
	/** By how much a gram in a litre makes the water denser, g/mL per g/mL: 1 − molar volume / molar mass. */
	densityRise: number;
	/** What is in the powder where the label says nothing: any share alike within the half-width. */
	purity: Purity;
	/** The water warms up as it dissolves. */
	growsHot?: true;
};

/** Share of the substance in the powder and how far it may lie from it, any share alike: 1 and 0.005. */
export type Purity = { share: number; halfWidth: number };

/** Within 0.5 % of pure (judgement). */
const purity: Purity = { share: 1, halfWidth: 0.005 };

/**
 * Solubility in cold water, about 75 g/L of bicarbonate and 80 g/L of carbonate at 5 °C, and molar
 * volumes at infinite dilution, 22 and −7 mL/mol (Millero 1971, Chem. Rev. 71:147): from memory.
 *
 * Of the salts of metals a litre takes more than is asked for here: 160 g of calcium chloride warm the water
 * by about 12 °C (−45 kJ/mol, from memory), and beyond that it would have to cool for long (judgement); more
 * than 500 g of the others dissolve. Rises of density by handbook tables at 20 °C (2 and 10 % by weight of the
 * salt without its water: CaCl2 1.0148 and 1.0835, MgSO4 1.0186 and 1.1034, MgCl2 1.0146 and 1.0816 g/mL): from
 * memory.
 *
 * Their purity is that of the water in their crystals, which comes and goes. Assays as the salt with its water,
 * from memory: CaCl2·2H2O 99.0 to 105.0 % (ACS reagent) and 97.0 to 103.0 % (Ph. Eur.), of which the middle and
 * the half-width are taken; MgSO4·7H2O 98.0 to 102.0 % (ACS); MgCl2·6H2O 99.0 to 102.0 % (ACS), taken as wide as
 * calcium chloride since it draws water as well (judgement).
 */
export const substances = {
	sodiumBicarbonate: {
		analyte: 'alkalinity',
		name: 'sodium bicarbonate',
		dissolvesAs: 'bicarbonate',
		gPerMol: sodiumBicarbonate,
		perMol: 1,
		mostGPerL: 60,
		densityRise: 0.73,
		purity
	},
	driedSodiumCarbonate: {
		analyte: 'alkalinity',
		name: 'dried sodium carbonate',
		dissolvesAs: 'carbonate',
		gPerMol: sodiumCarbonate,
		perMol: 2,
		mostGPerL: 60,
		densityRise: 1.05,
		purity
	},
	calciumChlorideDihydrate: {
		analyte: 'calcium',
		name: 'calcium chloride dihydrate',
		dissolvesAs: null,
		gPerMol: calciumChloride + 2 * water,
		perMol: 1,
		mostGPerL: 160,
		densityRise: 0.6,
		purity: { share: 1.01, halfWidth: 0.03 },
		growsHot: true
	},
	magnesiumSulfateHeptahydrate: {
		analyte: 'hardness',
		name: 'Epsom salt',
		dissolvesAs: null,
		gPerMol: magnesiumSulfate + 7 * water,
		perMol: 1,
		mostGPerL: 320,
		densityRise: 0.48,
		purity: { share: 1, halfWidth: 0.02 }
	},
	magnesiumChlorideHexahydrate: {
		analyte: 'hardness',
		name: 'magnesium chloride hexahydrate',
		dissolvesAs: null,
		gPerMol: magnesiumChloride + 6 * water,
		perMol: 1,
		mostGPerL: 320,
		densityRise: 0.37,
		purity: { share: 1, halfWidth: 0.03 }
	}
} as const satisfies Record<string, Substance>;
export type SubstanceId = keyof typeof substances;

/** Of what a known solution can be made. */
export type MadeAnalyte = Substance['analyte'];

/** @throws RangeError naming the substances there are */
export function substanceOf(id: SubstanceId): Substance {
	const known: Substance | undefined = substances[id];
	if (!known)
		throw new RangeError(
			`substance must be one of ${Object.keys(substances).join(', ')}; found ${String(id)}`
		);
	return known;
}

/** Powders for a solution of an analyte, the usual one first; none where nothing is made of it. */
export function substancesFor(analyte: Analyte): SubstanceId[] {
	return (Object.keys(substances) as SubstanceId[]).filter(
		(id) => substances[id].analyte === analyte
	);
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

/** By which share a solution differs when its powder weighs so much for each mol instead. */
const weighing = (id: SubstanceId, gPerMol: number) => substances[id].gPerMol / gPerMol - 1;

/**
 * What is in the tin when it is not what it is taken for, and by which share the solution then
 * differs: −0.63 holds 63 % less. A range where it may be so in part. Computed from molar masses.
 */
export const mistakenFor = {
	sodiumBicarbonate: {
		partlyCarbonated: { low: 0, high: (2 * sodiumBicarbonate) / sodiumCarbonate - 1 }
	},
	driedSodiumCarbonate: {
		monohydrate: one(weighing('driedSodiumCarbonate', sodiumCarbonate + water)),
		decahydrate: one(weighing('driedSodiumCarbonate', sodiumCarbonate + 10 * water)),
		stillBicarbonate: { low: sodiumCarbonate / (2 * sodiumBicarbonate) - 1, high: 0 }
	},
	calciumChlorideDihydrate: {
		anhydrousCalcium: one(weighing('calciumChlorideDihydrate', calciumChloride)),
		hexahydrateCalcium: one(weighing('calciumChlorideDihydrate', calciumChloride + 6 * water)),
		drewWater: {
			low: weighing('calciumChlorideDihydrate', calciumChloride + 6 * water),
			high: 0
		}
	},
	magnesiumSulfateHeptahydrate: {
		driedEpsom: one(weighing('magnesiumSulfateHeptahydrate', magnesiumSulfate + water)),
		lostWater: {
			low: 0,
			high: weighing('magnesiumSulfateHeptahydrate', magnesiumSulfate + 6 * water)
		}
	},
	magnesiumChlorideHexahydrate: {
		anhydrousMagnesium: one(weighing('magnesiumChlorideHexahydrate', magnesiumChloride))
	}
} as const satisfies Record<SubstanceId, Record<string, { low: number; high: number }>>;

function one(share: number) {
	return { low: share, high: share };
}
