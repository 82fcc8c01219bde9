import { suggestionsFor, type Suggestion } from './draft-suggestions';
import type { KitDraft } from './kit-draft';
import { typedNumber, type TypedRange } from './typed-number';

/** A blank's name for the message, and between which its number must lie. */
export type Asked = TypedRange & { what: string };

const seconds = (what: string): Asked => ({
	what,
	low: 0,
	high: 3600,
	why: 'A time is between 0 and 3600 s'
});
const share = (what: string): Asked => ({
	what,
	low: 0,
	high: 50,
	why: 'A share is between 0 and 50 per cent'
});

/** Limits of what a hand kit can be, this project's choice: wide, to catch a slip of a decimal place. */
export const asked = {
	volumeMl: {
		what: 'the volume of the sample',
		low: 0.5,
		high: 250,
		why: 'A sample is between 0.5 and 250 mL'
	},
	amount: { what: 'how much of it', low: 0.01, high: 100, why: 'A dose is between 0.01 and 100' },
	unitMl: {
		what: 'the volume of one',
		low: 0.001,
		high: 20,
		why: 'A drop or spoonful is between 0.001 and 20 mL'
	},
	mixSeconds: seconds('how long to swirl, in seconds'),
	waitSeconds: seconds('how long to wait, in seconds'),
	capacityMl: {
		what: 'the capacity',
		low: 0.1,
		high: 100,
		why: 'A syringe or burette holds between 0.1 and 100 mL'
	},
	graduationMl: {
		what: 'how much lies between two lines',
		low: 0.001,
		high: 10,
		why: 'Two lines are between 0.001 and 10 mL apart'
	},
	numeralEveryMl: {
		what: 'how much lies between two numerals',
		low: 0.001,
		high: 50,
		why: 'Two numerals are between 0.001 and 50 mL apart'
	},
	barrelEndMl: {
		what: 'where the barrel ends',
		low: 0.1,
		high: 200,
		why: 'A barrel ends between 0.1 and 200 mL'
	},
	tipVolumeMl: {
		what: 'the volume of the tip',
		low: 0,
		high: 5,
		why: 'Tip and nozzle hold between 0 and 5 mL'
	},
	dropMl: {
		what: 'the volume of a drop',
		low: 0.002,
		high: 0.2,
		why: 'A drop is between 0.002 and 0.2 mL'
	},
	perMl: {
		what: 'what one mL is worth',
		low: 1e-4,
		high: 1e5,
		why: 'One mL is worth between 0.0001 and 100000'
	},
	perDrop: {
		what: 'what one drop is worth',
		low: 1e-4,
		high: 1e4,
		why: 'One drop is worth between 0.0001 and 10000'
	},
	holdsSeconds: {
		what: 'how long the colour must stay, in seconds',
		low: 1,
		high: 600,
		why: 'The colour must stay between 1 and 600 s'
	},
	sampleHalfWidth: share('how far the sample may be off, in per cent'),
	deliveryHalfWidth: share('how far the scale may be off, in per cent'),
	dropSd: share('how far the drop may be off, in per cent'),
	titrantSd: share('how far the titrant may be off, in per cent'),
	colourDrops: {
		what: 'how finely you judge the colour, in drops',
		low: 0,
		high: 5,
		why: 'A colour is judged to between 0 and 5 drops'
	},
	tipSdMl: {
		what: 'how well the tip is known, in mL',
		low: 0,
		high: 1,
		why: 'A tip is known to between 0 and 1 mL'
	}
} satisfies Record<string, Asked>;

/** What people write into a blank of which they know nothing. */
const NOT_KNOWN = /^\s*(\?+|unknown|not known|none|n\/a)\s*$/iu;

/**
 * Reads the blanks of a draft and gathers what is wrong with them, all at once, by path. A number that
 * cannot be read comes back as NaN, which no comparison holds for, so that checks between blanks stay
 * silent where one of them is wrong already.
 */
export class BlankReader {
	readonly problems: Record<string, string> = {};
	/** Blanks that were empty, and what they were taken for. */
	readonly taken: Record<string, Suggestion> = {};
	private readonly suggestions: Partial<Record<string, Suggestion>>;

	constructor(draft: KitDraft) {
		this.suggestions = suggestionsFor(draft);
	}

	/** Notes what is wrong at a blank; what was found first stays. */
	say(path: string, problem: string): void {
		this.problems[path] ??= problem;
	}

	private filled(path: string, text: string): string {
		const suggestion = this.suggestions[path];
		if (text.trim() !== '' || !suggestion) return text.trim();
		this.taken[path] = suggestion;
		return suggestion.text;
	}

	number(path: string, text: string, { what, ...range }: Asked): number {
		const typed = typedNumber(this.filled(path, text), what, range);
		if ('value' in typed) return typed.value;
		this.say(path, typed.problem);
		return Number.NaN;
	}

	/** Of a blank that may stay empty; undefined then, and when it says in words that it is not known. */
	optionalNumber(path: string, text: string, ask: Asked): number | undefined {
		return text.trim() === '' || NOT_KNOWN.test(text) ? undefined : this.number(path, text, ask);
	}

	words(path: string, text: string, what: string): string {
		const words = this.filled(path, text);
		if (words === '') this.say(path, `Type ${what} here.`);
		return words;
	}
}
