import type * as z from 'zod/mini';
import { ScenarioSchema, type Scenario } from './scenario';

type Issue = z.core.$ZodIssue;

/** `truth.water.alkalinityDkh`, `checks[1].minutes`; `the whole file` at the top. */
function fieldOf(path: readonly PropertyKey[]): string {
	if (path.length === 0) return 'the whole file';
	return path
		.map((part, i) => (typeof part === 'number' ? `[${part}]` : (i > 0 ? '.' : '') + String(part)))
		.join('');
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
	return path.reduce<unknown>(
		(inner, part) =>
			typeof inner === 'object' && inner !== null
				? (inner as Record<PropertyKey, unknown>)[part]
				: undefined,
		data
	);
}

const shown = (value: unknown): string =>
	value === undefined ? 'nothing' : (JSON.stringify(value)?.slice(0, 60) ?? String(value));

const oneOf = (values: readonly unknown[]) =>
	values.length === 1 ? shown(values[0]) : `one of ${values.map(shown).join(', ')}`;

/** What should have stood there, in words. */
function expectedOf(issue: Issue): string {
	switch (issue.code) {
		case 'invalid_type':
			return `a ${issue.expected}`;
		case 'invalid_value':
			return oneOf(issue.values);
		case 'too_small':
			return issue.origin === 'string' || issue.origin === 'array'
				? 'something that is not empty'
				: `a number of ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`;
		case 'too_big':
			return `a number of ${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}`;
		case 'invalid_format':
			return 'lower-case letters, digits and hyphens';
		case 'invalid_union':
			return 'options' in issue && Array.isArray(issue.options)
				? oneOf(issue.options)
				: 'one of the known kinds';
		default:
			return 'something else';
	}
}

function saidOf(issue: Issue, data: unknown): string {
	if (issue.code === 'unrecognized_keys')
		return `${fieldOf(issue.path)}: has no field named ${issue.keys.join(', ')}`;
	return `${fieldOf(issue.path)}: expected ${expectedOf(issue)}; found ${shown(valueAt(data, issue.path))}`;
}

/**
 * A scenario from the text of its file.
 *
 * @param fileName for the error alone
 * @throws Error naming the file, every field that is wrong, and what was expected there
 */
export function parseScenario(text: string, fileName: string): Scenario {
	let data: unknown;
	try {
		data = JSON.parse(text);
	} catch (error) {
		throw new Error(`${fileName}: expected JSON; ${(error as Error).message}`, { cause: error });
	}
	const parsed = ScenarioSchema.safeParse(data);
	if (parsed.success) return parsed.data;
	throw new Error(
		parsed.error.issues.map((issue) => `${fileName}: ${saidOf(issue, data)}`).join('\n')
	);
}
