import { plausibleRange, type Analyte, type Unit } from '../../kits';
import type { Evidence } from '../../observation';

/**
 * More than any number that could be written down for a tank, in whatever unit it was meant; judgement.
 * In mg/L of HCO₃ 15 dKH are 327, in ppm CaCO₃ 600 mg/L of calcium are 1500 and 1800 of magnesium 7400;
 * an addition, or another row of the table, may double that; a figure too many makes ten times as much of
 * what is ordinary.
 */
const highestNumber: Record<Analyte, number> = {
	alkalinity: 1000,
	calcium: 20_000,
	magnesium: 60_000,
	hardness: 60_000
};
/**
 * How far below nothing a reading may lie, as a share of the highest of any tank: of water a little, by
 * rounding; of a blank as far as a scale goes past its end, where it was filled by another mark than it
 * is read by. Judgement.
 */
const BELOW_NOTHING = { ofWater: 0.05, ofBlank: 0.25 };

/**
 * Between which a number can have been read at all, in a unit: wide enough for water that holds
 * nothing, and for a number that belongs to another unit of the analyte.
 *
 * @throws RangeError when the analyte is not measured in that unit
 */
export const possibleReading = (
	unit: Unit,
	analyte: Analyte,
	isBlank = false
): { low: number; high: number } => ({
	low: -Number(
		(
			(isBlank ? BELOW_NOTHING.ofBlank : BELOW_NOTHING.ofWater) * plausibleRange(unit, analyte).high
		).toPrecision(2)
	),
	high: highestNumber[analyte]
});

/** Numbers of a piece of evidence in its reading's unit, by the names of their fields. */
function numbersOf(piece: Evidence): [field: string, value: number][] {
	if (!('reading' in piece)) return [];
	const own: [string, number] = ['reading.value', piece.reading.value];
	if (piece.kind === 'reference') return [own, ['nominal', piece.nominal]];
	return piece.kind === 'addition' ? [own, ['added', piece.added]] : [own];
}

/**
 * Numbers that nobody can have read are refused: a slip of typing would otherwise be judged as a
 * discovery.
 *
 * @throws RangeError naming the piece by its place, the field, the range in its unit and what was found
 */
export function requirePossible(evidence: readonly Evidence[], analyte: Analyte): void {
	evidence.forEach((piece, at) => {
		if (!('reading' in piece)) return;
		const { unit } = piece.reading;
		const { low, high } = possibleReading(unit, analyte, piece.kind === 'blank');
		for (const [field, value] of numbersOf(piece))
			if (!(value >= low && value <= high))
				throw new RangeError(
					`evidence[${at}].${field} must be between ${low} and ${high} ${unit}; found ${value}`
				);
	});
}
