import type { TankTitration, ValuedTitration } from '$lib/procedure';

/** What a titration of a test is called. */
export function titrationName({ number, purpose, by }: TankTitration): string {
	if (purpose === 'first') return by ? `First, by ${by}` : 'First';
	if (purpose === 'otherPerson') return `${by ?? 'Somebody else'}, without seeing the first`;
	const what = purpose === 'freshSample' ? 'Fresh sample' : 'Repeat';
	return `${what}, number ${number + 1}${by ? `, by ${by}` : ''}`;
}

const marks = { seal: 'the seal', line: 'the liquid line', level: 'the level', drops: 'the drops' };

/** Which mark a value rests on, and from where it was counted. */
export function countedWords(valued: ValuedTitration): string {
	const { by, from, startMl, refills, isBeyondTable } = valued;
	const beyond = isBeyondTable
		? ', and carried on beyond the end of the leaflet’s table, as straight as it is'
		: '';
	if (by === 'drops') return `counted by the drops${beyond}`;
	const start = startMl?.toFixed(2);
	const begin =
		from === 'start'
			? `from where it stood at the start, ${start}`
			: from === 'full'
				? `from the full mark, ${start}`
				: `from ${start}, reckoned through the tip`;
	const more =
		refills === 0 ? '' : refills === 1 ? ', with one refill' : `, with ${refills} refills`;
	return `counted by ${marks[by]}, ${begin}${more}${beyond}`;
}

/** What the other marks of a titration would make of it; empty for none. */
export function otherwiseWords({ otherwise }: ValuedTitration, written: (value: number) => string) {
	const parts = otherwise.map(({ by, value }) => `${marks[by]} would make it ${written(value)}`);
	return parts.length === 0 ? '' : `${capital(parts.join('; '))}.`;
}

/** A sentence begins with a capital. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
