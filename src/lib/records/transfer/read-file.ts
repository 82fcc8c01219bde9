import { FILE_FORMAT, sections, type Section } from './file-form';
import { pieces } from './broken-text';

/** Something in a file: which list it belongs to, where it stands, and what it is. */
export type FileItem = { section: Section; where: string; raw: unknown };
/** What could not be read, where it stands and what is wrong; `raw` is what stands there. */
export type Damage = { where: string; problem: string; raw: unknown };
export type ReadFile = { items: FileItem[]; damaged: Damage[] };

type Top = Record<string, unknown>;

/**
 * The items of a file; what is in them is not looked at yet.
 *
 * @throws RangeError for a file that holds no records, or records of a later format
 */
export function readFile(text: string): ReadFile {
	// Some editors put a byte order mark before the first character.
	const plain = text.replace(/^\uFEFF/, '');
	if (plain.trim() === '') throw new RangeError('the file is empty');
	let top: unknown;
	try {
		top = JSON.parse(plain);
	} catch {
		return readPieces(plain);
	}
	if (typeof top !== 'object' || top === null || Array.isArray(top)) throw notOurs();
	return readWhole(top as Top);
}

function readWhole(top: Top): ReadFile {
	requireKnownFormat(top['format']);
	const read: ReadFile = { items: [], damaged: [] };
	for (const [key, list] of Object.entries(top)) {
		if (Array.isArray(list))
			list.forEach((raw: unknown, i) => place(read, `${key}.${i}`, raw, sectionNamed(key)));
		else if (sectionNamed(key))
			read.damaged.push({ where: key, problem: 'expected a list', raw: list });
	}
	if (top['halfdrop'] !== 'records') {
		if (read.items.length === 0) throw notOurs();
		read.damaged.push({ where: 'halfdrop', problem: 'expected records', raw: top['halfdrop'] });
	}
	return read;
}

/** A text that is no JSON as a whole: its items one by one. */
function readPieces(text: string): ReadFile {
	const format = /^[^\n]*"format":\s*(\d+)/.exec(text)?.[1];
	if (format !== undefined) requireKnownFormat(Number(format));
	const read: ReadFile = { items: [], damaged: [] };
	for (const { key, index, isLast, raw, broken } of pieces(text)) {
		const where = `${key}.${index}`;
		if (broken === null) place(read, where, raw, sectionNamed(key));
		else {
			const problem = isLast ? 'the file ends in the middle of it' : 'this is not JSON';
			read.damaged.push({ where, problem, raw: broken });
		}
	}
	if (read.items.length === 0 && !/"halfdrop":\s*"records"/.test(text)) throw notOurs();
	// The last brackets stand on a line of their own; those of an item do not.
	if (!/^\s*\]\s*\}\s*$/.test(text.trimEnd().split('\n').at(-1) ?? '')) {
		const last = read.items.at(-1)?.where ?? 'its beginning';
		const problem = `the file is cut short: what came after ${last} is missing`;
		read.damaged.push({ where: 'the end of the file', problem, raw: text.slice(-200) });
	}
	return read;
}

/** What an item looks like decides; the list in which it stands only where that does not say. */
function place(read: ReadFile, where: string, raw: unknown, listed: Section | null): void {
	const section = sectionOf(raw, listed) ?? listed;
	if (section) read.items.push({ section, where, raw });
	else read.damaged.push({ where, problem: 'expected a kit, a test, a check or a run', raw });
}

function sectionOf(raw: unknown, listed: Section | null): Section | null {
	if (typeof raw !== 'object' || raw === null) return null;
	if ('kitId' in raw && 'version' in raw) return 'kits';
	if (!('log' in raw) || typeof raw.log !== 'object' || raw.log === null) return null;
	if ('scenarioId' in raw.log) return 'runs';
	// A check may be about a number alone, without a kit: it says itself what was measured.
	if ('analyte' in raw.log) return 'checks';
	return 'kitVersion' in raw.log && listed !== 'checks' ? 'tests' : null;
}

function sectionNamed(key: string): Section | null {
	return sections.find((section) => section === key) ?? null;
}

function requireKnownFormat(format: unknown): void {
	if (typeof format === 'number' && format > FILE_FORMAT)
		throw new RangeError(
			`format must be at most ${FILE_FORMAT}; found ${format}: the file comes from a later version of Halfdrop, so update this one first`
		);
}

function notOurs(): RangeError {
	return new RangeError('the file holds no records of Halfdrop: expected JSON as exported here');
}
