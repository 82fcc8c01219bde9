import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
	chanceInWords,
	cues,
	decide,
	diagnose,
	faults,
	measured,
	rankChecks,
	type DecideInput,
	type DiagnoseOptions
} from '../../src/lib/judgement';
import type { MethodFigures } from '../../src/lib/metrology';
import { EvidenceSchema, type Evidence } from '../../src/lib/observation';
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
		next: ranking.ranked[0] ?? null,
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
