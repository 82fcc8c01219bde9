import { describe, expect, it } from 'vitest';
import type { Kit } from '$lib/kits';
import type { Marks, TestEvent, WalkEvent } from '$lib/observation';
import {
	fromOtherEnd,
	presentTitration,
	remarksOn,
	startTest,
	stepTest,
	testResult,
	type Remark,
	type TestLog,
	type TestState
} from '$lib/procedure';
import { buretteKit, dropperKit, syringeKit } from './house';
import { passed, TEN_PAST_SIX } from './tank';
import { titrated, type Different } from './titrated';

/**
 * Tests of water whose alkalinity is known, done on the practice bench by its own chemistry and
 * glass, and noted as real hands note them: what only the bench can know is left out.
 */
const TRUE_DKH = 8;

type Noted = {
	state: TestState;
	heard: Remark[];
	result: NonNullable<ReturnType<typeof testResult>>;
};

/** What hands may note of what the bench saw; null for what they do not. */
type Eye = (event: WalkEvent) => WalkEvent | null;

/** Without what stood there in truth, and without a value, which is computed here. */
const asTyped = (event: WalkEvent): WalkEvent => {
	if (event.type === 'marks.read') return { type: 'marks.read', marks: event.marks };
	if (event.type === 'value.reported') return { type: 'step.done', stepId: 'read' };
	return event;
};

function noted(kit: Kit, different: Different, eye: Eye): Noted {
	const { run } = titrated(kit, {
		...different,
		scenario: { truth: { water: { alkalinityDkh: TRUE_DKH } } }
	});
	const log: TestLog = {
		format: 1,
		id: 'bench',
		startedAtEpochMs: TEN_PAST_SIX,
		kit,
		kitVersion: 0,
		entries: []
	};
	let state = startTest(log);
	const heard: Remark[] = [];
	const add = (id: string, at: number, event: TestEvent) => {
		const next = stepTest(state, { id, at: TEN_PAST_SIX + at, event });
		// Deeds out of their step are no words of the walk.
		if (!next) return;
		state = next;
		const options = { at: state.at, expected: TRUE_DKH, circumstances: {} };
		heard.push(...remarksOn(presentTitration(state), options));
	};
	add('passed', 0, passed);
	const events = run.titrations[0]?.events ?? [];
	const lastDrawn = events.findLast(({ event }) => event.type === 'titrant.drawn')?.id;
	for (const { id, at, event } of events) {
		// A burette is filled above 0 and run down to it: hands note where it stands then.
		if (event.type === 'titrant.drawn' && id !== lastDrawn) continue;
		const said = eye(asTyped(event));
		if (said) add(id, at, { in: 'walk', titration: 0, event: said });
	}
	const result = testResult(state);
	if (!result) throw new Error(`no value at ${JSON.stringify(presentTitration(state).walk.value)}`);
	return { state, heard, result };
}

const everything: Eye = (event) => event;
/** The start of the seal, the end, and no drop. */
const uncounted: Eye = (event) =>
	event.type === 'titrant.fell' ? null : event.type === 'titrant.drawn' ? start(event) : event;
/** The end and nothing else. */
const onlyEnd: Eye = (event) =>
	event.type.startsWith('step.') || event.type === 'colour.stayed' || event.type === 'marks.read'
		? event
		: null;
const start = ({ sealMl, levelMl }: Extract<WalkEvent, { type: 'titrant.drawn' }>): WalkEvent => ({
	type: 'titrant.drawn',
	...(sealMl === undefined ? {} : { sealMl }),
	...(levelMl === undefined ? {} : { levelMl })
});
const warned = ({ heard }: Noted) => [
	...new Set(heard.filter(({ tone }) => tone === 'warn').map(({ id }) => id))
];
const costOf = ({ heard }: Noted, id: string) =>
	heard.findLast((remark) => remark.id === id)?.costValue ?? Number.NaN;

describe.each([
	['syringe', syringeKit],
	['dropper', dropperKit],
	['burette', buretteKit]
])('clean hands with the %s', (_name, kit) => {
	it.each([
		['everything', everything],
		['no drop', uncounted],
		['only the end', onlyEnd]
	])('note %s: no warning, and the ± holds the truth', (_what, eye) => {
		const done = noted(kit, {}, eye);
		expect(warned(done)).toEqual([]);
		expect(Math.abs(done.result.value - TRUE_DKH)).toBeLessThan(done.result.expandedUncertainty);
	});
});

describe('what a trap is said to cost is what the bench makes it cost', () => {
	const clean = noted(syringeKit, {}, everything).result.value;
	// Half a division at either end of both tests, and a drop more or less: mL at 16 dKH.
	const eyeDkh = (0.02 + 0.021) * 16;

	it('filled by the line: right when it was noted, low by the air between when it was not', () => {
		const plan = { fillBy: 'line' };
		const seen = noted(syringeKit, { plan }, everything);
		expect(warned(seen)).toEqual(['fill.byLine']);
		expect(Math.abs(seen.result.value - clean)).toBeLessThan(eyeDkh);
		const unseen = noted(syringeKit, { plan }, onlyEnd);
		expect(Math.abs(clean - unseen.result.value - costOf(seen, 'fill.byLine'))).toBeLessThan(
			eyeDkh
		);
		expect(clean - unseen.result.value).toBeGreaterThan(2);
	});

	it('filled and read by the line is right', () => {
		const done = noted(syringeKit, { plan: { fillBy: 'line', readBy: 'line' } }, everything);
		expect(Math.abs(done.result.value - clean)).toBeLessThan(eyeDkh);
	});

	it('the tip fitted after filling: high by its air', () => {
		const done = noted(syringeKit, { plan: { tipFitted: 'after' } }, everything);
		expect(warned(done)).toContain('fill.tipLate');
		const high = done.result.value - clean;
		expect(high).toBeGreaterThan(2);
		expect(Math.abs(high - costOf(done, 'fill.tipLate'))).toBeLessThan(eyeDkh);
		expect(done.result.isSuspect).toBe(true);
	});

	it('air drawn into the tip: high by its volume', () => {
		const done = noted(syringeKit, { plan: { airDrawnMl: 0.1 } }, everything);
		expect(warned(done)).toContain('fill.air');
		expect(Math.abs(done.result.value - clean - 0.1 * 16)).toBeLessThan(eyeDkh);
	});

	it('read from the other end of the scale: the drops tell, and that end is right', () => {
		const turned = (marks: Marks): Marks => ({
			sealMl: fromOtherEnd(syringeKit, marks.sealMl ?? 0)
		});
		// With the larger sample it ends far from the middle, where both ends would say the same.
		const done = noted(syringeKit, { plan: { volumeId: 'fine' }, typed: turned }, everything);
		const remark = done.heard.findLast(({ id }) => id === 'read.drops');
		expect(remark?.offers).toContain('readOtherEnd');
		const [read] = done.result.counted;
		const otherMl = 1 - (read?.usedMl ?? 0);
		const other = done.result.value + (otherMl - (read?.usedMl ?? 0)) * (read?.valuePerMl ?? 0);
		expect(Math.abs(other - TRUE_DKH)).toBeLessThan(done.result.expandedUncertainty);
	});
});
