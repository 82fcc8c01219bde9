/**
 * The same text for the same content, whatever the order of its fields; fields without a value are
 * as good as absent, as they are in JSON.
 */
export function canonical(value: unknown): string {
	return JSON.stringify(value, (_, each: unknown) =>
		typeof each === 'object' && each !== null && !Array.isArray(each)
			? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
			: each
	);
}

/**
 * A short name of a text, so that the same content gets the same name everywhere: FNV-1a (Fowler,
 * Noll and Vo; constants of the 32-bit form as in RFC 9923), forwards and backwards.
 */
export function nameOf(text: string): string {
	const forwards = fnv1a(text.length, (i) => text.charCodeAt(i));
	const backwards = fnv1a(text.length, (i) => text.charCodeAt(text.length - 1 - i));
	return forwards.toString(36) + backwards.toString(36);
}

function fnv1a(length: number, unitAt: (i: number) => number): number {
	let hash = 0x811c9dc5;
	for (let i = 0; i < length; i++) hash = Math.imul(hash ^ unitAt(i), 0x01000193);
	return hash >>> 0;
}
