import { convertValue, type Analyte } from '../../kits';
import type { CorrectionInput, PlannedMeans } from './correction';
import { gramsPerMeq, MEQ_PER_L_OF_LIMEWATER, meansFigures } from './correction-means';
import { phChangeAtOnce } from './correction-ph';

/** A correction of which everything needed is known; values in the unit of `value`. */
export type KnownCorrection = {
	value: CorrectionInput['value'];
	target: number;
	waterL: number;
	waterExpandedUncertaintyL: number;
	consumptionPerDay: number;
	dosedPerDay: number;
	means: Exclude<PlannedMeans, { risePerMlIn100L: null }>;
	salinity: number;
	temperatureC: number;
	ph: number;
	/** Net, on any day. */
	maxRisePerDay: number;
	evaporationLPerDay: number | null;
	analyte: Analyte;
};

/** Rise that the addition of a day must bring, before consumption and dosers. */
export const additionFor = (plan: KnownCorrection, netPerDay: number) =>
	netPerDay + plan.consumptionPerDay - plan.dosedPerDay;

/** Amount of the means for a rise, from a tank that stands at `from`. */
export function amountFor(plan: KnownCorrection, rise: number, from: number): number {
	const { means, waterL, value, analyte } = plan;
	const meq = convertValue(rise, value.unit, 'meq/L', analyte) * waterL;
	if (means.by === 'product') return ((rise / means.risePerMlIn100L) * waterL) / 100;
	if (means.by === 'waterChange') return (rise / (means.newValue - from)) * waterL;
	if (means.by === 'limewater') return meq / MEQ_PER_L_OF_LIMEWATER;
	return meq * (gramsPerMeq(means) ?? 0);
}

/** Change of pH at once from a rise, from a tank that stands at `from`. */
export function phChangeOf(plan: KnownCorrection, rise: number, from: number): number {
	// New water is aired until its pH stands, as the cautions say; the mixture then keeps it.
	if (plan.means.by === 'waterChange') return 0;
	const { carbonPerEquivalent } = meansFigures(plan.means);
	const { unit } = plan.value;
	return phChangeAtOnce({ ...plan, unit, value: from, rise, carbonPerEquivalent });
}
