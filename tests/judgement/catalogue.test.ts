import { describe, expect, it } from 'vitest';
import {
	cues,
	faultById,
	faultClasses,
	faults,
	faultsFor,
	REAL_CHANGE,
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

	it.each(faults)('$id: reaches as far as what it is about', ({ class: of, scope, target }) => {
		expect(scope === 'solution').toBe(of === 'reference');
		expect(target === 'reference').toBe(of === 'reference');
		expect(scope === 'instrument').toBe(of === 'secondMethod');
		expect(target === 'method').toBe(of === 'secondMethod');
		expect(scope === 'sampling').toBe(of === 'sampling');
		expect(scope === 'lot').toBe(of === 'reagent');
		if (of === 'ware') expect(['sampleWare', 'titrantWare']).toContain(scope);
		if (of === 'technique') expect(['hands', 'oneTest']).toContain(scope);
	});

	it.each(faults)('$id: is sized in what its target and its deliveries have', (fault) => {
		for (const { of } of fault.sizes) {
			if (fault.target === 'gain') expect(of).toBe('share');
			if (fault.target === 'scatter') expect(of).toBe('timesScatter');
			if (of === 'tips' || of === 'fullScaleLess') expect(fault.deliveries).toEqual(['syringe']);
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

	it('takes a second method or a known solution to be sound in at least seven cases of ten', () => {
		for (const method of ['photometer', 'laboratory', 'probe', 'kit'] as const) {
			const its = faults.filter(
				(fault) => fault.class === 'secondMethod' && (fault.methods?.includes(method) ?? true)
			);
			expect(its.reduce((product, { prior }) => product * (1 - prior), 1)).toBeGreaterThan(0.7);
		}
		const ofSolutions = faults.filter((fault) => fault.class === 'reference');
		expect(ofSolutions.reduce((product, { prior }) => product * (1 - prior), 1)).toBeGreaterThan(
			0.8
		);
	});
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
