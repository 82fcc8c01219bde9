import { cuesFor } from '../../../src/lib/judgement';
import type { EvidenceOf } from '../../../src/lib/observation';
import type { OutsideCase } from '../outside/cases';

const UNKNOWN = 'unknown';
/** What the person said to a plain question; undefined where it was not asked. */
type Said = (question: string) => string | undefined;
/** An answer in the catalogue's words, or null where there is nothing to make one of. */
type Translate = (said: Said) => string | null;

/**
 * One plain question in other words. An answer that is not in the table, 'not known' above all, is
 * 'I don't know'.
 */
const sameAs =
	(question: string, words: Record<string, string>): Translate =>
	(said) => {
		const answer = said(question);
		return answer === undefined ? null : (words[answer] ?? UNKNOWN);
	};

/** Several plain questions behind one: the first that tells something, else what is usual. */
const firstOf =
	(usual: string, ...tells: readonly (readonly [string, string, string])[]): Translate =>
	(said) => {
		const asked = tells.filter(([question]) => said(question) !== undefined);
		if (asked.length === 0) return null;
		const found = asked.find(([question, answer]) => said(question) === answer);
		if (found) return found[2];
		return asked.every(([question]) => said(question) === 'not known') ? UNKNOWN : usual;
	};

const marksUsed: Translate = (said) => {
	const filled = said('filledBy');
	const read = said('readBy');
	if (filled === undefined || read === undefined) return null;
	const both: Record<string, string> = {
		'seal seal': 'sealBoth',
		'line line': 'lineBoth',
		'line seal': 'lineThenSeal',
		'seal line': 'sealThenLine'
	};
	return both[`${filled} ${read}`] ?? UNKNOWN;
};

/** Questions of the catalogue from the plain ones of the cases from outside. */
const translations: Readonly<Record<string, Translate>> = {
	marksUsed,
	tip: firstOf(
		'atOnce',
		['tipFitted', 'after filling', 'late'],
		['dripsUnaided', 'yes', 'dripped'],
		['airInTip', 'spat once', 'spat'],
		['firstPush', 'no drop at first', 'late']
	),
	tipDrop: firstOf('none', ['dropAtStart', 'hanging', 'before'], ['dropAtEnd', 'hanging', 'after']),
	titrantWareDry: sameAs('titrantSyringe', { dry: 'dry', 'rinsed with water and wet': 'wet' }),
	plunger: firstOf(
		'singly',
		['plunger', 'jerks', 'jumped'],
		['lastSteps', 'several drops at once', 'several']
	),
	sealEdge: sameAs('edgeOfSeal', {
		'the same both times': 'tipSide',
		'not the same both times': 'either'
	}),
	eyeLevel: sameAs('eyeLevel', { yes: 'level', no: 'askew' }),
	usedOrLeft: sameAs('countedWhat', { 'what was used': 'asAsked', 'what was left': 'other' }),
	unitSeen: sameAs('unitSure', { yes: 'same' }),
	whereTaken: firstOf(
		'mixed',
		['sinceDose', 'less than an hour', 'soon'],
		['cup', 'other water stood beside it', 'unsureCup']
	),
	grains: sameAs('sampleLooks', { clear: 'clear', 'grains or haze': 'grains' }),
	sampleMeasured: firstOf(
		'exact',
		['bubbleInSample', 'yes', 'bubble'],
		['sampleLevel', 'above the line', 'roughly'],
		['sampleLevel', 'below the line', 'roughly']
	),
	sampleWareRinsed: firstOf(
		'sample',
		['rinsedWith', 'pure water', 'water'],
		['vialLooks', 'film on the glass', 'traces'],
		['vialShared', 'with another test', 'traces'],
		['vialCleaned', 'with vinegar lately', 'traces'],
		['vialCleaned', 'dishwasher', 'traces']
	),
	titrantBottle: sameAs('bottleLooks', {
		'as always': 'inUse',
		'low, or a crust at the cap': 'old',
		flakes: 'old'
	}),
	light: sameAs('light', { white: 'white', 'blue or dim': 'tank' }),
	endHeld: sameAs('colourAfterMinute', {
		stayed: 'stayed',
		'went within seconds': 'faded',
		'came back, went on dripping': 'followed',
		'comes back again and again': 'returned'
	}),
	startColour: firstOf('usual', ['startColour', 'odd', 'odd'], ['indicatorLooks', 'pale', 'pale']),
	swirl: sameAs('swirled', { 'each time': 'gently', hardly: 'hardly' }),
	dropperHeld: firstOf(
		'upright',
		['dropperHeld', 'slanting', 'slanted'],
		['squeezed', 'hard', 'pressed']
	),
	dropsCounted: sameAs('countSure', { sure: 'tallied', 'not quite': 'interrupted' }),
	dosing: sameAs('dosing', {
		'as usual': 'asAlways',
		'stopped or bottle empty': 'stopped',
		'gave more than it should': 'more'
	})
};

/** What the person of a case says to the questions of the catalogue that make sense for the test. */
export function answersToCues({ answers, method }: OutsideCase): EvidenceOf<'cue'>[] {
	const byQuestion = new Map(answers.map(({ question, said }) => [question, said]));
	return cuesFor(method).flatMap(({ id }): EvidenceOf<'cue'>[] => {
		const answer = translations[id]?.((question) => byQuestion.get(question)) ?? null;
		return answer === null ? [] : [{ kind: 'cue', cue: id, answer }];
	});
}
