const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const clockTime = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

/** When something was, for a list: 'today, 18:05', '3 Nov 2026, 07:40'. */
export function whenWords(atEpochMs: number, nowEpochMs: number): string {
	const at = new Date(atEpochMs);
	const isToday = at.toDateString() === new Date(nowEpochMs).toDateString();
	return `${isToday ? 'today' : day.format(at)}, ${clockTime.format(at)}`;
}
