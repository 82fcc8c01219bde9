import type { Judged } from './judge';
import { CERTAIN, MOST_CHECKS, orders, type Ordered } from './orders';
import {
	baseRateScores,
	meanOf,
	reliabilityOf,
	scoresOf,
	shareError,
	shareOf,
	type Reliability
} from './scores';
import { chanceAt } from './seeds';

const percent = (share: number, digits = 1) => `${(100 * share).toFixed(digits)} %`;
const fixed = (value: number, digits = 2) => value.toFixed(digits);

/** Rows as a table of Markdown, columns in line. */
export function tableOf(rows: readonly (readonly string[])[]): string {
	const [head = []] = rows;
	const widths = head.map((_, c) => Math.max(...rows.map((row) => (row[c] ?? '').length)));
	const line = (row: readonly string[]) =>
		`| ${row.map((cell, c) => cell.padEnd(widths[c] ?? 0)).join(' | ')} |`;
	return [
		line(head),
		line(widths.map((width) => '-'.repeat(width))),
		...rows.slice(1).map(line)
	].join('\n');
}

export const reliabilityFor = (judged: readonly Judged[], seed: number): Reliability =>
	reliabilityOf(
		judged.map(({ pTop, isClass }) => ({ p: pTop, isRight: isClass })),
		chanceAt(seed, 'bands')
	);

/** All figures of one table of cases, as text. */
export function reportOf(
	title: string,
	judged: readonly Judged[],
	ordered: readonly Ordered[],
	seed: number,
	unit = 'dKH'
): string {
	const n = judged.length;
	const one = judged.flatMap((each) => each.one ?? []);
	const own = scoresOf(judged);
	const base = baseRateScores(judged);
	const reliability = reliabilityFor(judged, seed);
	const { ece, perfectEce, tooSure } = reliability;
	const held = shareOf(judged, ({ isHeld }) => isHeld);
	const rms = (of: (each: Judged) => number) =>
		Math.sqrt(meanOf(judged.map((each) => of(each) ** 2)));
	const regret = (of: keyof Judged['regret']) => fixed(meanOf(judged.map((j) => j.regret[of])), 1);
	return [
		`## ${title}: ${n} cases, seed ${seed}`,
		tableOf([
			['', 'diagnosis', 'base rates'],
			['first verdict (class) right', percent(own.top1), percent(base.top1)],
			['log score', fixed(own.log, 3), fixed(base.log, 3)],
			['Brier score', fixed(own.brier, 3), fixed(base.brier, 3)]
		]),
		`First cause by name right in ${percent(shareOf(judged, (j) => j.isCause))}, with its group in ${percent(shareOf(judged, (j) => j.isGroup))}. Where exactly one cause of the catalogue is there (${one.length} cases), the likeliest of all causes is it in ${percent(shareOf(one, (each) => each.cause))}, in its group in ${percent(shareOf(one, (each) => each.group))}, of its class in ${percent(shareOf(one, (each) => each.class))}.`,
		`Calibration error ${fixed(ece, 3)}; a perfectly calibrated forecaster shows ${fixed(perfectEce.mean, 3)}, in 95 of 100 sets below ${fixed(perfectEce.upper, 3)}. Said less right: ${tooSure > 0 ? '+' : ''}${percent(tooSure)}.`,
		tableOf([
			['said', 'cases', 'mean said', 'right', 'band of 95 %'],
			...reliability.bins.map(({ count, said, right, band }, b) => [
				`${b * 10} to ${b * 10 + 10} %`,
				`${count}`,
				...(count === 0
					? ['', '', '']
					: [
							percent(said),
							percent(right) + (right < band[0] || right > band[1] ? ' *' : ''),
							`${percent(band[0])} to ${percent(band[1])}`
						])
			])
		]),
		tableOf([
			['true value', 'interval of 95 % holds it', 'mean width', 'error, rms'],
			[
				'diagnosis',
				`${percent(held)} (± ${percent(2 * shareError(held, n))})`,
				`${fixed(meanOf(judged.map((j) => j.width)))} ${unit}`,
				`${fixed(rms((j) => j.error))} ${unit}`
			],
			[
				'reading ± as stated',
				percent(shareOf(judged, (j) => j.isRawHeld)),
				`${fixed(meanOf(judged.map((j) => j.rawWidth)))} ${unit}`,
				`${fixed(rms((j) => j.rawError))} ${unit}`
			]
		]),
		tableOf([
			['minutes of regret', 'mean'],
			['by the advice (nothing poured while unverified)', regret('advised')],
			['by what is believed of the value alone', regret('belief')],
			['always by the reading', regret('raw')],
			['always leaving it', regret('leave')]
		]),
		bySet(judged),
		...(ordered.length > 0 ? [reportOfOrders(ordered)] : [])
	].join('\n\n');
}

function bySet(judged: readonly Judged[]): string {
	const sets = [...new Set(judged.map(({ set }) => set))];
	return tableOf([
		['by evidence', 'cases', 'class right', 'said', 'log', 'base log', 'held', 'width'],
		...sets.map((set) => {
			const own = judged.filter((each) => each.set === set);
			const { top1, log } = scoresOf(own);
			return [
				set,
				`${own.length}`,
				percent(top1),
				percent(meanOf(own.map(({ pTop }) => pTop))),
				fixed(log, 3),
				fixed(baseRateScores(own).log, 3),
				percent(shareOf(own, ({ isHeld }) => isHeld)),
				fixed(meanOf(own.map(({ width }) => width)))
			];
		})
	]);
}

function reportOfOrders(ordered: readonly Ordered[]): string {
	return [
		`Checks until ${percent(CERTAIN, 0)} certain, at most ${MOST_CHECKS} (counted as ${MOST_CHECKS} where not reached):`,
		tableOf([
			['cases', 'order', 'of', 'reached', 'right then', 'checks', 'minutes', 'regret at the end'],
			...orders.flatMap((order) =>
				(['side', 'cause'] as const).flatMap((of) => {
					const inOrder = ordered.filter((each) => each.order === order);
					const own = inOrder.flatMap((each) => each[of] ?? []);
					const certain = own.filter(({ isReached }) => isReached);
					if (own.length === 0) return [];
					const row = [
						`${own.length}`,
						order,
						of === 'side' ? 'the side of the band' : 'the class of the cause',
						percent(certain.length / own.length, 0),
						certain.length === 0
							? ''
							: percent(
									shareOf(certain, ({ isRight }) => isRight),
									0
								),
						fixed(meanOf(own.map(({ checks }) => checks))),
						fixed(meanOf(own.map(({ minutes }) => minutes)), 0),
						of === 'side' ? fixed(meanOf(inOrder.map((each) => each.regretAtEnd)), 1) : ''
					];
					return [row];
				})
			)
		])
	].join('\n\n');
}
