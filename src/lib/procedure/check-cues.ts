import { cuesFor } from '../judgement';
import type { Analyte } from '../kits';
import { methodFiguresFor } from '../metrology';
import type { Circumstances, EvidenceOf, Slip, SlipKind, TakenOff } from '../observation';
import { slipsAtTank } from './tank-slips';
import type { TankTitration } from './tank-test';
import type { ValuedTitration } from './titration-value';

type Answer = { cue: string; answer: string };

/** A bottle opened so lately counts as just begun; judgement. */
const NEW_BOTTLE_DAYS = 7;
const DAY = 86_400_000;

const lights = { white: 'white', blue: 'tank', dim: 'dim' } as const;

/** What the circumstances answer already. What they leave open is asked. */
function answersOfCircumstances(said: Circumstances, testedAtEpochMs: number): Answer[] {
	const answers: Answer[] = [];
	if (said.light) answers.push({ cue: 'light', answer: lights[said.light] });
	if (said.hoursSinceDose !== undefined && said.hoursSinceDose < 1)
		answers.push({ cue: 'whereTaken', answer: 'soon' });
	if (said.dosingRuns === 'no') answers.push({ cue: 'dosing', answer: 'stopped' });
	if (said.dosingRuns === 'yes') answers.push({ cue: 'dosing', answer: 'asAlways' });
	const opened = said.lotOpenedAtEpochMs;
	if (opened !== undefined && testedAtEpochMs - opened <= NEW_BOTTLE_DAYS * DAY)
		answers.push({ cue: 'titrantBottle', answer: 'new' });
	return answers;
}

/** What a slip that the notes of a titration show answers. */
export const slipAnswers: Partial<Record<SlipKind, Answer>> = {
	stoppedAtFlash: { cue: 'endHeld', answer: 'faded' },
	chasedColour: { cue: 'endHeld', answer: 'followed' },
	tipFittedLate: { cue: 'tip', answer: 'late' },
	tipLoose: { cue: 'tip', answer: 'dripped' },
	airExpelled: { cue: 'tip', answer: 'spat' },
	hangingAtStart: { cue: 'tipDrop', answer: 'before' },
	hangingAtEnd: { cue: 'tipDrop', answer: 'after' },
	overshot: { cue: 'plunger', answer: 'several' },
	dropperTilted: { cue: 'dropperHeld', answer: 'slanted' },
	dropperSqueezed: { cue: 'dropperHeld', answer: 'pressed' },
	refillForgotten: { cue: 'fillings', answer: 'one' }
};

/** Slips that answer a question in one of their two ways only: too much base and a short wait answer none. */
export const variantAnswers: Partial<Record<SlipKind, Record<string, Answer>>> = {
	phReagentOff: {
		less: { cue: 'baseCounted', answer: 'fewer' },
		forgotten: { cue: 'baseCounted', answer: 'fewer' }
	},
	waitOff: { long: { cue: 'stoodHowLong', answer: 'long' } }
};

const answersOfSlip = ({ kind, variant }: Slip): Answer[] => {
	const answer = slipAnswers[kind] ?? variantAnswers[kind]?.[variant ?? ''];
	return answer ? [answer] : [];
};

/** The same mark at both ends is seen from the notes; of mixed ones the value knows already. */
function answersOfMarks({ by, from }: ValuedTitration): Answer[] {
	if (from !== 'start') return [];
	if (by === 'seal') return [{ cue: 'marksUsed', answer: 'sealBoth' }];
	return by === 'line' ? [{ cue: 'marksUsed', answer: 'lineBoth' }] : [];
}

/** Which value was taken off, where the log knows how old it was; a typed one may be of any day. */
function answersOfTakenOff({ from }: TakenOff, testedAtEpochMs: number): Answer[] {
	const answer = (answer: string) => [{ cue: 'whichCalcium', answer }];
	if (from.is === 'typed') return from.isAssumed ? answer('usual') : [];
	const isOfTheDay = Math.abs(testedAtEpochMs - from.testedAtEpochMs) < DAY;
	return answer(isOfTheDay ? 'today' : 'before');
}

/**
 * Questions about a titration that its notes have answered, as evidence; each at most once, and only
 * those that the catalogue asks of such a kit.
 *
 * @param about.analyte what is in question: what the kit measures, or what is left by difference
 * @param about.less what was taken off, where it is what is left
 */
export function cuesOfTest(
	titration: TankTitration,
	valued: ValuedTitration,
	{
		circumstances,
		startedAtEpochMs,
		analyte = titration.kit.analyte,
		less = null
	}: {
		circumstances: Circumstances;
		startedAtEpochMs: number;
		analyte?: Analyte;
		less?: TakenOff | null;
	}
): EvidenceOf<'cue'>[] {
	const { kit } = titration;
	const slips = slipsAtTank(titration, circumstances).filter(({ provisional }) => !provisional);
	const answers = [
		...answersOfCircumstances(circumstances, startedAtEpochMs),
		...answersOfMarks(valued),
		...slips.flatMap(answersOfSlip),
		...(less ? answersOfTakenOff(less, startedAtEpochMs) : [])
	];
	const known = cuesFor(methodFiguresFor(kit, analyte));
	return known.flatMap(({ id, answers: offered }): EvidenceOf<'cue'>[] => {
		const given = answers.find(
			({ cue, answer }) => cue === id && offered.some((each) => each.id === answer)
		);
		return given ? [{ kind: 'cue', ...given }] : [];
	});
}
