/**
 * Names of the causes that are together in an explanation: none where nothing is wrong, one, or two.
 */
export type Together = readonly string[];

/** No reason is longer, in characters: about four lines of a phone. Judgement. */
export const LONGEST_REASON = 150;

const quoted = (name: string) => `‘${name}’`;

/** A cause that some have as a habit and others met once is two causes under one name; see `habitAndOnce`. */
const OFTEN = /, (this once|as a habit|each time)$/;
const bare = (name: string) => name.replace(OFTEN, '');
/** A name up to where it adds a reason or another way to the same. */
const begun = (name: string) => bare(name).replace(/(:|, (or|as|a|no|the)\b).*$/, '');

type Naming = (name: string) => string;

function phrase(causes: Together, name: Naming): string {
	const [first, second] = causes;
	if (first === undefined) return quoted('nothing wrong');
	return second === undefined
		? quoted(name(first))
		: `${quoted(name(first))} and ${quoted(name(second))} together`;
}

/** The first of two that are together, for where both would be too long. */
const shortPhrase = (causes: Together): string =>
	causes.length > 1
		? `${phrase(causes.slice(0, 1), begun)} with another cause`
		: phrase(causes, begun);

const firstThatFits = (sentences: readonly string[]): string =>
	sentences.find(({ length }) => length <= LONGEST_REASON) ?? sentences.at(-1)!;

/** By what two explanations differ, where they have a cause in common. */
function differing(
	one: Together,
	two: Together
): { common: string; rest: [Together, Together] } | null {
	const common = one.find((name) => two.includes(name));
	if (common === undefined) return null;
	const without = (causes: Together) => causes.filter((name) => name !== common);
	return { common, rest: [without(one), without(two)] };
}

/** Why a check that parts two explanations: one short sentence, however many and long their names are. */
export function reasonOfTwo(one: Together, two: Together): string {
	const shared = differing(one, two);
	if (shared) {
		const { common, rest } = shared;
		const added = [...rest[0], ...rest[1]];
		if (added.length === 0) return reasonOfSize(one);
		if (rest[0].length > 0 && rest[1].length > 0) return reasonOfTwo(...rest);
		return firstThatFits([
			`It tells whether, beside ${quoted(bare(common))}, there was ${quoted(bare(added[0]!))} too.`,
			`It tells whether there was ${quoted(bare(added[0]!))} as well.`
		]);
	}
	const often = one.find((name) => two.some((other) => bare(other) === bare(name)));
	if (often !== undefined)
		return `It tells whether ${quoted(bare(often))} was this once or is a habit.`;
	return firstThatFits([
		...[bare, begun].map((name) => `It tells ${phrase(one, name)} from ${phrase(two, name)}.`),
		`It tells ${shortPhrase(one)} from ${shortPhrase(two)}.`,
		// What comes on top of either is left unsaid, before the sentence is too long to be read.
		`It tells ${phrase(one.slice(0, 1), begun)} from ${phrase(two.slice(0, 1), begun)}.`
	]);
}

/** Why a check that tells nothing but the size of one explanation. */
export const reasonOfSize = (causes: Together): string =>
	firstThatFits([
		...[bare, begun].map((name) => `It tells how large the effect is of ${phrase(causes, name)}.`),
		`It tells how large the effect is of ${shortPhrase(causes)}.`
	]);

/**
 * Why a check that parts the first of three from both others, and these from each other as well where
 * `areAllParted`; null where three would be too much for one sentence.
 */
export function reasonOfThree(
	[first, second, third]: readonly [Together, Together, Together],
	areAllParted: boolean
): string | null {
	const all = [first, second, third];
	if (all.some(({ length }) => length > 1)) return null;
	const stems = all.map(([name = '']) => bare(name));
	// Once and as a habit are told apart by themselves, where both are among them.
	const name: Naming = (each) =>
		stems.filter((stem) => stem === bare(each)).length > 1 ? each : bare(each);
	const [one, two, three] = all.map((each) => phrase(each, name));
	const sentence = areAllParted
		? `It tells ${one}, ${two} and ${three} from each other.`
		: `It tells ${one} from ${two} and from ${three}.`;
	return sentence.length <= LONGEST_REASON ? sentence : null;
}
