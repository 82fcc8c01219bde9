import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
	chanceInWords,
	correctionPlan,
	cues,
	decide,
	diagnose,
	faults,
	measured,
	rankChecks,
	type CorrectionInput,
	type DecideInput,
	type DiagnoseOptions
} from '../../src/lib/judgement';
import type { MethodFigures } from '../../src/lib/metrology';
import { EvidenceSchema, type Evidence } from '../../src/lib/observation';
import { adviceCases } from './case-advice';
import { caseLists, fieldNames, kindNames } from './case-lists';

const root = new URL('../../', import.meta.url);
const guide = readFileSync(new URL('DEVELOPERS.md', root), 'utf8');
const section = /## A case as JSON\n(.*?)\n## /su.exec(guide)?.[1] ?? '';
const listsPath = new URL('src/lib/judgement/CASES.md', root);

type WrittenCase = {
	evidence: Evidence[];
	options: DiagnoseOptions;
	decide: Pick<DecideInput, 'band' | 'livestock' | 'salinity'>;
};
const written = JSON.parse(/```json\n(.*?)```/su.exec(section)?.[1] ?? '') as WrittenCase;

describe('the case in the documentation', () => {
	const evidence = written.evidence.map((each) => EvidenceSchema.parse(each));
	const diagnosis = diagnose(evidence, written.options);
	const ranking = rankChecks(evidence, written.options);
	const advice = decide({
		diagnosis,
		next: ranking.next,
		isEnough: ranking.isEnough,
		...written.decide
	});

	it('comes to what is written below it', () => {
		const [first] = diagnosis.explanations;
		const name = faults.find(({ id }) => id === first?.id)?.name ?? first?.id;
		const [low, high] = diagnosis.trueValue.interval95;
		const next = ranking.ranked[0];
		const result = [
			`\`${first?.id}\` (${name}), ${chanceInWords(first?.probability ?? 0)}`,
			`a real change of the water, ${chanceInWords(diagnosis.waterChanged)}`,
			`the water holds ${measured(diagnosis.trueValue.mean, (high - low) / 2, diagnosis.unit)}`,
			ranking.isEnough
				? 'checking is enough'
				: `next ${next?.kind === 'checks' ? next.checks.join(' and ') : next?.cue}`,
			`the advice is \`${advice.verdict}\``
		].join('; ');
		expect(section.replace(/\s+/gu, ' ')).toContain(
			`What comes of it: ${result}.`.replace(/\s+/gu, ' ')
		);
	});
	it('is refused by name when a prior is of no fault, as the page says', () => {
		expect(() => diagnose(evidence, { priors: { noSuchFault: 0.1 } })).toThrow('noSuchFault');
	});
});

describe('the lists in the documentation', () => {
	it('are those of the code: `-u` writes them anew', async () => {
		await expect(caseLists()).toMatchFileSnapshot(listsPath.pathname);
	});
	it('name every kind, question, answer and fault', () => {
		const lists = caseLists();
		for (const kind of kindNames) expect(lists).toContain(`- **${kind}**: `);
		for (const { id, answers } of cues) {
			const line = lists.split('\n').find((each) => each.startsWith(`- **${id}** (`));
			for (const answer of answers) expect(line).toContain(`\`${answer.id}\``);
		}
		for (const { id, prior } of faults) expect(lists).toContain(`- **${id}**, ${prior}: `);
	});
	it('show a kit in figures with which a calcium case can be judged', () => {
		const lists = caseLists();
		const method = JSON.parse(/```json\n(.*?)```/su.exec(lists)?.[1] ?? '') as MethodFigures;
		const reading = { id: 'a', label: 'A', value: 420, expandedUncertainty: 15, unit: 'mg/L' };
		const evidence = [EvidenceSchema.parse({ kind: 'test', from: 'first', reading })];
		const { unit, trueValue } = diagnose(evidence, { method });
		expect(unit).toBe('mg/L');
		expect(trueValue.mean).toBeGreaterThan(390);
		expect(trueValue.mean).toBeLessThan(450);
	});
	it('and the page says what each field means', () => {
		expect(fieldNames.length).toBeGreaterThan(25);
		for (const name of fieldNames)
			expect([name, section.includes(`\`${name}\``)]).toEqual([name, true]);
	});
});

describe('the worked advice in the documentation', () => {
	const lists = readFileSync(listsPath, 'utf8');
	const blocks = [...lists.matchAll(/```json\n(.*?)```/gsu)].map(
		([, text]) => JSON.parse(text ?? '') as Record<string, unknown>
	);
	const [given, decided, asked, planned] = blocks.slice(-4);
	const { decision, ranking } = adviceCases();

	it('decides on the JSON of the page as the page says', () => {
		const { evidence, decide: said } = given as unknown as {
			evidence: Evidence[];
			decide: Pick<DecideInput, 'band' | 'livestock' | 'salinity'>;
		};
		const read = evidence.map((each) => EvidenceSchema.parse(each));
		const own = decide({ diagnosis: diagnose(read), ...rankChecks(read, said), ...said });
		const { verdict, direction, isVerified, retestInDays } = own;
		expect(decided).toMatchObject({ verdict, direction, isVerified, retestInDays });
		expect([verdict, direction, ranking.isEnough]).toEqual(['adjust', 'raise', true]);
		const { below } = decided!.probabilities as { below: number };
		expect(below).toBeCloseTo(own.probabilities!.below, 2);
	});

	it('plans on the JSON of the page what comes out by hand', () => {
		const plan = correctionPlan({ ...asked, decision } as unknown as CorrectionInput);
		if (plan.kind !== 'plan') throw new Error(plan.because.join(' '));
		// 1 dKH in 100 L of water; 1 meq/L is 2.8 dKH, and a milliequivalent of NaHCO3 weighs 84.01 mg.
		const grams = (1 / 2.804) * 100 * 0.08401;
		expect(plan.totalAmount).toBeCloseTo(grams, 2);
		expect(planned!.totalAmount as number).toBeCloseTo(grams, 2);
		// At the usual 0.5 dKH a day, half of it on each of two days (common practice, no source); with as
		// little water as its ± allows that stays below the cap.
		const days = planned!.days as { amount: number; expected: number }[];
		expect(days.map(({ expected }) => expected)).toEqual([6.7, 7.2]);
		for (const { amount } of days) expect(amount).toBeCloseTo(grams / 2, 2);
	});
});
