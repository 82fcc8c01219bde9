import { convertValue, unitsOf, type Unit } from '../../kits';
import { usualMethodFiguresOf, type MethodFigures } from '../../metrology';
import type { Evidence } from '../../observation';
import type { DiagnoseOptions } from './diagnosis';
import type { Fault } from '../catalogue/fault';
import { BESIDES, type Part } from './parts';
import type { RowContext } from './row';
import { REAL_CHANGE } from '../catalogue/water-causes';
import { waterFiguresOf, type WaterFigures } from './water-figures';

/** A change of the water itself, in the form of a fault: earlier readings met other water. */
export const realChangeOf = (water: WaterFigures, analyte: MethodFigures['analyte']): Fault => ({
	id: REAL_CHANGE,
	name: 'the water has really changed',
	class: 'water',
	target: 'water',
	scope: 'tank',
	analytes: [analyte],
	sizes: water.realChange.sizes.map((size) => ({ ...size, mean: -size.mean })),
	prior: water.realChange.prior,
	remedy: '',
	shownBy: ['secondMethod', 'reference', 'freshSample'],
	origin: water.realChange.origin
});

/** A case of another analyte is refused where it says its unit, with what would make it one. */
function requireUnits(evidence: readonly Evidence[], { method, analyte }: DiagnoseOptions): void {
	const judged = method?.analyte ?? analyte ?? 'alkalinity';
	const why = method ? 'as options.method says' : analyte ? 'as options.analyte says' : null;
	const units = unitsOf(judged);
	evidence.forEach((each, at) => {
		if (!('reading' in each) || units.includes(each.reading.unit)) return;
		throw new RangeError(
			`evidence[${at}].reading.unit must be one of ${units.join(', ')} for ${judged}, ${why ?? 'which is taken where options give neither method nor analyte'}; found ${each.reading.unit}`
		);
	});
}

/**
 * What is taken for granted of method and water, by the options.
 *
 * @throws RangeError naming the reading whose unit is of another analyte, or `priorValue`
 */
export function contextOf(
	evidence: readonly Evidence[],
	options: DiagnoseOptions
): Omit<RowContext, 'firstAt'> {
	requireUnits(evidence, options);
	const method = options.method ?? usualMethodFiguresOf(options.analyte ?? 'alkalinity');
	const water = waterFiguresOf(method.analyte);
	const { priorValue } = options;
	const inUnit = (value: number, from: Unit) =>
		convertValue(value, from, water.unit, method.analyte);
	const prior = priorValue
		? {
				mean: inUnit(priorValue.mean, priorValue.unit),
				standardDeviation: inUnit(priorValue.standardDeviation, priorValue.unit)
			}
		: water.usual;
	if (!(prior.standardDeviation > 0 && Number.isFinite(prior.mean)))
		throw new RangeError(
			`priorValue.standardDeviation must be above 0; found ${prior.standardDeviation}`
		);
	const madeIn = evidence.flatMap((each) => (each.kind === 'reference' ? [each.matrix] : []));
	const days = evidence.flatMap((each) => (each.kind === 'earlier' ? [each.daysAgo] : []));
	return {
		method,
		isUsualMethod: options.method === undefined,
		water,
		prior,
		days: [...new Set(days)].sort((a, b) => a - b),
		madeIn: new Set(madeIn)
	};
}

/** ln of what being there together does to the odds of two parts; null where they cannot be. */
export function togetherOf(faults: readonly Fault[], pairFactor: number) {
	const isWater = (place: number) => faults[place]?.scope === 'tank';
	return (one: Part, two: Part): number | null => {
		if (one.fault === two.fault) return null;
		if (one.fault === BESIDES || two.fault === BESIDES) return 0;
		if (isWater(one.fault) && isWater(two.fault)) return null;
		// What the water does has nothing to do with how it is tested.
		if (isWater(one.fault) || isWater(two.fault)) return 0;
		return pairFactor > 0 ? Math.log(pairFactor) : null;
	};
}
