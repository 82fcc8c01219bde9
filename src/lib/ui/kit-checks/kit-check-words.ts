import type { LotSummary } from '$lib/metrology';
import type { Matrix } from '$lib/observation';
import { plain } from '../charts/numbers';
import { dateWords } from '../log/log-words';
import type { ChartKind, KitChart } from './kit-chart';

export const matrixNames: Readonly<Record<Matrix, string>> = {
	seawater: 'sea salt',
	purified: 'pure water',
	sodiumChloride: 'table salt'
};

const percent = (share: number) => {
	const size = Math.abs(100 * share);
	return plain(size, size < 1.5 ? 1 : 0);
};
const lower = (share: number) => (share < 0 ? 'lower' : 'higher');

/** What a bottle that stands apart does: 'Since lot B …'. */
function lotSentence(lot: LotSummary, baseline: string): string {
	const { difference, interval, sharesSolution } = lot;
	if (difference === null || interval === null) return '';
	const ends = [interval.low, interval.high].map(Math.abs).sort((a, b) => a - b);
	const known = `Since lot ${lot.lot} known solutions read about ${percent(difference)} % ${lower(difference)} than with lot ${baseline} (between ${percent(ends[0] ?? 0)} and ${percent(ends[1] ?? 0)} %).`;
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
		const shift = sum.firstSignal.newMean / sum.target - 1;
		return `Since about ${whenOf(sum.firstSignal.onsetIndex)} known solutions read about ${percent(shift)} % ${lower(shift)} than before.`;
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

/** What a drawing shows. */
export const drawingWords: Readonly<Record<ChartKind, string>> = {
	single:
		'Each point is one check: how far the kit read from what the solution holds. Nearly all should lie between the broken lines, without a pattern; hollow ones do not.',
	average:
		'Each point is the average so far, the newest counting most. It sees a small lasting change sooner than single checks do; hollow ones lie beyond the broken lines.',
	sum: 'What lies above or below the usual is summed up, up and down by itself. A line that goes past a broken one says that the kit reads otherwise than before, and where it left 0, since when.'
};
