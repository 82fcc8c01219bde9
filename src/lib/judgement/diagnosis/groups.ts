import type { Analysis } from './analysis';
import type { Belief } from './beliefs';
import type { FaultGroup } from './diagnosis';
import { foresee, type Foreseen } from '../ranking/foresee';
import { informationOf } from '../ranking/information';
import { explainedBy, openCues, outcomesOfCue } from '../ranking/cue-outcomes';
import { outcomesOf, type Outcomes } from '../ranking/outcomes';

/** Faults below this are in no group: there is no need to tell apart what is hardly there. */
const LEAST_OF_A_FAULT = 0.02;
/** Results that are less than so many times as likely under one fault as under another tell nothing; judgement. */
const TELLS_NOTHING = 2;
/** A check that is expected to tell less than this of the members, in bits, splits nothing. */
const LEAST_BITS = 0.05;

/** A question that tells so large a part of what the best check would is asked before it; judgement. */
const ASKED_FIRST = 0.2;

type Member = { fault: number; id: string; lnLikelihood: number };

/** Single faults that carry weight, with how likely all results are under each, the likeliest first. */
function membersOf({ places, faults, lnOdds }: Analysis, beliefs: readonly Belief[]): Member[] {
	return beliefs
		.flatMap(({ place, probability }): Member[] => {
			if (place === places.noneOfThese || probability < LEAST_OF_A_FAULT) return [];
			const [fault, second] = places.faultsAt(place);
			if (fault === undefined || second !== undefined || faults[fault]!.scope === 'tank') return [];
			const lnLikelihood = Math.log(probability) - lnOdds[fault]!;
			return [{ fault, id: faults[fault]!.id, lnLikelihood }];
		})
		.sort((a, b) => b.lnLikelihood - a.lnLikelihood || (a.id < b.id ? -1 : 1));
}

/** Members in runs: each is told from the first of its run by less than a small factor. */
function runsOf(members: readonly Member[]): Member[][] {
	const runs: Member[][] = [];
	for (const member of members) {
		const run = runs.at(-1);
		const head = run?.[0];
		if (run && head && head.lnLikelihood - member.lnLikelihood < Math.log(TELLS_NOTHING))
			run.push(member);
		else runs.push([member]);
	}
	return runs.filter((run) => run.length > 1);
}

type Told<T> = { by: T; bits: number };
/** What tells most; null where nothing tells enough to be named. */
const mostTelling = <T>(told: readonly Told<T>[]): Told<T> | null =>
	told.reduce<Told<T> | null>(
		(most, each) => (each.bits > (most?.bits ?? LEAST_BITS) ? each : most),
		null
	);

/** What is expected to tell most of which member it is: a check, and a question where one goes before it. */
function splitBy(
	analysis: Analysis,
	foreseen: Foreseen,
	run: readonly Member[]
): Pick<FaultGroup, 'splitBy' | 'askFirst'> {
	const { checks, places } = analysis;
	const kinds = Int32Array.from(foreseen.explanation, (place) =>
		run.findIndex(({ fault }) => places.one(fault) === place)
	);
	const bitsOf = (outcomes: Outcomes) => informationOf(outcomes, foreseen.weight, kinds);
	const check = mostTelling(
		checks.map((by, test) => ({ by, bits: bitsOf(outcomesOf(foreseen, test)) }))
	);
	const explained = explainedBy(analysis, foreseen);
	const question = mostTelling(
		openCues(analysis).map((cue) => ({ by: cue.id, bits: bitsOf(outcomesOfCue(explained, cue)) }))
	);
	const isFirst = question !== null && question.bits >= ASKED_FIRST * (check?.bits ?? 0);
	return { splitBy: check?.by ?? null, ...(isFirst ? { askFirst: question.by } : {}) };
}

/**
 * Causes that no result so far can tell apart: what was read and answered is about as likely under
 * each, so that what they differ in is what was thought of them beforehand.
 */
export function groupsOf(analysis: Analysis, beliefs: readonly Belief[]): FaultGroup[] {
	const runs = runsOf(membersOf(analysis, beliefs));
	if (runs.length === 0) return [];
	const foreseen = foresee(analysis);
	const { places } = analysis;
	return runs
		.map((run) => ({
			faults: run.map(({ id }) => id).sort(),
			probability: beliefs.reduce(
				(sum, { place, probability }) =>
					place !== places.noneOfThese &&
					places.faultsAt(place).some((fault) => run.some((member) => member.fault === fault))
						? sum + probability
						: sum,
				0
			),
			...splitBy(analysis, foreseen, run)
		}))
		.sort((a, b) => b.probability - a.probability);
}
