import { describe, expect, it } from 'vitest';
import { decide, diagnoseAndRank, faults } from '../../src/lib/judgement';
import { houseCalciumKit, type Unit } from '../../src/lib/kits';
import { methodFiguresFor } from '../../src/lib/metrology';
import type { Evidence } from '../../src/lib/observation';

const unit: Unit = 'mg/L';
const reading = (id: string, value: number) => ({
	...{ id, label: id, value, expandedUncertainty: 16, unit }
});
const high: readonly Evidence[] = [
	{ kind: 'test', from: 'first', reading: reading('a', 470) },
	{ kind: 'test', from: 'repeatFull', reading: reading('b', 468) }
];
const redAgain: Evidence = { kind: 'cue', cue: 'blueHeld', answer: 'followed' };
const solution = (read: number): Evidence => ({
	kind: 'reference',
	reading: reading('r', read),
	nominal: 415,
	nominalExpandedUncertainty: 5,
	matrix: 'seawater'
});

function advised(evidence: readonly Evidence[]) {
	const { diagnosis, ranking } = diagnoseAndRank(evidence, {
		unit,
		analyte: 'calcium',
		method: methodFiguresFor(houseCalciumKit, 'calcium')
	});
	const decision = decide({
		diagnosis,
		analyte: 'calcium',
		band: { low: 400, high: 450, unit },
		livestock: 'well',
		next: ranking.next,
		ranked: ranking.ranked,
		isEnough: ranking.isEnough,
		salinity: 35
	});
	return { diagnosis, decision };
}
const remedyOf = (id: string) => faults.find((each) => each.id === id)?.remedy ?? id;

describe('the water is left, and the kit is not', () => {
	it('a base that leads is told with its remedy, though the chances are no more than even', () => {
		const { diagnosis, decision } = advised([...high, redAgain, solution(455)]);
		expect(decision.verdict).toBe('leave');
		expect(diagnosis.explanations[0]?.faults).toEqual(['baseOld']);
		const said = decision.because.join(' ');
		expect(said).toContain('Open a fresh base');
		expect(said).toContain(remedyOf('baseOld'));
		expect(said).not.toContain('the way of testing');
	});

	it('of a kit that read a known solution right there is nothing to mend', () => {
		const sound = [
			{ kind: 'test', from: 'first', reading: reading('a', 428) },
			{ kind: 'test', from: 'repeatFull', reading: reading('b', 426) }
		] satisfies Evidence[];
		const { decision } = advised([...sound, solution(416)]);
		expect(decision.verdict).toBe('leave');
		const said = decision.because.join(' ');
		expect(said).not.toMatch(/to be mended|likeliest of what may be wrong/u);
	});
});
