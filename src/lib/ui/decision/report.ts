import {
	amountInWords,
	chanceInWords,
	inDaysInWords,
	waterCausesTold,
	type CorrectionPlan,
	type Decision,
	type Diagnosis,
	type PlanDay,
	type PlanRefused
} from '$lib/judgement';
import { capital, type Catalogue } from '../conversation/catalogue';
import { evidenceLine, unusedWords } from '../conversation/evidence-words';
import { barsAndRest, explanationRows } from '../conversation/explanation-rows';
import type { CheckRun } from '../conversation/run';
import { trueValueSentence } from '../conversation/true-value-words';
import { causeLine, shownAndFolded, waterTitle, type ToldCause } from '../conversation/water-words';
import { firstOf } from './first-check';
import { expectedWords, phChangeWords, retestWords } from './plan-words';
import { refusedWords } from './refused.svelte';
import { factsOf, type Fact } from './report-facts';
import { verdictWords } from './verdict-words';

/** A part of the report: its lines stand one below the other, numbered where their order matters. */
export type ReportPart = { title: string; lines: readonly string[]; isNumbered?: boolean };

/** What stands in the place of the advice while there is none. */
export const UNDECIDED = 'Not decided yet.';

/** A check on one page, as words: the page and the file show the same. */
export type Report = {
	title: string;
	/** What was advised, in two or three words; null while nothing is. */
	verdict: string | null;
	facts: readonly Fact[];
	parts: readonly ReportPart[];
	/** What stands below all of it. */
	caution: string;
};

function knownPart({ state, unit, log, diagnosis }: CheckRun, catalogue: Catalogue): ReportPart {
	return {
		title: 'What was known',
		isNumbered: true,
		lines: state.evidence.map(({ evidence }, i) => {
			const why = diagnosis?.unused.find(({ at }) => at === i)?.why;
			const { title, figure, detail } = evidenceLine(evidence, unit, catalogue, log.analyte);
			return `${title}${/[?.!]$/.test(title) ? '' : ':'} ${figure}${detail ? ` (${detail})` : ''}${why === undefined ? '' : `. ${unusedWords(why)}`}`;
		})
	};
}

function explainedPart(diagnosis: Diagnosis, catalogue: Catalogue): ReportPart {
	const { bars, rest } = barsAndRest(explanationRows(diagnosis, catalogue));
	const others = rest.reduce((sum, { probability }) => sum + probability, 0);
	return {
		title: 'What could explain it',
		lines: [
			...bars.map(
				({ title, members, probability }) =>
					`${title}${members.length > 0 ? ` (${members.join(', ')})` : ''}: ${chanceInWords(probability)}`
			),
			...(rest.length > 0 ? [`Something else that is listed: ${chanceInWords(others)}`] : [])
		]
	};
}

/** So many of what the water may have done find room in full on one page; what cannot wait always does. */
const MOST_IN_FULL = 3;

function waterParts({ diagnosis, state, log }: CheckRun): ReportPart[] {
	const evidence = state.evidence.map((each) => each.evidence);
	const told = diagnosis && waterCausesTold(diagnosis, evidence, log.analyte);
	if (!told) return [];
	const { shown, folded } = shownAndFolded(told);
	const inFull = shown.filter((each, i) => i < MOST_IN_FULL || each.isUrgent);
	const others = [...shown.filter((each) => !inFull.includes(each)), ...folded];
	const lines = inFull.map(causeLine);
	return [
		{ title: waterTitle(told), lines: others.length > 0 ? [...lines, othersLine(others)] : lines }
	];
}

/** Those that are only named, and where they stand in full. */
const othersLine = (causes: readonly ToldCause[]): string =>
	`Or, with ${causes.length === 1 ? 'its sign' : 'their signs'} on the page of the advice: ${causes.map(({ name }) => name).join('; ')}.`;

/** What a line is about: its first word that is no article. */
const aboutOf = (line: string) => /^(?:an? |the )?(\p{L}+)/iu.exec(line)?.[1]?.toLowerCase();

/** Those of the advice that no line of the plan says more closely: both are on one page. */
function notInPlan(lines: readonly string[], plan: CorrectionPlan | null): readonly string[] {
	const told = plan?.wouldChange.map(aboutOf) ?? [];
	return lines.filter((line) => !told.includes(aboutOf(line)));
}

function decisionParts(
	decision: Decision,
	plan: CorrectionPlan | null,
	catalogue: Catalogue
): ReportPart[] {
	const { because, wouldChange, verdict, retestInDays } = decision;
	const first = verdict === 'check' ? firstOf(decision, catalogue) : null;
	return [
		{
			title: verdict === 'emergency' ? 'What to do at once' : 'Why',
			lines: [
				...because,
				// A plan has its own days of testing.
				...(!plan && (verdict === 'leave' || verdict === 'adjust')
					? [`Test again ${inDaysInWords(retestInDays)}.`]
					: [])
			]
		},
		...(first
			? [{ title: 'Do this check first', lines: [first.title, ...first.how, first.because ?? ''] }]
			: []),
		...(plan ? [] : [{ title: 'What would change it', lines: wouldChange }])
	];
}

function planParts(
	plan: CorrectionPlan | PlanRefused,
	wouldChange: readonly string[]
): ReportPart[] {
	if (plan.kind === 'refused') return [{ title: 'No plan, because', lines: plan.because }];
	const retestPart = (each: PlanDay) => {
		const retest = retestWords(each, plan);
		return retest ? `; ${retest.charAt(0).toLowerCase()}${retest.slice(1)}` : '';
	};
	return [
		{
			title: `Day by day: ${plan.meansName}`,
			lines: plan.days.map(
				(each) =>
					`Day ${each.day}: ${amountInWords(each.amount, plan.amountUnit)}; then about ${expectedWords(each, plan)}; pH at once: ${phChangeWords(each.phChange)}${retestPart(each)}`
			)
		},
		{ title: 'The sum, to check by hand', lines: plan.sum },
		{ title: 'Heed this', lines: plan.cautions },
		{
			title: 'What would change it',
			lines: [...plan.wouldChange, ...notInPlan(wouldChange, plan)]
		}
	];
}

/**
 * Everything about a check that somebody else would have to know.
 *
 * @param refused labels of blanks about the tank whose text cannot be taken: no plan is told beside them
 */
export function reportOf(
	run: CheckRun,
	catalogue: Catalogue,
	refused: readonly string[] = []
): Report {
	const { diagnosis, decision, state, kit } = run;
	const plan = refused.length > 0 ? null : run.plan;
	const made = plan?.kind === 'plan' ? plan : null;
	return {
		title: 'Check of a reading',
		verdict: decision ? verdictWords[decision.verdict] : null,
		facts: factsOf(run, refused),
		parts: [
			knownPart(run, catalogue),
			...(diagnosis
				? [
						explainedPart(diagnosis, catalogue),
						{
							title: 'What the water holds',
							lines: [trueValueSentence(diagnosis, catalogue, run.log.analyte)]
						}
					]
				: []),
			...waterParts(run),
			...(decision ? decisionParts(decision, made, catalogue) : []),
			...(plan ? planParts(plan, decision?.wouldChange ?? []) : []),
			...(refused.length > 0
				? [{ title: 'Still to be mended', lines: [refusedWords(refused)] }]
				: []),
			...(state.note ? [{ title: 'Note', lines: [state.note] }] : [])
		].map((part) => ({ ...part, lines: part.lines.filter(Boolean).map(capital) })),
		caution: `${kit?.invented ? 'The kit is invented: nothing here is about a real tank. ' : ''}Nothing here is certain. An experienced keeper or an aquatic veterinarian, and the label of whatever is added, come before it.`
	};
}

/** A heading of plain text. In capitals a formula would be another: NaHCO₃. */
const underlined = (words: string, by: '=' | '-') => [words, by.repeat(words.length)];

/** The report as plain text, to be saved or sent. */
export function reportText({ title, verdict, facts, parts, caution }: Report): string {
	const widest = Math.max(...facts.map(({ name }) => name.length));
	const blocks = [
		[...underlined(title, '='), '', verdict ?? UNDECIDED],
		facts.map(({ name, value }) => `${`${name}:`.padEnd(widest + 2)}${value}`),
		...parts.map((part) => [
			...underlined(part.title, '-'),
			...part.lines.map((line, i) => `${part.isNumbered ? `${i + 1}.` : '-'} ${line}`)
		]),
		[caution]
	];
	return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}
