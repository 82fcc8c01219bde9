import type { Kit } from '$lib/kits';
import type { OwnRepeatability } from '$lib/metrology';
import type {
	Circumstances,
	Marks,
	TakenOff,
	ThingInCommon,
	TitrationPurpose,
	WalkEvent
} from '$lib/observation';
import { summaryOf, testResult, valuesOf, type TestResult } from '$lib/procedure';
import type { TestRecords } from '$lib/records';
import type { TankRun } from '$lib/ui/test/run';
import type { TankRun as WiredRun } from '../../test/tank-run.svelte';

/** The leaflet that a test is valued by today. */
export type LeafletToday = {
	kit: Kit;
	version: number;
	/** It was corrected since that day. */
	isCorrected: boolean;
	/** ms since 1970; null where nobody knows. */
	savedAtEpochMs: number | null;
};

/**
 * A test as the log shows it: the same log, valued by the leaflet as it is taken to say today. What
 * lists show of it is written anew after each change.
 */
export class LoggedTest implements TankRun {
	constructor(
		private readonly run: WiredRun,
		readonly leaflet: LeafletToday,
		private readonly records: TestRecords,
		private readonly ownFor: (now: {
			tester?: string;
			sampleVolumeMl: number;
		}) => OwnRepeatability | null
	) {}

	get log() {
		return this.run.log;
	}
	get state() {
		return this.run.state;
	}
	get storage() {
		return this.run.storage;
	}
	get kit(): Kit {
		return this.leaflet.kit;
	}
	get titration() {
		return this.run.titration;
	}
	get expected() {
		return this.run.expected;
	}
	get canUndo() {
		return this.run.canUndo;
	}
	readonly values = $derived.by(() => valuesOf(this.run.state, this.leaflet.kit));
	readonly result = $derived.by((): TestResult | null => {
		const sampleVolumeMl = this.values.find(({ value }) => value !== null);
		const { tester } = this.state.circumstances;
		const own =
			sampleVolumeMl && 'sampleVolumeMl' in sampleVolumeMl
				? this.ownFor({ tester, sampleVolumeMl: sampleVolumeMl.sampleVolumeMl })
				: null;
		return testResult(this.state, { kit: this.leaflet.kit, own });
	});
	/** What it said by the leaflet of that day; null where that is the one of today. */
	readonly onTheDay = $derived.by((): TestResult | null =>
		this.leaflet.isCorrected ? this.run.result : null
	);

	now(): number {
		return this.run.now();
	}
	say(event: WalkEvent): boolean {
		return this.run.say(event);
	}
	noteCircumstances(circumstances: Circumstances): void {
		this.#changing(() => this.run.noteCircumstances(circumstances));
	}
	passCircumstances(): void {
		this.run.passCircumstances();
	}
	begin(purpose: Exclude<TitrationPurpose, 'first'>, by?: string): void {
		this.run.begin(purpose, by);
	}
	beginAgain(): void {
		this.run.beginAgain();
	}
	setAside(titration: number, because: string): void {
		this.#changing(() => this.run.setAside(titration, because));
	}
	countAgain(titration: number): void {
		this.#changing(() => this.run.countAgain(titration));
	}
	amendMarks(titration: number, marks: Marks): void {
		this.#changing(() => this.run.amendMarks(titration, marks));
	}
	amendFilling(titration: number, marks: Marks): void {
		this.#changing(() => this.run.amendFilling(titration, marks));
	}
	noteOtherReading(titration: number, by: string, marks: Marks): void {
		this.#changing(() => this.run.noteOtherReading(titration, by, marks));
	}
	takeOff(less: TakenOff, inCommon: readonly ThingInCommon[]): void {
		this.#changing(() => this.run.takeOff(less, inCommon));
	}
	takeBackDifference(): void {
		this.#changing(() => this.run.takeBackDifference());
	}
	writeNote(text: string): void {
		this.#changing(() => this.run.writeNote(text));
	}
	close(): void {
		this.run.close();
	}
	undo(): void {
		this.#changing(() => this.run.undo());
	}
	/** Takes it out of lists and pictures; it stays stored. */
	remove(): void {
		this.#changing(() => this.run.remove());
	}
	restore(): void {
		this.#changing(() => this.run.restore());
	}
	leave(): void {
		this.run.kept.leave();
	}

	/** The run writes a summary by the leaflet of that day; one by a corrected leaflet follows it. */
	#changing(change: () => void): void {
		change();
		if (!this.leaflet.isCorrected) return;
		const summary = this.result && summaryOf(this.state, this.result, this.leaflet.version);
		void this.run.kept.settled().then(() => this.records.resummarise(this.log.id, summary));
	}
}
