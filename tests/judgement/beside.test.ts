import { describe, expect, it } from 'vitest';
import { supportOf, type SupportInput } from '../../src/lib/judgement';
import { houseCalciumKit, houseHardnessKit } from '../../src/lib/kits';
import { methodFiguresOf } from '../../src/lib/metrology';
import type {
	BenchEvidence,
	Conclusion,
	Reading,
	RelatedValue,
	TakenFromReading
} from '../../src/lib/observation';

/** A test of calcium by the house kit: ± 27, repeats within 16 of each other as a rule. */
const calcium = (value: number, id = 'own'): Reading => ({
	id,
	label: 'Test',
	value,
	expandedUncertainty: 27,
	repeatabilitySd: 5.7,
	unit: 'mg/L'
});
const before = (value: number): BenchEvidence => ({
	kind: 'earlier',
	daysAgo: 20,
	reading: calcium(value, 'before')
});
const beside = (
	of: RelatedValue['of'],
	value: number,
	daysAgo: number,
	more: Partial<RelatedValue> = {}
): RelatedValue => ({
	id: `${of}-${daysAgo}`,
	of,
	label: 'you',
	value,
	expandedUncertainty: { salinity: 1, alkalinity: 0.5, calcium: 27, magnesium: 100 }[of],
	unit: of === 'salinity' ? null : of === 'alkalinity' ? 'dKH' : 'mg/L',
	daysAgo,
	isChecked: false,
	note: null,
	...more
});
const checked = { isChecked: true };

function judge(
	conclusion: Conclusion,
	value: number,
	related: RelatedValue[],
	more: Partial<SupportInput> = {}
) {
	return supportOf({
		reading: calcium(value),
		evidence: [before(425)],
		conclusion,
		method: methodFiguresOf(houseCalciumKit),
		beside: { related },
		...more
	});
}

describe('that it was the salinity', () => {
	const then = beside('salinity', 35, 20);
	const now = (value: number) => beside('salinity', value, 0, checked);

	it('is earned when calcium fell by the share by which salinity fell', () => {
		// 425 × 31 / 35 = 376.
		expect(judge('salinity', 376, [then, now(31)]).verdict).toBe('earned');
	});
	it('is spoken against when calcium stayed, or when alkalinity did', () => {
		expect(judge('salinity', 425, [then, now(31)]).verdict).toBe('against');
		const alkalinity = [beside('alkalinity', 8.2, 20), beside('alkalinity', 9.4, 1)];
		expect(judge('salinity', 376, [then, now(31), ...alkalinity]).verdict).toBe('against');
	});
	it('is spoken against when salinity is what it was', () => {
		expect(judge('salinity', 376, [then, now(34.6)]).verdict).toBe('against');
	});
	it('waits for a measurement of today, and the debrief names it', () => {
		const open = judge('salinity', 376, [then], { offered: ['salinity', 'repeatFull'] });
		expect(open).toMatchObject({ verdict: 'notYet', wouldTellMore: 'salinity' });
		// A value that stood in the book for today is not a measurement.
		expect(judge('salinity', 376, [then, beside('salinity', 31, 0)]).verdict).toBe('notYet');
	});
});

describe('a change that two kits saw', () => {
	const alkalinity = (now: number, more = checked) => [
		beside('alkalinity', 9.6, 20),
		beside('alkalinity', now, 0, more)
	];
	it('is earned where alkalinity fell by one dKH for 7.15 mg/L of calcium', () => {
		expect(judge('waterChanged', 394, alkalinity(5.2)).verdict).toBe('earned');
	});
	it('is not where alkalinity stood still, or was not measured anew', () => {
		expect(judge('waterChanged', 394, alkalinity(9.5)).verdict).not.toBe('earned');
		const inBook = alkalinity(5.2, { isChecked: false });
		expect(judge('waterChanged', 394, inBook).verdict).not.toBe('earned');
	});
	it('is not where a repeat did not find it again', () => {
		const repeat: BenchEvidence = {
			kind: 'test',
			from: 'repeatFull',
			reading: calcium(425, 'repeat')
		};
		const evidence = [before(425), repeat];
		expect(judge('waterChanged', 394, alkalinity(5.2), { evidence }).verdict).not.toBe('earned');
	});
	it('is not where calcium rose as alkalinity fell', () => {
		expect(judge('waterChanged', 456, alkalinity(5.2)).verdict).not.toBe('earned');
	});
});

describe('what was taken off a reading of both metals', () => {
	const taken = (value: number, isMeasured = true): TakenFromReading => ({
		of: 'calcium',
		label: 'Alex',
		value,
		expandedUncertainty: 27,
		unit: 'mg/L',
		isMeasured
	});
	const both: Reading = {
		id: 'own',
		label: 'Test',
		value: 64.5,
		expandedUncertainty: 4.2,
		repeatabilitySd: 0.47,
		unit: 'mmol/L'
	};
	const sound: BenchEvidence = {
		kind: 'reference',
		reading: { ...both, id: 'known', value: 63.5 },
		nominal: 63.4,
		nominalExpandedUncertainty: 1,
		matrix: 'seawater'
	};
	const judgeBoth = (
		conclusion: Conclusion,
		takenOff: TakenFromReading,
		related: RelatedValue[] = []
	) =>
		supportOf({
			reading: both,
			evidence: [sound],
			conclusion,
			method: methodFiguresOf(houseHardnessKit),
			beside: { related, takenOff },
			offered: ['calcium', 'repeatFull']
		});
	const anew = (value: number) => [beside('calcium', value, 0, checked)];

	it('is wrong when measured anew it is another, and then the rest does not stand', () => {
		expect(judgeBoth('carriedOver', taken(575), anew(425)).verdict).toBe('earned');
		expect(judgeBoth('stands', taken(575), anew(425)).verdict).toBe('against');
	});
	it('is right when it is the same, and then the rest stands by a known solution', () => {
		expect(judgeBoth('carriedOver', taken(420), anew(425)).verdict).toBe('against');
		expect(judgeBoth('stands', taken(420), anew(425)).verdict).toBe('earned');
	});
	it('in other units is the same amount', () => {
		// 425 mg/L over 40.078 g/mol.
		const inMoles = { ...taken(10.6), unit: 'mmol/L' as const, expandedUncertainty: 0.67 };
		expect(judgeBoth('carriedOver', inMoles, anew(425)).verdict).toBe('against');
		expect(judgeBoth('carriedOver', { ...inMoles, value: 14.3 }, anew(425)).verdict).toBe('earned');
	});
	it('taken for granted leaves the rest open until it is measured', () => {
		expect(judgeBoth('stands', taken(420, false))).toMatchObject({
			verdict: 'notYet',
			wouldTellMore: 'calcium'
		});
		expect(judgeBoth('stands', taken(420)).verdict).toBe('earned');
		expect(judgeBoth('carriedOver', taken(420)).verdict).toBe('notYet');
	});
});
