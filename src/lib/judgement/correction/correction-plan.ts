import { convertValue } from '../../kits';
import type { CorrectionInput, CorrectionPlan, PlanRefused } from './correction';
import type { KnownCorrection } from './correction-amount';
import { cautionsFor, planWouldChange } from './correction-cautions';
import { planDays } from './correction-days';
import { requireFigures } from './correction-figures';
import { meansFigures } from './correction-means';
import { refusalsOf } from './correction-refusals';
import { sumLines } from './correction-sum';
import { setValue } from '../decision/decide-words';
import { defaultBand, limitsOf } from '../decision/limits';

/** Taken where it is not known. The share of the water: judgement; the rest matters little. */
const taken = { waterExpandedShare: 0.1, temperatureC: 25, ph: 8.1 };

/**
 * What consumption less dosing may come to a day where nobody knows them, expanded, as a share of
 * what is much used in a day (`weeklyTooRare`): 0.3 dKH, no surer than a tank that is said to use and get
 * 0.6, 6 mg/L of calcium, 9 of magnesium. Judgement.
 */
const UNKNOWN_BALANCE_SHARE = 0.6;

/** The ± a day of what nobody said of consumption and dosing, in the unit of the value; 0 where they were said. */
function unknownPerDay({
	consumptionPerDay,
	dosedPerDay,
	value,
	analyte = 'alkalinity'
}: CorrectionInput) {
	if (consumptionPerDay != null || dosedPerDay != null) return 0;
	const { weeklyTooRare, unit } = limitsOf(analyte);
	return convertValue(UNKNOWN_BALANCE_SHARE * weeklyTooRare.abovePerDay, unit, value.unit, analyte);
}

/** What was taken for consumption and dosing, in words; nothing where they were said. */
function balanceWords(input: CorrectionInput): string[] {
	const spread = unknownPerDay(input);
	if (spread === 0) return [];
	const { value, analyte = 'alkalinity' } = input;
	return [
		`Consumption and dosing are not known; they were taken to be in balance, within ${setValue(spread, value.unit, analyte)} a day either way (judgement). Both measured make the plan surer.`
	];
}

/** What the refusals have found to be known, with what is taken for the rest; null if something lacks. */
function knownOf(input: CorrectionInput): KnownCorrection | null {
	const { target, waterL, salinity, means, value, analyte = 'alkalinity' } = input;
	if (target == null || waterL == null || salinity == null || !means) return null;
	if (means.by === 'product' && means.risePerMlIn100L === null) return null;
	const limits = limitsOf(analyte);
	const band = input.band ?? defaultBand(value.unit, analyte);
	const usual = convertValue(limits.rise.usualPerDay, limits.unit, value.unit, analyte);
	return {
		value,
		testExpandedUncertainty: input.testExpandedUncertainty ?? null,
		otherValues: input.otherValues ?? [],
		target,
		waterL,
		waterExpandedUncertaintyL: input.waterExpandedUncertaintyL ?? taken.waterExpandedShare * waterL,
		consumptionPerDay: input.consumptionPerDay ?? 0,
		dosedPerDay: input.dosedPerDay ?? 0,
		unknownPerDay: unknownPerDay(input),
		means,
		salinity,
		temperatureC: input.temperatureC ?? taken.temperatureC,
		ph: input.ph ?? taken.ph,
		maxRisePerDay: input.maxRisePerDay ?? usual,
		evaporationLPerDay: input.evaporationLPerDay ?? null,
		bandWidth: convertValue(band.high - band.low, band.unit, value.unit, analyte),
		analyte
	};
}

/** What was taken for what nobody said. */
function assumedIn(input: CorrectionInput): string[] {
	return [
		...(input.waterExpandedUncertaintyL == null
			? ['The ± of the water’s volume is not known; a tenth of it was taken.']
			: []),
		...balanceWords(input),
		...(input.ph == null ? [`The pH is not known; ${taken.ph} was taken.`] : [])
	];
}

/**
 * A correction in daily steps, or the reasons for none. The net change a day stays within the
 * person's limit and under the hard cap, even with as little water as its ± allows; pH rises by no
 * more than 0.2 a day and never above 8.5, worked out as if each day's amount went in at once. The
 * uncertainty of the value, the volume, the strength and the consumption is carried through the days; the plan ends where that has become so
 * wide that a retest would tell nothing, be it short of the target, and says so first. Where the tank may
 * hold other values as well it is no more than a first step.
 *
 * @param input values in the unit of `value`; volumes in L; temperature 0 to 40 °C
 * @throws RangeError naming the field of a figure that no tank can have, or that is left out or no number
 *   where one must be; of a means that is none; of a hydrate that is not said where there are several
 */
export function correctionPlan(input: CorrectionInput): CorrectionPlan | PlanRefused {
	requireFigures(input);
	const refusals = refusalsOf(input);
	const plan = knownOf(input);
	if (refusals.length > 0 || !plan) return { kind: 'refused', because: refusals };
	const planned = planDays(plan);
	if ('because' in planned) return { kind: 'refused', because: [planned.because] };
	const { days, daysInAll, netPerDay, additionPerDay, slowedBy } = planned;
	const { name, amountUnit } = meansFigures(plan.means);
	const totalAmount = days.reduce((total, { amount }) => total + amount, 0);
	return {
		kind: 'plan',
		analyte: plan.analyte,
		unit: plan.value.unit,
		meansName: name,
		amountUnit,
		days,
		daysInAll,
		totalAmount,
		risePerDay: netPerDay,
		additionPerDay,
		sum: sumLines({ plan, days, daysInAll, netPerDay, additionPerDay, totalAmount }),
		cautions: cautionsFor(plan, { days, daysInAll, additionPerDay, slowedBy }, assumedIn(input)),
		wouldChange: planWouldChange(plan, days)
	};
}
