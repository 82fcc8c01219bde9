import type { EvidenceOf } from '../../observation';
import type { Row, RowContext } from './row';
import { nothing, OWN } from './things';

/**
 * Water weighed as a row: a reading of 1 by the ware's own factor. More sample than the mark says
 * makes a test read high by as much; more titrant than the mark says makes it read low.
 */
export function rowOfWeighing(
	evidence: EvidenceOf<'weighing'>,
	at: number,
	{ method }: RowContext
): Row {
	const { ware, foundOverNominal } = evidence;
	const isSample = ware === 'sample';
	const standardUncertainty = evidence.expandedUncertainty / 2;
	// Of what is left when another value is taken off, the ware's share is so much larger.
	const { wholeOverValue = 1 } = method;
	return {
		at,
		value: 1 + wholeOverValue * ((isSample ? foundOverNominal : 1 / foundOverNominal) - 1),
		isInQuestion: false,
		isEarlier: false,
		things: isSample
			? { ...nothing, sampleWare: OWN, hands: OWN }
			: { ...nothing, titrantWare: OWN, hands: OWN },
		weighed: ware,
		perMl: 0,
		amountMean: 1,
		amountLoadings: [],
		shares: isSample
			? [{ of: `sampleWare:${OWN}`, amount: method.sampleWareSd }]
			: [{ of: `titrantWare:${OWN}`, amount: method.titrantWareSd }],
		loadings: [],
		shift: 0,
		scatterVariance:
			(wholeOverValue *
				(isSample ? standardUncertainty : standardUncertainty / foundOverNominal ** 2)) **
			2,
		sharedStepVariance: 0,
		step: 0,
		alike: ''
	};
}
