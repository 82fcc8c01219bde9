const two = (n: number) => String(n).padStart(2, '0');

/** A stretch of time as a clock shows it: '0:18', '12:05', '1:02:05'. Never less than nothing. */
export function clockWords(ms: number): string {
	const seconds = Math.max(0, Math.floor(ms / 1000));
	const minutes = Math.floor(seconds / 60);
	return minutes < 60
		? `${minutes}:${two(seconds % 60)}`
		: `${Math.floor(minutes / 60)}:${two(minutes % 60)}:${two(seconds % 60)}`;
}

const some = (n: number, unit: string) => `${n} ${unit}${n === 1 ? '' : 's'}`;

/** A stretch of time in round words: 'less than a minute', '12 minutes', '3 hours', '2 days'. */
export function roundWords(ms: number): string {
	const minutes = Math.round(ms / 60_000);
	if (minutes < 1) return 'less than a minute';
	if (minutes < 90) return some(minutes, 'minute');
	const hours = Math.round(minutes / 60);
	return hours < 36 ? some(hours, 'hour') : some(Math.round(hours / 24), 'day');
}
