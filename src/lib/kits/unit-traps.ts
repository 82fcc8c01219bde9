import type { Analyte, Unit } from './kit';
import { numberText } from './typed-number';
import { analyteUnits, plausibleRange, unitOf } from './units';

/** A unit in which a typed number would make sense. */
export type LikelyUnit = {
	/** As written on the page. */
	name: string;
	/** One that a leaflet may use; null for a trap. */
	unit: Unit | null;
	/** What the typed number would then be in the unit that was asked for. */
	value: number;
	/** What it would mean, and what that unit is. */
	sentence: string;
	explanation: string;
};

/**
 * Units that a typed number may have been in, when in the unit that was asked for it lies outside
 * what the analyte can plausibly be: those that bring it inside, our own units before the traps.
 * Empty when the number can stand as it is, or when no unit explains it.
 *
 * @param range what is plausible in `unit`; a keeper's last value and its reach, where there is one,
 *   tells more than the range of all tanks
 */
export function unitsLikely(
	value: number,
	unit: Unit,
	analyte: Analyte = 'alkalinity',
	range: { low: number; high: number } = plausibleRange(unit, analyte)
): LikelyUnit[] {
	const isInside = (candidate: number) => candidate >= range.low && candidate <= range.high;
	if (!Number.isFinite(value) || isInside(value)) return [];
	const { units, traps } = analyteUnits[analyte];
	const asked = unitOf(unit, analyte);
	const own = Object.entries(units).map(([id, each]) => ({ ...each, unit: id as Unit }));
	const seen = new Set<number>();
	return [...own, ...traps.map((trap) => ({ ...trap, unit: null }))].flatMap(
		({ name, unit: id, size, explanation }): LikelyUnit[] => {
			const meant = (value * size) / asked.size;
			// Two names for one size, such as meq/L and mmol/L, are one candidate.
			if (!isInside(meant) || seen.has(size)) return [];
			seen.add(size);
			const sentence = `${numberText(value)} in ${name} would be ${meant.toFixed(asked.decimals)} ${asked.name}.`;
			return [{ name, unit: id, value: meant, sentence, explanation }];
		}
	);
}

/** A leaflet goes up to about the highest plausible value; this much lower or higher is odd. */
const ODD_REACH = 2;
/** Within these shares of the highest plausible value a unit explains an odd reach. */
const USUAL_REACH = { low: 0.8, high: 1.5 };
/** Units nearer to one another than this cannot be told apart by how far a leaflet goes. */
const SAME_REACH = 0.05;

/**
 * Units in which a leaflet's highest value would be about as high as leaflets go, when in the unit
 * that was chosen it lies far from that. Empty when it can stand, or when no unit explains it. What
 * leaflets reach is this project's choice, from what tanks can plausibly have.
 *
 * @param highest of the leaflet's table, or what one filling shows, in `unit`
 */
export function unitsOfLeaflet(
	highest: number,
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): LikelyUnit[] {
	const { high } = plausibleRange(unit, analyte);
	if (highest >= high / ODD_REACH && highest <= high * ODD_REACH) return [];
	const usual = { low: high * USUAL_REACH.low, high: high * USUAL_REACH.high };
	const likely = unitsLikely(highest, unit, analyte, usual);
	return likely.filter(
		({ value }, i) =>
			!likely.slice(0, i).some((other) => Math.abs(value / other.value - 1) < SAME_REACH)
	);
}
