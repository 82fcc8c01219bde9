import { houseCalciumKit, houseHardnessKit, type Analyte, type Kit, type Unit } from '../kits';
import { differenceFiguresOf } from './difference-figures';
import { methodFiguresOf, usualMethodFigures, type MethodFigures } from './method-figures';

/**
 * What is reckoned with where nobody says which calcium was taken off: that of seawater of salinity 35
 * (Millero and others 2008; from memory), with a ± (about 95 %) that holds most tanks; judgement.
 */
export const usualTakenOff = { value: 420, expandedUncertainty: 60, unit: 'mg/L' } as const;

const usual: Record<Analyte, () => MethodFigures> = {
	alkalinity: () => usualMethodFigures,
	calcium: () => methodFiguresOf(houseCalciumKit),
	hardness: () => methodFiguresOf(houseHardnessKit),
	magnesium: () => differenceFiguresOf(houseHardnessKit, usualTakenOff)
};

/** What is taken for a kit of which nothing is known but what it measures: the project's invented kit for that. */
export const usualMethodFiguresOf = (analyte: Analyte): MethodFigures => usual[analyte]();

/**
 * A kit as the measurement equation needs it for an analyte: its own, or the one that it gives by
 * difference.
 *
 * @param takenOff what was taken off, in a unit of its own analyte, where the figures are of a difference;
 *   the usual value where nobody knows. A scale that was read the wrong way round takes it off twice, so
 *   that there each mg/L of it counts.
 * @throws RangeError when the kit says nothing of the analyte, or `takenOff` is out of range
 */
export function methodFiguresFor(
	kit: Kit,
	analyte: Analyte,
	takenOff: { value: number; unit: Unit } = usualTakenOff
): MethodFigures {
	if (analyte === kit.analyte) return methodFiguresOf(kit);
	if (analyte !== kit.byDifference?.gives)
		throw new RangeError(
			`analyte must be one that ${kit.id} measures or gives by difference; found ${analyte}`
		);
	return differenceFiguresOf(kit, takenOff);
}
