import type { BenchAction, Scenario } from '$lib/bench';
import type { Kit } from '$lib/kits';
import {
	isBenchCheck,
	type Conclusion,
	type PracticeCheckId,
	type WalkEvent
} from '$lib/observation';
import {
	lastDeclaration,
	replayRun,
	setAside,
	startRun,
	stepRun,
	takeBack,
	whatFollows,
	wouldTake,
	type CoachingWay,
	type InquiryEvent,
	type RunEvent,
	type RunLog,
	type RunState,
	type TitrationRun
} from '$lib/procedure';
import type { RunHeader, RunRecords, Whole } from '$lib/records';
import { placeOf } from '$lib/ui/bench';
import { BenchClock } from '$lib/ui/state';
import { KeptLog, type Storage } from '../kept-log.svelte';

/**
 * One practice run, wired together: the log is the truth, the state is its replay, the clock stands
 * still while nobody looks, and each entry goes to the records as it is made. No rule of the trade
 * stands here.
 */
export class PracticeRun {
	log: RunLog = $state.raw() as RunLog;
	state: RunState = $state.raw() as RunState;
	readonly kit: Kit;
	readonly #clock: BenchClock;
	readonly #kept: KeptLog<RunHeader>;

	constructor(
		log: RunLog,
		readonly scenario: Scenario,
		records: RunRecords,
		isStored: boolean
	) {
		this.kit = log.kit;
		this.log = log;
		this.state = replayRun(log, scenario);
		this.#kept = new KeptLog(records, isStored);
		this.#clock = new BenchClock(this.state.at, () => performance.now());
		const { refused } = this.state;
		if (refused) {
			const before = log.entries.length;
			this.log = setAside(log, refused.id, this.state.at, () => this.#newId());
			this.#storeFrom(before);
			this.state = replayRun(this.log, scenario);
		}
	}

	get storage(): Storage {
		return this.#kept.storage;
	}
	get titrationNumber(): number {
		return this.state.titrations.length - 1;
	}
	/** The titration on the bench now: the latest that was begun. */
	get titration(): TitrationRun {
		return this.state.titrations[this.titrationNumber] ?? startRunsFirst(this.log, this.scenario);
	}
	get coaching(): CoachingWay {
		return this.log.coaching;
	}
	/** Only while nothing has happened: a run is of one way of coaching. */
	set coaching(coaching: CoachingWay) {
		if (this.log.entries.length === 0) this.log = { ...this.log, coaching };
	}
	get isUntouched(): boolean {
		return this.log.entries.length === 0;
	}

	now(): number {
		return Math.max(this.state.at, this.#clock.now());
	}
	watch(isVisible: boolean): void {
		if (isVisible) this.#clock.resume();
		else this.#clock.pause();
	}

	act(action: BenchAction): void {
		this.#append({ in: 'bench', titration: this.titrationNumber, action });
	}
	say(event: WalkEvent): void {
		this.#append({ in: 'walk', titration: this.titrationNumber, event });
		this.#followUp();
	}
	inquire(event: InquiryEvent): void {
		this.#append({ in: 'inquiry', event });
	}

	/** A check that is a titration begins on a fresh bench; another gives its result at once. */
	check(check: PracticeCheckId): void {
		const titration = this.state.titrations.length;
		const begun: InquiryEvent | null = isBenchCheck(check)
			? { type: 'check.begun', check, titration }
			: null;
		if (begun && wouldTake(this.state, this.now(), { in: 'inquiry', event: begun }))
			this.inquire(begun);
		else this.inquire({ type: 'result.asked', check });
	}
	conclude(given: { conclusion: Conclusion; sure: number }): void {
		this.inquire({ type: 'conclusion.given', ...given });
	}

	undo(): void {
		if (!lastDeclaration(this.log)) return;
		const before = this.log.entries.length;
		this.log = takeBack(this.log, this.now(), () => this.#newId());
		this.state = replayRun(this.log, this.scenario);
		this.#storeFrom(before);
	}

	/** When a titration is over, its reading is given, its check is done, or a drill has ended. */
	#followUp(): void {
		const next = whatFollows(this.state);
		if (next) this.inquire(next);
	}

	#counter = 0;
	#newId(): string {
		return `${this.log.entries.length.toString(36)}-${(this.#counter++).toString(36)}`;
	}

	#append(event: RunEvent): void {
		const entry = { id: this.#newId(), at: this.now(), event };
		if (!wouldTake(this.state, entry.at, event)) return;
		this.state = stepRun(this.state, entry);
		this.log = { ...this.log, entries: [...this.log.entries, entry] };
		this.#storeFrom(this.log.entries.length - 1);
	}

	#storeFrom(first: number): void {
		this.#kept.write(this.log.entries.slice(first), first, this.#header());
	}
	#header(): Whole<RunHeader> {
		const { entries: _entries, ...head } = this.log;
		return {
			id: head.id,
			scenarioId: head.scenarioId,
			startedAtEpochMs: head.startedAtEpochMs,
			changedAtEpochMs: Date.now(),
			state: this.state.inquiry.matches('concluded') ? 'finished' : 'unfinished',
			where: this.#whereNow(),
			head
		};
	}
	#whereNow(): string {
		const { inquiry } = this.state;
		return inquiry.matches('checking') ? 'the check' : placeOf(this.titration);
	}
}

function startRunsFirst(log: RunLog, scenario: Scenario): TitrationRun {
	const [first] = startRun(log, scenario).titrations;
	if (!first) throw new RangeError('a run begins with one titration; found none');
	return first;
}
