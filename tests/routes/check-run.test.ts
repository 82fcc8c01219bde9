import 'fake-indexeddb/auto';
import { describe, expect, test, vi } from 'vitest';
import { houseHardnessKit, houseSyringeKit } from '$lib/kits';
import type { Evidence } from '$lib/observation';
import { openRecords } from '$lib/records';
import { CheckRun } from '../../src/routes/check/check-run.svelte';
import { Judging } from '../../src/routes/check/judging.svelte';
import { freshCheck, storedCheck, type OpenedCheck } from '../../src/routes/check/open-check';

const test_ = (id: string, from: 'first' | 'repeatFull', value: number): Evidence => ({
	kind: 'test',
	from,
	reading: { id, label: id, value, expandedUncertainty: 0.6, repeatabilitySd: 0.17, unit: 'dKH' }
});
const first = test_('a', 'first', 7.4);
const repeat = test_('b', 'repeatFull', 7.5);

async function begun() {
	let now = 1_700_000_000_000;
	const clock = () => (now += 1000);
	const records = await openRecords();
	const opened = await freshCheck(records, { kit: houseSyringeKit, version: 0 }, clock);
	const open = (each: OpenedCheck) =>
		new CheckRun(each, records.checks, () => 'dKH', clock, new Judging(() => null));
	const run = open({ ...opened, toGive: [{ evidence: first }] });
	// What is said in one turn shares one time; the next tap is another turn.
	await Promise.resolve();
	return { records, run, open };
}
const turn = () => Promise.resolve();
const ids = (run: CheckRun) =>
	run.state.evidence.map(({ evidence }) => ('reading' in evidence ? evidence.reading.id : ''));

describe('a check, wired', () => {
	test('undo takes back what one tap said, and a taking back, each once', async () => {
		const { run } = await begun();
		expect(run.canUndo).toBe(false);
		run.give(repeat);
		await turn();
		run.doubtUnit(true);
		await turn();
		run.takeBack(run.state.evidence[1]?.entryId ?? '');
		await turn();
		expect(ids(run)).toEqual(['a']);
		run.undo();
		await turn();
		expect(ids(run)).toEqual(['a', 'b']);
		expect(run.state.isUnitDoubted).toBe(true);
		run.undo();
		await turn();
		expect(run.state.isUnitDoubted).toBe(false);
		run.undo();
		await turn();
		expect(ids(run)).toEqual(['a']);
		expect(run.canUndo).toBe(false);
	});

	test('is loaded as it was left, and goes on from there', async () => {
		const { records, run, open } = await begun();
		run.give(repeat);
		run.leaveOut(['freshLot']);
		await turn();
		await run.kept.settled();
		const stored = await storedCheck(records, run.log.id);
		if (!stored) throw new Error('nothing was stored');
		const again = open(stored);
		expect(again.log).toEqual(run.log);
		expect(again.state).toEqual(run.state);
		expect(again.state.leftOut).toEqual(['freshLot']);
		expect(again.canUndo).toBe(true);
		const headers = await records.checks.unfinished();
		expect(headers.find(({ id }) => id === run.log.id)).toMatchObject({
			where: '2 things known',
			kitId: 'house-syringe'
		});
	});

	test('advises nothing between what is believed and what could be checked', async () => {
		const { run } = await begun();
		run.seeLivestock('well');
		run.give(repeat);
		await vi.waitFor(() => expect(run.diagnosis).not.toBeNull(), { interval: 1, timeout: 30_000 });
		expect(run.ranking).toBeNull();
		expect(run.decision).toBeNull();
		await vi.waitFor(() => expect(run.ranking).not.toBeNull(), { timeout: 30_000 });
		expect(run.decision).not.toBeNull();
	});

	test('answers without another thread: belief, next checks, and what each piece has to do with it', async () => {
		const { run } = await begun();
		run.give(repeat);
		expect(run.diagnosis).toBeNull();
		await vi.waitFor(() => expect(run.without).toHaveLength(1), { timeout: 30_000 });
		expect(run.isThinking).toBe(false);
		expect(run.diagnosis?.cumulative(-100)).toBeLessThan(0.01);
		expect(run.diagnosis?.cumulative(100)).toBeGreaterThan(0.99);
		const offered = run.ranking?.ranked.flatMap((each) =>
			each.kind === 'checks' ? each.checks : []
		);
		expect(offered).toContain('freshLot');
		// The practice bench alone offers a repeat that is done for one.
		expect(offered).not.toContain('repeatQuick');
		run.leaveOut(['freshLot']);
		await vi.waitFor(
			() =>
				expect(
					run.ranking?.ranked.some(
						(each) => each.kind === 'checks' && each.checks.includes('freshLot')
					)
				).toBe(false),
			{ timeout: 30_000 }
		);
		// A decision waits for the animals; an emergency for nothing.
		expect(run.decision).toBeNull();
		run.seeLivestock('well');
		expect(run.decision?.verdict).toBe('leave');
		run.seeEmergency(true);
		expect(run.decision?.verdict).toBe('emergency');
	});

	test('without a reading in question nothing is believed', async () => {
		const { run } = await begun();
		await vi.waitFor(() => expect(run.ranking).not.toBeNull(), { timeout: 30_000 });
		run.takeBack(run.state.evidence[0]?.entryId ?? '');
		await vi.waitFor(() => expect(run.diagnosis).toBeNull());
		expect(run.ranking).toBeNull();
		expect(run.isThinking).toBe(false);
	});
});

test('what was asked first is not answered after what was asked last', async () => {
	const said: { number: number }[] = [];
	const thread = {
		postMessage: (asked: { number: number }) => said.push(asked),
		terminate: () => undefined,
		onmessage: null as ((event: MessageEvent) => void) | null,
		onerror: null
	};
	const judging = new Judging(() => thread as never);
	const question = {
		evidence: [first],
		options: {},
		band: { low: 7, high: 9, unit: 'dKH' as const },
		livestock: 'notLooked' as const,
		leftOut: []
	};
	judging.ask(question);
	judging.ask(question);
	const [old, now] = said;
	thread.onmessage?.({ data: { number: old?.number, trouble: 'old' } } as MessageEvent);
	expect(judging.trouble).toBeNull();
	expect(judging.isThinking).toBe(true);
	thread.onmessage?.({
		data: { number: now?.number, trouble: 'reading.value is missing' }
	} as MessageEvent);
	expect(judging.trouble).toBe('Reading.value is missing.');
	expect(judging.isThinking).toBe(false);
});

describe('what the next test takes', () => {
	test('goes by what the water probably holds, once that is weighed', async () => {
		const kit = houseHardnessKit;
		const records = await openRecords();
		const clock = () => 1_700_000_000_000;
		const opened = await freshCheck(records, { kit, version: 0 }, clock);
		const reading = { id: 'a', label: 'a', value: 24, expandedUncertainty: 1.5 };
		const left: Evidence = {
			kind: 'test',
			from: 'first',
			reading: { ...reading, unit: 'mmol/L' }
		};
		const run = new CheckRun(
			{ ...opened, toGive: [{ evidence: left }] },
			records.checks,
			() => 'mmol/L',
			clock,
			new Judging(() => null)
		);
		// One filling left out: 24 was read where 64 is likely, and (64 + 1.99) / 40 mL is 1.65.
		await vi.waitFor(() => expect(run.ranking).not.toBeNull(), 20_000);
		expect(run.usedMl).toBeGreaterThan(1.55);
		expect(run.usedMl).toBeLessThan(1.75);
		run.leave();
	});
});
