import type { CheckHeader, KitRow, LogOrigin, RunHeader, TestHeader } from '../headers';

/**
 * Number of the form in which files are written now. Form 1 knew no checks; what stands in a file of
 * it is read as it is.
 */
export const FILE_FORMAT = 2;

export const sections = ['kits', 'tests', 'checks', 'runs'] as const;
export type Section = (typeof sections)[number];

/** A log, whole, and what its header says that does not follow from it. */
export type TestItem = {
	log: unknown;
	changedAtEpochMs?: number;
	where?: string;
	/** For other readers of the file; it follows from the log. */
	summary?: TestHeader['summary'];
	origin?: LogOrigin;
};
export type CheckItem = {
	log: unknown;
	changedAtEpochMs?: number;
	where?: string;
	/** Its value follows from the log; the advice of that day does not. */
	summary?: CheckHeader['summary'];
	origin?: LogOrigin;
};
export type RunItem = {
	log: unknown;
	changedAtEpochMs?: number;
	where?: string;
	state?: RunHeader['state'];
};

/** What stands in a file, list by list; a list that is left out is empty. */
export type FileItems = {
	kits?: readonly KitRow[];
	tests?: readonly TestItem[];
	checks?: readonly CheckItem[];
	runs?: readonly RunItem[];
};

/**
 * The text of a file: JSON with one item on each line, so that a file cut short or damaged somewhere
 * can still be read line by line.
 */
export function fileText(exportedAtEpochMs: number, items: FileItems): string {
	const lists = sections.map((section) => {
		const lines = (items[section] ?? []).map((item) => JSON.stringify(item)).join(',\n');
		return `"${section}":[\n${lines}\n]`;
	});
	const top = `"halfdrop":"records","format":${FILE_FORMAT},"exportedAtEpochMs":${exportedAtEpochMs}`;
	return `{${top},\n${lists.join(',\n')}}\n`;
}
