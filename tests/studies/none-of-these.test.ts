import { describe, expect, it } from 'vitest';
import { diagnose, faultsFor, type Fault } from '../../src/lib/judgement';
import { NONE_OF_THESE_PRIOR } from '../../src/lib/judgement/diagnosis/analysis';
import { halfOfAllCase, type HalfOfAllCase } from './calibration/half-of-all-case';
import { chanceAt } from './calibration/seeds';

/**
 * How likely 'none of these' has to be beforehand: each fault is left out of the catalogue in turn and
 * cases of it are judged without it; cases in which all is in the catalogue are judged beside them.
 * 'None of these' is named where it is at least as likely as 1 in 4. Asked for is a false rate of no
 * more than 1 in 100, and that it is named three times as often where the cause is missing and matters.
 * More cannot be asked: most faults look like others that are in the catalogue, or like nothing. Were
 * what is unforeseen 2 dKH wide instead of 1, it would be named about twice as often, and a real change
 * by as much could no longer be told from it.
 */
const FALSE_RATE = 0.01;
const NAMED = 0.25;
const COMPLETE_CASES = 130;
const CASES_A_FAULT = 5;
/** A cause that leaves the reading less off than this, dKH, is not missed by anybody. */
const MATTERS_DKH = 0.8;
const priorsTried = [0.01, 0.02, 0.04, 0.06, 0.08, 0.16];

const catalogue = faultsFor({ analyte: 'alkalinity', delivery: 'syringe' }).filter(
	({ methods }) => methods === undefined || methods.includes('kit')
);
/** A habit and the same slip once are one fault in two scopes; left out together. */
const familyOf = ({ id }: Fault) => id.replace(/Once$/, '');

const oddsFor = (probability: number) => probability / (1 - probability);
/** Odds of 'none of these' against everything else, for prior odds of 1. */
function oddsOf({ evidence }: HalfOfAllCase, faults: readonly Fault[]): number {
	const prior = 0.05;
	return (
		oddsFor(diagnose(evidence, { faults, noneOfThesePrior: prior }).noneOfThese) / oddsFor(prior)
	);
}
const rateAt = (odds: readonly number[], prior: number) =>
	odds.filter((each) => each * oddsFor(prior) > oddsFor(NAMED)).length / odds.length;

describe('none of these', () => {
	it('is named falsely in no more than 1 of 100 cases at the prior that is used', () => {
		const complete = Array.from({ length: COMPLETE_CASES }, (_, i) =>
			oddsOf(halfOfAllCase(chanceAt('complete', i)), catalogue)
		);
		const large = catalogue.flatMap((fault) => {
			const others = catalogue.filter((each) => familyOf(each) !== familyOf(fault));
			return Array.from({ length: CASES_A_FAULT }, (_, i) =>
				halfOfAllCase(chanceAt('left out', fault.id, i), fault)
			)
				.filter(({ offDkh }) => Math.abs(offDkh) > MATTERS_DKH)
				.map((each) => oddsOf(each, others));
		});
		console.log(
			[
				`prior    named falsely (${complete.length})    named, fault left out, off by over ${MATTERS_DKH} dKH (${large.length})`,
				...priorsTried.map((prior) =>
					[complete, large]
						.map((odds) => `${(100 * rateAt(odds, prior)).toFixed(1)} %`)
						.reduce((line, rate) => `${line}    ${rate}`, String(prior))
				)
			].join('\n')
		);
		expect(large.length).toBeGreaterThan(50);
		expect(rateAt(complete, NONE_OF_THESE_PRIOR)).toBeLessThanOrEqual(FALSE_RATE);
		expect(rateAt(large, NONE_OF_THESE_PRIOR)).toBeGreaterThan(3 * FALSE_RATE);
	}, 600_000);
});
