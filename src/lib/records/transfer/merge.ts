import type { LogOrigin } from '../headers';
import { canonical, nameOf } from './canonical';

/** A log in one piece, as a validator gives it back. */
export type WholeLog = {
	id: string;
	format: number;
	startedAtEpochMs: number;
	entries: readonly unknown[];
};
/** A log of the family that an imported one belongs to, and the form in which it lies in storage. */
export type Relative = { log: WholeLog; storedFormat: unknown; origin?: LogOrigin };

/** What to do with an imported log. */
export type Step =
	| { do: 'nothing' }
	/** The stored log of this id is its beginning: add what is missing. */
	| { do: 'grow'; id: string; from: number }
	| { do: 'add'; id: string; origin?: LogOrigin };

/** What copies of one log that went different ways have in common: their ids up to the stroke. */
export function familyOf(id: string): string {
	return id.split('~')[0] ?? id;
}

/**
 * Where an imported log belongs. Of two logs of which one is the other's beginning the longer stays;
 * logs that went different ways both stay, the later to arrive under a name that follows from its
 * content. So what is stored in the end does not depend on the order of imports, and importing the
 * same again adds nothing.
 *
 * @param relatives all stored logs of its family
 */
export function stepFor(imported: WholeLog, relatives: readonly Relative[]): Step {
	const alike = relatives.filter(
		({ log, origin }) => origin?.because !== 'damaged' && headOf(log) === headOf(imported)
	);
	const entries = imported.entries.map(canonical);
	const beginsWith = (whole: readonly string[], part: readonly string[]) =>
		part.length <= whole.length && part.every((entry, i) => entry === whole[i]);
	const known = alike.map((relative) => ({
		...relative,
		entries: relative.log.entries.map(canonical)
	}));
	if (known.some((each) => beginsWith(each.entries, entries))) return { do: 'nothing' };
	const beginning = known.find(
		(each) => each.storedFormat === imported.format && beginsWith(entries, each.entries)
	);
	if (beginning) return { do: 'grow', id: beginning.log.id, from: beginning.log.entries.length };
	const isFree = relatives.every(({ log }) => log.id !== imported.id);
	return isFree ? { do: 'add', id: imported.id } : apart(imported, 'diverged');
}

/** Where a log belongs of which only a part could be read: beside, unless all of it is known. */
export function stepForRescued(rescued: WholeLog, relatives: readonly Relative[]): Step {
	const entries = rescued.entries.map(canonical);
	const isKnown = relatives.some(({ log }) => {
		if (headOf(log) !== headOf(rescued)) return false;
		let next = 0;
		for (const entry of log.entries) if (canonical(entry) === entries[next]) next += 1;
		return next === entries.length;
	});
	return isKnown ? { do: 'nothing' } : apart(rescued, 'damaged');
}

function apart(log: WholeLog, because: LogOrigin['because']): Step {
	const of = familyOf(log.id);
	const name = nameOf(headOf(log) + canonical(log.entries));
	return { do: 'add', id: `${of}~${name}`, origin: { of, because } };
}

function headOf(log: WholeLog): string {
	const { id: _id, entries: _entries, ...head } = log;
	return canonical(head);
}
