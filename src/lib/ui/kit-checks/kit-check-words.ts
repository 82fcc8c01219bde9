import type { LotSummary } from '$lib/metrology';
import type { Matrix } from '$lib/observation';
import { figureOf, signedBy, withPlusMinus } from '../compare/figures';
import { dateWords } from '../log/log-words';
import type { ChartKind, KitChart } from './kit-chart';

export const matrixNames: Readonly<Record<Matrix, string>> = {
	seawater: 'sea salt',
	purified: 'pure water',
	sodiumChloride: 'table salt'
};

/** A size in per cent with the digits that its ± in per cent allows. */
const sizeBy = (size: number, plusMinus: number) => figureOf(Math.abs(size), plusMinus).value;
const lower = (share: number) => (share < 0 ? 'lower' : 'higher');

/** What a bottle that stands apart does: 'Since lot B …'. */
function lotSentence(lot: LotSummary, baseline: string): string {
	const { difference, interval, sharesSolution } = lot;
	if (difference === null || interval === null) return '';
	const half = (100 * (interval.high - interval.low)) / 2;
	const ends = [interval.low, interval.high]
		.map((end) => 100 * Math.abs(end))
		.sort((a, b) => a - b)
		.map((end) => sizeBy(end, half));
	const known = `Since lot ${lot.lot} known solutions read about ${sizeBy(100 * difference, half)} % ${lower(difference)} than with lot ${baseline} (between ${ends[0]} and ${ends[1]} %).`;
	return sharesSolution === false
		? `${known} Another solution was used then: it may be that and not the lot.`
		: known;
}

/** What stands out, in one sentence. */
export function standsOut({ byLot, average, sum, why, checks }: KitChart): string {
	if (why === 'tooFew')
		return checks.length === 0
			? 'No test of a known solution with this kit is kept.'
			: `There ${checks.length === 1 ? 'is one check' : `are ${checks.length} checks`} so far. From three on it can be told what is usual.`;
	if (why === 'noRepeats' || !byLot || !average || !sum)
		return 'Every bottle was checked once only. Check one of them again, and it can be told what is usual.';
	const apart = byLot.lots.filter(({ standsApart }) => standsApart);
	const newest = apart.at(-1);
	if (newest) return lotSentence(newest, byLot.baselineLot);
	const whenOf = (index: number) => dateWords(byLot.checks[index]?.atEpochMs ?? 0);
	if (sum.firstSignal) {
		const { newMean, onsetIndex, index } = sum.firstSignal;
		const shift = newMean / sum.target - 1;
		// Told by the checks from the onset to the alarm.
		const plusMinus = (200 * byLot.sd) / Math.sqrt(index - onsetIndex + 1);
		return `Since about ${whenOf(onsetIndex)} known solutions read about ${sizeBy(100 * shift, plusMinus)} % ${lower(shift)} than before.`;
	}
	if (average.firstSignal)
		return `The running average has wandered ${average.firstSignal.direction === 'down' ? 'down' : 'up'} since ${whenOf(average.firstSignal.index)}.`;
	const beyond = byLot.chart.points.filter(({ broken }) => broken.length > 0);
	const [first] = beyond;
	if (first)
		return beyond.length === 1
			? `The check of ${whenOf(first.index)} lies off the others. One alone is more often a slip than a change.`
			: `${beyond.length} checks since ${whenOf(first.index)} do not lie as the others do.`;
	return 'Nothing stands out: the checks scatter as they did from the start.';
}

/** How far the limits are to be trusted. */
export function trustWords({ byLot }: KitChart): string | null {
	if (!byLot?.isProvisional) return null;
	const n = byLot.chart.baseline;
	return `The limits are provisional: they come from ${n === 1 ? 'one check' : `${n} checks`} of lot ${byLot.baselineLot}, and 20 would be enough to trust them.`;
}

/** A lot beside the first one, in a sentence. */
export function lotWords(
	{
		n,
		isBaseline,
		meanRecovery,
		standardError,
		difference,
		interval,
		standsApart,
		sharesSolution
	}: LotSummary,
	baseline: string
): string {
	const checks = n === 1 ? 'one check' : `${n} checks`;
	if (isBaseline || difference === null || interval === null)
		return `${checks}, on the mean ${signedBy(100 * (meanRecovery - 1), 200 * standardError)} % from what the solutions hold. The others are held against this lot.`;
	const half = (100 * (interval.high - interval.low)) / 2;
	const by = withPlusMinus(Math.abs(100 * difference), half);
	const said = standsApart
		? `${by} % ${lower(difference)} than lot ${baseline}.`
		: `no difference from lot ${baseline} shows (${withPlusMinus(100 * difference, half)} %).`;
	const other = sharesSolution === false ? ' Another solution was used then.' : '';
	return `${checks}, ${said}${other}`;
}

/** What each way of looking says now, in the order of `kinds`. */
export function looks(chart: KitChart): { kind: ChartKind; words: string; isAlarm: boolean }[] {
	const { byLot, average, sum } = chart;
	if (!byLot || !average || !sum) return [];
	const whenOf = (index: number) => dateWords(byLot.checks[index]?.atEpochMs ?? 0);
	const off = byLot.chart.points.filter(({ broken }) => broken.length > 0);
	const [first] = off;
	const [mean, both] = [average.points.at(-1), sum.points.at(-1)];
	const passed = (at: { index: number }, isStill: boolean) =>
		`beyond its limit since ${whenOf(at.index)}${isStill ? '' : ', and back within it now'}`;
	return [
		{
			kind: 'single',
			isAlarm: off.length > 0,
			words: first
				? off.length === 1
					? `that of ${whenOf(first.index)} lies off the others`
					: `${off.length} of ${byLot.checks.length} do not lie as the others do, first that of ${whenOf(first.index)}`
				: 'none lies off the others'
		},
		{
			kind: 'average',
			isAlarm: average.firstSignal !== null,
			words: average.firstSignal
				? `${passed(average.firstSignal, mean?.isBeyond ?? false)}: the readings went ${average.firstSignal.direction}`
				: 'within its limits'
		},
		{
			kind: 'sum',
			isAlarm: sum.firstSignal !== null,
			words: sum.firstSignal
				? `${passed(sum.firstSignal, both?.isBeyond ?? false)}: the readings went ${sum.firstSignal.direction}, counted from ${whenOf(sum.firstSignal.onsetIndex)}`
				: 'within its limits'
		}
	];
}

/**
 * What an alarm means and what it does not. How often one comes by chance: run lengths of the charts'
 * own rules, simulated and from their sources (`individualsChart`, `ewmaChart`, `cusumChart`).
 */
export function alarmSentences({ byLot }: KitChart): string[] {
	return [
		'An alarm means that known solutions no longer read as they did with the first bottle. It does not say why: bottle, solution, light and hands may each have changed. Check the same solution again, then with another bottle.',
		'One alarm may be chance. With nothing wrong the single checks give one in about 160 checks, the running average in about 500 and the running sum in about 470; more often while the limits rest on few checks.',
		'No alarm does not mean that the kit reads right. One that was off from the first stays so quietly.',
		...(byLot?.isOneLevel
			? [
					'All solutions held about the same. A bottle that reads lower may do so in proportion or by a fixed amount, so no factor to correct readings by follows.'
				]
			: [])
	];
}

/** What a drawing shows. */
export const drawingWords: Readonly<Record<ChartKind, string>> = {
	single:
		'Each point is one check: how far the kit read from what the solution holds. Nearly all should lie between the broken lines, without a pattern; hollow ones do not. A slip or a jump shows here first.',
	average:
		'Each point is the average so far, the newest counting most. A slow drift shows here sooner than in single checks; hollow ones lie beyond the broken lines.',
	sum: 'What lies above or below the usual is summed up, up and down by itself. A small change that lasts shows here first: a line past a broken one says that the kit reads otherwise than before, and where it left 0, since when.'
};
