import { demingRegression, yorkRegression, type Point } from '$lib/metrology';
import { estimateOf, roundingSd, type Estimate } from './estimate';
import type { MeasuredPair, PairsTyped } from './pairs';

/** Standard deviation of one value from test to test, of either method. */
export type Scatter = { own: number; other: number };

/** Own kit = offset + slope · other. */
export type ThroughBoth = {
	/** 'york': by the ± of each sample; 'deming': both scatter alike, or in the ratio that was given. */
	by: 'york' | 'deming';
	offset: Estimate;
	slope: Estimate;
	/**
	 * The points lie no farther off the line than their ± allow. Where they do, the ± of the line were
	 * widened to what the points show. True where no ± was given.
	 */
	isConsistent: boolean;
	/**
	 * The slope is known too badly for a cause to be read from it or from the offset. Where all samples
	 * hold about the same, the intervals themselves are not to be trusted: simulated with ten samples
	 * alike, one line in five was called clear with nothing wrong.
	 */
	isTooWide: boolean;
	/** Contents by the other method, least and most. */
	from: number;
	to: number;
};

/** A slope known to a fifth of a value or better can be read; judgement. */
const READABLE = 0.2;

type Rough = { slope: number; offset: number; slopeError: number; offsetError: number };

/** What rounding alone leaves open: a line through rounded points is never known exactly. */
function floorOf(points: readonly Point[], slope: number, steps: PairsTyped) {
	const middle = points.reduce((sum, { x }) => sum + x, 0) / points.length;
	const squares = points.reduce((sum, { x }) => sum + (x - middle) ** 2, 0);
	const sd = Math.hypot(roundingSd(steps.ownStep), slope * roundingSd(steps.otherStep));
	const slopeError = sd / Math.sqrt(squares);
	return { slopeError, offsetError: sd * Math.sqrt(1 / points.length + middle ** 2 / squares) };
}

type Weighed = Required<Pick<MeasuredPair, 'ownU' | 'otherU'>> & MeasuredPair;
const isWeighed = (pair: MeasuredPair): pair is Weighed =>
	pair.ownU !== undefined && pair.otherU !== undefined;

/**
 * The line through samples measured both ways; null for fewer than 3, or where they have no direction.
 * York's where every sample has both ±, else Deming's. Where points lie farther off York's line than
 * their ± allow, its errors are widened by √(χ²/(n − 2)), as Birge did (1932, from memory).
 */
export function lineThrough(typed: PairsTyped, scatter: Scatter | null): ThroughBoth | null {
	const { pairs } = typed;
	const points = pairs.map(({ own: y, other: x }) => ({ x, y }));
	const contents = points.map(({ x }) => x);
	const [from, to] = [Math.min(...contents), Math.max(...contents)];
	if (points.length < 3 || from === to) return null;
	const finished = (
		by: ThroughBoth['by'],
		{ slope, offset, slopeError, offsetError }: Rough,
		{ degrees, isConsistent }: { degrees: number; isConsistent: boolean }
	): ThroughBoth => {
		const slopeFound = estimateOf(slope, slopeError, degrees, 1);
		return {
			by,
			offset: estimateOf(offset, offsetError, degrees, 0),
			slope: slopeFound,
			isConsistent,
			isTooWide: slopeFound.plusMinus > READABLE,
			from,
			to
		};
	};
	const degrees = points.length - 2;
	try {
		if (pairs.every(isWeighed)) {
			const line = yorkRegression(
				pairs.map(({ own, other, ownU, otherU }) => ({
					x: other,
					y: own,
					ux: (otherU ?? 0) / 2,
					uy: (ownU ?? 0) / 2
				}))
			);
			const { isConsistent } = line;
			const wider = isConsistent ? 1 : Math.sqrt(line.chiSquare / degrees);
			return finished(
				'york',
				{
					slope: line.slope,
					offset: line.intercept,
					slopeError: wider * line.slopeStandardError,
					offsetError: wider * line.interceptStandardError
				},
				{ degrees: isConsistent ? Number.POSITIVE_INFINITY : degrees, isConsistent }
			);
		}
		const lambda = scatter ? (scatter.own / scatter.other) ** 2 : 1;
		const line = demingRegression(points, { lambda });
		const floor = floorOf(points, line.slope, typed);
		return finished(
			'deming',
			{
				slope: line.slope,
				offset: line.intercept,
				slopeError: Math.max(line.slopeStandardError, floor.slopeError),
				offsetError: Math.max(line.interceptStandardError, floor.offsetError)
			},
			{ degrees, isConsistent: true }
		);
	} catch (error) {
		// Samples that all hold about the same show no direction.
		if (error instanceof RangeError) return null;
		throw error;
	}
}
