import { studentTQuantile } from '$lib/metrology';
import { plain } from '../charts/numbers';
import type { BlankFound } from './blank';
import { endsOf } from './figures';
import type { PortionsTyped } from './portions';

/** In what the titrant was counted. The first is taken while nothing was chosen. */
export const titrantUnits = { ml: 'mL', drops: 'drops', divisions: 'divisions' } as const;
export type TitrantUnit = keyof typeof titrantUnits;

/** What is still needed. */
export function noBlankWords({ portions }: PortionsTyped): string {
	if (portions.length < 3)
		return 'Three portions of one water are the least, and five are better: half as much, the usual, one and a half, twice, once more the usual.';
	return 'All portions are of one size. Titrate a smaller or a larger one of the same water.';
}

const share = (of: number) => `${plain(Math.abs(100 * of), 0)} %`;

/** What the intercept means, sentence by sentence. */
export function blankSentences({ blank, line }: BlankFound, unit: TitrantUnit): string[] {
	const of = titrantUnits[unit];
	const [low, high] = endsOf(blank.interval);
	const few = line.n < 6 ? [fewWords(line.n)] : [];
	const unseen =
		'What takes titrant in proportion to the water does not show here: its strength, the scale, the size of a drop, a colour taken late.';
	if (!blank.isClear)
		return [`None shows: anything between ${low} and ${high} ${of} fits.`, ...few, unseen];
	return [
		blank.value > 0
			? 'So much titrant goes in whatever the size of the portion. That is what is in the blank: a drop too many at the end, dead volume or air at filling, what the indicator takes itself, something left in the vial.'
			: 'So much titrant goes in without being counted, whatever the size of the portion: a drop that hung at the start and fell in, a leaking tip, a scale that does not begin at 0; or something in the vial that is titrant already.',
		`It is ${share(line.shareOfSmallest)} of what the smallest portion used, and ${share(line.shareOfLargest)} of the largest: with more water it matters less.`,
		...few,
		unseen
	];
}

/** How little a line through few portions says. */
function fewWords(n: number): string {
	const times = (of: number) => plain(studentTQuantile(0.975, of - 2), 1);
	return `${n} portions are few: the ± is ${times(n)} times the standard error. From six it is ${times(6)} times.`;
}
