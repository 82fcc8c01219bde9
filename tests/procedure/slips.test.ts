import { describe, expect, it, test } from 'vitest';
import { SEAL_RIM_ML } from '../../src/lib/bench';
import { ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM } from '../../src/lib/glassware';
import { houseCalciumKit, houseHardnessKit, type Kit } from '../../src/lib/kits';
import { slipKinds, type SlipKind, type WalkEvent } from '../../src/lib/observation';
import { natureOf, slipsIn, stepsFor } from '../../src/lib/procedure';
import { madeUpScenario } from '../ui/played-run';
import { buretteKit, dropperKit, kindsIn, syringeKit, timeline } from './house';
import { titrated, type Different } from './titrated';

/** Kinds of slip in a whole titration at the bench. */
function atTheBench(kit: Kit, different: Different): string[] {
	const [titration] = titrated(kit, different).run.titrations;
	return kindsIn(kit, titration!.events, titration!.steps as never);
}

const done = (stepId: string): WalkEvent => ({ type: 'step.done', stepId });
const read = (marks: Extract<WalkEvent, { type: 'marks.read' }>['marks']): WalkEvent => ({
	type: 'marks.read',
	marks
});
const drop: WalkEvent = { type: 'titrant.fell', drops: 1 };
const drops = (n: number) => Array.from({ length: n }, () => drop);
const stayed: WalkEvent = { type: 'colour.stayed' };

/** Under this seed a drop hangs at the tip when it leaves the bottle. */
const HANGS = 2;

/** A slip as the bench sees it, and as hands at a tank might note it; null where hands cannot know. */
type Row = {
	kind: SlipKind;
	kit?: Kit;
	bench: Different;
	noted: WalkEvent[] | null;
	/** Other slips that follow from the same deed. */
	also?: SlipKind[];
};

const rows: Row[] = [
	{
		kind: 'wareNotRinsed',
		bench: { plan: { rinseSampler: 'purified' } },
		noted: [{ type: 'vial.rinsed', ware: 'sampler', with: 'tap' }, { type: 'sample.measured' }]
	},
	{
		kind: 'sampleOff',
		bench: { plan: { sampleOffMl: -0.3 } },
		noted: [{ type: 'sample.measured', volumeMl: 6, airMl: 0.2 }]
	},
	{
		kind: 'indicatorOff',
		bench: { plan: { extraIndicator: 1 } },
		noted: [{ type: 'reagent.added', reagentId: 'indicator', amount: 5 }, done('dose-indicator')]
	},
	{
		kind: 'phReagentOff',
		kit: houseCalciumKit,
		bench: { plan: { extraPhReagent: 1 } },
		noted: [{ type: 'reagent.added', reagentId: 'base', amount: 10 }, done('dose-base')]
	},
	{
		kind: 'waitOff',
		kit: houseCalciumKit,
		bench: { plan: { waitShare: 0.1 } },
		noted: [
			{ type: 'reagent.added', reagentId: 'base', amount: 14 },
			{ type: 'reagent.added', reagentId: 'indicator', amount: 2 },
			{ type: 'step.skipped', stepId: 'wait-base' }
		]
	},
	{
		kind: 'tipFittedLate',
		bench: { plan: { tipFitted: 'after' } },
		noted: [
			{ type: 'titrant.drawn', sealMl: 1 },
			{ type: 'tip.fitted', liquidInside: true }
		]
	},
	{
		kind: 'tipLoose',
		bench: { plan: { tipFitted: 'loose' } },
		// It drips on while the colour should be standing.
		also: ['stoppedAtFlash'],
		noted: [{ type: 'tip.fitted', firm: false }]
	},
	{
		kind: 'airExpelled',
		bench: { plan: { airDrawnMl: 0.06 } },
		noted: [{ type: 'titrant.drawn', tipAirMl: 0.05 }, drop]
	},
	{
		kind: 'hangingAtStart',
		bench: { plan: { wiped: false }, seed: HANGS },
		noted: [{ type: 'titrant.drawn', hangingMl: 0.01 }, drop]
	},
	{
		kind: 'mixedMarks',
		bench: { plan: { fillBy: 'line' } },
		noted: [{ type: 'titrant.drawn', lineMl: 1 }, ...drops(24), read({ sealMl: 0.5 })]
	},
	{
		kind: 'wrongRim',
		bench: { typed: ({ sealMl }) => ({ sealMl: sealMl! + SEAL_RIM_ML }) },
		noted: null
	},
	{
		kind: 'dropperTilted',
		kit: dropperKit,
		bench: { plan: { tiltDegrees: 40 } },
		noted: [{ type: 'titrant.fell', tiltDegrees: 45 }]
	},
	{
		kind: 'dropperSqueezed',
		kit: dropperKit,
		bench: { plan: { squeezedHard: true } },
		noted: [{ type: 'titrant.fell', squeezedHard: true }]
	},
	{
		kind: 'stoppedAtFlash',
		bench: { waitSeconds: 4 },
		noted: [drop, { type: 'colour.stayed', swirledSince: false }]
	},
	{
		kind: 'overshot',
		bench: {
			deeds: [
				{ type: 'flow.give', size: 'stream' },
				{ type: 'tip.touchOff' },
				{ type: 'swirl.start' },
				{ type: 'swirl.stop' }
			]
		},
		noted: [drop, { type: 'titrant.fell', drops: 3 }, stayed]
	},
	{
		kind: 'chasedColour',
		bench: {
			between: [
				{ type: 'colour.faded' },
				{ type: 'flow.give', size: 'drop' },
				{ type: 'swirl.start' },
				{ type: 'swirl.stop' }
			]
		},
		noted: [drop, { type: 'wait.over' }, stayed, { type: 'colour.faded' }, drop, stayed]
	},
	{
		kind: 'swirledOddly',
		// Every drop then falls into what the one before left unmixed.
		also: ['overshot'],
		bench: { plan: { swirlMs: 0 }, deeds: [{ type: 'swirl.start' }, { type: 'swirl.stop' }] },
		noted: [...drops(10), { type: 'vial.swirled', seconds: 2 }, stayed]
	},
	{
		kind: 'wrongLight',
		bench: { deeds: [{ type: 'lamp.set', lamp: 'blue' }] },
		noted: [drop, { type: 'colour.stayed', lamp: 'dim' }]
	},
	{
		kind: 'hangingAtEnd',
		bench: { deeds: [{ type: 'flow.give', size: 'half' }] },
		noted: [drop, { type: 'colour.stayed', hangingMl: 0.015 }]
	},
	{
		kind: 'dropsMiscounted',
		kit: dropperKit,
		bench: { typed: ({ drops }) => ({ drops: drops! + 2 }) },
		noted: null
	},
	{
		kind: 'misread',
		bench: { typed: ({ sealMl }) => ({ sealMl: sealMl! - 0.1 }) },
		// Ten drops are about 0.21 mL; a mark of 0.55 says 0.45, or 0.55 from the other end.
		noted: [...drops(10), read({ sealMl: 0.55 })]
	},
	{
		kind: 'parallax',
		bench: {
			deeds: [{ type: 'eye.move', degrees: 35 }],
			typed: ({ sealMl }) => ({
				sealMl:
					sealMl! +
					Math.tan((35 * Math.PI) / 180) * ONE_ML_SYRINGE_DEPTH_MM * ONE_ML_SYRINGE_ML_PER_MM
			})
		},
		noted: null
	},
	{
		kind: 'scaleReversed',
		bench: { scenario: { truth: { water: { alkalinityDkh: 6 } } }, plan: { scaleReversed: true } },
		// Thirty-one drops are about 0.65 mL, which leaves 0.35; the mark was written from the other end.
		noted: [...drops(31), read({ sealMl: 0.65 })]
	},
	{
		kind: 'refillForgotten',
		kit: houseHardnessKit,
		bench: { plan: { refillsForgotten: true } },
		// 0.61 mL of the second filling alone: 40 mmol/L a mL, less 1.99.
		noted: [
			{ type: 'titrant.drawn', sealMl: 1 },
			{ type: 'titrant.fell', drops: 48 },
			{ type: 'titrant.drawn', sealMl: 1, drawnAgainMl: 1 },
			{ type: 'titrant.fell', drops: 29 },
			read({ sealMl: 0.39 }),
			{ type: 'value.reported', value: 22.4, unit: 'mmol/L' }
		]
	},
	{
		kind: 'wrongRow',
		bench: { reported: (value) => value + 1 },
		noted: [read({ sealMl: 0.5 }), { type: 'value.reported', value: 9, unit: 'dKH' }]
	}
];

test('the table below has a row for every kind of slip', () => {
	expect(rows.map((row) => row.kind)).toEqual([...slipKinds]);
});

describe.each(rows)('$kind', ({ kind, kit = syringeKit, bench, noted, also = [] }) => {
	it('is found at the bench, which sees everything, and nothing else but what follows from it', () => {
		expect(atTheBench(kit, bench).sort()).toEqual([kind, ...also].sort());
	});

	if (noted)
		it('is found in what hands at a tank may note', () => {
			expect(kindsIn(kit, timeline(noted, 20))).toEqual([kind]);
		});
});

describe('clean work', () => {
	it.each([
		['syringe', syringeKit],
		['dropper', dropperKit],
		['burette', buretteKit],
		['calcium kit', houseCalciumKit],
		['magnesium kit', houseHardnessKit]
	])('with the %s shows no slip, whatever chance deals', (_name, kit) => {
		for (let seed = 1; seed <= 12; seed++) expect(atTheBench(kit, { seed })).toEqual([]);
	});

	it('of which nobody noted more than the mark and the value shows no slip', () => {
		const bare: WalkEvent[] = [
			read({ sealMl: 0.48 }),
			{ type: 'value.reported', value: 8, unit: 'dKH' }
		];
		expect(kindsIn(syringeKit, timeline(bare))).toEqual([]);
		expect(kindsIn(syringeKit, [])).toEqual([]);
	});

	it('noted with gaps shows no slip', () => {
		const gaps: WalkEvent[] = [
			{ type: 'vial.rinsed' },
			{ type: 'sample.measured' },
			{ type: 'reagent.added', reagentId: 'indicator' },
			done('dose-indicator'),
			{ type: 'vial.swirled' },
			{ type: 'titrant.drawn' },
			{ type: 'titrant.fell' },
			{ type: 'titrant.fell' },
			{ type: 'titrant.fell' },
			{ type: 'vial.swirled' },
			stayed,
			done('titrate'),
			read({ sealMl: 0.48 })
		];
		expect(kindsIn(syringeKit, timeline(gaps))).toEqual([]);
	});
});

describe('what was put right in time is no slip', () => {
	it.each<[string, WalkEvent[]]>([
		[
			'a tip put on late, then filled once more',
			[
				{ type: 'titrant.drawn', sealMl: 1 },
				{ type: 'tip.fitted', liquidInside: true },
				{ type: 'titrant.drawn', sealMl: 1 },
				drop
			]
		],
		[
			'a loose tip, seated before the first drop',
			[{ type: 'tip.fitted', firm: false }, { type: 'tip.fitted', firm: true }, drop]
		],
		[
			'a hanging drop that was wiped off',
			[{ type: 'titrant.drawn', hangingMl: 0.01 }, { type: 'tip.wiped' }, drop]
		],
		[
			'air in the tip, pushed out before the first drop',
			[{ type: 'titrant.drawn', tipAirMl: 0.05 }, { type: 'titrant.drawn', tipAirMl: 0 }, drop]
		],
		[
			'a sample beside its mark, poured away and measured again',
			[
				{ type: 'sample.measured', volumeMl: 5 },
				{ type: 'sample.measured', volumeMl: 6 }
			]
		],
		[
			'ware rinsed with tap water, then with the sample',
			[
				{ type: 'vial.rinsed', ware: 'sampler', with: 'tap' },
				{ type: 'vial.rinsed', ware: 'sampler', with: 'sample' },
				{ type: 'sample.measured' }
			]
		],
		[
			'an end declared at a flash, and taken up again when it faded',
			[
				drop,
				{ type: 'colour.stayed', secondsSinceDrop: 3, swirledSince: true },
				{ type: 'colour.faded' },
				drop,
				{ type: 'colour.stayed', secondsSinceDrop: 28, swirledSince: true }
			]
		],
		[
			'a drop that hung at the end, touched off after all',
			[drop, { type: 'colour.stayed', hangingMl: 0.01 }, { type: 'drop.touchedOff' }, stayed]
		]
	])('%s', (_what, events) => {
		expect(kindsIn(syringeKit, timeline(events, 20))).toEqual([]);
	});

	it('purified water left in a vial does no harm when the sample is measured in', () => {
		// Textbook: it dilutes acid and alkali alike and brings neither.
		expect(atTheBench(syringeKit, { plan: { rinseVial: 'purified' } })).toEqual([]);
		expect(atTheBench(syringeKit, { plan: { rinseVial: 'tap' } })).toEqual(['wareNotRinsed']);
		// Filled to a line, the vial's water takes the place of sample.
		expect(atTheBench(dropperKit, { plan: { rinseVial: 'purified' } })).toEqual(['wareNotRinsed']);
	});
});

describe('a filling on the way', () => {
	const slipsOf = (kit: Kit, different: Different) => {
		const [titration] = titrated(kit, different).run.titrations;
		return slipsIn(kit, titration!.steps, titration!.events);
	};
	const start: WalkEvent[] = [
		{ type: 'titrant.drawn', sealMl: 1 },
		{ type: 'titrant.fell', drops: 48 }
	];
	/** The line at the full mark, the seal a tip's volume beyond it. */
	const byLine: WalkEvent = {
		type: 'titrant.drawn',
		sealMl: 1.17,
		lineMl: 1,
		drawnAgainMl: 1.17
	};
	const counted = (value: number): WalkEvent[] => [
		{ type: 'titrant.fell', drops: 25 },
		read({ sealMl: 0.56 }),
		{ type: 'value.reported', value, unit: 'mmol/L' }
	];

	it('by the line is a trap at once, and a slip when the seal is counted from the full mark', () => {
		const slips = (events: WalkEvent[]) =>
			slipsIn(houseHardnessKit, stepsFor(madeUpScenario(), houseHardnessKit), timeline(events));
		expect(slips([...start, byLine])).toMatchObject([
			{ kind: 'mixedMarks', provisional: true, variant: 'refilledByLine' }
		]);
		// 1 + 0.44 mL by the full mark, 1.17 + 0.44 in truth; 40 mmol/L a mL less 1.99.
		const [slip, ...more] = slips([...start, byLine, ...counted(55.6)]);
		expect(slip).toMatchObject({ kind: 'mixedMarks', provisional: false });
		expect(slip?.sizeMl).toBeCloseTo(-0.17, 9);
		expect(more).toEqual([]);
		expect(slips([...start, byLine, ...counted(62.4)])).toEqual([]);
	});

	/** The seal past the full mark by two graduations. */
	const beside: WalkEvent = {
		type: 'titrant.drawn',
		sealMl: 1.04,
		lineMl: 0.87,
		drawnAgainMl: 1.04
	};

	it('beside the full mark is worth a word when it is used, and a slip when it is counted as full', () => {
		const slips = (events: WalkEvent[]) =>
			slipsIn(houseHardnessKit, stepsFor(madeUpScenario(), houseHardnessKit), timeline(events));
		// It may still be moving.
		expect(slips([...start, beside])).toEqual([]);
		expect(slips([...start, beside, { type: 'tip.wiped' }])).toMatchObject([
			{ kind: 'mixedMarks', provisional: true, variant: 'refilledBeside' }
		]);
		// 1 + 0.44 mL by the full mark, 1.04 + 0.44 in truth; 40 mmol/L a mL less 1.99.
		const [slip, ...more] = slips([...start, beside, ...counted(55.6)]);
		expect(slip).toMatchObject({
			kind: 'mixedMarks',
			provisional: false,
			variant: 'refilledBeside'
		});
		expect(slip?.sizeMl).toBeCloseTo(-0.04, 9);
		expect(more).toEqual([]);
		expect(slips([...start, beside, ...counted(57.2)])).toEqual([]);
		// Half a graduation is the eye's doing.
		const near: WalkEvent = { ...beside, sealMl: 1.01, drawnAgainMl: 1.01 };
		expect(slips([...start, near, ...counted(55.6)])).toEqual([]);
	});

	it('drawn in two goes is one', () => {
		const twoGoes: WalkEvent[] = [
			{ type: 'titrant.drawn', sealMl: 0.6, drawnAgainMl: 0.6 },
			{ type: 'titrant.drawn', sealMl: 1, drawnAgainMl: 0.4 }
		];
		const kinds = (value: number) =>
			kindsIn(houseHardnessKit, timeline([...start, ...twoGoes, ...counted(value)]));
		expect(kinds(55.6)).toEqual([]);
		expect(kinds(15.6)).toEqual(['refillForgotten']);
	});

	it('says how much was left out', () => {
		const [slip] = slipsOf(houseHardnessKit, { plan: { refillsForgotten: true } });
		expect(slip?.sizeMl).toBeCloseTo(-1, 6);
	});
});

it('stood a quarter of an hour longer than asked before the first drop', () => {
	const late: WalkEvent[] = [
		{ type: 'reagent.added', reagentId: 'base', amount: 14 },
		done('dose-base'),
		done('wait-base'),
		...Array.from({ length: 60 }, (): WalkEvent => ({ type: 'vial.swirled', seconds: 2 })),
		drop
	];
	const slips = (secondsApart: number) =>
		slipsIn(
			houseCalciumKit,
			stepsFor(madeUpScenario(), houseCalciumKit),
			timeline(late, secondsApart)
		).filter(({ kind }) => kind === 'waitOff');
	expect(slips(20)).toMatchObject([{ variant: 'long' }]);
	expect(slips(5)).toEqual([]);
});

describe('a slip says', () => {
	it('when it may be spoken of, by its kind', () => {
		for (const kind of slipKinds) expect(['handling', 'judgement']).toContain(natureOf[kind]);
		expect(natureOf.mixedMarks).toBe('handling');
		expect(natureOf.stoppedAtFlash).toBe('judgement');
	});

	it('at which entry it shows', () => {
		const [titration] = titrated(syringeKit, { plan: { fillBy: 'line' } }).run.titrations;
		const [slip] = slipsIn(syringeKit, titration!.steps, titration!.events);
		const entry = titration!.events.find(({ id }) => id === slip!.entryId);
		expect(entry?.event.type).toBe('marks.read');
	});
});

test('a drill asks for a part of the leaflet', () => {
	const drill = madeUpScenario({ kind: 'drill', from: 'fill', until: 'titrate' });
	expect(stepsFor(drill, syringeKit).map((step) => step.kind)).toEqual(['fill', 'titrate']);
	expect(stepsFor(madeUpScenario(), syringeKit)).toHaveLength(9);
});

describe('a filling on the way in several pulls', () => {
	const pull: WalkEvent = { type: 'titrant.drawn', before: { sealMl: 0 }, hangingMl: 0.01 };
	const found = (...more: WalkEvent[]) =>
		slipsIn(
			houseHardnessKit,
			stepsFor(madeUpScenario(), houseHardnessKit),
			timeline([{ type: 'titrant.drawn', sealMl: 1 }, drop, ...more])
		).flatMap(({ kind }) => (kind === 'hangingAtStart' ? [kind] : []));
	it('is one filling: a drop that hung at its end is one slip', () => {
		expect(found(pull, pull, pull, drop)).toEqual(['hangingAtStart']);
	});
	it('and none where it was wiped off after the last', () => {
		expect(found(pull, pull, pull, { type: 'tip.wiped' }, drop)).toEqual([]);
	});
	it('two with drops between them are two', () => {
		expect(found(pull, drop, pull, pull, drop)).toHaveLength(2);
	});
});
