import * as fc from 'fast-check';
import { houseSyringeKit, loadKitVersion, type Kit } from '../../src/lib/kits';
import type { CheckEvent, Evidence, TestEvent } from '../../src/lib/observation';
import {
	checkSummaryOf,
	loadCheckLog,
	loadRunLog,
	loadTestLog,
	replayCheck,
	type CheckEntry,
	type CheckLog,
	type TestEntry,
	type TestLog
} from '../../src/lib/procedure';
import type { CheckHeader, ImportReaders, KitRow, TestHeader, Whole } from '../../src/lib/records';

/** Made-up records: real forms, invented content. */
export function testLog(
	id: string,
	entries: readonly TestEntry[] = [],
	kit = houseSyringeKit
): TestLog {
	return { format: 1, id, startedAtEpochMs: 1000, kit, kitVersion: 0, entries: [...entries] };
}

export const fell = (id: string, at = 2000): TestEntry => ({
	id,
	at,
	event: { in: 'walk', titration: 0, event: { type: 'titrant.fell', drops: 1 } }
});
export const said = (
	id: string,
	type: 'test.closed' | 'test.removed' | 'circumstances.passed'
): TestEntry => ({
	id,
	at: 3000,
	event: (type === 'circumstances.passed'
		? { in: 'before', event: { type } }
		: { in: 'test', event: { type } }) as TestEvent
});

export function testHeader(id: string, more: Partial<TestHeader> = {}): Whole<TestHeader> {
	const { entries: _, ...head } = testLog(id);
	return {
		id,
		kitId: houseSyringeKit.id,
		analyte: 'alkalinity',
		startedAtEpochMs: 1000,
		changedAtEpochMs: 1000,
		state: 'kept',
		where: '',
		summary: null,
		...more,
		head
	};
}

export const summary = (value: number): TestHeader['summary'] => ({
	value,
	unit: 'dKH',
	standardUncertainty: 0.2,
	expandedUncertainty: 0.4,
	repeatabilitySd: 0.1,
	values: [value],
	sampleVolumeMl: 6,
	isSuspect: false
});

export function kitRow(
	kitId: string,
	version: number,
	name: string,
	savedAtEpochMs = 1
): KitRow & { format: 1 } {
	const kit: Kit = { ...houseSyringeKit, id: kitId, name };
	return { format: 1, kitId, version, savedAtEpochMs, kind: 'correction', kit };
}

export const readers: ImportReaders = {
	test: loadTestLog,
	check: loadCheckLog,
	run: loadRunLog,
	kit: loadKitVersion,
	summariseCheck: (log, verdict) => checkSummaryOf(replayCheck(loadCheckLog(log)), verdict)
};

/** Logs of few ids and few different entries, so that ids meet and beginnings are shared. */
export const someLogs = fc.array(
	fc
		.record({
			id: fc.constantFrom('a', 'b', 'c'),
			drops: fc.array(fc.constantFrom('x', 'y'), { maxLength: 4 })
		})
		.map(({ id, drops }) =>
			testLog(
				id,
				drops.map((drop, i) => fell(`${drop}${i}`))
			)
		),
	{ maxLength: 6 }
);

export function checkLog(
	id: string,
	entries: readonly CheckEntry[] = [],
	kit: Kit | null = houseSyringeKit
): CheckLog {
	return {
		format: 1,
		id,
		startedAtEpochMs: 1000,
		analyte: 'alkalinity',
		kit,
		kitVersion: kit && 0,
		entries: [...entries]
	};
}

export const told = (id: string, event: CheckEvent, at = 2000): CheckEntry => ({ id, at, event });
export const answered = (cue: string, answer: string): CheckEvent => ({
	type: 'evidence.given',
	evidence: { kind: 'cue', cue, answer }
});
export const readingInQuestion = (value: number): Evidence => ({
	kind: 'test',
	reading: { id: 'q', label: 'Your test', value, expandedUncertainty: 0.5, unit: 'dKH' },
	from: 'first'
});

export function checkHeader(id: string, more: Partial<CheckHeader> = {}): Whole<CheckHeader> {
	const { entries: _, ...head } = checkLog(id);
	return {
		id,
		kitId: houseSyringeKit.id,
		analyte: 'alkalinity',
		startedAtEpochMs: 1000,
		changedAtEpochMs: 1000,
		state: 'kept',
		where: '',
		summary: null,
		...more,
		head
	};
}
