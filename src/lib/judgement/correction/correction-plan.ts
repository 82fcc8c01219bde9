import { analyteUnits, convertValue, type Analyte } from '../../kits';
import { requireWithin } from '../../chemistry';
import type { CorrectionInput, CorrectionPlan, PlannedMeans, PlanRefused } from './correction';
import type { KnownCorrection } from './correction-amount';
import { cautionsFor, planWouldChange } from './correction-cautions';
import { planDays } from './correction-days';
import { meansFigures, meansFor } from './correction-means';
import { hydratesOf } from './correction-powders';
import { refusalsOf } from './correction-refusals';
import { sumLines } from './correction-sum';
import { setValue } from '../decision/decide-words';
import { defaultBand, limitsOf } from '../decision/limits';

const measured = Object.keys(analyteUnits) as Analyte[];

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

/** Figures that no tank has are a mistake in the call, not a reason to refuse. */
function requireFigures(input: CorrectionInput): void {
	const within = (field: string, value: number | null | undefined, low: number, high: number) => {
		if (value !== null && value !== undefined) requireWithin(field, value, low, high);
	};
	if (typeof input.decision?.verdict !== 'string')
		throw new RangeError(`decision must be what decide gives; found ${String(input.decision)}`);
	if (typeof input.value?.unit !== 'string')
		throw new RangeError(`value.unit must be a unit; found ${String(input.value?.unit)}`);
	// Of these there is no doing without: what is left out is a mistake too.
	requireWithin('value.value', input.value.value, -1e6, 1e6);
	requireWithin('value.standardUncertainty', input.value.standardUncertainty, 0, 1e6);
	within('testExpandedUncertainty', input.testExpandedUncertainty, 0, 1e6);
	for (const other of input.otherValues ?? []) within('otherValues', other, -1e6, 1e6);
	within('target', input.target, 0, 1e6);
	within('waterL', input.waterL, 1, 1e6);
	within('waterExpandedUncertaintyL', input.waterExpandedUncertaintyL, 0, 1e6);
	within('consumptionPerDay', input.consumptionPerDay, 0, 1e6);
	within('dosedPerDay', input.dosedPerDay, 0, 1e6);
	within('salinity', input.salinity, 0, 60);
	within('temperatureC', input.temperatureC, 0, 40);
	within('ph', input.ph, 0, 14);
	within('maxRisePerDay', input.maxRisePerDay, 1e-6, 1e6);
	within('evaporationLPerDay', input.evaporationLPerDay, 0, 1e6);
	const { means } = input;
	if (!means) return;
	requireMeans(means);
	if ('purity' in means) within('means.purity', means.purity, 0.01, 1);
	if (means.by === 'product') within('means.risePerMlIn100L', means.risePerMlIn100L, 1e-9, 1e6);
	if (means.by === 'waterChange') {
		within('means.newValue', means.newValue, 0, 1e6);
		within('means.share', means.share, 1e-6, 1);
	}
}

/** Means are read from cases as well: one that is none, or a powder that does not say its hydrate, is a mistake. */
function requireMeans(means: PlannedMeans): void {
	const known = [...new Set(measured.flatMap(meansFor))];
	if (!known.includes(means.by))
		throw new RangeError(`means.by must be one of ${known.join(', ')}; found ${String(means.by)}`);
	const hydrates = Object.keys(hydratesOf(means.by));
	const told = 'hydrate' in means ? means.hydrate : undefined;
	if (hydrates.length > 0 && !hydrates.includes(String(told)))
		throw new RangeError(
			`means.hydrate must be one of ${hydrates.join(', ')}; found ${String(told)}`
		);
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
 * @throws RangeError naming the field of a figure that no tank can have
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
