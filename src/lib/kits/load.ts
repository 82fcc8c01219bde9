import type * as z from 'zod/mini';
import { KitSchema, type Kit } from './kit';

/** What should have stood there, as far as the validator says. */
function expectedOf(issue: z.core.$ZodIssue): string {
	if (issue.code === 'invalid_value') return `one of ${issue.values.map(String).join(', ')}`;
	if (issue.code === 'invalid_type') return issue.expected;
	if (issue.code === 'too_small')
		return issue.origin === 'array' || issue.origin === 'string'
			? `${Number(issue.minimum)} or more of them`
			: `a number of ${Number(issue.minimum)} or more`;
	if (issue.code === 'too_big') return `a number of ${Number(issue.maximum)} or less`;
	if (issue.code === 'unrecognized_keys') return `no field named ${issue.keys.join(', ')}`;
	if (issue.code === 'custom') return issue.message;
	return 'one of the known kinds';
}

const orItsName = (_: string, value: unknown): unknown =>
	typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;

const foundAt = (data: unknown, path: readonly PropertyKey[]): string => {
	const found = path.reduce<unknown>(
		(inner, part) =>
			typeof inner === 'object' && inner !== null
				? (inner as Record<PropertyKey, unknown>)[part]
				: undefined,
		data
	);
	// In JSON a number that is none would stand as null.
	if (typeof found === 'number') return String(found);
	return found === undefined
		? 'nothing'
		: (JSON.stringify(found, orItsName)?.slice(0, 60) ?? typeof found);
};

/**
 * Something from outside, validated.
 *
 * @param name for the error: 'the kit'
 * @throws RangeError saying which field is damaged, what was expected there, and what was found
 */
export function loadAs<TLoaded>(
	unknownThing: unknown,
	schema: z.ZodMiniType<TLoaded>,
	name: string
): TLoaded {
	const parsed = schema.safeParse(unknownThing);
	if (parsed.success) return parsed.data;
	const issue = parsed.error.issues[0];
	if (!issue) throw new RangeError(`${name} is damaged`);
	throw new RangeError(
		`${name} is damaged at ${issue.path.join('.') || 'its top'}: expected ${expectedOf(issue)}; found ${foundAt(unknownThing, issue.path)}`
	);
}

/**
 * A kit from outside (storage, a file).
 *
 * @throws RangeError saying which field is damaged and what is wrong there
 */
export function loadKit(unknownKit: unknown): Kit {
	return loadAs(unknownKit, KitSchema, 'the kit');
}
