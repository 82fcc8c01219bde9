/** @throws RangeError saying what is required, when there are too few values or one is no number */
export function requireData(values: readonly number[], least: number, what: string): void {
	if (values.length < least)
		throw new RangeError(
			`${what} requires at least ${least} ${least === 1 ? 'value' : 'values'}; found ${values.length}`
		);
	if (!values.every(Number.isFinite))
		throw new RangeError(`${what} requires finite values; found ${values.join(', ')}`);
}
