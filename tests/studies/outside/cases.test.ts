import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { EvidenceSchema, isValued, type Evidence } from '../../../src/lib/observation';
import { askedIds } from './ask';
import { NOT_KNOWN_SHARE, WRONG_SHARE } from './answers';
import { caseFromOutside, casesFromOutside, type OutsideCase } from './cases';
import { kindShares, listedMistakes, oddMistakes, type CaseKind } from './happen';
import { dkhIn } from './kits';
import { excessAcidDkh } from './titrate';
import { fileOfCases } from './write-cases';

const cases = casesFromOutside(4000, 11);
const kindOf = (kind: CaseKind) => cases.filter(({ truth }) => truth.kind === kind);
const mean = (numbers: readonly number[]) =>
	numbers.reduce((sum, number) => sum + number, 0) / numbers.length;

function dkhOf(evidence: Evidence | undefined): number {
	if (!evidence || !isValued(evidence)) throw new RangeError('evidence must hold a value');
	return evidence.reading.value * dkhIn[evidence.reading.unit];
}
/** By how much the test in question is off the tank, dKH. */
const errorOf = ({ evidence, truth }: OutsideCase) => dkhOf(evidence[0]) - truth.trueValueDkh;
/** Errors where one cause was at work alone. */
const errorsBy = (id: string) =>
	cases.filter(({ truth }) => truth.faults.length === 1 && truth.faults[0]?.id === id).map(errorOf);
/** Four standard errors of a share: a seeded count further out is no chance. */
const slack = (share: number, count: number) => 4 * Math.sqrt((share * (1 - share)) / count);

describe('cases from outside', () => {
	it('give evidence that the schema takes, of every way of checking', () => {
		for (const one of cases.slice(0, 400)) {
			const all = [...one.evidence, ...askedIds.map((id) => one.ask(id))];
			for (const evidence of all) expect(EvidenceSchema.parse(evidence)).toEqual(evidence);
			expect(one.evidence[0]).toMatchObject({ kind: 'test', from: 'first' });
		}
	});

	it('are the same for ever: alone, in any order, and as they were written down', () => {
		const file = new URL('./sample-cases.json', import.meta.url);
		expect(JSON.parse(JSON.stringify(fileOfCases(20, 1)))).toEqual(
			JSON.parse(readFileSync(file, 'utf8'))
		);
		const late = caseFromOutside(17, 1);
		expect(late.ask('freshLot')).toEqual(casesFromOutside(18, 1)[17]?.ask('freshLot'));
		const others = casesFromOutside(18, 2)[17];
		expect(others?.truth).not.toEqual(late.truth);
	});

	it('do a check anew when it is asked for again', () => {
		const differing = cases
			.slice(0, 100)
			.filter((one) => dkhOf(one.ask('repeatFull')) !== dkhOf(one.ask('repeatFull', 1)));
		expect(differing.length).toBeGreaterThan(50);
	});

	it('come in the kinds and numbers declared', () => {
		for (const [kind, share] of Object.entries(kindShares)) {
			const found = kindOf(kind as CaseKind).length / cases.length;
			expect(Math.abs(found - share), kind).toBeLessThan(slack(share, cases.length));
		}
		for (const { truth } of kindOf('nothing')) expect(truth.faults).toEqual([]);
		for (const { truth } of kindOf('pair'))
			expect(new Set(truth.faults.map(({ id }) => id)).size).toBe(2);
		for (const { truth } of kindOf('odd'))
			expect(truth.faults.map(({ isOdd }) => isOdd)).toEqual([true]);
		const seen = new Set(cases.flatMap(({ truth }) => truth.faults.map(({ id }) => id)));
		const declared = [...listedMistakes, ...oddMistakes].map(({ id }) => id);
		expect([...seen].sort()).toEqual([...declared].sort());
	});

	it('tell of a change of the tank exactly where the water is to blame', () => {
		for (const { truth } of cases) {
			expect(truth.realChange).toBe(truth.faults.some((fault) => fault.class === 'water'));
			expect(truth.changeDkh !== 0).toBe(truth.realChange);
		}
	});

	it('answer as often wrong, and as often not at all, as declared', () => {
		const answers = cases.flatMap((one) => one.answers);
		const notKnown = answers.filter(({ said }) => said === 'not known').length / answers.length;
		const given = answers.filter(({ said }) => said !== 'not known');
		const wrong = given.filter(({ said, wasSo }) => said !== wasSo).length / given.length;
		expect(Math.abs(notKnown - NOT_KNOWN_SHARE)).toBeLessThan(
			slack(NOT_KNOWN_SHARE, answers.length)
		);
		expect(Math.abs(wrong - WRONG_SHARE)).toBeLessThan(slack(WRONG_SHARE, given.length));
		const odd = answers.filter(
			({ options, wasSo, said }) =>
				!options.includes(wasSo) || ![...options, 'not known'].includes(said)
		);
		expect(odd).toEqual([]);
	});

	it('hold no value that a bench could not show', () => {
		for (const one of cases) {
			const isRescaled = one.truth.faults.some(({ unit }) => unit === 'factor');
			expect(one.truth.trueValueDkh).toBeGreaterThanOrEqual(3.5);
			expect(one.truth.trueValueDkh).toBeLessThan(16);
			for (const evidence of one.evidence) {
				expect(dkhOf(evidence)).toBeGreaterThanOrEqual(0);
				if (!isRescaled) expect(dkhOf(evidence)).toBeLessThan(25);
			}
		}
	});

	it('are centred on the tank where nothing is wrong', () => {
		const errors = kindOf('nothing').map(errorOf);
		expect(Math.abs(mean(errors))).toBeLessThan(0.1);
		expect(Math.max(...errors.map(Math.abs))).toBeLessThan(2);
	});

	// Signs and rough sizes: common practice, no source.
	it.each([
		['filledByLineReadBySeal', -3, -1.5],
		['filledBySealReadByLine', 2, 3],
		['tipFittedAfterFilling', 2, 3],
		['flashTakenForEnd', -1.5, -0.5],
		['titrantEvaporated', -0.9, -0.2],
		['titrantWatered', 0.1, 0.6],
		['sampledSoonAfterDosing', 0.5, 2],
		['airInSampleSyringe', -0.9, -0.2],
		['tankFellUnnoticed', -0.15, 0.15]
	])('%s makes the reading differ from the tank by %d to %d dKH', (id, low, high) => {
		const errors = errorsBy(id);
		expect(errors.length).toBeGreaterThan(10);
		expect(mean(errors)).toBeGreaterThan(low);
		expect(mean(errors)).toBeLessThan(high);
	});

	it('a habit shows in repeats by the same hands, a slip does not, somebody else has neither', () => {
		const filled = cases.filter(
			({ truth }) => truth.faults.length === 1 && truth.faults[0]?.id === 'filledByLineReadBySeal'
		);
		const low = (id: 'repeatQuick' | 'otherHands') =>
			filled.filter((one) => dkhOf(one.ask(id)) - one.truth.trueValueDkh < -1.3).length /
			filled.length;
		// Half of the people have the habit, which shows in 95 of 100 quick repeats.
		expect(Math.abs(low('repeatQuick') - 0.475)).toBeLessThan(slack(0.475, filled.length));
		expect(low('otherHands')).toBe(0);
	});

	it('a fresh bottle puts right what the old one was to blame for, a repeat does not', () => {
		const old = cases.filter(
			({ truth }) => truth.faults.length === 1 && truth.faults[0]?.id === 'titrantEvaporated'
		);
		const off = (id: 'freshLot' | 'repeatQuick') =>
			mean(old.map((one) => dkhOf(one.ask(id)) - one.truth.trueValueDkh));
		expect(Math.abs(off('freshLot'))).toBeLessThan(0.12);
		expect(off('repeatQuick')).toBeLessThan(-0.3);
	});

	it('acid beyond the end at pH 4.5: −0.16 dKH in a closed vial of 7 dKH, none with 60 % of CO2 gone, +0.1 open', () => {
		// Equilibria of seawater computed apart from this bench, to their last figure.
		const water = { dkh: 7, matrix: 'seawater', carbonPerAlkalinity: 0.9 } as const;
		expect(excessAcidDkh(water, 4.5, 1)).toBeCloseTo(-0.16, 1);
		expect(excessAcidDkh(water, 4.5, 0.4)).toBeCloseTo(0, 1);
		expect(excessAcidDkh(water, 4.5, 0)).toBeCloseTo(0.1, 1);
	});

	it('take from the project words and shapes alone, nothing of what they judge', () => {
		const folder = new URL('./', import.meta.url);
		const sources = readdirSync(folder).filter((name) => /(?<!test)\.ts$/.test(name));
		expect(sources.length).toBeGreaterThan(10);
		const allowed = /^import type [^;]*lib\/metrology'|^import [^;]*lib\/observation'/;
		for (const name of sources) {
			const text = readFileSync(new URL(name, folder), 'utf8');
			for (const line of text.match(/^import [^;]*src\/lib[^;]*/gm) ?? [])
				expect(line, name).toMatch(allowed);
		}
	});

	it('refuses a count or a seed that is none', () => {
		expect(() => casesFromOutside(1.5, 1)).toThrow('count must be a whole number');
		expect(() => casesFromOutside(1, Number.NaN)).toThrow('seed must be a whole number');
	});
});
