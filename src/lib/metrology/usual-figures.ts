import { houseCalciumKit, houseHardnessKit, type Analyte, type Kit } from '../kits';
import { differenceFiguresOf } from './difference-figures';
import { methodFiguresOf, usualMethodFigures, type MethodFigures } from './method-figures';

/** Calcium of seawater of salinity 35, mg/L (Millero and others 2008; from memory): it is taken off where nobody says what was. */
const OCEAN_CALCIUM = { value: 420, unit: 'mg/L' } as const;

const usual: Record<Analyte, () => MethodFigures> = {
	alkalinity: () => usualMethodFigures,
	calcium: () => methodFiguresOf(houseCalciumKit),
	hardness: () => methodFiguresOf(houseHardnessKit),
	magnesium: () => differenceFiguresOf(houseHardnessKit, OCEAN_CALCIUM)
};

/** What is taken for a kit of which nothing is known but what it measures: the project's invented kit for that. */
export const usualMethodFiguresOf = (analyte: Analyte): MethodFigures => usual[analyte]();

/**
 * A kit as the measurement equation needs it for an analyte: its own, or the one that it gives by
 * difference. What is taken off is then the usual value: shares hardly depend on it.
 *
 * @throws RangeError when the kit says nothing of the analyte
 */
export function methodFiguresFor(kit: Kit, analyte: Analyte): MethodFigures {
	if (analyte === kit.analyte) return methodFiguresOf(kit);
	if (analyte !== kit.byDifference?.gives)
		throw new RangeError(
			`analyte must be one that ${kit.id} measures or gives by difference; found ${analyte}`
		);
	return differenceFiguresOf(kit, OCEAN_CALCIUM);
}
