import type { Evidence } from '../../observation';
import type { Loading, Row, RowContext } from './row';
import { rowOfInstrument } from './rows-of-instruments';
import { isTestOfTank, rowOfTest } from './rows-of-tests';
import { rowOfWeighing } from './rows-of-weighing';
import { whySetAside } from './set-aside';
import { sharedSteps } from './shared-steps';

export type Rows = {
	rows: Row[];
	unused: { at: number; why: string }[];
	/** Some of the unused are numbers that can hardly have been read. */
	hasSetAside: boolean;
};

const NOT_A_TEST =
	'A test of the tank cannot come from such a check: give it as a reference, a blank, an addition, a second method or a weighing.';

/** A row of the equation, or why there can be none; null for what brings no number. */
function rowOf(evidence: Evidence, at: number, context: RowContext): Row | string | null {
	switch (evidence.kind) {
		case 'cue':
			return null;
		case 'weighing':
			return rowOfWeighing(evidence, at, context);
		case 'secondMethod':
			return rowOfInstrument(evidence, at, context);
		case 'reference':
		case 'earlier':
			return evidence.instrument === undefined
				? rowOfTest(evidence, at, context)
				: rowOfInstrument(evidence, at, context);
		case 'test':
			return isTestOfTank(evidence.from) ? rowOfTest(evidence, at, context) : NOT_A_TEST;
		default:
			return rowOfTest(evidence, at, context);
	}
}

/** Order that depends on what is said alone, so that sums come out the same to the last digit. */
function inOrder(evidence: readonly Evidence[]): { evidence: Evidence; at: number }[] {
	const firstAt = firstOf(evidence);
	return evidence
		.map((each, at) => ({ evidence: each, at, key: JSON.stringify(each) }))
		.sort((a, b) => {
			if (a.at === firstAt || b.at === firstAt) return a.at === firstAt ? -1 : 1;
			return a.key < b.key ? -1 : a.key > b.key ? 1 : 0;
		});
}

/** Where the test in question stands: the first of kind 'test' from 'first'; −1 when there is none. */
export function firstOf(evidence: readonly Evidence[]): number {
	return evidence.findIndex((each) => each.kind === 'test' && each.from === 'first');
}

/** Evidence as rows of the measurement equation, the test in question first; nothing is lost silently. */
export function rowsOf(evidence: readonly Evidence[], context: Omit<RowContext, 'firstAt'>): Rows {
	const unused: Rows['unused'] = [];
	const whole: RowContext = { ...context, firstAt: firstOf(evidence) };
	const given = inOrder(evidence).flatMap(({ evidence: each, at }): Row[] => {
		const row = rowOf(each, at, whole);
		if (typeof row === 'string') unused.push({ at, why: row });
		return row === null || typeof row === 'string' ? [] : [row];
	});
	const rows = given.filter((row) => {
		const why = whySetAside(row, given, whole);
		if (why !== null) unused.push({ at: row.at, why });
		return why === null;
	});
	const steps = sharedSteps(rows);
	rows.forEach((row, i) => {
		const shared: Loading | undefined = steps.get(i);
		if (!shared) return;
		row.loadings.push(shared);
		row.scatterVariance = Math.max(0, row.scatterVariance - shared.amount ** 2);
	});
	return { rows, unused, hasSetAside: rows.length < given.length };
}

/** Tests that could be had, as rows: they share steps with none, as nobody knows where they will end. */
export function possibleRows(evidence: readonly Evidence[], context: RowContext): Row[] {
	return evidence.map((each, i) => {
		const row = rowOf(each, -1 - i, { ...context, firstAt: Number.NaN });
		if (row === null || typeof row === 'string')
			throw new RangeError(`evidence must bring a reading to be foreseen; found ${each.kind}`);
		return row;
	});
}
