import * as z from 'zod/mini';
import { Persisted } from '../../state/persisted.svelte';

const DraftSchema = z.strictObject({
	/** The test, and its titration by number, that is filled again. */
	testId: z.string(),
	titration: z.number(),
	by: z.enum(['seal', 'line']),
	before: z.string(),
	after: z.string()
});
/** A refill that is being noted: what was typed so far, every letter. */
export type RefillDraft = z.infer<typeof DraftSchema>;
type Kept = RefillDraft | null;

const KEY = 'halfdrop.refill-draft';
const read = (stored: unknown): Kept => DraftSchema.safeParse(stored).data ?? null;
/** Where storage is refused, it lasts as long as the page. */
let inMemory: Kept = null;
const open = () => new Persisted<Kept>(KEY, inMemory, read);

/** The refill that stands open in this titration; null where none does. */
export function refillDraftOf(testId: string, titration: number): Kept {
	const draft = open().current;
	return draft?.testId === testId && draft.titration === titration ? draft : null;
}

/** Keeps it over a reload; null forgets it. There is one at a time: a hand fills one syringe. */
export function keepRefillDraft(draft: Kept): void {
	inMemory = draft;
	open().current = draft;
}
