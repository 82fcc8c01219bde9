import { typedNumber, type TypedRange } from '$lib/kits';

/** Everything typed and chosen on the page, as it was typed. */
export type Blanks = Readonly<Record<string, string>>;

/** Reads blanks one by one and gathers what is wrong with them. */
export class BlanksRead {
	readonly problems: Record<string, string> = {};

	constructor(private readonly blanks: Blanks) {}

	isEmpty(name: string): boolean {
		return (this.blanks[name] ?? '').trim() === '';
	}

	/** Null after a problem. */
	number(name: string, what: string, range: TypedRange, empty?: string): number | null {
		const text = this.isEmpty(name) && empty !== undefined ? empty : (this.blanks[name] ?? '');
		const typed = typedNumber(text, what, range);
		if ('value' in typed) return typed.value;
		this.problems[name] = typed.problem;
		return null;
	}

	/** Undefined where the blank is empty, null after a problem. */
	optional(name: string, what: string, range: TypedRange): number | null | undefined {
		return this.isEmpty(name) ? undefined : this.number(name, what, range);
	}

	/** A choice; the first there is while nothing was chosen. */
	choice<Key extends string>(name: string, names: Readonly<Record<Key, string>>): Key {
		return chosenOf(this.blanks, name, names);
	}
}

/** What was chosen; the first there is while nothing was. */
export function chosenOf<Key extends string>(
	blanks: Blanks,
	name: string,
	names: Readonly<Record<Key, string>>
): Key {
	const keys = Object.keys(names) as Key[];
	const [first] = keys;
	if (first === undefined) throw new RangeError(`names of ${name} must not be empty`);
	return keys.find((key) => key === blanks[name]) ?? first;
}
