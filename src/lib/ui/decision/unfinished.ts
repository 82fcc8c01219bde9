import { nothingSaid, putSaid, saidAt } from '../conversation/forms/draft-store';
import type { Blanks } from '../conversation/forms/form';

/** Drafts of a decision are kept beside those of its conversation, and do not touch them. */
const placeOf = (checkId: string) => `${checkId} decision`;

/** What stands in the blanks of one part of the page and cannot count yet. */
export const unfinishedIn = (checkId: string, part: string): Blanks =>
	saidAt(placeOf(checkId)).blanks[part] ?? {};

/** Keeps it over a reload, every letter; nothing is kept of what counts. */
export function keepUnfinished(checkId: string, part: string, texts: Blanks): void {
	const { [part]: _, ...others } = saidAt(placeOf(checkId)).blanks;
	const blanks = Object.keys(texts).length === 0 ? others : { ...others, [part]: { ...texts } };
	putSaid(placeOf(checkId), Object.keys(blanks).length === 0 ? null : { ...nothingSaid, blanks });
}
