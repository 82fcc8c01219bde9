/** What came of reading a typed number. */
export type Typed = { value: number } | { problem: string };

/** Between which a typed number must lie, both ends included, and the sentence that says so. */
export type TypedRange = { low: number; high: number; why: string };

/** Minus signs that keyboards, phones and copied pages give: hyphen, true minus, en dash. */
const MINUS = /^[-\u2212\u2013]/u;
/** An apostrophe or space among digits, or comma and point together, parts thousands. */
const PARTED = /^\d+(['’\s]\d+)+([.,]\d*)?$|^\d+([.,]\d+){2,}$/u;
const PLAIN = /^(\d+[.,]?\d*|[.,]\d+)$/u;

/**
 * A number as people type it: decimal comma or point, a sign before it, spaces around it (thin and
 * no-break ones too). A separator of thousands is refused, never guessed: 1,234 is a little more
 * than one.
 *
 * @param what it is, for the error: 'the numeral', 'the value'
 * @returns a finite number in the range, or what is wrong in a sentence for the person
 */
export function typedNumber(text: string, what: string, range: TypedRange): Typed {
	const trimmed = text.trim();
	if (trimmed === '') return { problem: `Type ${what} here.` };
	const isNegative = MINUS.test(trimmed);
	const digits = trimmed.replace(/^[-+\u2212\u2013]\s*/u, '');
	if (PARTED.test(digits))
		return {
			problem: `“${trimmed}” has more than a decimal sign in it. Write it without spaces or signs between thousands, like 1234,5 or 1234.5.`
		};
	const size = PLAIN.test(digits) ? Number(digits.replace(',', '.')) : Number.NaN;
	if (!Number.isFinite(size))
		return { problem: `“${trimmed}” is no number. Write it like 0,42 or 0.42.` };
	const value = isNegative && size !== 0 ? -size : size;
	if (value < range.low - 1e-9 || value > range.high + 1e-9)
		return { problem: `${range.why}; found ${trimmed}.` };
	return { value };
}

/**
 * A number as it would be typed, with all its digits and no exponent; `typedNumber` reads the same
 * number back.
 *
 * @throws RangeError when it is not finite
 */
export function numberText(value: number, decimalSign: '.' | ',' = '.'): string {
	if (!Number.isFinite(value)) throw new RangeError(`value must be a number; found ${value}`);
	const [mantissa = '0', exponent = '0'] = Math.abs(value).toExponential().split('e');
	const [whole = '0', part = ''] = mantissa.split('.');
	const digits = whole + part;
	const point = 1 + Number(exponent);
	const before = digits.slice(0, Math.max(0, point)).padEnd(point, '0') || '0';
	const after = '0'.repeat(Math.max(0, -point)) + digits.slice(Math.max(0, point));
	return (value < 0 ? '−' : '') + before + (after === '' ? '' : decimalSign + after);
}
