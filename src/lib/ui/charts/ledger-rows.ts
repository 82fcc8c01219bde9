import type { Ledger, LedgerLine, WorldFault } from '$lib/bench';
import type { SlipKind } from '$lib/observation';
import { roundToTotal } from './round-to-total';

export type LedgerRow = {
	id: string;
	kind: LedgerLine['kind'];
	label: string;
	/** Whose it is, in a word or two. */
	group: string;
	/** As printed, dKH, to a tenth. */
	printedDkh: number;
	/** Where the bar lies, as shares of the width: 0 left, 1 right. */
	from: number;
	to: number;
	isNext: boolean;
};

export type LedgerRows = {
	rows: LedgerRow[];
	/** Place of no difference, as a share of the width. */
	zero: number;
	printedReportedDkh: number;
	printedTrueDkh: number;
	printedTotalDkh: number;
	/** Names of slips that were made but came to less than a printed tenth. */
	without: string[];
};

const STEP = 0.1;
const LEAST_WIDTH_DKH = 1;

const worldLabels = {
	titrantStrength: 'Titrant not as strong as its label says',
	indicatorStrength: 'Indicator paler or deeper than it should be',
	sampleWare: 'Sample measure not true to its print',
	dropSize: 'Drops of another size than the leaflet says',
	grains: 'Grains of carbonate in the sample',
	strayWater: 'Something left in the ware from before',
	stickySeal: 'A seal that sticks and jumps'
} satisfies Record<WorldFault, string>;

const groups: Record<LedgerLine['kind'], string> = {
	slip: 'your hands',
	world: 'bottles, ware, water',
	resolution: 'as fine as it goes',
	method: 'the kit',
	unnamed: 'left over'
};

const order: readonly LedgerLine['kind'][] = ['slip', 'world', 'resolution', 'method', 'unnamed'];

function labelOf(line: LedgerLine, nameOf: (kind: SlipKind) => string): string {
	if (line.kind === 'slip') return nameOf(line.slip.kind);
	if (line.kind === 'world') return worldLabels[line.id];
	if (line.id === 'eye') return 'Where the eye saw the end';
	if (line.kind === 'resolution') return 'Whole drops, and reading a mark between lines';
	if (line.kind === 'method') return 'What this kit makes of this water in clean hands';
	return 'Left unnamed';
}

/**
 * Rows of the ledger's picture. The parts are printed to a tenth and rounded so that they add up to
 * the printed difference of the printed values; what comes to less than a tenth has no bar.
 *
 * @param nameOf name of a slip for a list
 * @param nextKind the slip that the page sends the learner to mend
 */
export function ledgerRows(
	ledger: Ledger,
	nameOf: (kind: SlipKind) => string,
	nextKind: SlipKind | null
): LedgerRows {
	const printedReportedDkh = roundToTotal([ledger.reportedDkh], ledger.reportedDkh, STEP)[0] ?? 0;
	const printedTrueDkh = roundToTotal([ledger.trueDkh], ledger.trueDkh, STEP)[0] ?? 0;
	const total = printedReportedDkh - printedTrueDkh;
	const printed = roundToTotal(
		ledger.lines.map((line) => line.amountDkh),
		total,
		STEP
	);
	const shown = ledger.lines
		.map((line, i) => ({ line, printedDkh: printed[i] ?? 0 }))
		.filter(({ printedDkh }) => printedDkh !== 0)
		.sort(
			(a, b) =>
				order.indexOf(a.line.kind) - order.indexOf(b.line.kind) ||
				Math.abs(b.printedDkh) - Math.abs(a.printedDkh)
		);
	const low = Math.min(0, ...shown.map(({ printedDkh }) => printedDkh));
	const high = Math.max(0, ...shown.map(({ printedDkh }) => printedDkh));
	// At least so wide: a tenth of a degree must not fill the page.
	const spare = Math.max(0, LEAST_WIDTH_DKH - (high - low));
	const width = high - low + spare;
	const zero = (spare / 2 - low) / width;
	return {
		rows: shown.map(({ line, printedDkh }) => ({
			id: line.id,
			kind: line.kind,
			label: labelOf(line, nameOf),
			group: groups[line.kind],
			printedDkh,
			from: zero + Math.min(0, printedDkh) / width,
			to: zero + Math.max(0, printedDkh) / width,
			isNext: line.kind === 'slip' && line.slip.kind === nextKind
		})),
		zero,
		printedReportedDkh,
		printedTrueDkh,
		printedTotalDkh: roundToTotal([total], total, STEP)[0] ?? 0,
		without: ledger.lines.flatMap((line, i) =>
			line.kind === 'slip' && printed[i] === 0 ? [nameOf(line.slip.kind)] : []
		)
	};
}
