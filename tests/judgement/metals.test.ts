import { describe, expect, it } from 'vitest';
import {
	cuesFor,
	decide,
	diagnose,
	faultById,
	faultsFor,
	rankChecks
} from '../../src/lib/judgement';
import {
	houseCalciumKit,
	houseDropperKit,
	houseHardnessKit,
	houseSyringeKit,
	type Unit
} from '../../src/lib/kits';
import {
	differenceFiguresOf,
	methodFiguresOf,
	usualMethodFiguresOf,
	type MethodFigures
} from '../../src/lib/metrology';
import type { Evidence, EvidenceOf } from '../../src/lib/observation';

const calcium = methodFiguresOf(houseCalciumKit);
const magnesium = differenceFiguresOf(houseHardnessKit, { value: 420, unit: 'mg/L' });
const alkalinity = methodFiguresOf(houseSyringeKit);

type From = EvidenceOf<'test'>['from'];
const readerOf = (expandedUncertainty: number, repeatabilitySd: number) => {
	const reading = (value: number, id: string) => ({
		id,
		label: id,
		value,
		expandedUncertainty,
		repeatabilitySd,
		unit: 'mg/L' as const
	});
	return {
		test: (value: number, from: From = 'first'): Evidence => ({
			kind: 'test',
			from,
			reading: reading(value, from)
		}),
		earlier: (value: number): Evidence => ({
			kind: 'earlier',
			daysAgo: 7,
			reading: reading(value, 'earlier')
		})
	};
};
const ofCalcium = readerOf(18, 4);
const ofMagnesium = readerOf(75, 20);
const cue = (id: string, answer: string): Evidence => ({ kind: 'cue', cue: id, answer });
const idsFor = (method: Parameters<typeof faultsFor>[0]) => faultsFor(method).map(({ id }) => id);

describe('which faults there are follows from the method', () => {
	it('base and its faults belong to a kit with base, buffer to one with buffer, refills to one filled again', () => {
		expect(idsFor(calcium)).toEqual(expect.arrayContaining(['baseOld', 'stoodWithBase']));
		expect(idsFor(calcium)).not.toContain('bufferOff');
		expect(idsFor(calcium)).not.toContain('fillingForgotten');
		expect(idsFor(magnesium)).toEqual(
			expect.arrayContaining(['bufferOff', 'fillingForgotten', 'calciumTakenOff'])
		);
		expect(idsFor(magnesium)).not.toContain('baseOld');
		expect(idsFor(methodFiguresOf(houseHardnessKit))).not.toContain('calciumTakenOff');
		expect(idsFor(alkalinity).filter((id) => /[Bb]lue|base(Old|Short)|filling/.test(id))).toEqual(
			[]
		);
	});
	it('whatever befalls any titration befalls these, and what only acid has does not', () => {
		for (const method of [calcium, magnesium]) {
			expect(idsFor(method)).toEqual(
				expect.arrayContaining(['readByLine', 'wrongTick', 'sampleAir', 'titrantStronger'])
			);
			expect(idsFor(method)).not.toContain('carbonateOnly');
		}
	});
	it.each([calcium, magnesium])('$analyte: about four doubted tests in ten have none', (method) => {
		const nothing = faultsFor(method)
			.filter((fault) => fault.class !== 'secondMethod' && fault.class !== 'reference')
			.reduce((product, { prior }) => product * (1 - prior), 1);
		expect(nothing).toBeGreaterThan(0.3);
		expect(nothing).toBeLessThan(0.55);
	});
});

describe('figures of a difference', () => {
	it('a mL and a drop are worth their moles: 24.305 g/mol of magnesium', () => {
		const whole = methodFiguresOf(houseHardnessKit);
		expect(magnesium.valuePerMl).toBeCloseTo(whole.valuePerMl * 24.305, 6);
		expect(magnesium.endPointSd).toBeCloseTo(whole.endPointSd * 24.305, 6);
	});
	it('a share of the titrant is a larger one of what is left, by hand at 1313.7 and 421.7 mg/L', () => {
		// Seawater of salinity 35: 54.050 and 10.522 mmol/L (Millero et al. 2008, from memory).
		const found = differenceFiguresOf(
			houseHardnessKit,
			{ value: 421.7, unit: 'mg/L' },
			{ value: 1313.7 }
		);
		expect(found.wholeOverValue).toBeCloseTo((54.05 + 10.522) / 54.05, 4);
	});
	it('each mg/L of calcium counts 0.606 of magnesium', () => {
		const size = faultById('calciumTakenOff')?.sizes[0]?.mean ?? Number.NaN;
		expect(size / 50).toBeCloseTo(24.305 / 40.078, 4);
	});
	it('what takes nothing off is refused', () => {
		expect(() => differenceFiguresOf(houseCalciumKit, { value: 1, unit: 'mg/L' })).toThrow(
			RangeError
		);
	});
	it('there are usual figures for every analyte', () => {
		for (const each of ['alkalinity', 'calcium', 'magnesium', 'hardness'] as const)
			expect(usualMethodFiguresOf(each).analyte).toBe(each);
	});
});

describe('stories', () => {
	const baseOf = ({ faults }: ReturnType<typeof diagnose>) =>
		(faults['baseOld'] ?? 0) + (faults['baseShort'] ?? 0);

	it('calcium far above what it was, from an old bottle whose blue never stayed: the base', () => {
		const odd = [ofCalcium.test(500), ofCalcium.earlier(425)];
		const told = [...odd, cue('baseBottle', 'old'), cue('blueHeld', 'followed')];
		const diagnosis = diagnose(told, { method: calcium });
		expect(baseOf(diagnosis)).toBeGreaterThan(0.5);
		const odds = (p: number) => p / (1 - p);
		const untold = odds(baseOf(diagnose(odd, { method: calcium })));
		expect(odds(baseOf(diagnosis))).toBeGreaterThan(4 * untold);
	});
	it('a crust tells more of the base than its age does, and a fresh bottle clears it', () => {
		const told = (answer: string) =>
			baseOf(
				diagnose([ofCalcium.test(520), ofCalcium.earlier(425), cue('baseBottle', answer)], {
					method: calcium
				})
			);
		const unknown = told('unknown');
		expect(told('crust')).toBeGreaterThan(told('old'));
		expect(told('old')).toBeGreaterThan(unknown);
		expect(told('fresh')).toBeLessThan(unknown);
	});
	it('a vial with more base that reads the same clears it, one that reads as before convicts it', () => {
		const odd = [ofCalcium.test(500), ofCalcium.earlier(425), cue('baseBottle', 'old')];
		const same = diagnose([...odd, ofCalcium.test(498, 'moreBase')], { method: calcium });
		const back = diagnose([...odd, ofCalcium.test(425, 'moreBase')], { method: calcium });
		const before = diagnose(odd, { method: calcium });
		expect(baseOf(same)).toBeLessThan(baseOf(before) / 3);
		expect(baseOf(back)).toBeGreaterThan(baseOf(before));
	});
	it('magnesium a whole filling too low: a filling was left out', () => {
		const diagnosis = diagnose([ofMagnesium.test(380), ofMagnesium.earlier(1330)], {
			method: magnesium
		});
		expect(diagnosis.explanations[0]?.id).toBe('fillingForgotten');
		expect(Math.abs(diagnosis.trueValue.median - 1352)).toBeLessThan(40);
	});
	it('magnesium high because calcium was taken for usual: measured anew it comes right', () => {
		// 480 for 420: 60 × 0.606 = 36 mg/L.
		const odd = [ofMagnesium.test(1366), cue('whichCalcium', 'usual')];
		const anew = [...odd, ofMagnesium.test(1330, 'takenOffAnew')];
		const taken = (evidence: Evidence[]) =>
			diagnose(evidence, { method: magnesium }).faults['calciumTakenOff'] ?? 0;
		const without = taken([ofMagnesium.test(1366)]);
		expect(taken(odd)).toBeGreaterThan(1.5 * without);
		expect(taken(anew)).toBeGreaterThan(taken([...odd, ofMagnesium.test(1366, 'takenOffAnew')]));
	});
	it('64 mmol/L of magnesium, an ordinary sum: calcium never taken off is named, and an answer tells it', () => {
		const sum: Evidence = {
			kind: 'test',
			from: 'first',
			reading: { id: 'a', label: 'a', value: 64, expandedUncertainty: 1.5, unit: 'mmol/L' }
		};
		const of = (evidence: Evidence[]) => diagnose(evidence, { method: magnesium });
		const leadOf = ({ explanations }: ReturnType<typeof diagnose>) =>
			explanations.filter(({ faults }) => faults.length === 1)[0];
		expect(leadOf(of([sum]))?.id).toBe('calciumLeftIn');
		const told = of([sum, cue('whichCalcium', 'none')]);
		expect(told.explanations[0]?.id).toBe('calciumLeftIn');
		// 64 less 10.48 of calcium (420 mg/L over 40.078 g/mol).
		expect(Math.abs(told.explanations[0]!.trueValue.mean - (64 - 420 / 40.078))).toBeLessThan(0.7);
		const taken = of([sum, cue('whichCalcium', 'today')]);
		expect(taken.faults['calciumLeftIn'] ?? 1).toBeLessThan(0.05);
		expect(of([ofMagnesium.test(1320)]).faults['calciumLeftIn'] ?? 1).toBeLessThan(0.02);
	});
	it('another unit and another cup are told apart by the unit, before any bottle is opened', () => {
		const typed: Evidence = {
			kind: 'test',
			from: 'first',
			reading: { id: 'a', label: 'a', value: 64, expandedUncertainty: 1.5, unit: 'mg/L' }
		};
		const { groups } = diagnose([typed], { method: magnesium });
		const group = groups.find(({ faults }) => faults.includes('magnesiumUnitTaken'));
		expect(group?.faults).toContain('wrongCup');
		expect(group?.askFirst).toBe('unitSeen');
		expect(rankChecks([typed], { method: magnesium }).next).toMatchObject({ cue: 'unitSeen' });
	});
	it('checks are offered where the method has what they need', () => {
		const offered = (method: typeof calcium, evidence: Evidence[]) =>
			JSON.stringify(rankChecks(evidence, { method }));
		const own = offered(calcium, [ofCalcium.test(500)]);
		const other = offered(magnesium, [ofMagnesium.test(1330)]);
		expect(own).toContain('moreBase');
		expect(own).not.toContain('takenOffAnew');
		expect(own).not.toContain('probeTitration');
		expect(other).toContain('takenOffAnew');
		expect(other).not.toContain('moreBase');
	});
});

describe('a number that no tank can hold', () => {
	it('a kit without rows and with one sample size has no other row; one with either may', () => {
		expect(idsFor(calcium)).not.toContain('wrongRow');
		expect(idsFor(methodFiguresOf(houseDropperKit))).not.toContain('wrongRow');
		expect(idsFor(alkalinity)).toContain('wrongRow');
		const twoSizes = {
			...houseCalciumKit,
			sample: {
				...houseCalciumKit.sample,
				volumes: [...houseCalciumKit.sample.volumes, { id: 'half', name: 'Half', volumeMl: 4 }]
			}
		};
		expect(idsFor(methodFiguresOf(twoSizes))).toContain('wrongRow');
		expect(cuesFor(calcium).map(({ id }) => id)).not.toContain('rowSeen');
	});

	const banded = {
		calcium: { low: 400, high: 450, unit: 'mg/L' },
		alkalinity: { low: 7, high: 9, unit: 'dKH' }
	} as const;
	const advise = (evidence: readonly Evidence[], method: MethodFigures) => {
		const band = banded[method.analyte as keyof typeof banded];
		const options = { method, unit: band.unit };
		const diagnosis = diagnose(evidence, options);
		const { ranked, isEnough } = rankChecks(evidence, { ...options, band });
		const next = ranked[0] ?? null;
		return {
			diagnosis,
			next,
			decision: decide({
				...{ diagnosis, next, isEnough, band, livestock: 'well', salinity: 35 },
				analyte: method.analyte
			})
		};
	};
	const typed = (value: number, unit: Unit): Evidence => ({
		kind: 'test',
		from: 'first',
		reading: { id: 'a', label: 'a', value, expandedUncertainty: 0.02 * value, unit }
	});
	it.each([
		[4200, calcium],
		[80, alkalinity]
	] as const)('%d is queried, and nothing of the water follows', (value, method) => {
		const { diagnosis, decision } = advise([typed(value, method.unit)], method);
		expect(diagnosis.faults['figureSlipped'] ?? 0).toBeGreaterThan(0.2);
		expect(decision.verdict).toBe('check');
		expect(decision.because.join(' ')).toContain('No tank holds what was read.');
		expect(decision.because.join(' ')).not.toMatch(/The water holds|Within your band/);
	});
	it('4200, said to be another number than was found: still queried, until it is tested anew', () => {
		const said = [typed(4200, 'mg/L'), cue('figuresSeen', 'other')];
		const { diagnosis, decision } = advise(said, calcium);
		expect(diagnosis.faults['figureSlipped'] ?? 0).toBeGreaterThan(0.9);
		expect(decision.verdict).toBe('check');
		const again = advise([...said, ofCalcium.test(421, 'repeatFull')], calcium);
		expect(again.decision.because.join(' ')).not.toContain('No tank holds');
		expect(again.diagnosis.trueValue.mean).toBeGreaterThan(405);
		expect(again.diagnosis.trueValue.mean).toBeLessThan(437);
	});
	it('a high number that a tank may hold is none', () => {
		expect(diagnose([ofCalcium.test(600)], { method: calcium }).isBeyondAnyTank).toBe(false);
	});
});
