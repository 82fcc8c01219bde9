/** A sentence that one page leaves for the next: what became of a deed that led away from it. */
let said = '';

export function sayNext(words: string): void {
	said = words;
}

/** What was left, once. */
export function takeSaid(): string {
	const words = said;
	said = '';
	return words;
}
