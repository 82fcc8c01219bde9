import type { Analyte } from '../../kits';
import { limitsOf } from '../decision/limits';

/** What holds the steps of a plan down: their rate, pH, the size of a water change, evaporation. */
export type Limit = 'rate' | 'phRise' | 'phHighest' | 'share' | 'evaporation';

/** Why there is no plan: steps as small as can be planned would still pass the limit. */
export function refusalWords(limit: Limit, analyte: Analyte): string {
	const { maxRisePerDay, highest } = limitsOf(analyte).ph;
	return {
		rate: 'It would move faster than is allowed in a day.',
		phRise: `Each day’s addition would lift pH by more than ${maxRisePerDay}: take a means that lifts it less.`,
		phHighest: `It would lift pH above ${highest}: take a means that lifts it less.`,
		share: 'With changes of that size the new water does not bring it there.',
		evaporation: 'It would take more limewater than evaporates in a day.'
	}[limit];
}

/** Why the steps of a plan are smaller than the rate allows. */
export function stepWords(limit: Limit, analyte: Analyte): string {
	const { maxRisePerDay, highest } = limitsOf(analyte).ph;
	const why = {
		rate: 'with as little water as its ± allows it moves no faster than is ever planned in a day',
		phRise: `pH rises by no more than ${maxRisePerDay} in a day, also with as little water as its ± allows. A means that lifts pH less goes faster`,
		phHighest: `pH stays below ${highest}, also with as little water as its ± allows. A means that lifts pH less goes faster`,
		share: 'no more of the water is changed in a day than was said',
		evaporation: 'no more limewater is taken than evaporates in a day'
	}[limit];
	return `The steps are smaller than the rate allows, so that ${why}.`;
}
