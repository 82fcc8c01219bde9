import { vi } from 'vitest';
import { ScenarioSchema, type BenchAction, type Scenario } from '../../../src/lib/bench';
import { houseKitOf } from '../../../src/lib/kits';
import type { WalkEvent } from '../../../src/lib/observation';
import {
	lastDeclaration,
	replayRun,
	startRun,
	stepRun,
	takeBack,
	wouldTake,
	type CoachingWay,
	type RunEvent,
	type RunLog,
	type RunState
} from '../../../src/lib/procedure';
import type { BenchRun } from '../../../src/lib/ui/bench';

/** What jsdom lacks and a bench needs: sizes, media queries, dialogs, frames. */
export function giveTheDomABench(width = 390, height = 440): void {
	vi.stubGlobal(
		'ResizeObserver',
		class {
			constructor(private readonly tell: ResizeObserverCallback) {}
			observe(target: Element) {
				this.tell([{ target } as ResizeObserverEntry], this as unknown as ResizeObserver);
			}
			unobserve() {}
			disconnect() {}
		}
	);
	vi.stubGlobal('matchMedia', (query: string) => ({
		matches: false,
		media: query,
		addEventListener() {},
		removeEventListener() {}
	}));
	vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(width);
	vi.spyOn(HTMLElement.prototype, 'clientHeight', 'get').mockReturnValue(height);
	HTMLDialogElement.prototype.showModal = function () {
		this.open = true;
	};
	HTMLDialogElement.prototype.close = function () {
		this.open = false;
	};
}

export function caseOf(more: Record<string, unknown> = {}): Scenario {
	return ScenarioSchema.parse({
		format: 1,
		id: 'made-up',
		kind: 'case',
		title: 'Made up',
		opening: 'A Sunday.',
		minutes: 10,
		kitId: 'house-syringe',
		truth: { water: { alkalinityDkh: 8.2 } },
		checks: [{ check: 'repeatFull', minutes: 12 }],
		...more
	});
}

/** A run in memory with a clock that the test moves. */
export class TestRun implements BenchRun {
	log: RunLog = $state.raw() as RunLog;
	state: RunState = $state.raw() as RunState;
	time = 0;
	#ids = 0;

	constructor(
		readonly scenario: Scenario,
		readonly coaching: CoachingWay = 'corrected',
		seed = 11
	) {
		const kit = houseKitOf(scenario.kitId);
		this.log = {
			format: 1,
			id: 'test',
			scenarioId: scenario.id,
			seed,
			coaching,
			startedAtEpochMs: 0,
			kit,
			entries: []
		};
		this.state = startRun(this.log, scenario);
	}
	get titration() {
		return this.state.titrations.at(-1)!;
	}
	now() {
		return this.time;
	}
	act(action: BenchAction) {
		this.#append({ in: 'bench', titration: this.titration.number, action });
	}
	say(event: WalkEvent) {
		this.#append({ in: 'walk', titration: this.titration.number, event });
	}
	inquire(event: Extract<RunEvent, { in: 'inquiry' }>['event']) {
		this.#append({ in: 'inquiry', event });
	}
	undo() {
		if (!lastDeclaration(this.log)) return;
		this.log = takeBack(this.log, this.time, () => `u${this.#ids++}`);
		this.state = replayRun(this.log, this.scenario);
	}
	#append(event: RunEvent) {
		const entry = { id: `t${this.#ids++}`, at: this.time, event };
		if (!wouldTake(this.state, entry.at, event)) return;
		this.state = stepRun(this.state, entry);
		this.log = { ...this.log, entries: [...this.log.entries, entry] };
	}
	/** Deeds so far, by kind. */
	get deeds(): string[] {
		return this.log.entries.flatMap((entry) =>
			'event' in entry && entry.event.in === 'bench' ? [entry.event.action.type] : []
		);
	}
	/** Declarations so far, by kind. */
	get said(): string[] {
		return this.log.entries.flatMap((entry) =>
			'event' in entry && entry.event.in === 'walk' ? [entry.event.event.type] : []
		);
	}
	/** All steps over that come before one of this kind, with clean deeds. */
	upTo(kind: 'fill' | 'titrate' | 'read'): this {
		const next = (...actions: BenchAction[]) => {
			for (const action of actions) {
				this.time += 500;
				this.act(action);
			}
		};
		for (;;) {
			const { context } = this.titration.walk;
			const step = context.steps[context.stepIndex];
			if (!step || step.kind === kind) return this;
			if (step.kind === 'rinse') next({ type: 'ware.rinse', ware: step.ware, with: 'sample' });
			if (step.kind === 'measure') next({ type: 'sample.draw', toMl: 6 }, { type: 'sample.pour' });
			if (step.kind === 'dose')
				for (let i = 0; i < step.amount; i++)
					next({ type: 'reagent.dose', reagentId: step.reagentId });
			if (step.kind === 'fill')
				next(
					{ type: 'tip.fit', firm: true },
					{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' },
					{ type: 'tip.wipe' }
				);
			if (step.kind === 'titrate') {
				next({ type: 'flow.start' });
				this.time += 4000;
				next({ type: 'flow.stop' });
				this.time += 30000;
				this.say({ type: 'colour.stayed' });
			}
			this.time += 500;
			this.say({ type: 'step.done', stepId: step.id });
		}
	}
}
