/** A numeral in a string looks like a number: it is told apart. */
const found = (value: unknown) =>
	typeof value === 'string' ? `the text '${value}'` : String(value);

/**
 * The number itself, when it lies within its range.
 *
 * @throws RangeError that names the field, its range and what was found
 */
export function requireWithin(field: string, value: number, low: number, high: number): number {
	// A null or a numeral in a string would pass the comparison alone.
	if (typeof value !== 'number')
		throw new RangeError(
			`${field} must be a number between ${low} and ${high}; found ${found(value)}`
		);
	if (!(value >= low && value <= high))
		throw new RangeError(`${field} must be between ${low} and ${high}; found ${value}`);
	return value;
}

/**
 * The record itself, when it is one.
 *
 * @throws RangeError that names the field and what was found
 */
export function requireObject<T extends object>(field: string, value: T): T {
	// Whoever calls without types hands in anything.
	const given: unknown = value;
	if (typeof given !== 'object' || given === null || Array.isArray(given))
		throw new RangeError(
			`${field} must be an object; found ${Array.isArray(given) ? 'a list' : found(given)}`
		);
	return value;
}
