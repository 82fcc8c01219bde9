import type { TestResult } from '$lib/procedure';

export type BudgetRow = {
	name: string;
	/** What it alone would make of the ±, in the kit's unit. */
	halfWidth: number;
	/** Length of its bar, as a share of the whole ±. */
	share: number;
	isRest: boolean;
};

/** Sources that are named one by one; what is left over is one row. */
const NAMED = 5;
/** A source below this share of the ± cannot be seen beside the others. */
const LEAST_SHARE = 0.08;

type Line = Pick<TestResult['lines'][number], 'id' | 'kind' | 'name' | 'contribution'>;

/**
 * Repeats that do not agree scatter by more than reading and judging explain: what they show is not
 * shared out among these.
 */
function withScatterAsOne(lines: readonly Line[]): Line[] {
	const isShown = ({ id, kind }: Line) => kind === 'scatter' && id !== 'wholeDrops';
	const shown = lines.filter(isShown).map(({ contribution }) => contribution);
	return [
		...lines.filter((line) => !isShown(line)),
		{
			id: 'ownScatter',
			kind: 'scatter',
			name: 'scatter of these repeats',
			contribution: rootOfSquares(shown)
		}
	];
}

const rootOfSquares = (some: readonly number[]) => Math.hypot(...some);

/**
 * Rows of the picture of what makes the ±: the largest sources, then the rest together. Each is
 * widened by the factor of the whole, so that the squares of the rows add up to that of the ±.
 */
export function budgetRows({
	lines,
	coverageFactor,
	expandedUncertainty,
	combined
}: Pick<TestResult, 'lines' | 'coverageFactor' | 'expandedUncertainty'> & {
	combined?: Pick<TestResult['combined'], 'spread'>;
}): BudgetRow[] {
	const told = combined?.spread?.agrees === false ? withScatterAsOne(lines) : lines;
	const sorted = [...told].sort((a, b) => b.contribution - a.contribution);
	const row = (name: string, contribution: number, isRest: boolean): BudgetRow => {
		const halfWidth = coverageFactor * contribution;
		return { name, halfWidth, share: Math.min(1, halfWidth / expandedUncertainty), isRest };
	};
	const isSeen = ({ contribution }: { contribution: number }, i: number) =>
		i < NAMED && (coverageFactor * contribution) / expandedUncertainty >= LEAST_SHARE;
	const named = sorted.filter(isSeen);
	const rest = rootOfSquares(
		sorted.filter((line, i) => !isSeen(line, i)).map(({ contribution }) => contribution)
	);
	const rows = named.map(({ name, contribution }) => row(name, contribution, false));
	return rest > 0 ? [...rows, row('all the rest', rest, true)] : rows;
}
