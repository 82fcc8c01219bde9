import { convertValue, type Analyte } from '../../kits';
import type { CorrectionInput, PlannedMeans } from './correction';
import { countedIn, MEQ_PER_L_OF_LIMEWATER, meansFigures } from './correction-means';
import { limitsOf } from '../decision/limits';
import { phChangeAtOnce } from './correction-ph';
import { gramsPerThousandth } from './correction-powders';

/** A correction of which everything needed is known; values in the unit of `value`. */
export type KnownCorrection = {
	value: CorrectionInput['value'];
	/** Of the test that a retest is made by; null where nobody knows. */
	testExpandedUncertainty: number | null;
	/** What the tank may hold instead; none where it is known to be one value. */
	otherValues: readonly number[];
	target: number;
	waterL: number;
	waterExpandedUncertaintyL: number;
	consumptionPerDay: number;
	dosedPerDay: number;
	/** ± a day of what consumption less dosing may come to where they are not known; 0 where they are. */
	unknownPerDay: number;
	means: Exclude<PlannedMeans, { risePerMlIn100L: null }>;
	salinity: number;
	temperatureC: number;
	ph: number;
	/** Net, on any day. */
	maxRisePerDay: number;
	evaporationLPerDay: number | null;
	/** How far the ends of the person's band lie apart. */
	bandWidth: number;
	analyte: Analyte;
};

/** Rise that the addition of a day must bring, before consumption and dosers. */
export const additionFor = (plan: KnownCorrection, netPerDay: number) =>
	netPerDay + plan.consumptionPerDay - plan.dosedPerDay;

/** Amount of the means for a rise, from a tank that stands at `from`. */
export function amountFor(plan: KnownCorrection, rise: number, from: number): number {
	const { means, waterL, value, analyte } = plan;
	const thousandths = convertValue(rise, value.unit, countedIn(analyte), analyte) * waterL;
	if (means.by === 'product') return ((rise / means.risePerMlIn100L) * waterL) / 100;
	if (means.by === 'waterChange') return (rise / (means.newValue - from)) * waterL;
	if (means.by === 'limewater') return thousandths / MEQ_PER_L_OF_LIMEWATER;
	return thousandths * gramsPerThousandth(means);
}

/** Change of pH at once from a rise, from a tank that stands at `from`. */
export function phChangeOf(plan: KnownCorrection, rise: number, from: number): number {
	// New water is aired until its pH stands, as the cautions say; the mixture then keeps it.
	if (plan.means.by === 'waterChange') return 0;
	const { carbonPerEquivalent } = meansFigures(plan.means);
	if (carbonPerEquivalent === null || !limitsOf(plan.analyte).isAlkali) return 0;
	const { unit } = plan.value;
	return phChangeAtOnce({ ...plan, unit, value: from, rise, carbonPerEquivalent });
}
