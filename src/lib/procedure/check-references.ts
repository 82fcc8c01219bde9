import { convertValue, type Analyte, type Unit } from '../kits';
import type { ReferenceCheck } from '../metrology';
import type { Matrix, TestSummary } from '../observation';

/** A stored test of a known solution, as control charts take it. */
export type KeptReference = ReferenceCheck & {
	testId: string;
	/** Of what is said to be in it, about 95 %, in the unit asked for. */
	expectedExpandedUncertainty: number;
	/** Solutions of another matrix turn at another colour: charts of one matrix stand for themselves. */
	matrix: Matrix;
};

/** Lots that nobody noted go under this name. */
export const UNNAMED_LOT = 'no lot noted';

/**
 * Tests of known solutions with one kit, in the order of time, as checks of the kit and its lots. Those
 * whose content nobody noted are left out; those in doubt stay, since a chart is there to show them.
 *
 * @param tests as lists have them, in any order
 * @param asked.unit of the answer
 */
export function referenceChecksOf(
	tests: readonly {
		id: string;
		kitId: string;
		startedAtEpochMs: number;
		summary: TestSummary | null;
	}[],
	{ kitId, unit, analyte }: { kitId: string; unit: Unit; analyte: Analyte }
): KeptReference[] {
	return tests
		.filter((test) => test.kitId === kitId)
		.flatMap(({ id, startedAtEpochMs, summary }): KeptReference[] => {
			const reference = summary?.reference;
			if (!summary || !reference) return [];
			const inUnit = (value: number, from: Unit) => convertValue(value, from, unit, analyte);
			return [
				{
					testId: id,
					value: inUnit(summary.value, summary.unit),
					expected: inUnit(reference.nominal, reference.unit),
					expectedExpandedUncertainty: inUnit(reference.expandedUncertainty, reference.unit),
					lot: summary.lot ?? UNNAMED_LOT,
					atEpochMs: startedAtEpochMs,
					matrix: reference.matrix,
					...(reference.name ? { solution: reference.name } : {})
				}
			];
		})
		.sort((a, b) => a.atEpochMs - b.atEpochMs);
}
