import { inQuestionIn, isFarOff } from '../diagnosis/in-question';
import type { DecideInput, Decision } from './decision';
import { isRepeat } from './further-check';

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
	const isRepeatAsked = lacks === 'repeat' || isRepeat(check);
	if (due !== 'due' || verdict !== 'check' || !isRepeatAsked) return [];
	const read = input.diagnosis?.inQuestion;
	return [
		`${
			read?.isFarFromBefore
				? read.isChangeExpected
					? 'By what was dosed and used up since the reading before, this one lies further off than tests scatter'
					: 'The reading lies further from the one before than tests scatter'
				: 'The reading lies outside your band by more than its ±'
		}, and was made once. A single test slips easily: test once more.`
	];
}
