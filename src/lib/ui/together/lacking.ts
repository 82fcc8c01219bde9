import type { ConsistencyInput } from '$lib/judgement';

type Part = keyof Pick<
	ConsistencyInput,
	'alkalinity' | 'calcium' | 'magnesium' | 'salinity' | 'ph'
>;

/** What values can be held against, and which of them that takes. */
const looks: readonly { takes: readonly Part[]; then: string }[] = [
	{
		takes: ['calcium', 'magnesium', 'salinity'],
		then: 'calcium and magnesium are held against what the sea has at that salinity'
	},
	{
		takes: ['alkalinity', 'calcium', 'salinity', 'ph'],
		then: 'it is worked out how far the water is above saturation with aragonite, of which corals build'
	}
];

const names: Readonly<Record<Part, string>> = {
	alkalinity: 'alkalinity',
	calcium: 'calcium',
	magnesium: 'magnesium',
	salinity: 'the salinity',
	ph: 'pH'
};

/** 'magnesium', 'calcium and pH', 'alkalinity, calcium and pH'. */
function inWords(parts: readonly Part[]): string {
	const words = parts.map((part) => names[part]);
	const last = words.at(-1) ?? '';
	return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** What is still to be typed, one sentence for each way to look that is not possible yet. */
export function lackingWords(input: ConsistencyInput): string[] {
	return looks.flatMap(({ takes, then }) => {
		const lacking = takes.filter((part) => input[part] === undefined);
		if (lacking.length === 0) return [];
		const asWell = lacking.length < takes.length ? ' as well' : '';
		return [`With ${inWords(lacking)}${asWell}, ${then}.`];
	});
}
