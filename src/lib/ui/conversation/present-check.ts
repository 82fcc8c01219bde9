import type { CheckRanking, RankedCheck } from '$lib/judgement';

/** A check, or pair of checks, or question, by a name of its own. */
export const keyOf = (each: RankedCheck): string =>
	each.kind === 'cue' ? each.cue : each.checks.join('+');

/** What the page proposes: what was picked, else what comes next, else the best; null where nothing is left, or a number comes first. */
export function presentOf(ranking: CheckRanking | null, picked: string | null): RankedCheck | null {
	const ranked = ranking?.ranked ?? [];
	const chosen = ranked.find((each) => keyOf(each) === picked);
	if (chosen || ranking?.isNumberFirst) return chosen ?? null;
	return ranking?.next ?? ranked[0] ?? null;
}

/** Whether the page says that it is enough: not to somebody who has picked a further check. */
export const isEnoughNow = (ranking: CheckRanking | null, picked: string | null): boolean =>
	ranking?.isEnough === true && picked === null;
