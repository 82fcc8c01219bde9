import { afterEach, describe, expect, test, vi } from 'vitest';
import 'fake-indexeddb/auto';
import { ScenarioSchema, type Scenario } from '../../src/lib/bench';
import { debriefOf, decodeRun, encodeRun, replayRun, stepOf } from '../../src/lib/procedure';
import { openRecords, type RunRecords } from '../../src/lib/records';
import { freshRun, openFinished, openRun } from '../../src/routes/practise/open-run';
import type { PracticeRun } from '../../src/routes/practise/practice-run.svelte';

const scenarioOf = (more: Record<string, unknown> = {}): Scenario =>
	ScenarioSchema.parse({
		format: 1,
		id: 'made-up',
		kind: 'case',
		title: 'Made up',
		opening: 'A Sunday.',
		minutes: 10,
		kitId: 'house-syringe',
		truth: { water: { alkalinityDkh: 8.2 } },
		checks: [
			{ check: 'repeatFull', minutes: 12 },
			{ check: 'repeatQuick', minutes: 6 }
		],
		...more
	});

let names = 0;
const records = async () => (await openRecords(`test-${names++}`)).runs;
/** Storage is written behind the page's back: give it its turns. */
const settled = () => new Promise((done) => setTimeout(done, 60));

function skipTo(run: PracticeRun, kind: string): void {
	for (;;) {
		const step = stepOf(run.titration.walk.context);
		if (!step || step.kind === kind) return;
		if (step.kind === 'titrate') run.say({ type: 'colour.stayed' });
		run.say({ type: step.kind === 'titrate' ? 'step.done' : 'step.skipped', stepId: step.id });
	}
}
function readAndReport(run: PracticeRun): void {
	skipTo(run, 'read');
	const stepId = stepOf(run.titration.walk.context)!.id;
	run.say({ type: 'marks.read', marks: { sealMl: 0.42 } });
	run.say({ type: 'value.reported', value: 8.9, unit: 'dKH' });
	run.say({ type: 'step.done', stepId });
}

afterEach(() => vi.useRealTimers());

describe('a practice run', () => {
	test('is the replay of its log at every moment', async () => {
		const run = freshRun(scenarioOf(), await records());
		run.act({ type: 'sample.draw', toMl: 6 });
		run.act({ type: 'sample.pour' });
		readAndReport(run);
		expect(run.state.titrations[0]!.events).toEqual(
			replayRun(run.log, run.scenario).titrations[0]!.events
		);
		expect(run.state.refused).toBeNull();
	});
	test('a reading leads to the check, a check to a fresh bench, its end back to the check', async () => {
		const run = freshRun(scenarioOf(), await records());
		readAndReport(run);
		expect(run.state.inquiry.value).toBe('checking');
		run.check('repeatFull');
		expect(run.state.inquiry.value).toBe('testing');
		expect(run.titrationNumber).toBe(1);
		expect(run.titration.bench.contents).toBeNull();
		readAndReport(run);
		expect(run.state.inquiry.value).toBe('checking');
		run.check('repeatQuick');
		expect(run.state.inquiry.context.checks.map((each) => each.check)).toEqual([
			'repeatFull',
			'repeatQuick'
		]);
		run.conclude({ conclusion: 'stands', sure: 70 });
		expect(run.state.inquiry.value).toBe('concluded');
	});
	test('a drill without checks is over with its last step', async () => {
		const run = freshRun(scenarioOf({ kind: 'drill', checks: [], until: 'fill' }), await records());
		skipTo(run, 'none');
		expect(run.state.inquiry.value).toBe('concluded');
	});
	test('a check that is given up leaves the way back', async () => {
		const run = freshRun(scenarioOf(), await records());
		readAndReport(run);
		run.check('repeatFull');
		run.say({ type: 'walk.abandoned' });
		expect(run.state.inquiry.value).toBe('checking');
	});
	test('what does not belong is not written down', async () => {
		const run = freshRun(scenarioOf(), await records());
		run.say({ type: 'marks.read', marks: { sealMl: 0.4 } });
		run.act({ type: 'burette.fill', levelMl: 0 });
		expect(run.log.entries).toEqual([]);
	});
	test('undo takes back what was declared and leaves what was done', async () => {
		const run = freshRun(scenarioOf(), await records());
		skipTo(run, 'read');
		run.say({ type: 'marks.read', marks: { sealMl: 0.42 } });
		expect(run.titration.walk.matches({ reading: 'read' })).toBe(true);
		run.undo();
		expect(run.titration.walk.matches({ reading: 'unread' })).toBe(true);
	});
	test('the way of coaching is chosen before anything happens', async () => {
		const run = freshRun(scenarioOf(), await records());
		run.coaching = 'silent';
		expect(run.coaching).toBe('silent');
		run.act({ type: 'sample.draw', toMl: 1 });
		run.coaching = 'prompted';
		expect(run.coaching).toBe('silent');
	});
	test('a shared text is the same run again', async () => {
		const run = freshRun(scenarioOf(), await records());
		run.act({ type: 'sample.draw', toMl: 6 });
		run.act({ type: 'sample.pour' });
		readAndReport(run);
		const again = replayRun(decodeRun(encodeRun(run.log)), run.scenario);
		expect(again.titrations[0]!.bench).toEqual(run.state.titrations[0]!.bench);
		expect(again.inquiry.value).toEqual(run.state.inquiry.value);
	});
});

describe('what is kept', () => {
	async function left(store: RunRecords): Promise<PracticeRun> {
		const run = freshRun(scenarioOf(), store);
		run.act({ type: 'sample.draw', toMl: 6 });
		run.act({ type: 'sample.pour' });
		skipTo(run, 'titrate');
		run.act({ type: 'flow.give', size: 'drop' });
		await settled();
		return run;
	}
	test('a run that was left is found again as it was, at every step', async () => {
		const store = await records();
		const run = await left(store);
		const { run: again, came } = await openRun(scenarioOf(), store);
		expect(came).toBe('resumed');
		expect(again.log.entries).toEqual(run.log.entries);
		expect(again.state.titrations[0]!.bench).toEqual(run.state.titrations[0]!.bench);
		expect(again.titration.walk.value).toEqual(run.titration.walk.value);
	});
	test('it goes on: what is done after that is kept too', async () => {
		const store = await records();
		await left(store);
		const { run: again } = await openRun(scenarioOf(), store);
		again.act({ type: 'tip.touchOff' });
		await settled();
		const { run: third } = await openRun(scenarioOf(), store);
		expect(third.log.entries).toEqual(again.log.entries);
		expect(third.storage).toBe('kept');
	});
	test('a run that is over is not opened again', async () => {
		const store = await records();
		const run = await left(store);
		readAndReport(run);
		run.conclude({ conclusion: 'stands', sure: 50 });
		await settled();
		const opened = await openRun(scenarioOf(), store);
		expect(opened.came).toBe('fresh');
		const [header] = await store.list();
		expect(header!.state).toBe('finished');
		expect(opened.finished?.id).toBe(run.log.id);
		expect((await openRun(scenarioOf({ id: 'another' }), store)).finished).toBeNull();
	});
	test('the debrief of a run that is over is there again, as it was; of one that is not, none', async () => {
		const store = await records();
		const run = await left(store);
		expect(await openFinished(scenarioOf(), store, run.log.id)).toBeNull();
		readAndReport(run);
		run.conclude({ conclusion: 'stands', sure: 50 });
		await settled();
		const again = await openFinished(scenarioOf(), store, run.log.id);
		expect(again?.state.inquiry.value).toBe('concluded');
		expect(again && debriefOf(again.state)).toEqual(debriefOf(run.state));
		expect(await openFinished(scenarioOf({ id: 'another' }), store, run.log.id)).toBeNull();
	});
	test('what is kept under an id that a scenario had once is found under its new one', async () => {
		const store = await records();
		const run = freshRun(scenarioOf({ id: 'the-worked-example' }), store);
		run.act({ type: 'sample.draw', toMl: 6 });
		await settled();
		const opened = await openRun(scenarioOf({ id: 'late-september' }), store);
		expect(opened.came).toBe('resumed');
		expect(opened.run.log.entries).toEqual(run.log.entries);
	});
	test('two windows with one run: the second is told', async () => {
		const store = await records();
		await left(store);
		const { run: one } = await openRun(scenarioOf(), store);
		const { run: other } = await openRun(scenarioOf(), store);
		one.act({ type: 'tip.touchOff' });
		await settled();
		other.act({ type: 'tip.wipe' });
		await settled();
		expect(one.storage).toBe('kept');
		expect(other.storage).toBe('elsewhere');
	});
	test('where nothing can be kept it is said, and work goes on', async () => {
		const refusing: RunRecords = {
			isLasting: true,
			begin: () =>
				Promise.resolve({ kept: false, because: 'storage', why: 'full', detail: 'full' }),
			append: () =>
				Promise.resolve({ kept: false, because: 'storage', why: 'full', detail: 'full' }),
			appendAll: () =>
				Promise.resolve({ kept: false, because: 'storage', why: 'full', detail: 'full' }),
			load: () => Promise.resolve(null),
			list: () => Promise.resolve([]),
			unfinished: () => Promise.resolve([]),
			remove: () => Promise.resolve({ kept: true })
		};
		const run = freshRun(scenarioOf(), refusing);
		run.act({ type: 'sample.draw', toMl: 6 });
		await settled();
		expect(run.storage).toBe('memory');
		run.act({ type: 'sample.pour' });
		expect(run.titration.bench.contents).not.toBeNull();
	});
	test('a damaged log gives a fresh run and leaves the old one where it is', async () => {
		const store = await records();
		const header = {
			id: 'old',
			scenarioId: 'made-up',
			startedAtEpochMs: 1,
			changedAtEpochMs: 1,
			state: 'unfinished' as const,
			where: 'step 1',
			head: { format: 1, id: 'old' }
		};
		await store.begin(header);
		const { came } = await openRun(scenarioOf(), store);
		expect(came).toBe('damaged');
		expect(await store.load('old')).not.toBeNull();
	});
});

describe('time', () => {
	test('stands still while nobody looks', async () => {
		const run = freshRun(scenarioOf(), await records());
		run.watch(true);
		await new Promise((done) => setTimeout(done, 30));
		run.watch(false);
		const at = run.now();
		await new Promise((done) => setTimeout(done, 30));
		expect(run.now()).toBe(at);
		expect(at).toBeGreaterThan(0);
	});
});
