import * as fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
	draftOfKit,
	draftSchema,
	emptyDraft,
	emptyReagent,
	houseKitOf,
	houseKits,
	KitSchema,
	kitOfDraft,
	suggestionsFor,
	type KitDraft
} from '../../src/lib/kits';
import { anyKit } from './any-kit';

const kitOf = (draft: KitDraft, id: string) => {
	const made = kitOfDraft(draft, { id });
	if ('problems' in made) throw new Error(JSON.stringify(made.problems));
	return made.kit;
};
const problemsOf = (draft: KitDraft): Record<string, string> => {
	const made = kitOfDraft(draft);
	return 'problems' in made ? made.problems : {};
};

/** Blanks that hold a number and count in this draft, by path. */
function numberPaths(draft: KitDraft): string[] {
	const paths = [
		...draft.volumes.flatMap((volume, i) => (volume.volumeMl ? [`volumes.${i}.volumeMl`] : [])),
		...draft.reagents.flatMap((_, i) =>
			['amount', 'mixSeconds', 'waitSeconds'].map((blank) => `reagents.${i}.${blank}`)
		),
		'dropMl',
		'holdsSeconds',
		'statedAccuracy',
		'assumed.sampleHalfWidth',
		'assumed.colourDrops'
	];
	if (draft.by !== 'dropper') paths.push('capacityMl', 'graduationMl', 'numeralEveryMl');
	if (draft.by === 'syringe') paths.push('barrelEndMl', 'tipVolumeMl');
	if (draft.kind === 'rows')
		paths.push(...draft.rows.flatMap((_, i) => [`rows.${i}.at`, `rows.${i}.value`]));
	else paths.push(draft.kind === 'perMl' ? 'valuePerMl' : 'valuePerDrop', 'offset');
	return paths;
}

/** The draft with other text in the blank at a path. */
function withText(draft: KitDraft, path: string, text: string): KitDraft {
	const copy = structuredClone(draft);
	const parts = path.split('.');
	const last = parts.pop() ?? '';
	const holder = parts.reduce<unknown>(
		(inner, part) => (inner as Record<string, unknown>)[part],
		copy
	) as Record<string, string>;
	expect(holder).toHaveProperty([last]);
	holder[last] = text;
	return copy;
}

describe('a kit as blanks', () => {
	test.each(houseKits)('gives $name back, bottles and all', (kit) => {
		expect(kitOf(draftOfKit(kit), kit.id)).toStrictEqual(kit);
		expect(kitOf(draftOfKit(kit, ','), kit.id)).toStrictEqual(kit);
	});

	test('gives any kit back, with decimal points and with commas', () => {
		fc.assert(
			fc.property(anyKit, (kit) => {
				expect(KitSchema.parse(kit)).toEqual(kit);
				expect(kitOf(draftOfKit(kit), kit.id)).toEqual(kit);
				expect(kitOf(draftOfKit(kit, ','), kit.id)).toEqual(kit);
			}),
			{ numRuns: 300 }
		);
	});

	test('nothing typed is lost when a draft is stored half done', () => {
		const half: KitDraft = {
			...emptyDraft(),
			name: ' Half ',
			capacityMl: '1,',
			tipVolumeMl: 'about 0.2?',
			rows: [{ at: '1', value: '' }]
		};
		const stored: unknown = JSON.parse(JSON.stringify(half));
		expect(draftSchema.parse(stored)).toStrictEqual(half);
		expect(draftSchema.safeParse({ ...half, by: 'pipette' }).success).toBe(false);
	});

	test('blanks of a way that is not chosen keep what they hold and say nothing', () => {
		const draft: KitDraft = {
			...draftOfKit(houseKitOf('house-dropper')),
			capacityMl: 'x',
			tipVolumeMl: 'y',
			valuePerMl: 'z',
			rows: [{ at: 'q', value: 'q' }]
		};
		expect(problemsOf(draft)).toEqual({});
	});
});

describe('a blank that makes no sense', () => {
	test('is told at exactly its own path, whatever is typed there', () => {
		const rubbish = fc.constantFrom('x', '1.2.3', '1e3', '−', '1 000', '0,4,', '5 mL', '999999');
		fc.assert(
			fc.property(anyKit, fc.nat(), rubbish, (kit, pick, text) => {
				const draft = draftOfKit(kit);
				const paths = numberPaths(draft);
				const path = paths[pick % paths.length] ?? '';
				const problems = problemsOf(withText(draft, path, text));
				expect(Object.keys(problems)).toEqual([path]);
				expect(problems[path]).toContain(text);
			}),
			{ numRuns: 500 }
		);
	});

	test('all that are wrong are told at once', () => {
		const empty = problemsOf(emptyDraft());
		expect(Object.keys(empty).sort()).toEqual(
			[
				'capacityMl',
				'endColour',
				'graduationMl',
				'name',
				'reagents.0.amount',
				'rows',
				'scale',
				'startColour',
				'volumes.0.volumeMl'
			].sort()
		);
		for (const problem of Object.values(empty)) expect(problem).toMatch(/^[A-Z].{12,}\.$/);
	});
});

describe('blanks held against each other', () => {
	const syringe = draftOfKit(houseKitOf('house-syringe'));
	const dropper = draftOfKit(houseKitOf('house-dropper'));
	const withRow = (i: number, row: { at: string; value: string }): Partial<KitDraft> => ({
		rows: syringe.rows.map((each, k) => (k === i ? row : each))
	});
	const cases: [string, KitDraft, Partial<KitDraft>, string, string][] = [
		[
			'an end like the start',
			syringe,
			{ startColour: 'Green', endColour: ' green' },
			'endColour',
			'found green for both'
		],
		[
			'lines wider than the scale',
			syringe,
			{ graduationMl: '2' },
			'graduationMl',
			'half the capacity, 1 mL; found 2'
		],
		[
			'numerals beyond the scale',
			syringe,
			{ numeralEveryMl: '1,5' },
			'numeralEveryMl',
			'before the capacity, 1 mL; found 1,5'
		],
		[
			'a numeral between two lines',
			syringe,
			{ numeralEveryMl: '0.05' },
			'numeralEveryMl',
			'whole number of 0.02 mL; found 0.05'
		],
		['a barrel that ends early', syringe, { barrelEndMl: '0,9' }, 'barrelEndMl', 'full mark, 1 mL'],
		[
			'a tip larger than the syringe',
			syringe,
			{ tipVolumeMl: '1.7' },
			'tipVolumeMl',
			'less than the syringe, 1 mL; found 1.7'
		],
		['a scale nobody looked at', syringe, { scale: '' }, 'scale', 'choose'],
		[
			'a finer sample that is no larger',
			syringe,
			{ volumes: syringe.volumes.map((volume) => ({ ...volume, volumeMl: '6' })) },
			'volumes.1.volumeMl',
			'larger sample than 6 mL; found 6'
		],
		[
			'a table of one row',
			syringe,
			{ rows: syringe.rows.slice(0, 1) },
			'rows',
			'two rows at least'
		],
		[
			'a mark off the scale',
			syringe,
			withRow(0, { at: '1.2', value: '-0.4' }),
			'rows.0.at',
			'0 to 1 mL; found 1.2'
		],
		[
			'a mark in two rows',
			syringe,
			withRow(3, { at: '0,9', value: '4.5' }),
			'rows.3.at',
			'0.9 already'
		],
		[
			'a value out of its order',
			syringe,
			withRow(3, { at: '0.7', value: '45' }),
			'rows.3.value',
			'must grow'
		],
		['half a row', syringe, withRow(2, { at: '0.8', value: '' }), 'rows.2.value', 'Type the value'],
		[
			'a table read from the wrong end',
			syringe,
			{ scale: 'up' },
			'column',
			'falls as more titrant is used'
		],
		[
			'what is used taken for what is left',
			syringe,
			{ column: 'usedMl' },
			'column',
			'falls as more titrant is used'
		],
		['an absurd offset', dropper, { offset: '12' }, 'offset', '2 dKH at most; found 12'],
		['a dropper with a scale', dropper, { kind: 'perMl', valuePerMl: '14' }, 'kind', 'no scale'],
		[
			'a dropper with a table of marks',
			dropper,
			{
				kind: 'rows',
				column: 'mark',
				rows: [
					{ at: '0', value: '0' },
					{ at: '1', value: '9' }
				]
			},
			'column',
			'no scale'
		],
		['a claim too fine to be one', syringe, { statedAccuracy: '0' }, 'statedAccuracy', 'found 0'],
		[
			'half a drop of reagent',
			syringe,
			{ reagents: syringe.reagents.map((each) => ({ ...each, amount: '2,5' })) },
			'reagents.0.amount',
			'whole; found 2,5'
		]
	];
	test.each(cases)('%s', (_name, draft, change, path, message) => {
		const problems = problemsOf({ ...draft, ...change });
		expect(Object.keys(problems)).toEqual([path]);
		expect(problems[path]).toContain(message);
	});
});

describe('what an empty blank is taken for', () => {
	const silent: KitDraft = {
		...draftOfKit(houseKitOf('house-syringe')),
		barrelEndMl: '',
		dropMl: '',
		tipVolumeMl: '',
		numeralEveryMl: '',
		holdsSeconds: ' ',
		statedAccuracy: ''
	};

	it('stands in the suggestions with its reason before anything is kept', () => {
		const suggestions = suggestionsFor(silent);
		expect(suggestions.barrelEndMl).toMatchObject({ text: '1.1' });
		// Common practice, no source: a syringe's tip gives a smaller drop than a bottle.
		expect(suggestions.dropMl).toMatchObject({ text: '0.03' });
		expect(suggestionsFor({ ...silent, by: 'dropper' }).dropMl).toMatchObject({ text: '0.04' });
		for (const suggestion of Object.values(suggestions))
			expect(suggestion?.why).toMatch(/no source|leaflet|Named/);
	});

	it('is what the kit then has, and told with it', () => {
		const made = kitOfDraft(silent, { id: 'silent' });
		expect(made).toMatchObject({
			kit: {
				delivery: { barrelEndMl: 1.1, dropMl: 0.03, tipVolumeMl: null, numeralEveryMl: 0.1 },
				endPoint: { holdsSeconds: 25 }
			}
		});
		expect('taken' in made && Object.keys(made.taken).sort()).toEqual([
			'barrelEndMl',
			'dropMl',
			'holdsSeconds',
			'numeralEveryMl'
		]);
		expect('kit' in made && 'statedAccuracy' in made.kit).toBe(false);
	});

	it('a tip of which somebody says that it is not known is not known', () => {
		for (const tipVolumeMl of ['', '?', 'unknown', ' Not known'])
			expect(kitOfDraft({ ...silent, tipVolumeMl })).toMatchObject({
				kit: { delivery: { tipVolumeMl: null } }
			});
		expect(problemsOf({ ...silent, tipVolumeMl: 'small' })).toHaveProperty('tipVolumeMl');
	});

	it('a sample is named by its volume, however it was typed', () => {
		const { name: _name, ...volume } = { ...silent.volumes[0], id: 'normal', volumeMl: '4,0' };
		const made = kitOfDraft({ ...silent, volumes: [{ ...volume, name: '' }] });
		expect(made).toMatchObject({ kit: { sample: { volumes: [{ name: 'Normal, 4 mL' }] } } });
	});

	it('every suggestion is a number or name that the blank itself would take', () => {
		fc.assert(
			fc.property(anyKit, (kit) => {
				const draft = draftOfKit(kit);
				const suggestions = Object.entries(suggestionsFor(draft));
				for (const [path, suggestion] of suggestions)
					expect(problemsOf(withText(draft, path, suggestion?.text ?? ''))).not.toHaveProperty([
						path
					]);
			})
		);
	});
});

test('zeros that a leaflet prints are kept: 2,0 is known better than 2', () => {
	const table = (...values: string[]): KitDraft => ({
		...draftOfKit(houseKitOf('house-syringe')),
		column: 'usedMl',
		rows: values.map((value, i) => ({ at: String(i / 4), value }))
	});
	const decimalsOf = (draft: KitDraft) => {
		const made = kitOfDraft(draft);
		if (!('kit' in made) || made.kit.conversion.kind !== 'rows')
			throw new Error('a table expected');
		// Looked over again, nothing has changed.
		const again = kitOfDraft(draftOfKit(made.kit, ','));
		expect('kit' in again && again.kit.conversion).toEqual(made.kit.conversion);
		return made.kit.conversion.valueDecimals;
	};
	expect(decimalsOf(table('0,0', '4,0', '8,0'))).toBe(1);
	expect(decimalsOf(table('0', '4.00', '8'))).toBe(2);
	expect(decimalsOf(table('0', '4', '8'))).toBeUndefined();
	expect(decimalsOf(table('0.0', '4.1', '8.2'))).toBeUndefined();
});

test('a table of what is left makes a kit that counts what is left', () => {
	const draft: KitDraft = { ...draftOfKit(houseKitOf('house-syringe')), column: 'leftMl' };
	expect(kitOf(draft, 'left').delivery).toMatchObject({ counts: 'left' });
});

test('a new reagent has an id of its own, also after one was taken out', () => {
	const first = emptyReagent([]);
	const second = emptyReagent([first]);
	expect(emptyReagent([first, second]).id).not.toBe(second.id);
	expect(emptyReagent([second]).id).toBe(first.id);
});
