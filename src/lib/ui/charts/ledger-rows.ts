import type { Ledger, LedgerLine, WorldFault } from '$lib/bench';
import { unitOf } from '$lib/kits';
import type { SlipKind } from '$lib/observation';
import { roundToTotal } from './round-to-total';

export type LedgerRow = {
	id: string;
	kind: LedgerLine['kind'];
	label: string;
	/** Whose it is, in a word or two. */
	group: string;
	/** As printed, in the ledger's unit, to its customary decimals. */
	printed: number;
	/** Where the bar lies, as shares of the width: 0 left, 1 right. */
	from: number;
	to: number;
	isNext: boolean;
};

export type LedgerRows = {
	/** The unit as it is written, and the decimals of everything printed. */
	unitName: string;
	decimals: number;
	rows: LedgerRow[];
	/** Place of no difference, as a share of the width. */
	zero: number;
	printedReported: number;
	printedTrue: number;
	printedTotal: number;
	/** Names of slips that were made but came to less than the last printed digit. */
	without: string[];
};

/** The picture is at least so many last digits wide: one of them must not fill the page. */
const LEAST_STEPS = 10;

const worldLabels = {
	titrantStrength: 'Titrant not as strong as its label says',
	indicatorStrength: 'Indicator paler or deeper than it should be',
	sampleWare: 'Sample measure not true to its print',
	dropSize: 'Drops of another size than the leaflet says',
	baseStrength: 'Base weak, or carbonated with age',
	bufferPh: 'Buffer that does not hold its pH',
	phReagentDoses: 'More or less base or buffer than the leaflet says',
	blockedDye: 'A metal that holds the indicator',
	grains: 'Grains of carbonate in the sample',
	strayWater: 'Something left in the ware from before',
	stickySeal: 'A seal that sticks and jumps'
} satisfies Record<WorldFault, string>;

const groups: Record<LedgerLine['kind'], string> = {
	slip: 'your hands',
	world: 'bottles, ware, water',
	eye: 'your eyes',
	resolution: 'as fine as it goes',
	method: 'the kit',
	unnamed: 'left over'
};

const order: readonly LedgerLine['kind'][] = [
	'slip',
	'eye',
	'world',
	'resolution',
	'method',
	'unnamed'
];

function labelOf(line: LedgerLine, nameOf: (kind: SlipKind) => string): string {
	if (line.kind === 'slip') return nameOf(line.slip.kind);
	if (line.kind === 'world') return worldLabels[line.id];
	if (line.kind === 'eye')
		return line.stop === 'late' ? 'Went on past the end' : 'Stopped short of the end';
	if (line.kind === 'resolution') return 'Whole drops, and reading a mark between lines';
	if (line.kind === 'method') return 'What this kit makes of this water in clean hands';
	return 'Left unnamed';
}

/**
 * Rows of the ledger's picture. The parts are printed to the customary decimals of the unit and rounded so that they add up to
 * the printed difference of the printed values; what comes to less than the last digit has no bar.
 *
 * @param nameOf name of a slip for a list
 * @param nextKind the slip that the page sends the learner to mend
 */
export function ledgerRows(
	ledger: Ledger,
	nameOf: (kind: SlipKind) => string,
	nextKind: SlipKind | null
): LedgerRows {
	const { name: unitName, decimals } = unitOf(ledger.unit, ledger.analyte);
	const step = Number(`1e-${decimals}`);
	const printedReported = roundToTotal([ledger.reported], ledger.reported, step)[0] ?? 0;
	const printedTrue = roundToTotal([ledger.trueValue], ledger.trueValue, step)[0] ?? 0;
	const total = printedReported - printedTrue;
	const printed = roundToTotal(
		ledger.lines.map((line) => line.amount),
		total,
		step
	);
	const shown = ledger.lines
		.map((line, i) => ({ line, printed: printed[i] ?? 0 }))
		.filter(({ printed }) => printed !== 0)
		.sort(
			(a, b) =>
				order.indexOf(a.line.kind) - order.indexOf(b.line.kind) ||
				Math.abs(b.printed) - Math.abs(a.printed)
		);
	const low = Math.min(0, ...shown.map(({ printed }) => printed));
	const high = Math.max(0, ...shown.map(({ printed }) => printed));
	const spare = Math.max(0, LEAST_STEPS * step - (high - low));
	const width = high - low + spare;
	const zero = (spare / 2 - low) / width;
	return {
		unitName,
		decimals,
		rows: shown.map(({ line, printed }) => ({
			id: line.id,
			kind: line.kind,
			label: labelOf(line, nameOf),
			group: groups[line.kind],
			printed,
			from: zero + Math.min(0, printed) / width,
			to: zero + Math.max(0, printed) / width,
			isNext: line.kind === 'slip' && line.slip.kind === nextKind
		})),
		zero,
		printedReported,
		printedTrue,
		printedTotal: roundToTotal([total], total, step)[0] ?? 0,
		without: ledger.lines.flatMap((line, i) =>
			line.kind === 'slip' && printed[i] === 0 ? [nameOf(line.slip.kind)] : []
		)
	};
}
