import { houseSyringeKit, type Kit, type StepKind } from '../../src/lib/kits';
import {
	liveEntries,
	type Circumstances,
	type Marks,
	type TakenOff,
	type TestEvent,
	type ThingInCommon,
	type TitrationPurpose,
	type WalkEvent
} from '../../src/lib/observation';
import {
	presentTitration,
	replayTest,
	startFillingOf,
	startTest,
	stepOf,
	stepTest,
	withAmendment,
	withMarks,
	withUndo,
	type TankTitration,
	type TestLog,
	testResult,
	type TestResult,
	type TestState,
	valuesOf
} from '../../src/lib/procedure';
import type { TankRun, TankStorage } from '../../src/lib/ui/test/run';

type About = Partial<{
	kit: Kit;
	expected: number | null;
	result: TestResult | null;
	storage: TankStorage;
	/** ms since 1970. */
	startedAt: number;
}>;

/** A test beside the tank for tests of its screens: in memory, on a clock that stands until moved. */
export class PlayedTank implements TankRun {
	log: TestLog = $state.raw() as TestLog;
	state: TestState = $state.raw() as TestState;
	storage: TankStorage = $state('kept');
	#result: TestResult | null | undefined = $state.raw();
	readonly expected: number | null;
	/** Where this is given it is asked the time, in place of the standing clock. */
	clock: (() => number) | null = null;
	#at: number;
	#count = 0;

	constructor(about: About = {}) {
		const { kit = houseSyringeKit, startedAt = Date.UTC(2024, 2, 3, 19, 30) } = about;
		this.log = {
			format: 1,
			id: 'played',
			startedAtEpochMs: startedAt,
			kit,
			kitVersion: 0,
			entries: []
		};
		this.state = startTest(this.log);
		this.expected = about.expected ?? null;
		this.#result = about.result;
		this.storage = about.storage ?? 'kept';
		this.#at = startedAt;
	}

	get kit(): Kit {
		return this.log.kit;
	}
	get titration(): TankTitration {
		return presentTitration(this.state);
	}
	get values() {
		return valuesOf(this.state);
	}
	/** What was given, or else what the titrations come to. */
	get result(): TestResult | null {
		return this.#result === undefined ? testResult(this.state) : this.#result;
	}
	set result(result: TestResult | null) {
		this.#result = result;
	}
	get canUndo(): boolean {
		return this.#said().length > 0;
	}
	#said() {
		return liveEntries(this.log.entries).filter(
			({ event }) => !(event.in === 'before' && event.event.type === 'circumstances.noted')
		);
	}

	now(): number {
		return this.clock?.() ?? this.#at;
	}
	/** Moves the standing clock on. */
	wait(seconds: number): this {
		this.#at += seconds * 1000;
		this.#turn = null;
		return this;
	}

	/** What is said in one turn has one time, later than all before; it is taken back together. */
	#turn: number | null = null;
	#turnAt(): number {
		if (this.#turn === null) {
			this.#turn = Math.max(Math.floor(this.now()), (this.log.entries.at(-1)?.at ?? 0) + 1);
			queueMicrotask(() => (this.#turn = null));
		}
		return this.#turn;
	}
	#newId = () => `e${this.#count++}`;
	#add(event: TestEvent): boolean {
		const entry = { id: this.#newId(), at: this.#turnAt(), event };
		const next = stepTest(this.state, entry);
		if (!next) return false;
		this.state = next;
		this.log = { ...this.log, entries: [...this.log.entries, entry] };
		return true;
	}
	#replay(log: TestLog): void {
		this.log = log;
		this.state = replayTest(log);
	}

	say(event: WalkEvent): boolean {
		return this.#add({ in: 'walk', titration: this.titration.number, event });
	}
	noteCircumstances(circumstances: Circumstances): void {
		this.#add({ in: 'before', event: { type: 'circumstances.noted', circumstances } });
	}
	passCircumstances(): void {
		this.#add({ in: 'before', event: { type: 'circumstances.passed' } });
	}
	begin(purpose: Exclude<TitrationPurpose, 'first'>, by?: string): void {
		const titration = this.state.titrations.length;
		const who = by === undefined ? {} : { by };
		this.#add({ in: 'test', event: { type: 'titration.begun', titration, purpose, ...who } });
	}
	beginAgain(): void {
		this.say({ type: 'walk.abandoned' });
		this.begin('freshSample');
	}
	setAside(titration: number, because: string): void {
		this.#add({ in: 'test', event: { type: 'titration.setAside', titration, because } });
	}
	countAgain(titration: number): void {
		const aside = liveEntries(this.log.entries).findLast(
			({ event }) =>
				event.in === 'test' &&
				event.event.type === 'titration.setAside' &&
				event.event.titration === titration
		);
		if (aside) this.#replay(withUndo(this.log, this.#undoOf(aside.id)));
	}
	amendMarks(titration: number, marks: Marks): void {
		const read = liveEntries(this.log.entries).findLast(
			({ event }) =>
				event.in === 'walk' && event.titration === titration && event.event.type === 'marks.read'
		);
		if (!read) return;
		const event: TestEvent = { in: 'walk', titration, event: { type: 'marks.read', marks } };
		const id = this.#newId();
		this.#replay(withAmendment(this.log, { id, at: this.#turnAt(), amends: read.id, event }));
	}
	amendFilling(titration: number, marks: Marks): void {
		const start = startFillingOf(this.state.titrations[titration]?.events ?? []);
		if (!start) return;
		const event: TestEvent = { in: 'walk', titration, event: withMarks(start.event, marks) };
		const id = this.#newId();
		this.#replay(withAmendment(this.log, { id, at: this.#turnAt(), amends: start.id, event }));
	}
	noteOtherReading(titration: number, by: string, marks: Marks): void {
		this.#add({ in: 'test', event: { type: 'marks.readByOther', titration, by, marks } });
	}
	takeOff(less: TakenOff, inCommon: readonly ThingInCommon[]): void {
		const event = { type: 'difference.taken' as const, less, inCommon: [...inCommon] };
		this.#add({ in: 'test', event });
	}
	takeBackDifference(): void {
		const taken = liveEntries(this.log.entries).findLast(
			({ event }) => event.in === 'test' && event.event.type === 'difference.taken'
		);
		if (taken) this.#replay(withUndo(this.log, this.#undoOf(taken.id)));
	}
	writeNote(text: string): void {
		this.#add({ in: 'test', event: { type: 'note.written', text } });
	}
	close(): void {
		this.#add({ in: 'test', event: { type: 'test.closed' } });
	}
	undo(): void {
		const said = this.#said();
		const together = said.filter(({ at }) => at === said.at(-1)?.at);
		let log = this.log;
		for (const { id } of together.reverse()) log = withUndo(log, this.#undoOf(id));
		this.#replay(log);
	}
	#undoOf = (undoes: string) => ({ id: this.#newId(), at: this.#turnAt(), undoes });

	/** Walks on to the next step of a kind, each step on the way said to be done. */
	goOnTo(kind: StepKind): this {
		if (this.state.phase === 'before') this.passCircumstances();
		for (;;) {
			const step = stepOf(this.titration.walk.context);
			if (!step) throw new Error(`no step of kind ${kind} ahead`);
			if (step.kind === kind) return this;
			this.wait(5).#finish(step.id, step.kind);
		}
	}
	/** Walks the present titration to its end, with these marks. */
	walkThrough(marks: Marks): this {
		this.goOnTo('read').wait(10);
		this.say({ type: 'marks.read', marks });
		this.say({ type: 'step.done', stepId: 'read' });
		return this;
	}
	#finish(stepId: string, kind: StepKind): void {
		if (kind === 'titrate') this.wait(30).say({ type: 'colour.stayed', secondsSinceDrop: 30 });
		if (!this.say({ type: 'step.done', stepId })) throw new Error(`${stepId} was not taken`);
	}
}
