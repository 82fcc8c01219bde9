/** A row of a table as text: what stood in its first column, and in its second. */
export type TextRow = { at: string; value: string };

const NUMBER = /^[-+−–]?(\d+[.,]?\d*|[.,]\d+)$/u;

/** The two fields of a line, by whatever parts them: tab, semicolon, bar, spaces, or a comma that parts. */
function fieldsOf(line: string): string[] {
	const tidy = line.trim();
	for (const separator of [/\t+/, /\s*[;|]\s*/, /\s*,\s+|\s+/]) {
		const fields = tidy.split(separator).filter((field) => field !== '');
		if (fields.length > 1) return fields;
	}
	// '0.5,7.7': the comma can only part where points already mark the decimals.
	return /^[^,]*\.[^,]*,[^,]*$/.test(tidy) || /^[^,]*,[^,]*\.[^,]*$/.test(tidy)
		? tidy.split(',')
		: [tidy];
}

/**
 * Rows of a leaflet's table from text that was copied from somewhere: the first two numbers of each
 * line. Commas are decimals unless points are. Lines without two numbers, such as headings, are
 * handed back, so that nothing goes unseen.
 */
export function pastedRows(text: string): { rows: TextRow[]; leftOver: string[] } {
	const rows: TextRow[] = [];
	const leftOver: string[] = [];
	for (const line of text.split(/\r?\n/)) {
		if (line.trim() === '') continue;
		const [at, value] = fieldsOf(line)
			.map((field) => field.trim())
			.filter((field) => NUMBER.test(field));
		if (at !== undefined && value !== undefined) rows.push({ at, value });
		else leftOver.push(line.trim());
	}
	return { rows, leftOver };
}
