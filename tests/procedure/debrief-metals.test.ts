import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
	cleanPlan,
	hueName,
	observe,
	parseScenario,
	type BenchAction,
	type BenchState,
	type Plan
} from '../../src/lib/bench';
import { valueFromMark } from '../../src/lib/kits';
import type { WalkEvent } from '../../src/lib/observation';
import { debriefOf, standingMarks, stepOf, type Debrief } from '../../src/lib/procedure';
import { PlayedRun } from '../ui/played-run';

const scenarioOf = (id: string) =>
	parseScenario(readFileSync(`scenarios/${id}.json`, 'utf8'), `${id}.json`);

/** The drill of base and spoons, by hands that count and wait as told. */
function dosed(drops: number, spoons: number, waitSeconds: number): Debrief {
	const run = new PlayedRun(scenarioOf('drops-of-base'));
	const act = (action: BenchAction, afterMs = 800) =>
		run.add(run.run.at + afterMs, { in: 'bench', titration: 0, action });
	const say = (event: WalkEvent) => run.add(run.run.at + 100, { in: 'walk', titration: 0, event });
	const here = () => stepOf(run.run.titrations[0]!.walk.context);
	const goOnTo = (isThere: (step: NonNullable<ReturnType<typeof here>>) => boolean) => {
		for (let step = here(); step && !isThere(step); step = here())
			say({ type: 'step.done', stepId: step.id });
	};
	const dose = (reagentId: string, times: number) => {
		goOnTo((step) => step.kind === 'dose' && step.reagentId === reagentId);
		for (let i = 0; i < times; i++) act({ type: 'reagent.dose', reagentId });
		goOnTo(({ kind }) => kind !== 'dose');
		act({ type: 'swirl.start' });
		act({ type: 'swirl.stop' }, 9000);
	};
	dose('base', drops);
	run.add(run.run.at + waitSeconds * 1000, {
		in: 'bench',
		titration: 0,
		action: { type: 'lamp.set', lamp: 'white' }
	});
	dose('indicator', spoons);
	goOnTo(() => false);
	return debriefOf(run.inquire({ type: 'drill.ended' }).run)!;
}
const movedOf = (debrief: Debrief, kind: string) =>
	debrief.slips.find(({ slip }) => slip.kind === kind)?.endMovedMl;

describe('a drill of calcium that ends before a value', () => {
	it('sends to the base that moved the end by more than a millilitre, not to the spoon that did not', () => {
		const debrief = dosed(8, 1, 0);
		expect(debrief.slips.map(({ slip }) => slip.kind).sort()).toEqual([
			'indicatorOff',
			'phReagentOff',
			'waitOff'
		]);
		expect(debrief.curve.endMl).toBeGreaterThan(2.5);
		expect(movedOf(debrief, 'phReagentOff')).toBeGreaterThan(1);
		expect(Math.abs(movedOf(debrief, 'indicatorOff')!)).toBeLessThan(0.05);
		expect(debrief.next).toMatchObject({
			slipKind: 'phReagentOff',
			train: { slip: 'phReagentOff', titration: 'edta' }
		});
		expect(debrief.next.text).toMatch(/count aloud/);
	});
	it('sends to the wait where one drop of base was short and nobody waited', () => {
		const debrief = dosed(13, 2, 0);
		expect(movedOf(debrief, 'waitOff')).toBeGreaterThan(
			Math.abs(movedOf(debrief, 'phReagentOff')!)
		);
		expect(debrief.next.slipKind).toBe('waitOff');
	});
	it('sends to the powder that was forgotten: without it there is no end to see', () => {
		const debrief = dosed(13, 0, 60);
		expect(movedOf(debrief, 'indicatorOff')).toBe(Infinity);
		expect(debrief.next.slipKind).toBe('indicatorOff');
		expect(debrief.next.text).toMatch(/nothing shows the end/);
	});
	it('tells both where nobody waited and no powder went in, the powder first', () => {
		const debrief = dosed(14, 0, 0);
		expect(debrief.slips.map(({ slip, name }) => [slip.kind, name]).sort()).toEqual([
			['indicatorOff', 'Indicator left out'],
			['waitOff', 'Went on before the wait was over']
		]);
		expect(debrief.next.slipKind).toBe('indicatorOff');
		// Who waited, and forgot the powder, has one slip.
		expect(dosed(14, 0, 60).slips.map(({ slip }) => slip.kind)).toEqual(['indicatorOff']);
	});
	it('of hands that counted and waited names no slip', () => {
		const debrief = dosed(14, 2, 60);
		expect(debrief.slips).toEqual([]);
		expect(debrief.next).toMatchObject({ train: null, slipKind: null });
	});
});

describe('the largest line of a ledger leads', () => {
	const played = (id: string, plan: Partial<Plan>) =>
		debriefOf(new PlayedRun(scenarioOf(id), 3).titrate({ ...cleanPlan, ...plan }).run)!;
	const lineOf = ({ ledger }: Debrief, id: string) => ledger?.lines.find((line) => line.id === id);

	it('a bottle that stood open comes before eyes that stopped a little short', () => {
		const debrief = played('a-quiet-thursday', { dropsPastEnd: -2 });
		expect(lineOf(debrief, 'baseStrength')?.amount).toBeGreaterThan(40);
		expect(lineOf(debrief, 'eye')).toMatchObject({ stop: 'early' });
		expect(lineOf(debrief, 'eye')!.amount).toBeLessThan(-5.7);
		expect(debrief.next).toEqual({
			text: 'Most of this was not your hands. A check against a known solution finds such a thing.',
			train: null,
			slipKind: null
		});
	});
	/** A drill from the first drop on, by hands that go on until `isOver`, a drop at a time. */
	function dripped(
		id: string,
		isOver: (bench: BenchState) => boolean,
		pace: { swirlMs: number; beforeMs: number; standsMs: number },
		more = 0
	): Debrief {
		const run = new PlayedRun(scenarioOf(id));
		const now = () => run.run.titrations[0]!;
		const act = (action: BenchAction, afterMs: number) =>
			run.add(run.run.at + afterMs, { in: 'bench', titration: 0, action });
		const say = (event: WalkEvent, afterMs = 500) =>
			run.add(run.run.at + afterMs, { in: 'walk', titration: 0, event });
		const drop = () => {
			act({ type: 'flow.give', size: 'drop' }, pace.beforeMs);
			act({ type: 'swirl.start' }, 900);
			act({ type: 'swirl.stop' }, pace.swirlMs);
		};
		while (!isOver(now().bench)) drop();
		for (let i = 0; i < more; i++) drop();
		say({ type: 'colour.stayed' }, pace.standsMs);
		say({ type: 'step.done', stepId: 'titrate' });
		const marks = standingMarks(now().bench);
		const sealMl = 'sealMl' in marks ? (marks.sealMl ?? Number.NaN) : Number.NaN;
		const { kit } = run.run;
		const half = kit.delivery.by === 'dropper' ? 1 : kit.delivery.graduationMl / 2;
		const markMl = Number((Math.round(sealMl / half) * half).toFixed(3));
		say({ type: 'marks.read', marks: { sealMl: markMl } });
		const { value } = valueFromMark(kit, { markMl });
		say({ type: 'value.reported', value: Number(value.toFixed(1)), unit: kit.unit });
		return debriefOf(run.run)!;
	}
	const nameIn = (bench: BenchState) => hueName(observe(bench, bench.at).vial.bulk);
	const isBlue = (bench: BenchState) => nameIn(bench) === 'blue';

	it('single drops in the cold that the dye cannot follow: too many of them, not a wait too short', () => {
		const hasty = { swirlMs: 500, beforeMs: 300, standsMs: 500 };
		const debrief = dripped('slow-in-the-cold', isBlue, hasty);
		expect(debrief.reading!.value - debrief.trueValue).toBeGreaterThan(15);
		const overshot = lineOf(debrief, 'slip-overshot');
		expect(overshot?.amount).toBeGreaterThan(15);
		expect(lineOf(debrief, 'slip-stoppedAtFlash')?.amount).toBe(0);
		expect(debrief.next).toMatchObject({
			slipKind: 'overshot',
			train: { slip: 'overshot', titration: 'edta' }
		});
		expect(debrief.next.text).toMatch(/^Slow down/);
	});
	it('slowly in the cold there is no such slip', () => {
		const slow = { swirlMs: 2000, beforeMs: 15_000, standsMs: 41_000 };
		const debrief = dripped('slow-in-the-cold', isBlue, slow);
		expect(debrief.slips).toEqual([]);
		expect(debrief.next.text).toMatch(/Only scatter/);
	});
	it('three drops past a blue, at once declared or not, lead to the same line and the same drill', () => {
		const pace = { swirlMs: 2000, beforeMs: 1500 };
		const atOnce = dripped('purple-or-blue', isBlue, { ...pace, standsMs: 500 }, 3);
		const stood = dripped('purple-or-blue', isBlue, { ...pace, standsMs: 41_000 }, 3);
		for (const debrief of [atOnce, stood]) {
			expect(lineOf(debrief, 'eye')).toMatchObject({ stop: 'late' });
			expect(lineOf(debrief, 'eye')!.amount).toBeGreaterThan(1.5);
			expect(debrief.next.text).toMatch(/had turned some drops before/);
		}
		expect(lineOf(atOnce, 'slip-stoppedAtFlash')?.amount).toBe(0);
		expect(lineOf(stood, 'slip-stoppedAtFlash')).toBeUndefined();
	});
	it('whoever stops at the first blue in words, and sees it stay, has found the end', () => {
		const pace = { swirlMs: 2000, beforeMs: 1500, standsMs: 41_000 };
		const debrief = dripped('purple-or-blue', isBlue, pace);
		expect(debrief.slips).toEqual([]);
		expect(lineOf(debrief, 'eye')).toBeUndefined();
		expect(debrief.next.text).toMatch(/Only scatter/);
		// The word beside the curve at the stop is the word at the vial.
		const { points, stoppedMl } = debrief.curve;
		const stop = points.find(({ addedMl }) => addedMl === stoppedMl);
		expect(stop && hueName(stop.rgb)).toBe('blue');
	});
	it('drops given on and on past the blue are a stop too late, and lead to the drill of seeing it', () => {
		const run = new PlayedRun(scenarioOf('purple-or-blue'));
		const now = () => run.run.titrations[0]!;
		const act = (action: BenchAction, afterMs = 1500) =>
			run.add(run.run.at + afterMs, { in: 'bench', titration: 0, action });
		const say = (event: WalkEvent, afterMs = 1500) =>
			run.add(run.run.at + afterMs, { in: 'walk', titration: 0, event });
		while (now().bench.inVialMl < 0.97) {
			act({ type: 'flow.give', size: 'drop' });
			act({ type: 'swirl.start' });
			act({ type: 'swirl.stop' }, 2000);
		}
		act({ type: 'tip.touchOff' });
		act({ type: 'swirl.start' });
		act({ type: 'swirl.stop' }, 2000);
		say({ type: 'colour.stayed' }, 45_000);
		say({ type: 'step.done', stepId: 'titrate' });
		const marks = standingMarks(now().bench);
		const sealMl = 'sealMl' in marks ? (marks.sealMl ?? Number.NaN) : Number.NaN;
		const { kit } = run.run;
		const markMl = Number((Math.round(sealMl / 0.01) * 0.01).toFixed(2));
		say({ type: 'marks.read', marks: { sealMl: markMl } });
		const { value } = valueFromMark(kit, { markMl });
		say({ type: 'value.reported', value: Number(value.toFixed(1)), unit: kit.unit });
		const debrief = debriefOf(run.run)!;
		expect(debrief.slips).toEqual([]);
		const { endMl, stoppedMl } = debrief.curve;
		const eye = lineOf(debrief, 'eye');
		expect(eye).toMatchObject({ kind: 'eye', stop: 'late' });
		// 40 mmol/L for each mL past the end; half a drop past it is in the leaflet's conversion.
		const lateMl = stoppedMl - endMl! - kit.delivery.dropMl / 2;
		expect(lateMl).toBeGreaterThan(0.1);
		expect(eye!.amount).toBeCloseTo(40 * lateMl, 1);
		expect(debrief.next).toMatchObject({ train: { slip: 'stoppedAtFlash', titration: 'edta' } });
		expect(debrief.next.text).toMatch(/had turned some drops before/);
	});
});

it('a second filling past the full mark that was counted as full is named, with what to do', () => {
	const run = new PlayedRun(scenarioOf('fill-again'));
	const now = () => run.run.titrations[0]!;
	const act = (action: BenchAction, afterMs = 1200) =>
		run.add(run.run.at + afterMs, { in: 'bench', titration: 0, action });
	const say = (event: WalkEvent, afterMs = 1200) =>
		run.add(run.run.at + afterMs, { in: 'walk', titration: 0, event });
	const standsAt = () => {
		const marks = standingMarks(now().bench);
		return 'sealMl' in marks ? (marks.sealMl ?? Number.NaN) : Number.NaN;
	};
	const isBlue = () => hueName(observe(now().bench, now().bench.at).vial.bulk) === 'blue';
	const fill = (sealMl: number) => {
		act({ type: 'titrant.draw', sealMl, end: 'inTitrant' });
		act({ type: 'tip.wipe' });
	};
	act({ type: 'tip.fit', firm: true });
	fill(1);
	say({ type: 'step.done', stepId: 'fill' });
	for (let drop = 0; drop < 120 && !isBlue(); drop++) {
		if (standsAt() < 1e-6) {
			act({ type: 'tip.touchOff' });
			fill(1.04);
		}
		act({ type: 'flow.give', size: 'drop' });
		act({ type: 'swirl.start' });
		act({ type: 'swirl.stop' }, 2000);
	}
	act({ type: 'tip.touchOff' });
	act({ type: 'swirl.start' });
	act({ type: 'swirl.stop' }, 2000);
	say({ type: 'colour.stayed' }, 41_000);
	say({ type: 'step.done', stepId: 'titrate' });
	const markMl = Number((Math.round(standsAt() / 0.01) * 0.01).toFixed(2));
	say({ type: 'marks.read', marks: { sealMl: markMl } });
	const { kit } = run.run;
	const { value } = valueFromMark(kit, { markMl, refilledMl: 1 });
	say({ type: 'value.reported', value: Number(value.toFixed(1)), unit: kit.unit });
	const debrief = debriefOf(run.run)!;
	const amountOf = (id: string) => debrief.ledger!.lines.find((line) => line.id === id)?.amount;
	expect(debrief.slips.map(({ name }) => name)).toEqual(['Filled again beside the full mark']);
	// 0.04 mL at 40 mmol/L for each mL.
	expect(amountOf('slip-mixedMarks')).toBeCloseTo(-1.6, 1);
	expect(Math.abs(amountOf('unnamed')!)).toBeLessThan(0.1);
	expect(debrief.next).toMatchObject({
		slipKind: 'mixedMarks',
		train: { slip: 'mixedMarks', titration: 'edta' }
	});
	expect(debrief.next.text).toMatch(/full mark at every filling/);
});
