import type { Unit } from '../../kits';
import type { Measure } from './recipe-measure';
import type { MadeAnalyte, Purity, SubstanceId } from './recipe-substance';
import type { RecipeMatrix, WaterHolds } from './recipe-water';

/** An amount and how it is measured, in g on a scale and in mL otherwise. */
export type Measured = { amount: number; measure: Measure };

/** Something is put into a vessel, which is then made up to a total. */
export type Stage = {
	/** Powder in the first stage, some of the solution of the stage before in the others. */
	portion: Measured;
	total: Measured;
};

export type RecipeRoute = 'direct' | 'stockWeighed' | 'stockSyringe' | 'twoDilutions';

/** How to make a solution of known content, as plain data. */
export type Recipe = {
	route: RecipeRoute;
	substance: SubstanceId;
	purity: Purity;
	matrix: RecipeMatrix;
	/** What the water itself holds, in `unit`. */
	waterHolds: WaterHolds;
	unit: Unit;
	target: number;
	temperatureC: number;
	/** At least one; the last makes the solution itself. */
	stages: readonly Stage[];
};

/** What was really measured, stage by stage; what is left out is as planned. */
export type FoundAmounts = readonly Partial<Record<'portion' | 'total', number>>[];

/** One part of the uncertainty of a content. */
export type ContentPart = {
	/** 'powder', 'stock water', … : what was measured or assumed. */
	of: 'powder' | 'stock portion' | 'stock water' | 'water' | 'purity' | 'water itself';
	/** How it is uncertain. */
	kind: 'division' | 'linearity' | 'repeatability' | 'line' | 'syringe' | 'assumed';
	/** Of the content, in its unit. */
	standardUncertainty: number;
};

/** What a solution holds. */
export type Content = {
	value: number;
	unit: Unit;
	/** Of what: with the unit it says what the value means. */
	analyte: MadeAnalyte;
	standardUncertainty: number;
	/** k = 2, about 95 %. */
	expandedUncertainty: number;
	/** Standard uncertainty over value. */
	relativeStandardUncertainty: number;
	parts: readonly ContentPart[];
};
