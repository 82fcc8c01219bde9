import type { Kit } from '$lib/kits';
import type { OwnRepeatability } from '$lib/metrology';
import {
	liveEntries,
	type Circumstances,
	type Marks,
	type TakenOff,
	type TestEvent,
	type ThingInCommon,
	type TitrationPurpose,
	type WalkEvent
} from '$lib/observation';
import {
	presentTitration,
	replayTest,
	startFillingOf,
	stepTest,
	summaryOf,
	testResult,
	valuesOf,
	withAmendment,
	withMarks,
	withUndo,
	type TankTitration,
	type TestEntry,
	type TestLog,
	type TestState
} from '$lib/procedure';
import type { TestHeader, TestRecords, Whole } from '$lib/records';
import type { TankRun as TankRunProps } from '$lib/ui/test/run';
import { KeptLog } from '../kept-log.svelte';
import { whereOf } from './where';

/** What is known from before the test: of the same kit, in the kit's unit. */
export type Known = {
	/** Value of the last test. */
	expected: number | null;
	/** The person's own scatter, given who tests and how much water is taken. */
	ownFor(now: { tester?: string; sampleVolumeMl: number }): OwnRepeatability | null;
};

/**
 * One test beside the tank, wired together: the log is the truth, the state is its replay, and each
 * entry goes to the records as it is made. No rule of the trade stands here.
 */
export class TankRun implements TankRunProps {
	log: TestLog = $state.raw() as TestLog;
	state: TestState = $state.raw() as TestState;
	readonly kept: KeptLog<TestHeader>;

	constructor(
		log: TestLog,
		records: TestRecords,
		private readonly known: Known,
		private readonly clock: () => number,
		/** The header it is stored under; null for a test of which nothing is stored yet. */
		private readonly stored: TestHeader | null
	) {
		this.kept = new KeptLog(records, stored !== null);
		this.log = log;
		this.state = replayTest(log);
		// What did not belong is taken back, so that the test can go on from the last sound moment.
		const { refused } = this.state;
		if (refused) this.#undoFrom(refused.id);
	}

	get storage() {
		return this.kept.storage;
	}
	get kit(): Kit {
		return this.log.kit;
	}
	get titration(): TankTitration {
		return presentTitration(this.state);
	}
	get expected(): number | null {
		return this.known.expected;
	}
	readonly values = $derived.by(() => valuesOf(this.state));
	readonly result = $derived.by(() => {
		const sampleVolumeMl = this.values.find((each) => each.value !== null)?.sampleVolumeMl;
		const { tester } = this.state.circumstances;
		const own = sampleVolumeMl === undefined ? null : this.known.ownFor({ tester, sampleVolumeMl });
		return testResult(this.state, { own });
	});

	now(): number {
		return this.clock();
	}

	say(event: WalkEvent): boolean {
		return this.#append({ in: 'walk', titration: this.titration.number, event });
	}
	noteCircumstances(circumstances: Circumstances): void {
		this.#append({ in: 'before', event: { type: 'circumstances.noted', circumstances } });
	}
	passCircumstances(): void {
		this.#append({ in: 'before', event: { type: 'circumstances.passed' } });
	}
	begin(purpose: Exclude<TitrationPurpose, 'first'>, by?: string): void {
		const titration = this.state.titrations.length;
		this.#append({
			in: 'test',
			event: { type: 'titration.begun', titration, purpose, ...(by ? { by } : {}) }
		});
	}
	beginAgain(): void {
		const { by, purpose } = this.titration;
		this.say({ type: 'walk.abandoned' });
		// Somebody else stays somebody else, who must not see what the first found.
		this.begin(purpose === 'otherPerson' ? purpose : 'freshSample', by ?? undefined);
	}
	setAside(titration: number, because: string): void {
		this.#append({ in: 'test', event: { type: 'titration.setAside', titration, because } });
	}
	countAgain(titration: number): void {
		const entry = this.#live().findLast(
			({ event }) =>
				event.in === 'test' &&
				event.event.type === 'titration.setAside' &&
				event.event.titration === titration
		);
		if (entry) this.#undo([entry]);
	}
	amendMarks(titration: number, marks: Marks): void {
		const read = this.#live().findLast(
			({ event }) =>
				event.in === 'walk' && event.titration === titration && event.event.type === 'marks.read'
		);
		if (read) this.amend(read.id, { type: 'marks.read', marks });
	}
	amendFilling(titration: number, marks: Marks): void {
		const start = startFillingOf(this.state.titrations[titration]?.events ?? []);
		if (start) this.amend(start.id, withMarks(start.event, marks));
	}
	/** Puts another event in the place of one of a walk; the old one stays in the log. */
	amend(entryId: string, event: WalkEvent): void {
		const amended = this.#live().find(({ id }) => id === entryId);
		if (amended?.event.in !== 'walk') return;
		const entry = {
			id: this.#newId(),
			at: this.#at(),
			amends: entryId,
			event: { ...amended.event, event }
		};
		this.#rewritten(withAmendment(this.log, entry));
	}
	noteOtherReading(titration: number, by: string, marks: Marks): void {
		this.#append({ in: 'test', event: { type: 'marks.readByOther', titration, by, marks } });
	}
	takeOff(less: TakenOff, inCommon: readonly ThingInCommon[]): void {
		const event = { type: 'difference.taken' as const, less, inCommon: [...inCommon] };
		this.#append({ in: 'test', event });
	}
	takeBackDifference(): void {
		const entry = this.#live().findLast(
			({ event }) => event.in === 'test' && event.event.type === 'difference.taken'
		);
		if (entry) this.#undo([entry]);
	}
	writeNote(text: string): void {
		this.#append({ in: 'test', event: { type: 'note.written', text } });
	}
	close(): void {
		this.#append({ in: 'test', event: { type: 'test.closed' } });
	}
	remove(): void {
		this.#append({ in: 'test', event: { type: 'test.removed' } });
	}
	restore(): void {
		const removed = this.#live().findLast(
			({ event }) => event.in === 'test' && event.event.type === 'test.removed'
		);
		if (removed) this.#undo([removed]);
	}

	get canUndo(): boolean {
		return this.#lastSaid().length > 0;
	}
	undo(): void {
		this.#undo(this.#lastSaid());
	}

	/** All that one tap said: it shares one time. What was noted of the water stays as it is. */
	#lastSaid() {
		const said = this.#live().filter(
			({ event }) => !(event.in === 'before' && event.event.type === 'circumstances.noted')
		);
		const last = said.at(-1);
		return said.filter(({ at }) => at === last?.at);
	}
	#live() {
		return liveEntries(this.log.entries);
	}

	/** One time for all that is said in one turn, later than all before, whatever the clock does. */
	#turn: number | null = null;
	#at(): number {
		if (this.#turn === null) {
			const last = this.log.entries.at(-1)?.at ?? this.log.startedAtEpochMs;
			this.#turn = Math.max(Math.floor(this.clock()), last + 1);
			queueMicrotask(() => (this.#turn = null));
		}
		return this.#turn;
	}
	#counter = 0;
	#newId(): string {
		return `${this.log.entries.length.toString(36)}-${(this.#counter++).toString(36)}`;
	}

	/** What was before each entry said here in a row: taking back the last needs no playing anew. */
	#past: { id: string; before: TestState }[] = [];

	#append(event: TestEvent): boolean {
		const entry = { id: this.#newId(), at: this.#at(), event };
		const next = stepTest(this.state, entry);
		if (!next) return false;
		this.#past.push({ id: entry.id, before: this.state });
		this.state = next;
		this.log = { ...this.log, entries: [...this.log.entries, entry] };
		this.#write([entry]);
		return true;
	}
	#undoFrom(entryId: string): void {
		const live = this.#live();
		this.#undo(live.slice(live.findIndex(({ id }) => id === entryId)));
	}
	#undo(entries: readonly { id: string }[]): void {
		let log = this.log;
		for (const { id } of [...entries].reverse())
			log = withUndo(log, { id: this.#newId(), at: this.#at(), undoes: id });
		if (entries.length > 0) this.#rewritten(log, this.#before(entries));
	}
	/** The test as it was before these entries, if they are the last that were said here. */
	#before(entries: readonly { id: string }[]): TestState | null {
		const last = this.#past.splice(-entries.length);
		const areTheLast =
			last.length === entries.length && last.every(({ id }, i) => id === entries[i]?.id);
		return areTheLast ? (last[0]?.before ?? null) : null;
	}
	/** The log has grown by entries that speak of earlier ones: it is played anew, unless the outcome is known. */
	#rewritten(log: TestLog, known: TestState | null = null): void {
		const added = log.entries.slice(this.log.entries.length);
		this.log = log;
		if (!known) this.#past = [];
		this.state = known ?? replayTest(log);
		this.#write(added);
	}
	#write(entries: readonly TestEntry[]): void {
		this.kept.write(entries, this.log.entries.length - entries.length, this.#header());
	}
	#header(): Whole<TestHeader> {
		const { entries: _entries, ...head } = this.log;
		const { isRemoved, phase } = this.state;
		const isValued = phase === 'result' || phase === 'closed';
		return {
			id: head.id,
			kitId: head.kit.id,
			analyte: head.kit.analyte,
			startedAtEpochMs: head.startedAtEpochMs,
			changedAtEpochMs: this.now(),
			state: isRemoved ? 'removed' : isValued ? 'kept' : 'unfinished',
			where: whereOf(this.state),
			summary: isValued && this.result ? summaryOf(this.state, this.result) : null,
			...(this.stored?.origin ? { origin: this.stored.origin } : {}),
			head
		};
	}
}
