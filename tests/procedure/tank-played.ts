import type { Kit, StepKind } from '$lib/kits';
import type { Circumstances, TestEvent, WalkEvent } from '$lib/observation';
import {
	presentTitration,
	remarksOn,
	startTest,
	stepOf,
	stepTest,
	type Remark,
	type TankTitration,
	type TestLog,
	type TestState
} from '$lib/procedure';
import { passed, TEN_PAST_SIX } from './tank';

/** A test beside the tank, played entry by entry on a clock that is moved by hand. */
export class Played {
	log: TestLog;
	state: TestState;
	at = TEN_PAST_SIX;

	constructor(
		readonly kit: Kit,
		readonly circumstances: Circumstances = {},
		id = 'played'
	) {
		this.log = {
			format: 1,
			id,
			startedAtEpochMs: TEN_PAST_SIX,
			kit,
			kitVersion: 0,
			entries: []
		};
		this.state = startTest(this.log);
		if (Object.keys(circumstances).length > 0)
			this.add({ in: 'before', event: { type: 'circumstances.noted', circumstances } });
		this.add(passed);
	}

	get titration(): TankTitration {
		return presentTitration(this.state);
	}
	add(event: TestEvent, secondsLater = 1): this {
		this.at += secondsLater * 1000;
		const entry = { id: `p${this.log.entries.length}`, at: this.at, event };
		const next = stepTest(this.state, entry);
		if (!next) throw new Error(`not taken: ${JSON.stringify(entry)}`);
		this.state = next;
		this.log = { ...this.log, entries: [...this.log.entries, entry] };
		return this;
	}
	say(event: WalkEvent, secondsLater = 1): this {
		return this.add({ in: 'walk', titration: this.titration.number, event }, secondsLater);
	}
	wait(seconds: number): this {
		this.at += seconds * 1000;
		return this;
	}
	/** Ends steps, each in good time, until one of a kind is reached. */
	to(kind: StepKind): this {
		for (;;) {
			const step = stepOf(this.titration.walk.context);
			if (!step) throw new Error(`there is no step to ${kind} any more`);
			if (step.kind === kind) return this;
			this.done('seconds' in step ? step.seconds + 1 : 2);
		}
	}
	done(secondsLater = 1): this {
		const step = stepOf(this.titration.walk.context);
		return this.say({ type: 'step.done', stepId: step?.id ?? '' }, secondsLater);
	}
	skip(secondsLater = 1): this {
		const step = stepOf(this.titration.walk.context);
		return this.say({ type: 'step.skipped', stepId: step?.id ?? '' }, secondsLater);
	}
	drops(n: number, secondsApart = 4): this {
		for (let i = 0; i < n; i++) this.say({ type: 'titrant.fell', drops: 1 }, secondsApart);
		return this;
	}
	/** The end, declared in good time and left to stand. */
	ended(): this {
		return this.say({ type: 'colour.stayed' }, 4).done(30);
	}
	remarks(expected: number | null = null): Remark[] {
		const { circumstances } = this;
		return remarksOn(this.titration, { at: this.at, expected, circumstances });
	}
	remark(id: string, expected: number | null = null): Remark | undefined {
		return this.remarks(expected).find((remark) => remark.id === id);
	}
	ids(expected: number | null = null): string[] {
		return this.remarks(expected).map(({ id }) => id);
	}
}
