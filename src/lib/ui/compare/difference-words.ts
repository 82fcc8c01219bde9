import { studentTQuantile } from '$lib/metrology';
import { plain } from '../charts/numbers';
import { isWithinBoth, type Comparison, type Score } from './comparison';
import { decimalsOfStep, endsOf, figureOf, signedBy } from './figures';

export const NO_SAMPLE =
	'Nothing yet. One sample measured both ways is a beginning; five or more say something.';

/** The difference as it stands large: own kit less the other. */
export type Headline = { value: string; plusMinus: string | null };

export function headlineOf({ differences, pairs, scores, step }: Comparison): Headline | null {
	if (differences) {
		const { meanDifference, interval } = differences;
		const half = (interval.high - interval.low) / 2;
		return {
			value: signedBy(meanDifference, half),
			plusMinus: figureOf(meanDifference, half).plusMinus
		};
	}
	const [only] = pairs;
	if (!only) return null;
	const difference = only.own - only.other;
	const [score] = scores;
	if (!score) {
		const text = plain(difference, decimalsOfStep(step));
		return { value: difference > 0 ? `+${text}` : text, plusMinus: null };
	}
	const joint = Math.hypot(only.ownU ?? 0, only.otherU ?? 0);
	return {
		value: signedBy(difference, joint),
		plusMinus: figureOf(difference, joint).plusMinus
	};
}

const side = (text: string) => {
	const isBelow = text.startsWith('−');
	return { size: text.replace('−', ''), word: isBelow ? 'lower' : 'higher' };
};
/** 'from 0.2 lower to 0.4 higher', or 'by 0.2 to 0.4'. */
function spanWords([low, high]: [string, string]): string {
	const [a, b] = [side(low), side(high)];
	if (a.word !== b.word && Number(a.size) !== 0 && Number(b.size) !== 0)
		return `from ${a.size} ${a.word} to ${b.size} ${b.word}`;
	const sizes = [a.size, b.size].sort((x, y) => Number(x) - Number(y));
	return `by ${sizes[0]} to ${sizes[1]}`;
}

/** What the differences say, sentence by sentence. */
export function differenceSentences({ differences, pairs, scores }: Comparison): string[] {
	if (pairs.length === 0) return [NO_SAMPLE];
	if (!differences) {
		const [score] = scores;
		return [
			'This is your kit less the other, on one sample.',
			score
				? isWithinBoth(score)
					? 'It is within what both ± allow. That two agree does not make either right.'
					: 'It is more than both ± allow: something is off with one of them, or one ± is too small.'
				: 'One difference cannot tell what lasts from what is chance. Measure a second sample both ways.'
		];
	}
	const { interval, isDifferent, isSdFloored, meanDifference, n } = differences;
	const of = `the mean of ${n} samples`;
	const said = isDifferent
		? [
				`On ${of} your kit reads ${meanDifference > 0 ? 'higher' : 'lower'}. About 19 times in 20 what lasts of that lies in this range: ${spanWords(endsOf(interval))}.`,
				'Which of the two is off, this cannot tell; a known solution measured both ways can.'
			]
		: [
				`On ${of} no lasting difference shows. Your kit may still read ${spanWords(endsOf(interval))}.`,
				'That none shows does not make the two alike, nor either of them right.'
			];
	return isSdFloored
		? [
				...said,
				'The differences are as alike as the last digit lets them look: the ± is what that digit can hide.'
			]
		: said;
}

/** So many samples from which the ± is no longer much larger than the scatter. */
const FEW = 10;

/** How little few samples say; null where there are enough. */
export function fewWords({ differences }: Comparison): string | null {
	if (!differences || differences.n >= FEW) return null;
	const { n, critical } = differences;
	const factor = (t: number, of: number) => plain(t / Math.sqrt(of), t / Math.sqrt(of) < 3 ? 1 : 0);
	const ten = factor(studentTQuantile(0.975, FEW - 1), FEW);
	return `${n === 2 ? 'Two samples say very little' : `${n} samples are few`}: the ± is ${factor(critical, n)} times the scatter of one difference. From ten samples it is ${ten} times.`;
}

/** Between what single differences lie, and how far that can be trusted. */
export function limitsSentences({ limits }: Comparison, unit: string): string[] {
	if (!limits) return [];
	const { lower, upper, trend, isProvisional, n } = limits;
	const half = (lower.interval.high - lower.interval.low) / 2;
	const known = figureOf(0, half).plusMinus;
	return [
		`Of single samples, about 19 in 20 should differ by something between ${signedBy(lower.value, half)} and ${signedBy(upper.value, half)} ${unit}. If you could live with that, one way may stand in for the other.`,
		...(isProvisional
			? [
					`A first impression: from ${n} samples each of these limits is known to about ±\u00a0${known} only. Twenty samples would do.`
				]
			: [`Each of these limits is known to about ±\u00a0${known}.`]),
		...(trend?.isLikely
			? [
					'The difference seems to change as the value rises. A hint only: a method that scatters more than the other looks like that too.'
				]
			: [])
	];
}

/** What E_n says of one sample, in words. */
export const scoreWords = (score: Score): string =>
	isWithinBoth(score)
		? 'within both ±'
		: Math.abs(score.zeta) < 3
			? 'more than both ± allow, but doubtful'
			: 'far more than both ± allow';

/** What the samples with both ± say together. */
export function scoresSentence(scores: readonly Score[]): string {
	const beyond = scores.filter((score) => !isWithinBoth(score)).length;
	const n = scores.length;
	if (n === 1)
		return beyond === 0
			? 'On this sample the two agree within what both claim.'
			: 'On this sample the two differ by more than both claim.';
	if (beyond === 0)
		return `On all ${n} samples the two agree within what both claim. If all differ the same way, look at the mean difference all the same.`;
	return `On ${beyond} of ${n} samples the two differ by more than both claim. By chance that should happen to about one in 20.`;
}
