import type { YoudenPoint } from '$lib/metrology';
import { numberIn, readList, stepOf, type LineProblem } from './typed-list';

export type PortionsTyped = {
	portions: (YoudenPoint & { lineNumber: number })[];
	problems: LineProblem[];
	/** Finest step of the titrant as typed. */
	titrantStep: number;
};

const SAMPLE = { low: 0.01, high: 10_000, why: 'A portion in mL lies between 0.01 and 10 000' };
const USED = { low: 0, high: 10_000, why: 'What it used lies between 0 and 10 000' };

function portionOf(columns: readonly string[]) {
	const [sample, used] = columns;
	if (columns.length !== 2 || sample === undefined || used === undefined)
		return `Put two numbers in a line: the portion in mL, and the titrant it used. ${columns.length === 1 ? 'Only one was' : `${columns.length} were`} found.`;
	const problems: string[] = [];
	const sampleVolume = numberIn(sample, 'the portion', SAMPLE, problems);
	const titrantVolume = numberIn(used, 'the titrant', USED, problems);
	return problems[0] ?? { sampleVolume, titrantVolume, used };
}

/** Portions of one water, one a line: how much of it, and how much titrant it used. */
export function parsePortions(text: string): PortionsTyped {
	const { rows, problems } = readList(text, portionOf);
	return {
		portions: rows.map(({ used: _used, ...portion }) => portion),
		problems,
		titrantStep: stepOf(rows.map(({ used }) => used))
	};
}
