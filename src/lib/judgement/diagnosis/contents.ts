import type { EvidenceOf } from '../../observation';
import type { Loading, Row, RowContext } from './row';
import { solution, tankNow, tankThen } from './tank-amount';
import { thingsOfTest, type Things } from './things';

/** Evidence that the kit in question brought. */
export type Tested = EvidenceOf<'test' | 'reference' | 'addition' | 'blank' | 'earlier'>;

/** Readings of one solution share it; a solution without a name is known by what it holds. */
export const solutionOf = (
	evidence: EvidenceOf<'reference'>,
	inUnit: (value: number) => number
): string =>
	evidence.solution === undefined
		? `unnamed:${evidence.matrix}:${inUnit(evidence.nominal).toPrecision(6)}`
		: `named:${evidence.solution}`;

/** By which things a test of any kind came about. */
export function thingsOf(evidence: Tested, inUnit: (value: number) => number): Things {
	switch (evidence.kind) {
		case 'test':
			return thingsOfTest(evidence.differs, evidence.from);
		case 'reference':
			return {
				...thingsOfTest(evidence.differs, 'first'),
				sampling: null,
				takenOff: null,
				solution: solutionOf(evidence, inUnit)
			};
		case 'blank':
			return { ...thingsOfTest(evidence.differs, 'first'), sampling: null, takenOff: null };
		case 'earlier':
			return {
				...thingsOfTest(evidence.differs, 'first'),
				sampling: `days:${evidence.daysAgo}`
			};
		case 'addition':
			return thingsOfTest(evidence.differs, 'first');
	}
}

/** What water that is not pure may hold, in ordinary spreads of water that holds nothing: 0.6 dKH; judgement. */
const MOST_IN_SPREADS = 12;

/**
 * What the water of a blank holds. The content of a known solution made in such water may have been
 * worked out from this very blank, as if the water held any part of what was read: it cannot be taken to
 * hold nothing here and the reading be counted twice. Anything in between is then as likely.
 */
function waterOfBlank(
	{ reading, matrix }: EvidenceOf<'blank'>,
	{ water, madeIn }: RowContext,
	inUnit: (value: number) => number
): Pick<Row, 'amountMean' | 'amountLoadings'> {
	const most = madeIn.has(matrix)
		? Math.min(MOST_IN_SPREADS * water.blankSd, Math.max(0, inUnit(reading.value)))
		: 0;
	return {
		amountMean: most / 2,
		amountLoadings: [
			{ of: `blank:${matrix}`, amount: Math.hypot(water.blankSd, most / Math.sqrt(12)) }
		]
	};
}

/** What was in the vial, and by how much a sound kit reads it otherwise. */
export function contentOf(
	evidence: Tested,
	things: Things,
	context: RowContext,
	inUnit: (value: number) => number
): Pick<Row, 'amountMean' | 'amountLoadings' | 'shift'> & { effects: Loading[] } {
	const none = { shift: 0, effects: [] };
	const effectOf = ({ matrix, nominal, madeWith }: EvidenceOf<'reference'>) => {
		const { mean, standardDeviation } = context.water.matrixEffect(
			matrix,
			inUnit(nominal),
			madeWith
		);
		return {
			shift: mean,
			effects: [{ of: `matrix:${matrix}:${madeWith ?? ''}`, amount: standardDeviation }]
		};
	};
	switch (evidence.kind) {
		case 'test':
			return { ...tankNow(context, things.sampling), ...none };
		case 'earlier':
			return {
				...tankThen(context, evidence, inUnit),
				...none
			};
		case 'addition': {
			const now = tankNow(context, things.sampling);
			const added = inUnit(evidence.added);
			const sd = inUnit(evidence.addedExpandedUncertainty) / 2;
			return {
				amountMean: now.amountMean + added,
				amountLoadings: [...now.amountLoadings, { of: `added:${evidence.reading.id}`, amount: sd }],
				...none
			};
		}
		case 'reference':
			return {
				...solution(
					things.solution ?? '',
					inUnit(evidence.nominal),
					inUnit(evidence.nominalExpandedUncertainty)
				),
				...effectOf(evidence)
			};
		case 'blank':
			return {
				...waterOfBlank(evidence, context, inUnit),
				shift: 0,
				effects: [{ of: `blankEnd:${evidence.matrix}`, amount: context.water.blankEndSd }]
			};
	}
}
