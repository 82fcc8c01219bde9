/** What came of reading a typed number. */
export type Typed = { value: number } | { problem: string };

/**
 * A number as people type it: decimal comma or point, spaces around it.
 *
 * @param what it is, for the error: 'the numeral', 'the value'
 */
export function typedNumber(
	text: string,
	what: string,
	range: { low: number; high: number; why: string }
): Typed {
	const trimmed = text.trim().replace(',', '.');
	if (trimmed === '') return { problem: `Type ${what} here.` };
	if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(trimmed))
		return { problem: `“${text.trim()}” is no number. Write it like 0,42 or 0.42.` };
	const value = Number(trimmed);
	if (value < range.low - 1e-9 || value > range.high + 1e-9)
		return { problem: `${range.why}; found ${text.trim()}.` };
	return { value };
}
