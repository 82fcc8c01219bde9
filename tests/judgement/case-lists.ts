import { cues, faults } from '../../src/lib/judgement';
import { analyteUnits, houseCalciumKit } from '../../src/lib/kits';
import { methodFiguresOf } from '../../src/lib/metrology';
import { checkIds, DiffersSchema, EvidenceSchema, ReadingSchema } from '../../src/lib/observation';
import { adviceDocs } from './case-advice';

type Def = {
	type: string;
	innerType?: { def: Def };
	values?: readonly string[];
	entries?: Record<string, string>;
	shape?: Record<string, { def: Def }>;
};
const shapeOf = (schema: unknown): Record<string, { def: Def }> =>
	(schema as { def: Def }).def.shape ?? {};
const CHECKS = checkIds.length;

/** What a field takes, in words: 'number', 'one of `a`, `b`', 'object'. */
function takes({ type, entries }: Def): string {
	if (!entries) return type === 'object' ? 'an object' : type;
	const values = Object.values(entries);
	return values.length > CHECKS
		? '`first` or a check'
		: `one of ${values.map((each) => `\`${each}\``).join(', ')}`;
}

function field(name: string, def: Def): string {
	const isOptional = def.type === 'optional';
	return `\`${name}\`${isOptional ? '?' : ''} ${takes(isOptional && def.innerType ? def.innerType.def : def)}`;
}
const fieldsOf = (schema: unknown, but: readonly string[] = []): string =>
	Object.entries(shapeOf(schema))
		.filter(([name]) => !but.includes(name))
		.map(([name, { def }]) => field(name, def))
		.join('; ');

const kinds: readonly unknown[] = (EvidenceSchema as unknown as { def: { options: unknown[] } }).def
	.options;
export const kindNames = kinds.map((schema) => shapeOf(schema)['kind']?.def.values?.[0] ?? '');
/** Every field of every kind, of a reading and of what differs. */
export const fieldNames = [
	...new Set([...kinds, ReadingSchema, DiffersSchema].flatMap((each) => Object.keys(shapeOf(each))))
];

const ids = (each: readonly { id: string }[]) => each.map(({ id }) => `\`${id}\``).join(', ');

/** To four digits, as one would write it down by hand. */
const byHand = (_: string, value: unknown): unknown =>
	typeof value === 'number' ? Number(value.toPrecision(4)) : value;

/** JSON as the house writes it: a short list stays on its line. */
const asWritten = (value: object): string =>
	JSON.stringify(value, byHand, '\t').replace(
		/\[\n\s+([^[\]{}]*?)\n\s*\]/gu,
		(_, items: string) => `[${items.replace(/\s+/gu, ' ')}]`
	);

/** Everything that a case may name, out of the code itself, as a page of the documentation. */
export function caseLists(): string {
	const units = Object.entries(analyteUnits).map(
		([analyte, record]) =>
			`- \`${analyte}\`: ${Object.keys(record.units)
				.map((unit) => `\`${unit}\``)
				.join(', ')}`
	);
	return `${[
		'# What a case may name',
		'Written out of the code: do not edit. After a change of the catalogue, `npx vitest run --project unit tests/judgement/case-docs.test.ts -u` writes it anew. What it means and a worked case: [DEVELOPERS.md](../../../DEVELOPERS.md#a-case-as-json). A field with `?` may be left out.',
		'## Kinds of evidence',
		kinds.map((each, i) => `- **${kindNames[i]}**: ${fieldsOf(each, ['kind'])}`).join('\n'),
		'In them, a `reading` and `differs` are objects:',
		[`- **reading**: ${fieldsOf(ReadingSchema)}`, `- **differs**: ${fieldsOf(DiffersSchema)}`].join(
			'\n'
		),
		'## Units, by what is measured',
		units.join('\n'),
		'## A kit in figures',
		'The invented calcium kit as `method` of the options; values in its `unit`, `…Sd` of ware, lot and sample as shares.',
		`\`\`\`json\n${asWritten(methodFiguresOf(houseCalciumKit))}\n\`\`\``,
		'## Checks',
		`${checkIds.map((each) => `\`${each}\``).join(', ')}.`,
		'## Questions and their answers',
		cues
			.map(
				({ id, question, answers, analytes }) =>
					`- **${id}** (${question}${analytes ? ` Of ${analytes.join(', ')} only.` : ''}): ${ids(answers)}`
			)
			.join('\n'),
		'## Faults',
		'With the probability taken before anything is known, which `priors` replaces. `realChange`, `none` and `noneOfThese` stand beside them among explanations and have options of their own.',
		faults
			.map(
				({ id, name, prior, analytes, scope }) =>
					`- **${id}**, ${prior}: ${name} (shared by: ${scope}; ${analytes.join(', ')})`
			)
			.join('\n'),
		...adviceDocs()
	].join('\n\n')}\n`;
}
