import type { BenchEvidence, Evidence, Reading } from '../../observation';
import type { MatrixEffect } from './facts';

/**
 * Evidence of the practice bench as evidence about one reading: that reading is the test in question,
 * whichever it was when it was made, and the learner's own first test is then a repeat of it.
 *
 * @param matrixEffect what a known solution reads over its content with this kit; where it is not
 *   given, what is generally known of such solutions holds
 */
export function aboutReading(
	reading: Reading,
	evidence: readonly BenchEvidence[],
	matrixEffect: MatrixEffect = {}
): Evidence[] {
	const others = evidence.filter((each) => each.reading.id !== reading.id);
	return [
		{ kind: 'test', from: 'first', reading },
		...others.map((each): Evidence => {
			if (each.kind === 'test' && each.from === 'first') return { ...each, from: 'repeatFull' };
			const effect = each.kind === 'reference' ? matrixEffect[each.matrix] : undefined;
			return each.kind === 'reference' && effect !== undefined
				? { ...each, nominal: each.nominal + effect, matrix: 'seawater' }
				: each;
		})
	];
}
