import * as z from 'zod/mini';
import { Persisted } from '../../state';

const KEY = 'halfdrop.check-drafts';

const BlanksSchema = z.record(z.string(), z.string());
const SaidSchema = z.strictObject({
	/** The sentence that stands open, and what stands in its blanks. */
	open: z.nullable(z.string()),
	blanks: z.record(z.string(), BlanksSchema)
});
/** What was typed and set aside in one check and is not evidence yet. */
export type SaidSoFar = z.infer<typeof SaidSchema>;
type Drafts = Readonly<Record<string, SaidSoFar>>;

export const nothingSaid: SaidSoFar = { open: null, blanks: {} };

/** What was stored, one by one: a damaged draft is lost alone. */
function readDrafts(stored: unknown): Drafts {
	if (typeof stored !== 'object' || stored === null) return {};
	const sound = Object.entries(stored).flatMap(([place, draft]) => {
		const read = SaidSchema.safeParse(draft);
		return read.success ? [[place, read.data] as const] : [];
	});
	return Object.fromEntries(sound);
}

/** Checks whose drafts are remembered; older ones are done or forgotten. */
const MOST = 30;
/** Where storage is refused, drafts last as long as the page. */
let inMemory: Drafts = {};
/** Read anew each time: another window may write in another check meanwhile. */
const open = () => new Persisted<Drafts>(KEY, inMemory, readDrafts);

/** What was said so far at a place: a check by its id, or 'new'. */
export const saidAt = (place: string): SaidSoFar => open().current[place] ?? nothingSaid;

/** Keeps what was said so far; null forgets it. */
export function putSaid(place: string, said: SaidSoFar | null): void {
	const kept = open();
	const others = Object.entries(kept.current).filter(([other]) => other !== place);
	inMemory = Object.fromEntries(
		said === null ? others : [...others.slice(1 - MOST), [place, said]]
	);
	kept.current = inMemory;
}
