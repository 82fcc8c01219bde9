import { typedNumber } from '$lib/kits';
import { acceptRepeats, type Acceptance } from '$lib/metrology';
import { figureOf } from './figures';
import { columnsOf, stepOf } from './typed-list';

export type RepeatsRead = {
	/** What is to be said; nothing while nothing was typed. */
	sentences: readonly string[];
	/** To compare, with the digits that the usual scatter allows; null while more are needed. */
	value: string | null;
	valuesProblem: string | null;
	sdProblem: string | null;
};

const VALUE = { low: 0, high: 10_000, why: 'A value lies between 0 and 10 000' };
const SD = { low: 1e-6, high: 10_000, why: 'A scatter lies above 0' };
const MOST = 10;

const more = {
	takeOneMore: 'Measure it once more.',
	takeTwoMore: 'Measure it twice more.'
} as const;

function said(
	{ agrees, criticalRange, range, toDo, standsApart }: Acceptance,
	typed: readonly string[]
): string[] {
	const n = typed.length;
	const { plusMinus: limit } = figureOf(0, criticalRange);
	const { value: found } = figureOf(range, criticalRange);
	const apart = `They lie ${found} apart. ${n} results by these hands should lie within ${limit} of each other, 19 times in 20.`;
	if (agrees) return [apart, 'Their mean is the value to compare.'];
	const odd = standsApart === null ? undefined : typed[standsApart];
	const why =
		odd === undefined
			? 'No single one explains it: look for what was another from one to the next.'
			: `${odd} stands apart; the others agree. Look for what went wrong with ${odd}.`;
	return toDo === 'done'
		? [apart, why, 'The middle one stands in for the mean.']
		: [apart, `${more[toDo]} Until then there is no value to compare.`];
}

/**
 * Repeats of one sample: which value to report, and whether more are needed.
 *
 * @param values two to ten, parted by spaces, semicolons or tabs
 * @param usualSd scatter of one result by these hands
 */
export function readRepeats(values: string, usualSd: string): RepeatsRead {
	const nothing: RepeatsRead = { sentences: [], value: null, valuesProblem: null, sdProblem: null };
	if (values.trim() === '') return nothing;
	const columns = columnsOf(values);
	if (!columns)
		return {
			...nothing,
			valuesProblem: 'Put a space between the values: a comma may be a decimal sign.'
		};
	const typed = columns.map((column) => typedNumber(column, 'a value', VALUE));
	const wrong = typed.find((each) => 'problem' in each);
	if (wrong) return { ...nothing, valuesProblem: wrong.problem };
	const results = typed.flatMap((each) => ('value' in each ? [each.value] : []));
	if (results.length < 2 || results.length > MOST)
		return { ...nothing, valuesProblem: `Type 2 to ${MOST} values; found ${results.length}.` };
	if (usualSd.trim() === '')
		return { ...nothing, sentences: ['The usual scatter of one result is needed too.'] };
	const sd = typedNumber(usualSd, 'the scatter', SD);
	if ('problem' in sd) return { ...nothing, sdProblem: sd.problem };
	const found = acceptRepeats(results, sd.value, { resolution: stepOf(columns) });
	return {
		...nothing,
		sentences: said(found, columns),
		value:
			found.toDo === 'done'
				? figureOf(found.value, (2 * sd.value) / Math.sqrt(results.length)).value
				: null
	};
}
