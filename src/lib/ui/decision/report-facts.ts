import { bandInWords, bandOf, salinityOf } from '$lib/judgement';
import { numberText } from '$lib/kits';
import type { Tank } from '$lib/observation';
import type { CheckState } from '$lib/procedure';
import type { CheckRun } from '../conversation/run';
import { takenKitWords } from '../conversation/unknown-kit';
import { bandFields } from './tank-fields';
import { lookWords } from './verdict-words';

/** One thing that stands at the head of a report. */
export type Fact = { name: string; value: string };

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const whenWords = (at: number) => `${day.format(at)}, ${clock.format(at)}`;
/** '3 May 2026, 18:05 to 18:20' */
function fromTo(begun: number, until: number): string {
	if (whenWords(begun) === whenWords(until)) return whenWords(begun);
	const end = day.format(begun) === day.format(until) ? clock.format(until) : whenWords(until);
	return `${whenWords(begun)} to ${end}`;
}

const whoWords = { keeper: 'the keeper', sitter: 'somebody standing in', child: 'a child' };

/** The test in question has evidence of its own kit: others say who did it where somebody else did. */
function handsIn({ evidence }: CheckState): string[] {
	const hands = evidence.flatMap(({ evidence: each }) =>
		'differs' in each && each.differs?.hands ? [each.differs.hands] : []
	);
	return [...new Set(hands)];
}

function salinityWords(tank: Tank): string {
	const salinity = salinityOf(tank);
	return salinity === null ? 'not known' : `${numberText(salinity)} PSU or g/kg`;
}

/** How much water a plan is for; a plan that is not told has none. */
function waterFact({ plan, state }: CheckRun, refused: readonly string[]): readonly Fact[] {
	const { waterL, waterExpandedUncertaintyL: plusMinusL } = state.tank;
	if (!plan || refused.length > 0) return [];
	if (waterL === undefined) return [{ name: 'Water in all', value: 'not known' }];
	const sure =
		plusMinusL === undefined
			? ' (a tenth more or less was taken, as nothing was said)'
			: `, give or take ${numberText(plusMinusL)} L`;
	return [{ name: 'Water in all', value: `${numberText(waterL)} L${sure}` }];
}

/**
 * When, with what, by whom, and what the advice rests on.
 *
 * @param refused labels of blanks about the tank whose text cannot be taken
 */
export function factsOf(run: CheckRun, refused: readonly string[]): readonly Fact[] {
	const { state, kit, log } = run;
	const others = handsIn(state);
	const band = bandOf(state.tank, run.unit, log.analyte);
	const isBandRefused = bandFields(band.unit, log.analyte).some(({ label }) =>
		refused.includes(label)
	);
	const whyTaken = isBandRefused ? 'what was typed cannot be' : 'nothing was said';
	return [
		{ name: 'When', value: fromTo(log.startedAtEpochMs, state.at) },
		{
			name: 'Kit',
			value: kit
				? `${kit.name}${kit.invented ? ' (an invented kit)' : ''}`
				: `not told; taken to be ${takenKitWords(log.analyte)}`
		},
		{
			name: 'Who',
			value: [state.tank.who ? whoWords[state.tank.who] : 'not told', ...others].join(', and ')
		},
		{
			name: 'Wanted',
			value: `${bandInWords(band, log.analyte)}${band.isDefault ? ` (taken, as ${whyTaken})` : ''}`
		},
		{
			name: 'Animals',
			value:
				state.livestock === null
					? 'not asked'
					: state.livestock === 'notLooked'
						? 'not looked at'
						: lookWords[state.livestock].toLowerCase()
		},
		{
			name: 'Salinity',
			value: salinityWords(state.tank)
		},
		...(state.tank.hasStonyCorals === undefined
			? []
			: [{ name: 'Stony corals', value: state.tank.hasStonyCorals ? 'yes' : 'not yet' }]),
		...waterFact(run, refused),
		{ name: '±', value: 'how far off it may be: about 19 times in 20 no further' }
	];
}
