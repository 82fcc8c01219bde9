import type { Kit } from '$lib/kits';
import type {
	Circumstances,
	Marks,
	TakenOff,
	ThingInCommon,
	TitrationPurpose,
	WalkEvent
} from '$lib/observation';
import type {
	TankTitration,
	TestLog,
	TestResult,
	TestState,
	Unvalued,
	ValuedTitration
} from '$lib/procedure';

/** Where a test is kept: in this browser, in this page's memory only, or another window went on with it. */
export type TankStorage = 'kept' | 'memory' | 'elsewhere';

/** What the screens of a test beside the tank need of it; `routes/test/tank-run.svelte.ts` wires it. */
export interface TankRun {
	readonly log: TestLog;
	readonly state: TestState;
	readonly storage: TankStorage;
	/** The leaflet of the test, as frozen when it began. */
	readonly kit: Kit;
	/** The titration that goes on, or went on last. */
	readonly titration: TankTitration;
	/** What the titrations so far say together; null while none has a value. */
	readonly result: TestResult | null;
	/** Each titration by itself, those without a value too, with the reason. */
	readonly values: readonly (ValuedTitration | Unvalued)[];
	/** Value of the last test of the same kind before this one, in the unit of this kit; null when there is none. */
	readonly expected: number | null;
	/** ms since 1970. */
	now(): number;
	/** Something happened on the walk; not taken when it does not belong there. Says whether it was. */
	say(event: WalkEvent): boolean;
	noteCircumstances(circumstances: Circumstances): void;
	passCircumstances(): void;
	begin(purpose: Exclude<TitrationPurpose, 'first'>, by?: string): void;
	/** Ends the walk of the present titration and begins another with a fresh sample. */
	beginAgain(): void;
	setAside(titration: number, because: string): void;
	countAgain(titration: number): void;
	/** Puts other marks in the place of those read; the old ones stay in the log. */
	amendMarks(titration: number, marks: Marks): void;
	/** Puts other marks in the place of those noted when it was filled; nothing happens where none were. */
	amendFilling(titration: number, marks: Marks): void;
	/** Somebody else's reading of the same glass, made without seeing the first. */
	noteOtherReading(titration: number, by: string, marks: Marks): void;
	/** Another value is taken off this one; a later one takes the place of an earlier. */
	takeOff(less: TakenOff, inCommon: readonly ThingInCommon[]): void;
	/** Takes back what was taken off last. */
	takeBackDifference(): void;
	writeNote(text: string): void;
	close(): void;
	readonly canUndo: boolean;
	/** Takes back the last thing said. */
	undo(): void;
}
