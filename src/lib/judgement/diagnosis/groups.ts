import type { CheckId } from '../../observation';
import type { Analysis } from './analysis';
import type { Belief } from './beliefs';
import type { FaultGroup } from './diagnosis';
import { foresee, type Foreseen } from '../ranking/foresee';
import { informationOf } from '../ranking/information';
import { outcomesOf } from '../ranking/outcomes';

/** Faults below this are in no group: there is no need to tell apart what is hardly there. */
const LEAST_OF_A_FAULT = 0.02;
/** Results that are less than so many times as likely under one fault as under another tell nothing; judgement. */
const TELLS_NOTHING = 2;
/** A check that is expected to tell less than this of the members, in bits, splits nothing. */
const LEAST_BITS = 0.05;

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

/** The check that is expected to tell most of which member it is. */
function splitBy(
	{ checks, places }: Analysis,
	foreseen: Foreseen,
	run: readonly Member[]
): CheckId | null {
	const kinds = Int32Array.from(foreseen.explanation, (place) =>
		run.findIndex(({ fault }) => places.one(fault) === place)
	);
	const told = checks.map((check, test) => ({
		check,
		bits: informationOf(outcomesOf(foreseen, test), foreseen.weight, kinds)
	}));
	const best = told.reduce<(typeof told)[number] | null>(
		(most, each) => (each.bits > (most?.bits ?? LEAST_BITS) ? each : most),
		null
	);
	return best?.check ?? null;
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
			splitBy: splitBy(analysis, foreseen, run)
		}))
		.sort((a, b) => b.probability - a.probability);
}
