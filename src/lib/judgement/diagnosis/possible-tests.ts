import { convertValue, type Unit } from '../../kits';
import { checkIds, type CheckId, type Evidence, type Reading } from '../../observation';
import { suits } from '../catalogue/suits';
import { checkNeeds, checkPairs } from '../ranking/checks';
import type { Row, RowContext } from './row';

/** What is taken of a check that was not made yet, where the evidence does not tell. All judgement. */
const figures = {
	/** Expanded uncertainty of a second method, as a share of the value; of a probe titration; of a solution. */
	secondMethod: 0.06,
	probe: 0.025,
	solution: 0.025,
	/** Of a piece of ware that was weighed. */
	weighing: 0.01
};

/** A check, and the evidence that it would bring. */
export type PossibleCheck = { check: CheckId; evidence: Evidence };

/** The same for an analysis, which brings what it made of the evidence; two repeats are two tests. */
export const foreseenChecks =
	(evidence: readonly Evidence[]) =>
	(rows: readonly Row[], context: RowContext): PossibleCheck[] => {
		const checks = possibleChecks(evidence, rows, context);
		const again = checkPairs.flatMap(([one, two]) => (one === two ? [one] : []));
		return [...checks, ...checks.filter(({ check }) => again.includes(check))];
	};

/** The checks that could be made now, each as the evidence it would bring; its value says nothing. */
export function possibleChecks(
	evidence: readonly Evidence[],
	rows: readonly Row[],
	context: RowContext
): PossibleCheck[] {
	const { water } = context;
	const first = evidence[context.firstAt];
	const question = rows.find(({ isInQuestion }) => isInQuestion);
	const value = question?.value ?? water.usual.mean;
	const converted = (amount: number, from: Unit) =>
		convertValue(amount, from, water.unit, context.method.analyte);
	const claimed = (share: number, of: number): Reading => ({
		id: 'possible',
		label: 'possible',
		value: of,
		expandedUncertainty: share * of,
		unit: water.unit
	});
	// Rows stand in an order that does not depend on the order of the evidence.
	const reference = rows.map(({ at }) => evidence[at]).find((each) => each?.kind === 'reference');
	const second = rows.find(
		({ things, isEarlier }) => things.instrument !== null && things.sampling !== null && !isEarlier
	);
	const isOnlyHere = new Set<CheckId>(['secondMethod', 'probeTitration']);
	return checkIds.flatMap((check): PossibleCheck[] => {
		if (!question && !isOnlyHere.has(check)) return [];
		const needs = checkNeeds[check];
		if (needs && !suits({ needs }, context.method)) return [];
		const made = evidenceOf(check);
		return made ? [{ check, evidence: made }] : [];
	});

	function ownReading(of: number): Reading {
		const own = first && 'reading' in first ? first.reading : null;
		const scale = own ? converted(1, own.unit) : 1;
		const sd = own?.repeatabilitySd;
		return {
			id: 'possible',
			label: 'possible',
			value: of,
			expandedUncertainty: own ? Math.abs(own.expandedUncertainty * scale) : 0.06 * of,
			...(sd === undefined ? {} : { repeatabilitySd: Math.abs(sd * scale) }),
			unit: water.unit
		};
	}

	/** The known solution that there is, else one as a careful person would make it. */
	function referenceRead(instrument: string | null): Evidence {
		const known = reference
			? {
					nominal: converted(reference.nominal, reference.reading.unit),
					nominalExpandedUncertainty: converted(
						reference.nominalExpandedUncertainty,
						reference.reading.unit
					),
					matrix: reference.matrix,
					...(reference.madeWith === undefined ? {} : { madeWith: reference.madeWith }),
					...(reference.solution === undefined ? {} : { solution: reference.solution })
				}
			: {
					nominal: water.usual.mean,
					nominalExpandedUncertainty: figures.solution * water.usual.mean,
					matrix: water.referenceMatrix,
					solution: 'possible'
				};
		return instrument === null
			? { kind: 'reference', reading: ownReading(known.nominal), ...known }
			: {
					kind: 'reference',
					reading: claimed(figures.secondMethod, known.nominal),
					...known,
					instrument
				};
	}

	function evidenceOf(check: CheckId): Evidence | null {
		switch (check) {
			case 'secondMethod':
				return {
					kind: 'secondMethod',
					reading: claimed(figures.secondMethod, value),
					instrument: 'possible'
				};
			case 'probeTitration':
				return {
					kind: 'secondMethod',
					reading: claimed(figures.probe, value),
					method: 'probe',
					instrument: 'possibleProbe'
				};
			case 'reference':
				return referenceRead(null);
			case 'referenceBySecondMethod':
				return second?.things.instrument ? referenceRead(second.things.instrument) : null;
			case 'standardAddition':
				return {
					kind: 'addition',
					reading: ownReading(value * 1.5),
					added: value * 0.5,
					addedExpandedUncertainty: value * 0.5 * figures.solution
				};
			case 'blank':
				return { kind: 'blank', reading: { ...ownReading(0) }, matrix: 'sodiumChloride' };
			case 'weighSampleWare':
			case 'weighTitrantWare':
				return {
					kind: 'weighing',
					ware: check === 'weighSampleWare' ? 'sample' : 'titrant',
					foundOverNominal: 1,
					expandedUncertainty: figures.weighing
				};
			case 'largerSample':
			case 'smallerSample': {
				const { repeatabilitySd: _, ...reading } = ownReading(value);
				return { kind: 'test', reading, from: check };
			}
			default:
				return { kind: 'test', reading: ownReading(value), from: check };
		}
	}
}
