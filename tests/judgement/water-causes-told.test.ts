import { describe, expect, it } from 'vitest';
import { diagnose, waterCausesTold, type Diagnosis } from '../../src/lib/judgement';
import type { Evidence, Reading } from '../../src/lib/observation';

const reading = (id: string, value: number, expandedUncertainty = 0.4): Reading => ({
	id,
	label: id,
	value,
	expandedUncertainty,
	unit: 'dKH'
});
const first = (value: number): Evidence => ({
	kind: 'test',
	from: 'first',
	reading: reading('first', value)
});
const before = (value: number): Evidence => ({
	kind: 'earlier',
	reading: reading('before', value),
	daysAgo: 7
});
const answer = (cue: string, said: string): Evidence => ({ kind: 'cue', cue, answer: said });
/** What only a real change explains: the kit reads a known solution right and a photometer agrees. */
const borneOut = (value: number): Evidence[] => [
	{
		kind: 'reference',
		reading: reading('known', 8),
		nominal: 8,
		nominalExpandedUncertainty: 0.15,
		matrix: 'seawater'
	},
	{
		kind: 'secondMethod',
		method: 'photometer',
		instrument: 'photometer',
		reading: reading('photometer', value)
	}
];
const toldOf = (evidence: Evidence[]) =>
	waterCausesTold(diagnose(evidence), evidence, 'alkalinity');
const idsOf = (evidence: Evidence[]) => toldOf(evidence)?.causes.map(({ id }) => id);

describe('what the water itself may have done', () => {
	const fallen = [first(6.3), before(8.2), ...borneOut(6.3)];
	const risen = [first(10.2), before(8.2), ...borneOut(10.2)];

	it('is told in the direction in which it went, the urgent one before the others', () => {
		expect(toldOf(fallen)?.direction).toBe('falls');
		expect(idsOf(fallen)?.[0]).toBe('precipitation');
		expect(idsOf(fallen)).toEqual(
			expect.arrayContaining(['calcification', 'nitrification', 'doserStopped', 'newWater'])
		);
		expect(idsOf(fallen)).not.toContain('doserStuck');
		expect(toldOf(risen)?.direction).toBe('rises');
		expect(idsOf(risen)?.[0]).toBe('doserStuck');
		expect(idsOf(risen)).not.toContain('calcification');
		expect(idsOf(risen)).not.toContain('doserStopped');
	});
	it('begins with what an answer speaks for', () => {
		expect(idsOf([...fallen, answer('dosing', 'stopped')])?.[0]).toBe('doserStopped');
		expect(idsOf([...fallen, answer('otherValues', 'nitrate')])?.[0]).toBe('nitrification');
		expect(idsOf([...fallen, answer('tankEvents', 'growth')])?.[0]).toBe('calcification');
	});
	it('leaves out what an answer excludes', () => {
		const ids = idsOf([...fallen, answer('dosing', 'noDosing')]);
		expect(ids).not.toContain('doserStopped');
		expect(ids).toContain('calcification');
	});
	it('is not told where the water has hardly changed, but what cannot wait is', () => {
		const steady = [first(8.1), before(8.2), ...borneOut(8.1)];
		expect(toldOf(steady)).toBeNull();
		const hazy = toldOf([...steady, answer('tankEvents', 'haze')]);
		expect(hazy?.causes[0]).toMatchObject({
			id: 'precipitation',
			isUrgent: true,
			isSpokenFor: true
		});
		expect(hazy?.probability).toBeLessThan(0.3);
	});
	it('has no direction without an earlier reading, and then leaves none out', () => {
		const changed: Pick<Diagnosis, 'explanations' | 'unit' | 'waterChanged'> = {
			unit: 'dKH',
			waterChanged: 0.6,
			explanations: [
				{
					id: 'realChange',
					faults: ['realChange'],
					probability: 0.6,
					trueValue: { mean: 6, standardUncertainty: 0.2 }
				}
			]
		};
		const told = waterCausesTold(changed, [first(6)], 'alkalinity');
		expect(told?.direction).toBeNull();
		expect(told?.causes.map(({ id }) => id)).toEqual(
			expect.arrayContaining(['doserStuck', 'precipitation', 'doserStopped'])
		);
	});
	it('takes off what was to be expected: a fall that was reckoned with is none', () => {
		const evidence: Evidence[] = [
			first(7),
			{ kind: 'earlier', reading: reading('before', 8), daysAgo: 4, expectedChange: -2 }
		];
		const told = waterCausesTold(
			{ ...diagnose(evidence), waterChanged: 0.5 },
			evidence,
			'alkalinity'
		);
		expect(told?.direction).toBe('rises');
	});
	it('nitrate made from food moves alkalinity alone', () => {
		const changed: Pick<Diagnosis, 'explanations' | 'unit' | 'waterChanged'> = {
			unit: 'mg/L',
			waterChanged: 0.6,
			explanations: []
		};
		const ids = waterCausesTold(changed, [], 'calcium')?.causes.map(({ id }) => id);
		expect(ids).toContain('precipitation');
		expect(ids).not.toContain('nitrification');
	});
});
