import { draftSchema, type KitDraft } from '$lib/kits';
import { Persisted } from '../state';

const KEY = 'halfdrop.kit-drafts';
type Drafts = Readonly<Record<string, KitDraft>>;

/** What was stored, one by one: a damaged draft is lost alone. */
function readDrafts(stored: unknown): Drafts {
	if (typeof stored !== 'object' || stored === null) return {};
	const drafts: Record<string, KitDraft> = {};
	for (const [place, draft] of Object.entries(stored)) {
		const read = draftSchema.safeParse(draft);
		if (read.success) drafts[place] = read.data;
	}
	return drafts;
}

/** Where storage is refused, drafts last as long as the page. */
let inMemory: Drafts = {};

/** Read anew each time: another window may type in another kit meanwhile. */
const open = () => new Persisted<Drafts>(KEY, inMemory, readDrafts);

/** All that was typed in and not kept yet, by the place where it was typed. */
export const allDrafts = (): Drafts => open().current;

/** Keeps what stands in the blanks at this place; null forgets it. */
export function putDraft(place: string, draft: KitDraft | null): void {
	const kept = open();
	const others = Object.entries(kept.current).filter(([other]) => other !== place);
	inMemory = Object.fromEntries(draft === null ? others : [...others, [place, draft]]);
	kept.current = inMemory;
}
