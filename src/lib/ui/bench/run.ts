import type { BenchAction, Scenario } from '$lib/bench';
import type { WalkEvent } from '$lib/observation';
import type { CoachingWay, TitrationRun } from '$lib/procedure';

/** What the bench needs to know of a practice run, and what it may do to it. */
export interface BenchRun {
	readonly scenario: Scenario;
	readonly coaching: CoachingWay;
	/** The titration that is on the bench now. */
	readonly titration: TitrationRun;
	/** Bench time, ms; stands still while the page is hidden. */
	now(): number;
	/** A deed: done is done. */
	act(action: BenchAction): void;
	/** A declaration, which can be taken back. */
	say(event: WalkEvent): void;
	/** Takes back the last declaration. */
	undo(): void;
}
