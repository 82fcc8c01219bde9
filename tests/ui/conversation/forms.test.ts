import { describe, expect, test } from 'vitest';
import { houseCalciumKit, houseHardnessKit, houseSyringeKit, valueFromMark } from '$lib/kits';
import { methodFiguresFor } from '$lib/metrology';
import { EvidenceSchema, type Evidence, type Reading } from '$lib/observation';
import { diagnose } from '$lib/judgement';
import type {
	Blanks,
	EvidenceForm,
	FormContext,
	Part
} from '../../../src/lib/ui/conversation/forms/form';
import { formIds, forms, type FormId } from '../../../src/lib/ui/conversation/forms/forms';
import { evidenceLine } from '../../../src/lib/ui/conversation/evidence-words';
import { catalogue, firstReading } from './made-run.svelte';

const context: FormContext = {
	analyte: 'alkalinity',
	unit: 'dKH',
	first: firstReading,
	kit: houseSyringeKit,
	evidence: [],
	id: 'new'
};
function told(form: FormId, blanks: Blanks, about: Partial<FormContext> = {}): Evidence {
	const whole = { ...context, ...about };
	const outcome = forms[form].read({ ...forms[form].begin?.(whole), ...blanks }, whole);
	if ('problems' in outcome) throw new Error(JSON.stringify(outcome.problems));
	return outcome.evidence;
}
function problems(form: FormId, blanks: Blanks): Readonly<Record<string, string>> {
	const outcome = forms[form].read({ ...forms[form].begin?.(context), ...blanks }, context);
	return 'problems' in outcome ? outcome.problems : {};
}

/** Every blank of a sentence filled in as somebody would. */
const filled: Record<FormId, Blanks> = {
	inQuestion: { value: '7,4', u: '0.5', mark: '0.5' },
	repeat: { value: '7,5' },
	earlier: { days: '7', value: '8', dosed: '3,5', consumed: '4.2' },
	secondMethod: { instrument: 'P', value: '8', u: '0,4', method: 'photometer', k: '1' },
	reference: { solution: 'March', nominal: '8', nominalU: '0.1', value: '7.8' },
	freshSample: { where: 'noon', value: '8' },
	freshLot: { lot: 'B', value: '8' },
	otherSample: { ratio: '0.5', value: '8' },
	otherWay: { way: 'warmSlow', value: '8' },
	otherHands: { who: 'Ada', value: '8' },
	otherVial: { vial: 'the new vial', value: '8', u: '0.6' },
	blank: { value: '0' },
	addition: { added: '2', addedU: '0.1', value: '9.3' },
	weighing: { nominal: '5', mass: '4,93', scale: '0.02', temperature: '22' }
};

describe.each(formIds)('%s', (form) => {
	test('filled in, it is evidence that a check takes', () => {
		expect(EvidenceSchema.safeParse(told(form, filled[form])).error).toBeUndefined();
	});

	test('each blank of the sentence is named where it is wrong or missing', () => {
		const names = forms[form]
			.parts(filled[form], context)
			.flatMap((part: Part) => (typeof part === 'object' && 'blank' in part ? [part] : []));
		for (const { blank, kind = 'decimal', label } of names) {
			expect(label).not.toBe('');
			if (kind === 'words') continue;
			const found = problems(form, { ...filled[form], [blank]: 'much' });
			expect(found[blank], blank).toMatch(/“much” is no number/);
		}
	});
});

describe('what a sentence says', () => {
	test('an empty ± is that of the reading in question, in the unit that was chosen', () => {
		const evidence = told('repeat', { value: '2.7', unit: 'meq/L' });
		// 1 dKH is 0.357 meq/L: 10 mg of CaO in a litre over 28.04 mg/meq.
		expect(evidence).toMatchObject({ reading: { unit: 'meq/L', value: 2.7 } });
		if (evidence.kind !== 'test') throw new Error('no test');
		expect(evidence.reading.expandedUncertainty).toBeCloseTo(0.6 * 0.357, 3);
		expect(evidence.reading.repeatabilitySd).toBeCloseTo(0.15 * 0.357, 3);
	});

	test('another vial is a repeat in other glass: what the glass does is not shared, all else is', () => {
		const other = told('otherVial', filled.otherVial);
		expect(other).toMatchObject({
			from: 'repeatFull',
			differs: { sampleWare: 'the new vial' },
			reading: { label: 'In the new vial' }
		});
		expect(evidenceLine(other, 'dKH', catalogue).detail).toBe(
			'other glass for the sample, all else the same'
		);
		// Nobody has to name it.
		expect(told('otherVial', { value: '8' })).toMatchObject({ differs: { sampleWare: 'another' } });
		// No stored test says in which glass it was done.
		expect((forms.otherVial as EvidenceForm).logRole).toBeUndefined();
		// A film of lime in the vial reads high in it and not in another one: by the repeats it is told apart.
		const first: Evidence = { kind: 'test', from: 'first', reading: firstReading };
		const film = (second: Evidence) =>
			diagnose([first, second]).explanations.find(({ id }) => id === 'hardFilm')?.probability ?? 0;
		const [same, otherwise] = (['repeat', 'otherVial'] as const).map((form) =>
			film(told(form, { value: '6.9' }))
		);
		expect(otherwise).toBeGreaterThan(1.2 * same!);
	});

	test('a second method has no scatter of the kit, and says what its ± means', () => {
		expect(told('secondMethod', filled.secondMethod)).toEqual({
			kind: 'secondMethod',
			method: 'photometer',
			instrument: 'P',
			coverageFactor: 1,
			reports: 'total',
			reading: { id: 'new', label: 'P', value: 8, expandedUncertainty: 0.4, unit: 'dKH' }
		});
	});

	test('where no ± was given, none is scaled by what it means', () => {
		expect(told('secondMethod', { ...filled.secondMethod, u: '' })).toMatchObject({
			coverageFactor: 2,
			reading: { expandedUncertainty: 0.6, isUncertaintyTaken: true }
		});
	});

	test('a content without a ± is believed to a twentieth, and its line says so', () => {
		const line = (evidence: Evidence) => evidenceLine(evidence, 'dKH', catalogue).detail;
		const solution = told('reference', { nominal: '8', value: '7.8', u: '0.6' });
		expect(solution).toMatchObject({ nominal: 8, nominalExpandedUncertainty: 0.4 });
		expect(line(solution)).toBe(
			'said to hold 8.0 ± 0.4 dKH (that ± taken as a twentieth), in purified water'
		);
		const given = told('reference', { nominal: '8', nominalU: '0.4', value: '7.8', u: '0.6' });
		expect(line(given)).toBe('said to hold 8.0 ± 0.4 dKH, in purified water');
		const rise = { added: '2', value: '9.3', u: '0.6' };
		expect(line(told('addition', rise))).toBe(
			'raised by 2.00 ± 0.10 dKH (that ± taken as a twentieth)'
		);
		expect(line(told('addition', { ...rise, addedU: '0.1' }))).toBe('raised by 2.00 ± 0.10 dKH');
	});

	test('a scale whose ± is as large as what it weighs tells nothing', () => {
		expect(problems('weighing', { ...filled.weighing, scale: '1' }).scale).toMatch(
			/more than a fifth of the water.*1\.0 of 4\.9 g/
		);
		expect(problems('weighing', { ...filled.weighing, scale: '0.9' })).toEqual({});
	});

	test('water that holds nothing and reads like a tank is asked about', () => {
		const remark = (value: string) => forms.blank.remark?.({ matrix: 'purified', value }, context);
		expect(remark('8')).toBe('8.0 dKH is what a tank may hold. Was it water that holds nothing?');
		expect(remark('0.3')).toBeNull();
		expect(remark('')).toBeNull();
	});

	test('what was dosed less what was taken up is the change to be expected', () => {
		const evidence = told('earlier', filled.earlier);
		if (evidence.kind !== 'earlier') throw new Error('not earlier');
		expect(evidence).toMatchObject({ dosed: 3.5, consumed: 4.2 });
		expect(forms.earlier.remark?.(filled.earlier, context)).toBe(
			'So it should have fallen by 0.7 dKH since.'
		);
		const blank = told('earlier', { days: '7', value: '8' });
		for (const field of ['expectedChange', 'dosed', 'consumed'])
			expect(blank).not.toHaveProperty(field);
	});

	test('what was dosed without what was taken up asks for it at its place, and the other way round', () => {
		const since = { days: '7', value: '8' };
		expect(problems('earlier', { ...since, dosed: '3.5' })).toEqual({
			consumed: expect.stringContaining('Say this too') as string
		});
		expect(problems('earlier', { ...since, consumed: '3.5' })).toEqual({
			dosed: expect.stringContaining('Say this too') as string
		});
		expect(problems('earlier', { ...since, dosed: '3.5', consumed: '0' })).toEqual({});
		expect(forms.earlier.remark?.({ ...since, dosed: '3.5' }, context)).toBeNull();
	});

	test('what was dosed and taken up stands in what is known, also where the two balance', () => {
		const line = (blanks: Record<string, string>) =>
			evidenceLine(
				told('earlier', { days: '7', value: '8', u: '0.5', ...blanks }),
				'dKH',
				catalogue
			).detail;
		expect(line({ dosed: '3.5', consumed: '3.5' })).toBe(
			'7 days before; since then 3.5 dosed and 3.5 dKH used up'
		);
		expect(line({})).toBe('7 days before');
	});

	test('weighed water counts its temperature and the air', () => {
		const evidence = told('weighing', filled.weighing);
		if (evidence.kind !== 'weighing') throw new Error('not weighing');
		// 1.0033 mL for a gram at 22 °C: ISO 8655-6:2002, table A.1 (from memory).
		expect(evidence.foundOverNominal).toBeCloseTo((4.93 * 1.0033) / 5, 4);
		expect(problems('weighing', { ...filled.weighing, mass: '49.3' }).mass).toMatch(
			/one of the two numbers cannot be/
		);
	});

	test('of a mark alone the leaflet makes the value', () => {
		const evidence = told('inQuestion', { mark: '0.5' }, { first: null });
		if (evidence.kind !== 'test') throw new Error('no test');
		expect(evidence.reading.value).toBeCloseTo(
			valueFromMark(houseSyringeKit, { markMl: 0.5 }).value,
			12
		);
		expect(evidence.reading.marks).toEqual({ sealMl: 0.5 });
		expect(evidence.reading.repeatabilitySd).toBeGreaterThan(0);
	});

	test('nothing but a number has a ± all the same, and a wide one', () => {
		const evidence = told('inQuestion', { value: '7.4' }, { first: null, kit: null });
		expect(evidence).toMatchObject({ reading: { value: 7.4, expandedUncertainty: 7.4 * 0.08 } });
	});

	test.each([
		['0', 'dKH', 0.3],
		['0.5', 'dKH', 0.3],
		// 0.3 dKH over 2.804 dKH each is 0.107 meq/L.
		['0', 'meq/L', 0.107]
	])('a value of %s %s has no ± next to nothing', (value, unit, expanded) => {
		const evidence = told('inQuestion', { value, unit }, { first: null, kit: null });
		if (evidence.kind !== 'test') throw new Error('no test');
		expect(evidence.reading.expandedUncertainty).toBeCloseTo(expanded, 3);
	});

	test('a ± that nobody gave is marked as taken; one that was given is not', () => {
		const taken = (form: FormId, blanks: Blanks) => {
			const evidence = told(form, blanks, form === 'inQuestion' ? { first: null } : {});
			return 'reading' in evidence && evidence.reading.isUncertaintyTaken === true;
		};
		expect(taken('inQuestion', { value: '7.4' })).toBe(true);
		expect(taken('inQuestion', { value: '7.4', u: '0.5' })).toBe(false);
		expect(taken('repeat', { value: '7.4' })).toBe(true);
		expect(taken('repeat', { value: '7.4', u: '0.5' })).toBe(false);
	});

	test('what is out of reach is said beside its blank, with both ends as they count', () => {
		expect(problems('repeat', { value: '7.4', u: '0' }).u).toBe(
			'In dKH that is more than 0 and up to 150; found 0.'
		);
		expect(problems('repeat', { value: '-1' }).value).toBe(
			'In dKH that is from 0 to 150; found -1.'
		);
		expect(problems('earlier', { days: '7', value: '8', dosed: '5000' }).dosed).toMatch(
			/from 0 to 150; found 5000/
		);
		expect(problems('earlier', { days: '4000', value: '8' }).days).toMatch(/ten years/);
	});

	test('a value that hardly any tank has, or a ± as large as it, is asked about', () => {
		const remark = (blanks: Blanks) => forms.repeat.remark?.(blanks, context);
		expect(remark({ value: '0.2' })).toMatch(/^Hardly any tank holds 0.2 dKH/);
		expect(remark({ value: '7.4', u: '9' })).toMatch(/^A ± as large as the value/);
		expect(remark({ value: '7.4', u: '0.5' })).toBeNull();
		// A known solution may hold what no tank does.
		const solution = { ...filled.reference, nominal: '30', value: '30' };
		expect(forms.reference.remark?.(solution, context) ?? '').not.toMatch(/Hardly any tank/);
	});

	test('amounts in a sentence stand with their unit, also where another was chosen', () => {
		const after = (form: FormId, blank: string, blanks: Blanks = {}) =>
			forms[form]
				.parts(blanks, context)
				.flatMap((part) => (typeof part === 'object' && 'blank' in part ? [part] : []))
				.find((part) => part.blank === blank)?.after;
		expect(after('earlier', 'dosed')).toBe(' dKH');
		expect(after('earlier', 'consumed', { unit: 'meq/L' })).toBe(' meq/L.');
		expect(after('reference', 'nominalU')).toBe(' dKH,');
		expect(after('addition', 'addedU', { unit: 'ppm CaCO3' })).toBe(' ppm CaCO₃,');
	});

	test('a number that no tank has is asked about, with the unit that would explain it', () => {
		// 132 mg/L CaCO3 over 17.85 mg/L each is 7.4 dKH.
		expect(forms.repeat.remark?.({ value: '132' }, context)).toBe(
			'Is that the unit? 132 in ppm CaCO₃ would be 7.4 dKH.'
		);
		expect(forms.repeat.remark?.({ value: '7.4' }, context)).toBeNull();
	});
});

describe('magnesium that is left by difference', () => {
	const ofMagnesium: FormContext = {
		...context,
		analyte: 'magnesium',
		unit: 'mg/L',
		first: { id: 'q', label: 'Q', value: 1310, expandedUncertainty: 60, unit: 'mg/L' },
		kit: houseHardnessKit
	};
	const ways = (about: FormContext) =>
		forms.otherWay
			.parts(forms.otherWay.begin?.(about) ?? {}, about)
			.flatMap((part: Part) => (typeof part === 'object' && 'choice' in part ? [part] : []))
			.find(({ choice }) => choice === 'way')
			?.options.map(({ value }) => value);

	test('can be worked out with calcium measured anew; both metals together have none to measure', () => {
		expect(ways(ofMagnesium)).toEqual(['thinnedSample', 'warmSlow', 'takenOffAnew']);
		const ofBoth = { ...ofMagnesium, analyte: 'hardness' as const, unit: 'mmol/L' as const };
		expect(ways(ofBoth)).toEqual(['thinnedSample', 'warmSlow']);
		const ofCalcium = { ...ofMagnesium, analyte: 'calcium' as const, kit: houseCalciumKit };
		expect(ways(ofCalcium)).toEqual(['moreBase', 'thinnedSample', 'warmSlow']);
	});
	test('measured anew, magnesium is what is asked for, and a number like calcium is queried', () => {
		const anew = { way: 'takenOffAnew', value: '430' };
		const words = forms.otherWay.parts(anew, ofMagnesium);
		expect(words).toContain('magnesium, worked out anew, comes to');
		expect(words).toContainEqual(
			expect.objectContaining({
				blank: 'value',
				label: 'Magnesium once the new value is taken off'
			})
		);
		expect(forms.otherWay.parts({ way: 'warmSlow' }, ofMagnesium)).toContain('the same water read');
		const doubtOf = (value: string, about: FormContext = ofMagnesium, unit = 'mg/L') =>
			forms.otherWay.doubts?.({ ...anew, value, unit }, about)?.value;
		// Calcium of the sea is about 412 mg/L, 10.3 mmol/L; its magnesium 1284 mg/L, 52.8 mmol/L
		// (Millero and others 2008; from memory).
		expect(doubtOf('430')).toMatch(/430\smg\/L looks like calcium: magnesium is meant here/u);
		expect(doubtOf('10.3', ofMagnesium, 'mmol/L')).toMatch(/looks like calcium/u);
		expect(doubtOf('1284')).toBeUndefined();
		expect(doubtOf('800')).toBeUndefined();
		expect(doubtOf('430', { ...ofMagnesium, analyte: 'calcium' })).toBeUndefined();
	});
	test('typed in, it is no mark of the kit of both, and its ± is wider than that of both alone', () => {
		const typed = forms.inQuestion.read({ value: '1310', mark: '0.4' }, ofMagnesium);
		if (!('evidence' in typed) || typed.evidence.kind !== 'test') throw new Error('a test');
		const { reading } = typed.evidence;
		expect(reading).toMatchObject({ value: 1310, unit: 'mg/L' });
		expect(reading).not.toHaveProperty('marks');
		// 60 mg/L of calcium either way are 36 of magnesium, and the titration of both comes on top.
		const usual = methodFiguresFor(houseHardnessKit, 'magnesium');
		const ofWare = 2 * 1310 * Math.hypot(usual.sampleWareSd, usual.titrantWareSd, usual.lotSd);
		const ofEnd = 2 * Math.hypot(usual.endPointSd, usual.scatterSd);
		expect(reading.expandedUncertainty).toBeGreaterThan(Math.hypot(36.4, ofWare, ofEnd));
	});
	test('says what was taken off, and with what is reckoned where nobody said', () => {
		const line = (takenOff?: Reading['takenOff']) =>
			evidenceLine(
				{
					kind: 'test',
					from: 'first',
					reading: { ...ofMagnesium.first!, ...(takenOff ? { takenOff } : {}) }
				},
				'mg/L',
				catalogue,
				'magnesium'
			).detail;
		expect(line({ value: 433, expandedUncertainty: 16, unit: 'mg/L' })).toContain(
			'433 ± 16 mg/L of calcium taken off'
		);
		expect(line()).toContain(
			'what was taken off is not known: reckoned with 420 ± 60 mg/L of calcium'
		);
	});
});
