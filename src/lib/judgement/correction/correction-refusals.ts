import { convertValue } from '../../kits';
import type { CorrectionInput } from './correction';
import { meansFigures, meansFor } from './correction-means';
import { bandInWords, measured, setValue } from '../decision/decide-words';
import { defaultBand, limitsOf } from '../decision/limits';

const isKnown = <T>(value: T | null | undefined): value is T =>
	value !== null && value !== undefined;

type Reason = string | false;

/** Who asks, and on what ground. */
function groundReasons({ decision, isUnitSure, who }: CorrectionInput): Reason[] {
	return [
		(who === 'sitter' || who === 'child') &&
			'Whoever stands in for the keeper, or is a child, measures and tells, and adds nothing.',
		decision.verdict !== 'adjust' && 'The advice is not to adjust.',
		!decision.isVerified &&
			'Nothing independent of the kit bears the value out: check it first by a known solution or a second method.',
		isUnitSure === false && 'It is not clear which unit the reading is in.'
	];
}

function salinityReasons({ salinity, analyte }: CorrectionInput): Reason[] {
	const limits = limitsOf(analyte).salinity;
	return [
		!isKnown(salinity) && 'The salinity is not known: measure it first.',
		isKnown(salinity) &&
			(salinity < limits.low || salinity > limits.high) &&
			`The salinity is outside ${limits.low} to ${limits.high}. Put that right first, at most ${limits.maxChangePerDay} a day: this value moves with it.`
	];
}

function phReasons({ ph, analyte }: CorrectionInput): Reason[] {
	const { lowest, highest } = limitsOf(analyte).ph;
	return [
		isKnown(ph) &&
			(ph < lowest || ph > highest) &&
			`The pH is outside ${lowest} to ${highest}. Find out why, and check the meter, before anything is added.`
	];
}

function tankReasons(input: CorrectionInput): Reason[] {
	const { waterL, waterExpandedUncertaintyL, consumptionPerDay, dosedPerDay, means, analyte } =
		input;
	return [
		!isKnown(waterL) && 'The volume of the water is not known.',
		isKnown(waterL) &&
			isKnown(waterExpandedUncertaintyL) &&
			waterExpandedUncertaintyL >= waterL / 2 &&
			'The volume of the water is known too poorly: its ± is half of it or more.',
		isKnown(consumptionPerDay) !== isKnown(dosedPerDay) &&
			'Say both what is used up in a day and what is dosed in a day (0 if nothing runs).',
		analyte === 'hardness' &&
			'Nothing is added by calcium and magnesium together: take calcium off, and decide on each.',
		!means && 'It is not chosen by which means.',
		!!means &&
			!meansFor(analyte ?? 'alkalinity').includes(means.by) &&
			`${meansFigures(means).name} does not raise ${analyte ?? 'alkalinity'}.`,
		means?.by === 'product' &&
			means.risePerMlIn100L === null &&
			'How strong the product is, is not known: its label must say it.'
	];
}

function targetReasons(input: CorrectionInput): Reason[] {
	const { target, value, decision, analyte } = input;
	const { unit } = value;
	if (!isKnown(target)) return ['No value to aim at was given.'];
	const limits = limitsOf(analyte);
	const band = input.band ?? defaultBand(unit, analyte);
	const own = {
		low: convertValue(band.low, band.unit, unit, analyte),
		high: convertValue(band.high, band.unit, unit, analyte),
		unit
	};
	const sensible = (limit: number) => convertValue(limit, limits.unit, unit, analyte);
	const { low, high } = limits.sensible;
	const way = target - value.value;
	const expanded = 2 * value.standardUncertainty;
	return [
		(target < own.low || target > own.high) &&
			`The value to aim at lies outside your band of ${bandInWords(own, analyte)}.`,
		(target < sensible(low) || target > sensible(high)) &&
			`A value to aim at lies between ${setValue(sensible(low), unit, analyte)} and ${setValue(sensible(high), unit, analyte)}.`,
		((decision.direction === 'raise' && way <= 0) ||
			(decision.direction === 'lower' && way >= 0)) &&
			'The value to aim at lies the other way than the advice.',
		Math.abs(way) <= expanded &&
			`The way to go is no larger than the ± of the value, ${measured(value.value, expanded, unit, analyte)}: measure it better first.`
	];
}

function rateReasons({ maxRisePerDay, value, analyte }: CorrectionInput): Reason[] {
	const { unit, rise } = limitsOf(analyte);
	const cap = convertValue(rise.hardCapPerDay, unit, value.unit, analyte);
	return [
		isKnown(maxRisePerDay) &&
			maxRisePerDay > cap * (1 + 1e-9) &&
			`More than ${setValue(cap, value.unit, analyte)} a day is never planned.`
	];
}

function loweringReasons({ decision, means, value }: CorrectionInput): Reason[] {
	if (decision.verdict !== 'adjust' || !means) return [];
	const isChange = means.by === 'waterChange';
	const isLower = decision.direction === 'lower';
	return [
		isLower &&
			!isChange &&
			'Nothing is added to bring it down. Pause what is dosed and test again; a change of water that holds less is the only other way.',
		isChange &&
			(isLower ? means.newValue >= value.value : means.newValue <= value.value) &&
			`The new water must hold ${isLower ? 'less' : 'more'} than the tank.`
	];
}

/** Everything that stands against a plan, each in one sentence; none when it may be computed. */
export function refusalsOf(input: CorrectionInput): string[] {
	return [
		...groundReasons(input),
		...loweringReasons(input),
		...salinityReasons(input),
		...phReasons(input),
		...tankReasons(input),
		...targetReasons(input),
		...rateReasons(input)
	].filter((reason): reason is string => reason !== false);
}
