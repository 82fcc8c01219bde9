import type { RecipePart } from '$lib/judgement';
import type { Unit } from '$lib/kits';

/** What a check gets of this page: evidence that lacks the kit's reading, its figures in `unit`. */
export type UsedPart = {
	part: RecipePart;
	unit: Unit;
	/** Of a blank: what the kit read on the water alone. */
	reading?: { value: number; expandedUncertainty: number };
	/** What a sound kit should read, for the words beside the blank. */
	expected?: { low: number; high: number };
};
