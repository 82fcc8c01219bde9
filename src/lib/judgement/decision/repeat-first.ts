import type { CheckId } from '../../observation';
import { inQuestionIn, isFarOff } from '../diagnosis/in-question';
import type { RankedCheck } from '../ranking/ranked-check';
import type { DecideInput, Decision } from './decision';

/**
 * Chance of changing the advice from which one more check comes first, although the value is verified
 * already; judgement.
 */
const WORTH_ASKING_STILL = 0.2;

/** Checks that read today's water once more, and with that whether the test in question slipped. */
const repeats: readonly CheckId[] = ['repeatQuick', 'repeatFull', 'freshSample'];

const rankedOf = ({ ranked, next }: DecideInput): readonly RankedCheck[] =>
	ranked ?? (next ? [next] : []);

/** The best of the checks that are left that may well change the advice; null where none may. */
export const turningOf = (input: DecideInput): RankedCheck | null =>
	rankedOf(input).find(({ changesAdvice }) => changesAdvice >= WORTH_ASKING_STILL) ?? null;

/** The best of those that test the same water again; null where none is to be had. */
export const repeatOf = (input: DecideInput): RankedCheck | null =>
	rankedOf(input).find(
		(each) => each.kind === 'checks' && each.checks.every((check) => repeats.includes(check))
	) ?? null;

/**
 * Whether the reading is far off and was made once: then it is repeated first. Where an answer names what
 * made it read so, nothing has to be found out, and the test with that mended can wait until tomorrow.
 */
export function repeatDueOf({
	diagnosis,
	band,
	hasStonyCorals
}: DecideInput): 'due' | 'explained' | null {
	const read = diagnosis?.inQuestion;
	if (!read || read.isRepeated || hasStonyCorals === false) return null;
	if (!isFarOff(inQuestionIn(read, band.unit), band)) return null;
	return read.isExplained ? 'explained' : 'due';
}

/** Why the same water is tested again. */
export function repeatWords(
	input: DecideInput,
	{ verdict, check, lacks }: Pick<Decision, 'verdict' | 'check' | 'lacks'>
): string[] {
	const due = repeatDueOf(input);
	if (due === 'explained' && verdict === 'leave')
		return [
			'What was answered explains the reading. Test again with that put right: so far the value is worked out, and not read.'
		];
	const isRepeatAsked = lacks === 'repeat' || (check !== null && check === repeatOf(input));
	if (due !== 'due' || verdict !== 'check' || !isRepeatAsked) return [];
	const read = input.diagnosis?.inQuestion;
	return [
		`${
			read?.isFarFromBefore
				? read.isChangeExpected
					? 'By what was dosed and used up since the reading before, this one lies further off than tests scatter'
					: 'The reading lies further from the one before than tests scatter'
				: 'The reading lies outside your band by more than its ±'
		}, and was made once. A single test slips easily: test the same water again.`
	];
}
