import type { Act } from './advice-loss';
import { bandInWords } from './decide-words';
import type { DecideInput, Decision } from './decision';
import type { Contradiction } from '../diagnosis/diagnosis';
import { whyOfNoTank } from './of-no-tank';
import { salinityOff } from './salinity';

/** Not known unless it is given, or said to be known; what nobody spoke of is not known. */
export const isSalinityUnknown = ({ isSalinityKnown, salinity }: DecideInput): boolean =>
	isSalinityKnown === false ||
	salinity === null ||
	(salinity === undefined && isSalinityKnown !== true);

const apart: Record<NonNullable<Contradiction['between']>, string | null> = {
	methods: 'Two methods lie further apart than their ± allow: they cannot both be right.',
	tests: 'Two tests lie further apart than tests scatter: something differed between them.',
	solution:
		'A known solution read further from what it holds than its ± allows: the kit or the solution is off.',
	// The water may have changed between two days: nothing speaks against that.
	days: null
};

/** What of the evidence does not fit together now, in a sentence, the worst; null where all of it may be so. */
export const openContradiction = ({ diagnosis }: DecideInput): string | null =>
	(diagnosis?.contradictions ?? []).map(({ between }) => between && apart[between]).find(Boolean) ??
	null;

/** What stands before everything else: why the advice is not to act, or how far it goes. */
export function reasonsNotToAct(
	input: DecideInput,
	best: Act,
	{ verdict, lacks }: Pick<Decision, 'verdict' | 'lacks'>
): string[] {
	const { who, hasStonyCorals, isUnitSure } = input;
	if (hasStonyCorals === false)
		return ['A new tank without stony corals needs no correction: little uses it up.'];
	if (isUnitSure === false)
		return ['It is not clear which unit the reading is in. Find that out on the leaflet first.'];
	if (input.diagnosis?.hasSetAside)
		return [
			'Beside this reading stands a number that can hardly have been read, and does not count. Look at it once more, or take it back.'
		];
	const ofNoTank = input.diagnosis && whyOfNoTank(input.diagnosis);
	if (ofNoTank) return [ofNoTank];
	const off = salinityOff(input.salinity, input.analyte);
	const contradiction = verdict === 'check' && lacks === null ? openContradiction(input) : null;
	if (best === 'leave') return [contradiction, off].filter((line) => line !== null);
	const salinity = isSalinityUnknown(input)
		? 'The salinity is not known. It moves this value too: measure it.'
		: off;
	const isSalinityFirst = lacks === 'salinity' || lacks === 'salinityRight';
	const said = [
		contradiction,
		isSalinityFirst && salinity,
		(who === 'sitter' || who === 'child') &&
			'Tell the keeper. Whoever stands in for the keeper measures and tells, and adds nothing.',
		best === 'lower' &&
			verdict !== 'leave' &&
			(verdict === 'check' && lacks === null
				? 'Pause what is dosed until that is checked. Nothing is added to bring it down.'
				: 'Pause what is dosed and let the animals use it up. Nothing is added to bring it down.'),
		verdict === 'check' &&
			best === 'raise' &&
			(lacks === 'salinity'
				? 'Nothing goes into the tank before that is known.'
				: lacks === 'salinityRight'
					? 'Nothing goes into the tank before that is right.'
					: 'Nothing goes into the tank before that is checked.'),
		!isSalinityFirst && salinity
	];
	return said.filter((line): line is string => typeof line === 'string');
}

/** What would make the advice another. */
export function wouldChangeFor(
	input: DecideInput,
	{ verdict, lacks }: Pick<Decision, 'verdict' | 'lacks'>,
	isSizeKnown: boolean,
	best: Act
): string[] {
	const band = bandInWords(input.band, input.analyte);
	if (verdict === 'check')
		return [
			...(lacks === null ? ['What the check finds.'] : []),
			...(lacks === 'repeat' ? ['What the same water reads once more.'] : []),
			...(lacks === 'independent' ? ['What a known solution or a second method says.'] : []),
			...(lacks === 'reading'
				? [
						input.diagnosis?.hasSetAside
							? 'That number, once it is right.'
							: 'A fresh sample that reads what a tank can hold.'
					]
				: []),
			...(input.isUnitSure === false ? ['Knowing the unit.'] : []),
			...(isSalinityUnknown(input) ? ['Knowing the salinity.'] : []),
			...(salinityOff(input.salinity, input.analyte)
				? ['A salinity near that of the sea, and this value tested again in it.']
				: [])
		];
	if (verdict === 'adjust')
		return [
			...(isSizeKnown ? [] : ['Finding out which of the values the water holds.']),
			'A retest that differs from what the plan expects by more than the ± of both together.',
			'Salinity or temperature away from the usual.',
			best === 'lower'
				? 'Animals that look worse: test again at once.'
				: 'Haze or white flakes in the water, or animals that look worse: stop adding.'
		];
	if (input.hasStonyCorals === false)
		return ['Stony corals in the tank.', 'Animals that look worse.'];
	// What stands already would change nothing: whoever stands in for the keeper adds nothing at all.
	if (best !== 'leave')
		return [
			input.who === 'sitter' || input.who === 'child'
				? 'What the keeper decides.'
				: `A value further outside ${band} than its ±.`,
			'Animals that look worse.'
		];
	return [
		`A value outside ${band} that a known solution or a second method bears out.`,
		'A change, from one test to the next, that is larger than the tests scatter.',
		'Animals that look worse.'
	];
}
