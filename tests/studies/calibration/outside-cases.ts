import type { CheckId, Evidence } from '../../../src/lib/observation';
import { caseFromOutside, type OutsideCase } from '../outside/cases';
import type { CalibrationCase, TrueCause } from './case';
import { answersToCues } from './outside-answers';
import { namesOfMistakes } from './outside-names';
import { chanceAt, shuffled } from './seeds';

/** What is asked for besides what a case comes with, in turn. */
const more = ['as it came', 'five questions', 'two repeats', 'solution and second method'] as const;

/** Checks of the case are asked for anew from here on; what it came with stands before. */
const LATER = 10;

function furtherEvidence(from: OutsideCase, index: number, seed: number): Evidence[] {
	const lacks = (kind: Evidence['kind']) => !from.evidence.some((each) => each.kind === kind);
	const asked = (kind: Evidence['kind'], check: CheckId) => (lacks(kind) ? [from.ask(check)] : []);
	switch (more[index % more.length]) {
		case 'five questions':
			return shuffled(chanceAt(seed, 'asked', index), answersToCues(from)).slice(0, 5);
		case 'two repeats':
			return [from.ask('repeatFull', 1), from.ask('repeatFull', 2)];
		case 'solution and second method':
			return [...asked('reference', 'reference'), ...asked('secondMethod', 'secondMethod')];
		default:
			return [];
	}
}

const causesOf = ({ truth }: OutsideCase): TrueCause[] =>
	truth.faults.map(({ id, class: own, alsoFair, isOdd }): TrueCause => {
		const ids = namesOfMistakes[id] ?? [];
		return { ids, classes: [own, ...alsoFair], isOdd: isOdd && ids.length === 0 };
	});

/** A case from the bench that shares neither equation nor list of causes with the diagnosis. */
export function outsideCase(index: number, seed: number): CalibrationCase {
	const from = caseFromOutside(index, seed);
	return {
		set: more[index % more.length] ?? '',
		evidence: [...from.evidence, ...furtherEvidence(from, index, seed)],
		method: from.method,
		band: { low: from.band.lowDkh, high: from.band.highDkh, unit: 'dKH' },
		truth: { trueValue: from.truth.trueValueDkh, causes: causesOf(from) },
		ask: (check, round) => from.ask(check, round + LATER)
	};
}
