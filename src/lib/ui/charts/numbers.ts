/** Numbers as they stand on the page: a real minus sign, never '−0.0'. */

/** A value with a fixed number of decimals. */
export function plain(value: number, decimals = 1): string {
	const text = Math.abs(value).toFixed(decimals);
	const isZero = Number(text) === 0;
	return value < 0 && !isZero ? `−${text}` : text;
}

/** A difference, with its sign even when it is positive. */
export function signed(value: number, decimals = 1): string {
	const text = plain(value, decimals);
	return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

/** A value with what it claims: '7.1 ± 0.4'. */
export function withUncertainty(value: number, expandedUncertainty: number, decimals = 1): string {
	return `${plain(value, decimals)} ± ${plain(expandedUncertainty, decimals)}`;
}
