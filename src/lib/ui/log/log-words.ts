const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' });
const dayOfYear = new Intl.DateTimeFormat('en-GB', {
	day: 'numeric',
	month: 'short',
	year: 'numeric'
});
const moment = new Intl.DateTimeFormat('en-GB', {
	day: 'numeric',
	month: 'short',
	year: 'numeric',
	hour: '2-digit',
	minute: '2-digit'
});
const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const clockWithSeconds = new Intl.DateTimeFormat('en-GB', {
	hour: '2-digit',
	minute: '2-digit',
	second: '2-digit'
});
const month = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric' });

/** Times are ms since 1970 and are told in the time of the place where the page is read. */
export const dayWords = (at: number): string => day.format(at);
export const dateWords = (at: number): string => dayOfYear.format(at);
/** Storage may hold anything: a time that is none is said to be unknown. */
export const momentWords = (at: number): string =>
	Number.isFinite(at) ? moment.format(at) : 'an unknown day';
export const clockWords = (at: number): string => clock.format(at);
export const secondsWords = (at: number): string => clockWithSeconds.format(at);
export const monthWords = (at: number): string => month.format(at);

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** How long ago something was, as one would say it: 'just now', '3 h ago', '12 days ago'. */
export function ageWords(at: number, now: number): string {
	const age = now - at;
	if (age < 2 * MINUTE) return 'just now';
	if (age < 2 * HOUR) return `${Math.round(age / MINUTE)} min ago`;
	if (age < 2 * DAY) return `${Math.round(age / HOUR)} h ago`;
	if (age < 60 * DAY) return `${Math.round(age / DAY)} days ago`;
	return `on ${dateWords(at)}`;
}

/** Things of one month together, in the order in which they come. */
export function byMonth<T>(things: readonly T[], timeOf: (thing: T) => number) {
	const groups: { name: string; things: T[] }[] = [];
	for (const thing of things) {
		const name = monthWords(timeOf(thing));
		const last = groups.at(-1);
		if (last?.name === name) last.things.push(thing);
		else groups.push({ name, things: [thing] });
	}
	return groups;
}
