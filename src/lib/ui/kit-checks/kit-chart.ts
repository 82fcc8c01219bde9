import { convertValue, type Kit, type Unit } from '$lib/kits';
import { chartByLot, methodFiguresOf, type LotChart } from '$lib/metrology';
import type { Matrix } from '$lib/observation';
import type { KeptReference } from '$lib/procedure';
import { plain } from '../charts/numbers';
import { figureOf, signedBy } from '../compare/figures';
import { dateWords } from '../log/log-words';
import type { PlotData, PlotLine } from '../charts/plot';
import { runningOf, type Counting, type RunningAverage, type RunningSum } from './running';

/** Ways to look at checks in the order of time. */
export const kinds = {
	single: 'each check by itself',
	average: 'running average',
	sum: 'running sum'
} as const;
export type ChartKind = keyof typeof kinds;

export type KitChart = {
	/** In the order of time, of one kind of water. */
	checks: readonly KeptReference[];
	/** Finest step of a reading, in the unit of the checks. */
	resolution: number;
	/** Null where there is too little to say what is usual: see `why`. */
	byLot: LotChart | null;
	/** Of recoveries; of as many points as `byLot.checks`. */
	average: RunningAverage | null;
	sum: RunningSum | null;
	why: 'tooFew' | 'noRepeats' | null;
};

/** Finest step of a reading by a kit, in a unit: a drop, or a division where that is more. */
export function resolutionOf(kit: Kit, unit: Unit): number {
	const { dropMl, graduationMl, valuePerMl } = methodFiguresOf(kit);
	const inKit = Math.max(dropMl, graduationMl ?? 0) * valuePerMl;
	return convertValue(inKit, kit.unit, unit, kit.analyte);
}

/** The waters that known solutions were made in, the one with most checks first. */
export function matricesOf(checks: readonly KeptReference[]): Matrix[] {
	const counts = new Map<Matrix, number>();
	for (const { matrix } of checks) counts.set(matrix, (counts.get(matrix) ?? 0) + 1);
	return [...counts].sort(([, a], [, b]) => b - a).map(([matrix]) => matrix);
}

const FEWEST = 3;

/**
 * Checks of one kit on known solutions of one water: how each recovery lies to those of the first lot.
 *
 * @param resolution finest step of a reading, above 0, in the unit of the checks
 * @param counting whether running average and sum begin anew with each lot; right through when left out
 */
export function kitChart(
	all: readonly KeptReference[],
	{
		matrix,
		resolution,
		counting = 'through'
	}: { matrix: Matrix; resolution: number; counting?: Counting }
): KitChart {
	const checks = all.filter((check) => check.matrix === matrix);
	const none = { checks, resolution, byLot: null, average: null, sum: null };
	if (checks.length < FEWEST) return { ...none, why: 'tooFew' };
	// The scatter of one check is told by lots that were checked more than once.
	if (new Set(checks.map(({ lot }) => lot)).size === checks.length)
		return { ...none, why: 'noRepeats' };
	const byLot = chartByLot(checks, { resolution });
	return { checks, resolution, byLot, ...runningOf(byLot, counting), why: null };
}

/** A recovery as what it is off, in per cent of what the solution holds. */
const off = (recovery: number) => 100 * (recovery - 1);

/** Bottles whose beginning is marked in a drawing; of more of them, the newest. */
const MOST_MARKS = 4;

function startsOf({ lots, checks }: LotChart) {
	return lots
		.slice(1)
		.slice(-MOST_MARKS)
		.map(({ lot }) => ({
			x: checks.findIndex((check) => check.lot === lot) + 0.5,
			words: `lot ${lot.slice(0, 16)}`
		}));
}

/** What is drawn of a chart with limits. */
export function chartDrawing(
	{ byLot, average, sum }: KitChart,
	kind: ChartKind
): { data: PlotData; yName: string } | null {
	if (!byLot || !average || !sum) return null;
	const n = byLot.checks.length;
	const level = (y: number, style: PlotLine['kind']): PlotLine => ({
		kind: style,
		points: [
			{ x: 0.5, y },
			{ x: n + 0.5, y }
		]
	});
	const at = (values: readonly number[]) => values.map((y, i) => ({ x: i + 1, y }));
	/** A line through all checks that is broken wherever counting began anew. */
	const along = (kind: PlotLine['kind'], values: readonly number[]): PlotLine[] =>
		average.stretches.map(({ from, to }) => ({ kind, points: at(values).slice(from, to) }));
	const shared = { marks: startsOf(byLot), isCounted: true };
	const { chart } = byLot;
	if (kind === 'sum') {
		const [high, low] = [
			sum.points.map((point) => 100 * point.high),
			sum.points.map((point) => -100 * point.low)
		];
		return {
			data: {
				...shared,
				points: [],
				lines: [
					...along('fit', high),
					...along('fit', low),
					level(100 * sum.limit, 'limit'),
					level(-100 * sum.limit, 'limit')
				],
				hasZeroLine: true
			},
			yName: 'summed up, %'
		};
	}
	const values = byLot.checks.map(({ recovery }) => off(recovery));
	if (kind === 'single')
		return {
			data: {
				...shared,
				points: chart.points.map(({ broken }, i) => ({
					x: i + 1,
					y: values[i] ?? 0,
					isUsed: broken.length === 0
				})),
				lines: [
					{ kind: 'guide', points: at(values) },
					level(off(chart.target), 'guide'),
					level(off(chart.lower), 'limit'),
					level(off(chart.upper), 'limit')
				]
			},
			yName: 'read off, %'
		};
	return {
		data: {
			...shared,
			points: average.points.map((point, i) => ({
				x: i + 1,
				y: off(point.average),
				isUsed: !point.isBeyond
			})),
			lines: [
				...along(
					'guide',
					average.points.map((point) => off(point.average))
				),
				level(off(chart.target), 'guide'),
				...along(
					'limit',
					average.points.map(({ lower }) => off(lower))
				),
				...along(
					'limit',
					average.points.map(({ upper }) => off(upper))
				)
			]
		},
		yName: 'average off, %'
	};
}

/** Standard deviation of one recovery: as the lots scatter; before that is known, as fine as a reading is. */
const scatterOf = ({ byLot, resolution }: KitChart, { expected }: KeptReference): number =>
	byLot?.sd ?? resolution / Math.sqrt(12) / expected;

/**
 * What one check read from what its solution is said to hold, in per cent of that, with its ± of about
 * 95 %: the scatter of single checks and how well the content is known.
 */
export function offOf(chart: KitChart, check: KeptReference): { off: number; plusMinus: number } {
	const ofContent = check.expectedExpandedUncertainty / check.expected;
	return {
		off: off(check.value / check.expected),
		plusMinus: 100 * Math.hypot(2 * scatterOf(chart, check), ofContent)
	};
}

/** '−1 ± 3 %' */
export function offText(chart: KitChart, check: KeptReference): string {
	const { off: value, plusMinus } = offOf(chart, check);
	return `${signedBy(value, plusMinus)}\u00a0±\u00a0${figureOf(value, plusMinus).plusMinus}\u00a0%`;
}
export const expectedText = (check: KeptReference, decimals: number): string =>
	plain(check.expected, decimals);

/** Weight of the newest check in the running average is 0.2: its scatter is a third of that of one check. */
const OF_AVERAGE = 1 / 3;

/** What runs along up to a check, with no more digits than the scatter of the checks allows. */
function runningTexts({ byLot, average, sum }: KitChart, index: number) {
	const [mean, both] = [average?.points[index], sum?.points[index]];
	if (!byLot || !mean || !both) return null;
	const plusMinus = 200 * byLot.sd;
	return {
		average: `${signedBy(off(mean.average), plusMinus * OF_AVERAGE)} %`,
		up: figureOf(100 * both.high, plusMinus).value,
		down: figureOf(100 * both.low, plusMinus).value
	};
}

/** A drawing as a table: by kind, no wider than a small phone. */
export function chartTable(
	chart: KitChart,
	kind: ChartKind,
	{ unit, decimals }: { unit: string; decimals: number }
): { columns: string[]; rows: string[][] } {
	const own = { single: [`Read, ${unit}`], average: ['Average'], sum: ['Up', 'Down'] }[kind];
	const rows = chart.checks.map((check, i) => {
		const running = runningTexts(chart, i);
		const cells = {
			single: [plain(check.value, decimals)],
			average: [running?.average ?? ''],
			sum: [running?.up ?? '', running?.down ?? '']
		}[kind];
		return [`${i + 1}`, dateWords(check.atEpochMs), offText(chart, check), ...cells];
	});
	return { columns: ['No.', 'When', 'Off', ...own], rows };
}
