import { describe, expect, it } from 'vitest';
import {
	CALCIUM_MG_PER_L_PER_DKH,
	cues,
	faultById,
	faultClasses,
	faults,
	faultsFor,
	REAL_CHANGE,
	waterCauses,
	type Cue,
	type Fault
} from '../../src/lib/judgement';
import { AnalyteSchema } from '../../src/lib/kits';
import { checkIds } from '../../src/lib/observation';

const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);
const ids = (rows: readonly { id: string }[]) => rows.map(({ id }) => id);

/** Faults that a test of its own has, whatever else was asked. */
const isOfTheTest = ({ class: of }: Fault) => of !== 'secondMethod' && of !== 'reference';

describe('every fault', () => {
	it('has an id of its own, and a plain one', () => {
		expect(new Set(ids(faults)).size).toBe(faults.length);
		for (const { id } of faults) expect(id).toMatch(/^[a-z][A-Za-z]+$/);
		expect(faultById('filledByLine')?.name).toContain('read by the seal');
		expect(faultById('no such fault')).toBeNull();
	});

	it.each(faults)('$id: weights sum to one, spreads and prior lie in their ranges', (fault) => {
		expect(sum(fault.sizes.map(({ weight }) => weight))).toBeCloseTo(1, 9);
		for (const { weight, sd, mean } of fault.sizes) {
			expect(weight).toBeGreaterThan(0);
			expect(sd).toBeGreaterThan(0);
			expect(Number.isFinite(mean)).toBe(true);
		}
		expect(fault.prior).toBeGreaterThan(0);
		expect(fault.prior).toBeLessThan(0.3);
		expect(faultClasses).toContain(fault.class);
		expect(fault.class).not.toBe('water');
	});

	it.each(faults)('$id: names checks there are, an analyte there is, and an origin', (fault) => {
		expect(fault.shownBy.length).toBeGreaterThan(0);
		for (const check of fault.shownBy) expect(checkIds).toContain(check);
		for (const analyte of fault.analytes) expect(AnalyteSchema.options).toContain(analyte);
		expect(fault.analytes.length).toBeGreaterThan(0);
		expect(fault.origin).toMatch(
			/[Jj]udgement|common practice, no source|Common practice, no source|[Tt]extbook|[Cc]omputed|[Ee]xact/
		);
		expect(fault.name.length).toBeGreaterThan(5);
		expect(fault.remedy).toMatch(/\.$/);
	});

	it.each(faults)('$id: reaches as far as what it is about', ({ id, class: of, scope, target }) => {
		expect(scope === 'solution').toBe(of === 'reference');
		expect(target === 'reference').toBe(of === 'reference');
		expect(scope === 'instrument').toBe(of === 'secondMethod');
		expect(target === 'method').toBe(of === 'secondMethod');
		expect(scope === 'sampling').toBe(of === 'sampling');
		expect(scope === 'lot').toBe(of === 'reagent');
		// What the first test takes out of the ware is in that test alone; what stays there is a fault of its own.
		const ofWare = faults.find((other) => other.id === id.replace(/Once$/, '') && other.id !== id);
		if (of === 'ware' && scope === 'oneTest')
			expect(['sampleWare', 'titrantWare']).toContain(ofWare?.scope);
		else if (of === 'ware') expect(['sampleWare', 'titrantWare']).toContain(scope);
		if (of === 'technique') expect(['hands', 'oneTest']).toContain(scope);
	});

	it.each(faults)('$id: is sized in what its target and its deliveries have', (fault) => {
		for (const { of } of fault.sizes) {
			if (fault.target === 'gain') expect(of).toBe('share');
			if (fault.target === 'scatter') expect(of).toBe('timesScatter');
			if (['tips', 'tipsEach', 'tipsAgain', 'fullScaleLess'].includes(of))
				expect(fault.deliveries).toEqual(['syringe']);
			if (of === 'fillings') expect(fault.deliveries).not.toContain('dropper');
			if (of === 'divisions') expect(fault.deliveries).not.toContain('dropper');
			if (of === 'divisions') expect(fault.deliveries).toBeDefined();
			// A share can take all away and no more.
			if (of === 'share') for (const { mean } of fault.sizes) expect(mean).toBeGreaterThan(-1);
		}
	});
});

describe('a catalogue for a kit', () => {
	it('holds nothing that its way of delivering titrant cannot have', () => {
		const dropper = ids(faultsFor({ analyte: 'alkalinity', delivery: 'dropper' }));
		expect(dropper).toContain('dropperTilted');
		expect(dropper).not.toContain('filledByLine');
		const syringe = ids(faultsFor({ analyte: 'alkalinity', delivery: 'syringe' }));
		expect(syringe).toContain('filledByLine');
		expect(syringe).not.toContain('dropsMiscounted');
	});

	it.each(['syringe', 'dropper', 'burette'] as const)(
		'%s: leaves about four doubted tests in ten without any fault',
		(delivery) => {
			const own = faultsFor({ analyte: 'alkalinity', delivery }).filter(isOfTheTest);
			const nothing = own.reduce((product, { prior }) => product * (1 - prior), 1);
			expect(nothing).toBeGreaterThan(0.35);
			expect(nothing).toBeLessThan(0.55);
		}
	);

	it.each(AnalyteSchema.options)(
		'takes a second method or a known solution of %s to be sound in at least two cases of three',
		(analyte) => {
			for (const method of ['photometer', 'laboratory', 'probe', 'kit'] as const) {
				const its = faults.filter(
					(fault) =>
						fault.class === 'secondMethod' &&
						fault.analytes.includes(analyte) &&
						(fault.methods?.includes(method) ?? true)
				);
				expect(its.reduce((product, { prior }) => product * (1 - prior), 1)).toBeGreaterThan(0.66);
			}
			const ofSolutions = faults.filter(
				(fault) => fault.class === 'reference' && fault.analytes.includes(analyte)
			);
			expect(ofSolutions.reduce((product, { prior }) => product * (1 - prior), 1)).toBeGreaterThan(
				0.8
			);
		}
	);
});

describe('every cue', () => {
	const rowsOf = ({ likelihoods }: Cue) => [
		likelihoods.otherwise,
		...Object.values(likelihoods.byFault)
	];

	it('has an id of its own', () => {
		expect(new Set(ids(cues)).size).toBe(cues.length);
	});

	it.each(cues)('$id: two to five answers, the last of them that one does not know', (cue) => {
		expect(cue.answers.length).toBeGreaterThanOrEqual(2);
		expect(cue.answers.length).toBeLessThanOrEqual(5);
		expect(new Set(ids(cue.answers)).size).toBe(cue.answers.length);
		expect(cue.answers[cue.answers.length - 1]).toEqual({
			id: 'unknown',
			words: 'I don’t know'
		});
	});

	it.each(cues)('$id: rows over its answers that sum to one, none of them sure', (cue) => {
		for (const row of rowsOf(cue)) {
			expect(Object.keys(row)).toEqual(ids(cue.answers));
			expect(sum(Object.values(row))).toBeCloseTo(1, 9);
			for (const likelihood of Object.values(row)) {
				expect(likelihood).toBeGreaterThanOrEqual(0.02);
				expect(likelihood).toBeLessThanOrEqual(0.98);
			}
		}
	});

	it.each(cues)('$id: not to know tells next to nothing', (cue) => {
		const neutral = cue.likelihoods.otherwise['unknown'] ?? 0;
		for (const row of rowsOf(cue)) {
			const ratio = (row['unknown'] ?? 0) / neutral;
			expect(ratio).toBeGreaterThan(0.8);
			expect(ratio).toBeLessThan(1.25);
		}
	});

	it.each(cues)('$id: speaks of faults there are, that such a kit can have', (cue) => {
		const named = Object.keys(cue.likelihoods.byFault);
		expect(named.length).toBeGreaterThan(0);
		for (const id of named) {
			if (id === REAL_CHANGE) continue;
			const fault = faultById(id);
			expect(fault, id).not.toBeNull();
			for (const delivery of cue.deliveries ?? [])
				if (fault?.deliveries && cue.deliveries?.length === 1)
					expect(fault.deliveries, id).toContain(delivery);
			if (cue.about) expect(fault?.class).toBe(cue.about);
			else expect(fault && isOfTheTest(fault)).toBe(true);
		}
		expect(cue.question).toMatch(/\?$/);
		expect(cue.because).toMatch(/\.$/);
		expect(cue.seconds).toBeGreaterThan(0);
	});
});

describe('the words', () => {
	const words = [
		...faults.flatMap(({ id, name, remedy }) => [
			{ id, said: name },
			{ id, said: remedy }
		]),
		...cues.flatMap(({ id, question, because, answers }) =>
			[question, because, ...answers.map((answer) => answer.words)].map((said) => ({ id, said }))
		),
		...waterCauses.flatMap(({ id, name, shownBy, remedy }) =>
			[name, ...shownBy, remedy].map((said) => ({ id, said }))
		)
	];

	it.each([
		['that a reading is correct', /\b(correct|accurate|exact value|reading is right)\b/i],
		['that a kit is good or bad', /\b(good|bad|poor|cheap|best) (kit|test|brand)\b/i],
		['a certainty', /\b(certain|certainly|definitely|surely|proof|proves|impossible|100 ?%)\b/i],
		['that a dose is safe', /\bsafe(ly)?\b/i],
		['what ails corals, or that they will live', /\b(disease|infection|survive|cure|heal)\w*/i],
		['blame or praise', /\b(careless|your fault|you should have|mistake|wrong|well done|great)\b/i],
		['a name for people', /\b(beginner|amateur|sloppy)\b/i]
	])('never say %s', (_what, never) => {
		for (const { id, said } of words) expect(said, id).not.toMatch(never);
	});

	it('never put acid into a tank, make up for missed doses, or mix parts', () => {
		for (const { remedy, id } of waterCauses) {
			for (const [at] of remedy.matchAll(/[^.]*\bacid\b[^.]*/gi)) expect(at, id).toMatch(/\bno\b/i);
			for (const [at] of remedy.matchAll(/[^.]*catch up[^.]*/gi)) expect(at, id).toMatch(/\bno\b/i);
			expect(remedy, id).not.toMatch(/\bmix (both|the) parts\b/i);
		}
	});

	it('are short', () => {
		for (const { said, id } of words) {
			expect(said.length, `${id}: ${said}`).toBeLessThanOrEqual(150);
			expect(said.trim(), id).toBe(said);
		}
		for (const { question, id } of cues)
			expect(question.split(' ').length, id).toBeLessThanOrEqual(18);
	});

	it('use the trade’s own letters: no brackets, no abbreviations to look up', () => {
		for (const { said, id } of words) expect(said, id).not.toMatch(/[()[\]]|\be\.g\.|\bi\.e\./);
	});
});

describe('causes in the water itself', () => {
	it('have ids of their own, and each says how it shows and what to do', () => {
		expect(new Set(ids(waterCauses)).size).toBe(waterCauses.length);
		for (const cause of waterCauses) {
			expect(cause.shownBy.length).toBeGreaterThan(0);
			expect(cause.remedy).toMatch(/\.$/);
		}
	});
	it('take calcium with alkalinity as calcium carbonate does', () => {
		// 40.078 g/mol Ca for two equivalents; 1 dKH is 10 mg/L of CaO, 56.077 g/mol (IUPAC weights).
		const byHand = (10 / 56.077) * 40.078;
		expect(CALCIUM_MG_PER_L_PER_DKH).toBeCloseTo(byHand, 2);
		const calcification = waterCauses.find(({ id }) => id === 'calcification');
		expect(calcification?.shownBy.join()).toContain('7.15 mg/L');
	});
	it('lose 2.3 dKH with 50 mg/L of nitrate made', () => {
		// NO3 62.004 g/mol, one equivalent each; 2.804 dKH to the meq/L.
		expect((50 / 62.004) * 2.804).toBeCloseTo(2.26, 2);
		const nitrification = waterCauses.find(({ id }) => id === 'nitrification');
		expect(nitrification?.shownBy.join()).toContain('2.3 dKH');
	});
	it('are told at once to stop dosing where it cannot wait', () => {
		const urgent = waterCauses.filter(({ isUrgent }) => isUrgent);
		expect(ids(urgent)).toEqual(['precipitation', 'doserStuck']);
		for (const { remedy } of urgent) expect(remedy).toMatch(/^Stop all dosing, aerate/);
	});
});

describe('sizes that follow from definitions', () => {
	const shareOf = (id: string, near: number) => {
		const found = faultById(id)?.sizes.find(({ mean }) => Math.abs(mean - near) < 0.02);
		return found?.mean ?? Number.NaN;
	};
	it('units: 2.80 dKH to the meq/L, 17.85 mg/L of CaCO3 to the dKH, 1.22 for HCO3, 0.80 for English degrees', () => {
		expect(shareOf('unitTaken', 1.804)).toBeCloseTo(1.804, 2);
		expect(shareOf('unitTaken', 16.85)).toBeCloseTo(16.848, 1);
		expect(shareOf('unitTaken', 0.219)).toBeCloseTo(0.219, 2);
		expect(shareOf('unitTaken', 0.252)).toBeCloseTo(0.252, 2);
	});
	it('hydrates: one water takes 14.5 in a hundred off carbonate, ten take 63', () => {
		expect(shareOf('referenceMonohydrate', -0.145)).toBeCloseTo(-0.145, 3);
		expect(shareOf('referenceWashingSoda', -0.63)).toBeCloseTo(-0.63, 3);
		expect(shareOf('referencePartCarbonate', 0.585)).toBeCloseTo(0.585, 3);
	});
	it('a litre of seawater weighs 2.3 in a hundred more than a kilogram', () => {
		expect(shareOf('laboratoryPerKg', -0.0228)).toBeCloseTo(-0.0228, 3);
	});
});
