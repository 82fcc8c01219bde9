import { numberText, typedNumber, unitName, unitsOf, type Analyte, type Unit } from '$lib/kits';
import type { Circumstances, KnownSolution, Matrix } from '$lib/observation';

/** What stands in the fields of a known solution, as typed. Empty is not said. */
export type SolutionDraft = {
	solutionNominal: string;
	solutionBand: string;
	solutionUnit: Unit | '';
	solutionMatrix: Matrix | '';
	solutionName: string;
};
export type SolutionProblems = Partial<Record<keyof SolutionDraft, string>>;

export const solutionFields = [
	'solutionNominal',
	'solutionBand',
	'solutionUnit',
	'solutionMatrix',
	'solutionName'
] as const satisfies readonly (keyof SolutionDraft)[];

/** What it is made in, in the order in which it is offered. */
export const matrixNames = {
	seawater: 'salt water',
	purified: 'pure water',
	sodiumChloride: 'plain salt (NaCl) in water'
} satisfies Record<Matrix, string>;

/** The units in which its content may be stated, by their keys. */
export function unitNames(analyte: Analyte): Record<string, string> {
	return Object.fromEntries(unitsOf(analyte).map((unit) => [unit, unitName(unit, analyte)]));
}

/** Fields as they stand when this much has been said. */
export function solutionDraftOf(said: Circumstances['reference']): SolutionDraft {
	return {
		solutionNominal: said ? String(said.nominal) : '',
		solutionBand: said ? String(said.expandedUncertainty) : '',
		solutionUnit: said?.unit ?? '',
		solutionMatrix: said?.matrix ?? '',
		solutionName: said?.name ?? ''
	};
}

const contentRange = { low: 1e-4, high: 1e5, why: 'What it holds is a number above 0' };
const bandRange = { low: 1e-4, high: 1e5, why: 'Its ± is a number above 0' };

/**
 * What the fields say: nothing while all are empty, the solution when it is all there, and else what
 * is missing where. Half of it would be no known solution.
 */
export function knownSolutionOf(draft: SolutionDraft): {
	reference: KnownSolution | undefined;
	problems: SolutionProblems;
} {
	const isSaid = solutionFields.some((field) => draft[field].trim() !== '');
	if (!isSaid) return { reference: undefined, problems: {} };
	const problems: SolutionProblems = {};
	const number = (
		field: 'solutionNominal' | 'solutionBand',
		what: string,
		range: typeof bandRange
	) => {
		const typed = typedNumber(draft[field], what, range);
		if ('value' in typed) return typed.value;
		problems[field] = typed.problem;
		return null;
	};
	const nominal = number('solutionNominal', 'what the solution holds', contentRange);
	const expandedUncertainty = number('solutionBand', 'how surely that is known, as ±', bandRange);
	const { solutionUnit: unit, solutionMatrix: matrix } = draft;
	if (unit === '') problems.solutionUnit = 'Which unit is that in?';
	if (matrix === '') problems.solutionMatrix = 'What is it made in?';
	if (nominal === null || expandedUncertainty === null || unit === '' || matrix === '')
		return { reference: undefined, problems };
	const name = draft.solutionName.trim().slice(0, 200);
	return {
		reference: { nominal, expandedUncertainty, unit, matrix, ...(name ? { name } : {}) },
		problems
	};
}

/** A known solution in a few words, with the digits it was stated with: '8 ± 0.1 dKH, March'. */
export function solutionWords(
	{ nominal, expandedUncertainty, unit, name }: KnownSolution,
	analyte: Analyte
): string {
	const content = `${numberText(nominal)} ± ${numberText(expandedUncertainty)} ${unitName(unit, analyte)}`;
	return name ? `${content}, ${name}` : content;
}
