import { typedNumber, type Kit } from '$lib/kits';
import type { Marks } from '$lib/observation';
import type { TankTitration } from '$lib/procedure';
import type { AskedMark, MarksEntry } from './marks-entry.svelte';

const seal: AskedMark = { key: 'seal', name: 'Seal', label: 'Seal stands at' };
const line: AskedMark = { key: 'line', name: 'Line', label: 'Liquid line, if you read it' };
const level: AskedMark = { key: 'level', name: 'Level', label: 'Level stands at' };

/** The marks that a kit has on its glass; none for a dropper. */
export function marksOf({ delivery }: Kit): readonly AskedMark[] {
	if (delivery.by === 'syringe') return [seal, line];
	return delivery.by === 'burette' ? [level] : [];
}

const fieldOf = { seal: 'sealMl', line: 'lineMl', level: 'levelMl' } as const;

/** What an entry holds so far, as the log has it; fields that are empty or wrong are left out. */
export function marksIn(entry: MarksEntry): Marks {
	const marks: Marks = {};
	for (const { key } of entry.asked) {
		const numeralMl = entry.numeralOf(key);
		if (numeralMl !== null && key !== 'before' && key !== 'after') marks[fieldOf[key]] = numeralMl;
	}
	return marks;
}

/** Marks as events have them: with no field that says nothing. */
export const hasMark = ({ sealMl, lineMl, levelMl, drops }: Marks): boolean =>
	[sealMl, lineMl, levelMl, drops].some((each) => each !== undefined);

/**
 * Drops that were counted on this walk, one tap or one number at a time; null where some fell
 * uncounted, or none did.
 */
export function dropsCounted({ events }: Pick<TankTitration, 'events'>): number | null {
	let sum: number | null = null;
	for (const { event } of events) {
		if (event.type !== 'titrant.fell') continue;
		if (event.drops === undefined) return null;
		sum = (sum ?? 0) + event.drops;
	}
	return sum;
}

/** Numeral of a full syringe or burette as it is spoken of: '1.00'. */
export function fullMarkText({ delivery }: Kit): string {
	if (delivery.by !== 'syringe') return '0.00';
	return (delivery.scale === 'down' ? delivery.capacityMl : 0).toFixed(2);
}

/** Whole drops as typed, or what is wrong with them. */
export function countOf(text: string): { drops?: number; problem: string } {
	const typed = typedNumber(text, 'the number of drops', {
		low: 0,
		high: 400,
		why: 'A count goes from 0 to 400'
	});
	if ('problem' in typed) return { problem: typed.problem };
	if (!Number.isInteger(typed.value))
		return { problem: `Count whole drops; found ${text.trim()}.` };
	return { drops: typed.value, problem: '' };
}
