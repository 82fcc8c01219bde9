import { convertValue, type Analyte, type Unit } from '../../kits';
import type { EvidenceOf } from '../../observation';
import type { Content } from './recipe';
import type { AdditionMade } from './recipe-addition';
import type { RecipeMatrix } from './recipe-water';
import { substanceOf, type SubstanceId } from './recipe-substance';

/** Evidence that lacks nothing but the reading of the kit. */
export type ReferencePart = Omit<EvidenceOf<'reference'>, 'reading'>;
export type AdditionPart = Omit<EvidenceOf<'addition'>, 'reading'>;
export type BlankPart = Omit<EvidenceOf<'blank'>, 'reading'>;
export type RecipePart = ReferencePart | AdditionPart | BlankPart;

/**
 * A solution as made, as evidence for a reading in `unit`.
 *
 * @param solution its name: readings of one solution share what is wrong with it
 */
export function referencePart(
	content: Content,
	about: { substance: SubstanceId; matrix: RecipeMatrix; unit: Unit; solution?: string }
): ReferencePart {
	const { analyte } = substanceOf(about.substance);
	const inUnit = (value: number) => convertValue(value, content.unit, about.unit, analyte);
	return {
		kind: 'reference',
		nominal: inUnit(content.value),
		nominalExpandedUncertainty: inUnit(content.expandedUncertainty),
		matrix: about.matrix,
		...(about.solution === undefined ? {} : { solution: about.solution })
	};
}

/** A standard addition as made, as evidence for a reading in `unit`. */
export function additionPart(
	made: AdditionMade,
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): AdditionPart {
	const inUnit = (value: number) => convertValue(value, made.unit, unit, analyte);
	return {
		kind: 'addition',
		added: inUnit(made.added),
		addedExpandedUncertainty: inUnit(made.addedExpandedUncertainty)
	};
}

/** The water of a solution without the powder, as evidence. */
export function blankPart(matrix: RecipeMatrix): BlankPart {
	return { kind: 'blank', matrix };
}
