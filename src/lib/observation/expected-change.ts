import type { EvidenceOf } from './evidence';

/**
 * The change to be expected since an earlier reading, in the reading's unit: as it was said, or dosed less
 * consumed; 0 where nobody said either. Null where one of the two alone is known: the other may be anything,
 * and is not nothing.
 */
export function expectedChangeOf({
	expectedChange,
	dosed,
	consumed
}: Pick<EvidenceOf<'earlier'>, 'expectedChange' | 'dosed' | 'consumed'>): number | null {
	if (expectedChange !== undefined) return expectedChange;
	if (dosed === undefined && consumed === undefined) return 0;
	return dosed === undefined || consumed === undefined ? null : dosed - consumed;
}
