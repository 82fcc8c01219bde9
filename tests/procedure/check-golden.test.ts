import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkSummaryOf, loadCheckLog, replayCheck } from '$lib/procedure';

/** A check as the first released form wrote it. The file never changes again. */
const golden = (): unknown =>
	JSON.parse(
		readFileSync(new URL('golden/check-log-format-1.json', import.meta.url), 'utf8')
	) as unknown;

describe('a check of every sort of evidence, amended, taken back and closed', () => {
	const log = loadCheckLog(golden());
	const state = replayCheck(log);

	it('is read as it was written', () => {
		expect(log).toEqual(golden());
		// The closing, entry 26 at 20 s each, is the last thing that counts.
		expect(new Date(state.at).toISOString()).toBe('2026-03-21T17:48:40.000Z');
	});

	it('has the evidence that holds, in the order in which it was given', () => {
		// The reference was taken back for good, the weighing only for a moment; of the light the last
		// answer counts, in the place of the first; the repeat was first written down wrong.
		expect(state.evidence.map(({ entryId, evidence }) => [entryId, evidence.kind])).toEqual([
			['c1', 'test'],
			['c2', 'test'],
			['c3', 'earlier'],
			['c4', 'earlier'],
			['c6', 'cue'],
			['c9', 'test'],
			['c12', 'addition'],
			['c13', 'blank'],
			['c14', 'secondMethod'],
			['c15', 'weighing']
		]);
		expect(state.evidence[4]?.evidence).toEqual({ kind: 'cue', cue: 'light', answer: 'white' });
		expect(state.evidence[5]?.evidence).toMatchObject({ reading: { value: 7.2 } });
		expect(state.evidence[0]?.testId).toBe('t');
		expect(state.inQuestion?.reading.value).toBe(7.1);
	});

	it('has what was said beside it', () => {
		expect(state).toMatchObject({
			analyte: 'alkalinity',
			kit: { id: 'house-syringe' },
			leftOut: ['probeTitration', 'freshLot'],
			isUnitDoubted: false,
			tank: { waterL: 180, target: 8, who: 'keeper' },
			livestock: 'someTroubled',
			isEmergency: false,
			means: { by: 'bicarbonate', purity: 0.99 },
			note: 'Ben saw the turn earlier than I did.',
			isRemoved: false
		});
	});

	it('is closed, and keeps aside what came after', () => {
		expect([state.isClosed, state.closedBy]).toEqual([true, 'c26']);
		expect(state.keptAside.map(({ id }) => id)).toEqual(['c27']);
		expect(state.refused?.id).toBe('c27');
	});

	it('has a line for a list', () => {
		expect(checkSummaryOf(state, 'check')).toEqual({
			value: 7.1,
			unit: 'dKH',
			expandedUncertainty: 0.6,
			verdict: 'check'
		});
		expect(checkSummaryOf(state)).not.toHaveProperty('verdict');
	});
});
