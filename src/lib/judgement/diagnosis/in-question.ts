import { convertValue } from '../../kits';
import type { Analysis } from './analysis';
import { beliefsOf } from './beliefs';
import { contradictionsOf } from './contradictions';
import type { InQuestion } from './diagnosis';
import type { Row } from './row';

/** An answer speaks for a fault that makes it so many times as likely as it is otherwise; judgement. */
const SPEAKS_FOR = 3;
/** From here on what the answers speak for accounts for the reading; judgement. */
const ACCOUNTS = 0.8;

/** Whether something that was answered names what made the reading; a change of the water made no reading. */
function isExplained(analysis: Analysis): boolean {
	const { answered, faults, places } = analysis;
	const isNamed = faults.map(
		({ id, scope }) =>
			scope !== 'tank' &&
			answered.cues.some(
				({ otherwise, byFault }) => (byFault.get(id) ?? 0) >= SPEAKS_FOR * otherwise
			)
	);
	if (!isNamed.includes(true)) return false;
	const chance = beliefsOf(analysis).reduce(
		(sum, { place, probability }) =>
			place !== places.noneOfThese && places.faultsAt(place).some((fault) => isNamed[fault])
				? sum + probability
				: sum,
		0
	);
	return chance >= ACCOUNTS;
}

/** Whether a row is a reading of today's water, by the kit or another method. */
export const isOfTodaysWater = ({ things, isEarlier, weighed }: Row): boolean =>
	!isEarlier && !weighed && things.solution === null && things.sampling !== null;

/**
 * The test in question as it stands among the evidence, in the customary unit; null without one.
 *
 * Whatever read today's water besides, the kit or another method, has repeated it.
 */
export function inQuestionOf(analysis: Analysis): InQuestion | null {
	const { model, method, water, first } = analysis;
	if (first < 0) return null;
	const { rows, count, value } = model;
	const own = rows[first]!;
	const isRepeated = rows.slice(0, count).some((row, i) => i !== first && isOfTodaysWater(row));
	const isChangeExpected = rows
		.slice(0, count)
		.some(({ isEarlier, amountMean }) => isEarlier && amountMean !== model.tankMean);
	const variance = (model.added[first * model.size + first] ?? 0) + (model.scatter[first] ?? 0);
	return {
		value: value[first]!,
		expandedUncertainty: 2 * Math.sqrt(variance),
		unit: water.unit,
		analyte: method.analyte,
		isRepeated,
		isFarFromBefore: contradictionsOf(analysis).some(
			({ between, at }) => between === 'days' && at.includes(own.at)
		),
		...(isChangeExpected ? { isChangeExpected } : {}),
		isExplained: isExplained(analysis)
	};
}

/** That reading in another unit of its analyte. */
export const inQuestionIn = (read: InQuestion, unit: InQuestion['unit']): InQuestion => ({
	...read,
	value: convertValue(read.value, read.unit, unit, read.analyte),
	expandedUncertainty: convertValue(read.expandedUncertainty, read.unit, unit, read.analyte),
	unit
});

/**
 * Whether a reading is far off: outside the band by more than its own ±, or further from those before
 * than tests scatter and water drifts. Made once, and explained by no answer, such a reading is repeated
 * before anything else: a known solution vouches for kit and hands, not for that one test (common practice,
 * no source).
 */
export function isFarOff(read: InQuestion, band: { low: number; high: number }): boolean {
	const { value, expandedUncertainty: reach, isFarFromBefore } = read;
	return isFarFromBefore || value < band.low - reach || value > band.high + reach;
}
