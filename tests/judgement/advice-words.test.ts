import { describe, expect, it } from 'vitest';
import { silentWords } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { adviceOn } from './advised';
import { reference, second, test } from './diagnosed';

function told(evidence: readonly Evidence[]) {
	const { diagnosis, decision } = adviceOn(evidence);
	return { diagnosis, decision, because: decision.because.join('\n') };
}

describe('what is to be mended where the water is left alone', () => {
	// On a scale of 15, 7.5 used and 7.5 left are one mark, and 9 used are 6 left (common practice, no source).
	const backwards: Evidence[] = [
		test('a', 7.5),
		{ kind: 'cue', cue: 'usedOrLeft', answer: 'other' }
	];
	it('a scale that was read the wrong way round: right by luck, and what it would read another day', () => {
		const { decision, because } = told(backwards);
		expect(decision.verdict).toBe('leave');
		const line = decision.because.find((each) => each.startsWith('What is to be mended'))!;
		expect(line).toContain(
			'‘used and left taken for each other’, once or each time, alone or beside something else: the chances are about'
		);
		expect(line).toMatch(/right today by luck.*far off another day/);
		const [, read] = /a tank at 9\.0 dKH would read about (\d\.\d) dKH/.exec(line)!;
		// The invented kit has 16 at full scale, and takes 0.2 to 0.4 off every test: that counts twice.
		expect(Number(read)).toBeGreaterThan(5.5);
		expect(Number(read)).toBeLessThan(7);
		expect(line).toMatch(/Say “used” or “left”/);
		expect(because).not.toMatch(/this once|as a habit/);
	});
	it('nothing, where nothing is likely wrong', () => {
		const { decision, because } = told([
			test('a', 8),
			test('b', 8, 'repeatFull'),
			reference('r', 8)
		]);
		expect(decision.verdict).toBe('leave');
		expect(because).not.toMatch(/to be mended/);
	});
});

describe('the chance of what is to be mended', () => {
	it('says of what it is a share: more accounts than the one that is told by itself', () => {
		const { diagnosis, decision } = told([test('a', 10.2), test('b', 8, 'repeatFull')]);
		const line = decision.because.find((each) => each.startsWith('What is to be mended'))!;
		expect(line).toContain(
			'‘tip put on after filling’, alone or beside something else: the chances are about 6 in 10'
		);
		// By itself and this once it is less.
		const [first] = diagnosis.explanations;
		expect(first?.id).toBe('tipFittedLateOnce');
		expect(first?.probability).toBeLessThan(0.5);
	});
});

describe('what independent of the kit was asked and could not count', () => {
	it('a known solution that is itself likely wrong is not passed over', () => {
		// Crystals of washing soda are 63 % water: 8.0 becomes 3.0 (molar masses 105.99 and 286.14).
		const { diagnosis, because } = told([test('a', 8), reference('r', 3)]);
		expect(diagnosis.isIndependent).toBe(false);
		expect(diagnosis.silentWitnesses).toEqual(['solutionDoubted']);
		expect(because).toContain('A known solution was asked as well');
		expect(because).not.toMatch(/Nothing but the kit/);
	});
	it('nor one that reads off what it holds: it verifies nothing, and is not said to speak for the value', () => {
		const low = [test('a', 5.9), test('b', 5.8, 'repeatFull')];
		const off = told([...low, reference('r', 6.2)]);
		expect(off.diagnosis.contradictions?.map(({ between }) => between)).toEqual(['solution']);
		expect(off.decision.isVerified).toBe(false);
		expect(off.decision.verdict).toBe('check');
		expect(off.because).not.toMatch(/Not the kit alone/);
		expect(off.because).toMatch(/the kit or the solution is off/);
		// Within its ±, it bears the value out.
		expect(told([...low, reference('r', 7.8)]).decision.isVerified).toBe(true);
	});
	it('that another method reads it off takes nothing from the kit that reads it right', () => {
		const byOther = { solution: 'one', instrument: 'photometer' };
		const { diagnosis, decision } = told([
			...[test('a', 8), test('b', 8, 'repeatFull'), reference('r', 8, { solution: 'one' })],
			...[second('s', 9.6, 0.5, { instrument: 'photometer' }), reference('q', 9.5, byOther)]
		]);
		expect(diagnosis.contradictions?.map(({ between }) => between)).toContain('solution');
		expect(diagnosis.silentWitnesses).not.toContain('solutionOff');
		expect(decision.isVerified).toBe(true);
	});
	it('nor a second method whose ± is too wide', () => {
		const { diagnosis, because } = told([test('a', 8), second('s', 8, 2)]);
		expect(diagnosis.silentWitnesses).toEqual(['methodTooWide']);
		expect(because).toContain('its ± is too wide');
	});
	it('what counts is not among them, and neither is what was not asked', () => {
		expect(told([test('a', 8)]).diagnosis.silentWitnesses).toEqual([]);
		expect(told([test('a', 8)]).because).toMatch(/Nothing but the kit speaks for it yet/);
		const borneOut = told([test('a', 8), reference('r', 8)]);
		expect(borneOut.diagnosis.silentWitnesses).toEqual([]);
		expect(borneOut.because).toMatch(/Not the kit alone speaks for it/);
	});
	it('each has its words', () => {
		for (const each of [
			'solutionOff',
			'solutionDoubted',
			'methodDoubted',
			'methodTooWide'
		] as const)
			expect(silentWords([each])).toMatch(/ was asked as well, but .*\.$/);
	});
});
