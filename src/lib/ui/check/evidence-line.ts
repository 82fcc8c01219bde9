import type { BenchEvidence, Reading } from '$lib/observation';
import type { LineReading } from '../charts/readings-line';

/** Evidence as readings of the picture: the one in question hollow, what is known of a solution beside it. */
export function evidenceLine(
	inQuestion: Reading | null,
	evidence: readonly BenchEvidence[]
): LineReading[] {
	return evidence.map((each): LineReading => {
		const { id, label, value, expandedUncertainty } = each.reading;
		return {
			id,
			label:
				each.kind === 'earlier'
					? `${label}, ${each.daysAgo === 0 ? 'today' : `${each.daysAgo} d ago`}`
					: label,
			value,
			expandedUncertainty,
			shape: each.kind === 'secondMethod' ? 'square' : 'circle',
			isUncertain: id === inQuestion?.id,
			...(each.kind === 'reference'
				? {
						nominal: {
							value: each.nominal,
							expandedUncertainty: each.nominalExpandedUncertainty
						}
					}
				: {})
		};
	});
}
