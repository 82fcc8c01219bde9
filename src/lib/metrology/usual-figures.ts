import { houseCalciumKit, houseHardnessKit, type Analyte } from '../kits';
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
