import type { Addition } from './event-queries';

/** Drops that one note of an addition stands for; a part touched off is none of its own. */
export const dropsIn = ({ event }: Addition): number =>
	event.type === 'drop.touchedOff' ? 0.5 : (event.drops ?? 1);

/** Presses faster than this count up what fell before, seconds a drop. */
const FASTEST_S = 0.5;
/** Drops this near in time went in at once: no swirl has room between them, seconds a drop. */
const AT_ONCE_S = 1.2;

/** Seconds for each drop of an addition since the one before it. */
function secondsEach(additions: readonly Addition[], i: number): number {
	const [one, before] = [additions[i], additions[i - 1]];
	if (!one || !before) return Number.POSITIVE_INFINITY;
	return (one.at - before.at) / 1000 / Math.max(1, dropsIn(one));
}

/**
 * Was the last drop noted when it fell? Many in one note, or presses faster than drops, were counted
 * up afterwards: their time says nothing.
 */
export function isLastTimed(additions: readonly Addition[]): boolean {
	const last = additions.at(-1);
	return (
		last !== undefined &&
		dropsIn(last) <= 1 &&
		secondsEach(additions, additions.length - 1) >= FASTEST_S
	);
}

/**
 * Drops that went in at once at the end, where the drops before them were noted one by one as they
 * fell; 0 where nobody can tell.
 */
export function dropsAtOnceAtEnd(additions: readonly Addition[]): number {
	let first = additions.length - 1;
	while (first > 0 && secondsEach(additions, first) < AT_ONCE_S) first--;
	// The run begins with the drop before the first gap that is too short.
	const isBatch = dropsIn(additions[first] ?? noAddition) > 1;
	if (isBatch && secondsEach(additions, first) >= AT_ONCE_S) return 0;
	const earlier = additions.slice(0, first);
	const isLive =
		earlier.length >= 3 &&
		earlier.every((each, i) => dropsIn(each) <= 1 && secondsEach(additions, i) >= AT_ONCE_S);
	if (!isLive) return 0;
	const run = additions.slice(first);
	const drops = run.reduce((sum, each) => sum + dropsIn(each), 0);
	return drops >= 1.6 ? Math.round(drops) : 0;
}

const noAddition: Addition = { id: '', at: 0, event: { type: 'drop.touchedOff' } };
