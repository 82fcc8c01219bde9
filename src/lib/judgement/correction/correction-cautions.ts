import { convertValue, type Analyte } from '../../kits';
import type { KnownCorrection } from './correction-amount';
import type { PlanDay } from './correction';
import { CALCIUM_MG_PER_MEQ } from './correction-means';
import { stepWords, type Limit } from './correction-limits';
import { isPowder, powderOf } from './correction-powders';
import { amountInWords } from './correction-sum';
import { measured, setValue } from '../decision/decide-words';
import { limitsOf } from '../decision/limits';

/** What is to be heeded with each means. */
function meansCautions(plan: KnownCorrection, additionPerDay: number, largest: number): string[] {
	const { means, value, analyte } = plan;
	if (isPowder(means)) return [...powderOf(means).cautions];
	switch (means.by) {
		case 'limewater': {
			const meqPerL = convertValue(additionPerDay, value.unit, 'meq/L', analyte);
			const calcium = Math.round(meqPerL * CALCIUM_MG_PER_MEQ);
			return [
				'Only the clear part, by drops, in place of water that has evaporated, and never more than evaporates.',
				plan.evaporationLPerDay === null
					? `Compare ${amountInWords(largest, 'L')} with what evaporates in a day: where less evaporates, take another means.`
					: `Of the ${amountInWords(plan.evaporationLPerDay, 'L')} that evaporate in a day it takes the place of ${amountInWords(largest, 'L')}; purified water takes that of the rest.`,
				`It brings calcium as well: about ${calcium} mg/L a day. Goggles: it is strong alkali.`
			];
		}
		case 'product':
			return [
				'Its own label comes before this sum, and its largest amount a day before the one here.',
				...(limitsOf(analyte).isAlkali
					? [
							'What it is made of is not known here, so pH is worked out as for the strongest alkali.'
						]
					: [])
			];
		case 'waterChange':
			return [
				'Mix the new water a day ahead, air it, and match salinity and temperature; test it when it is clear.'
			];
	}
}

/** What is dosed beside it, and must not meet it undiluted. */
function othersThan(analyte: Analyte): string {
	return (['alkalinity', 'calcium', 'magnesium'] as const)
		.filter((each) => each !== analyte)
		.join(' and ');
}

type PlannedDays = {
	days: readonly PlanDay[];
	daysInAll: number;
	additionPerDay: number;
	slowedBy: Limit | null;
};

/** Why a plan ends short of its target. */
function shortenedWords(
	{ value, target, analyte }: KnownCorrection,
	days: readonly PlanDay[]
): string {
	const last = days.at(-1);
	const where = last
		? measured(last.expected, last.expectedExpandedUncertainty, value.unit, analyte)
		: '';
	return `It ends ${days.length === 1 ? 'after one day' : `after ${days.length} days`}, at about ${where}, short of ${setValue(target, value.unit, analyte)}: further on nobody could say closely enough where the value is. Test then, and work out the rest from what is found.`;
}

/** Why it is a first step and no more, and what comes after it. */
function firstStepWords({ value, otherValues, analyte }: KnownCorrection): string {
	const said = (each: number) => setValue(each, value.unit, analyte);
	const others = otherValues.map(said).join(' or ');
	return `A first step, worked out from ${said(value.value)}. If the tank holds ${others} instead, the figures of the days are off by as much. Another test with the same kit cannot tell which: before more is added, find out by a known solution.`;
}

/** What is to be heeded with this plan, in the order in which it is needed. */
export function cautionsFor(
	plan: KnownCorrection,
	{ days, daysInAll, additionPerDay, slowedBy }: PlannedDays,
	assumed: readonly string[]
): string[] {
	const { analyte } = plan;
	const largest = Math.max(...days.map(({ amount }) => amount));
	const isAddition = plan.means.by !== 'waterChange';
	return [
		...(plan.otherValues.length > 0
			? [firstStepWords(plan)]
			: daysInAll > days.length
				? [shortenedWords(plan, days)]
				: []),
		...(slowedBy ? [stepWords(slowedBy, analyte)] : []),
		...assumed,
		'Go slowly: each day’s amount on its own day. What was left out one day is not made up for on the next.',
		...(isAddition
			? [
					`Spread each day’s amount over some hours${limitsOf(analyte).isAlkali ? ', and watch pH the first time' : ''}.`
				]
			: ['Stop nothing that filters; watch the animals while water is changed.']),
		...meansCautions(plan, additionPerDay, largest),
		...(isAddition
			? [
					`Never in one vessel with anything else that is dosed, and an hour apart from ${othersThan(analyte)}.`
				]
			: []),
		`On a retest day test some hours after adding.${plan.otherValues.length > 0 ? '' : ` Go on only if it reads what the plan expects, ${plan.testExpandedUncertainty === null ? 'within the ± of the plan and of the test together' : 'within the ± that stands beside it there'}.`}`,
		'This covers the way there. What is used up each day needs its own supply afterwards.',
		'For an adult who knows the tank. An experienced keeper or an aquatic veterinarian comes before this sum.'
	];
}

/** What would make the plan another. */
export function planWouldChange(plan: KnownCorrection, days: readonly PlanDay[]): string[] {
	const { value, consumptionPerDay, analyte } = plan;
	const { unit } = value;
	const retestWords = ({ day, ...retest }: PlanDay) => {
		const expanded = retest.retestExpandedUncertainty ?? retest.expectedExpandedUncertainty;
		const further =
			retest.retestExpandedUncertainty === undefined
				? ' by more than the ± of the test as well'
				: '';
		return `A retest on day ${day} that reads away from ${measured(retest.expected, expanded, unit, analyte)}${further}: stop, and check volume, strength and test.`;
	};
	const retest = days.find(({ isRetest }) => isRetest);
	return [
		...(retest ? [retestWords(retest)] : []),
		consumptionPerDay > 0
			? `Another consumption than ${setValue(consumptionPerDay, unit, analyte)} a day.`
			: 'Consumption or dosing that are not in balance.',
		'More or less water in the system than said: the amount goes with it.',
		`Haze, white flakes, a pH above ${limitsOf(analyte).ph.highest} or animals that look worse: stop adding.`
	];
}
