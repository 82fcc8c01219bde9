/** A piece of a text that is no JSON as a whole: read, or broken and as it stands. */
export type Piece = {
	/** The list in which it stands, as far as can be seen, and its place there. */
	key: string;
	index: number;
	isLast: boolean;
	raw: unknown;
	/** Null when it could be read. */
	broken: string | null;
};

const opensList = /^[{,\s]*"(\w+)":\s*\[$/;
const onlyBrackets = /^[\]},\s]*$/;
/** Every item begins so; inside a text the quotes would be escaped. */
const itemStarts = /(?=\{"(?:log|kitId)":)/;

/**
 * The items of a damaged file. It was written with one on each line, so damage to one line leaves
 * the others readable; where a break between two lines was lost, the line is taken apart again.
 */
export function pieces(text: string): Piece[] {
	const lines = text.split('\n').map((line) => line.trim());
	const last = lines.findLastIndex((line) => line !== '');
	const found: Piece[] = [];
	let key = 'file';
	let index = 0;
	const add = (raw: unknown, broken: string | null, isLast: boolean) =>
		found.push({ key, index: index++, isLast, raw, broken });
	lines.forEach((line, i) => {
		const opened = opensList.exec(line)?.[1];
		if (opened !== undefined) {
			key = opened;
			index = 0;
		}
		if (opened !== undefined || onlyBrackets.test(line) || line.startsWith('{"halfdrop"')) return;
		for (const part of line.split(itemStarts)) {
			const values = valuesIn(part);
			if (values) for (const value of values) add(value, null, false);
			else if (!onlyBrackets.test(part)) add(null, part, i === last);
		}
	});
	return found;
}

/** The values that stand in a part of a line, with or without what follows the last; null when broken. */
function valuesIn(part: string): unknown[] | null {
	for (const candidate of [part.replace(/[,\s]+$/, ''), part.slice(0, part.lastIndexOf('}') + 1)]) {
		try {
			const values = JSON.parse(`[${candidate}]`) as unknown[];
			if (values.length > 0 && values.every((value) => typeof value === 'object')) return values;
		} catch {
			continue;
		}
	}
	return null;
}
