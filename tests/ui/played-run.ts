import {
	PlanSchema,
	runHands,
	ScenarioSchema,
	type BenchActionType,
	type Plan,
	type Scenario
} from '../../src/lib/bench';
import { houseKitOf, unitOf, valueFromMark, type StepKind } from '../../src/lib/kits';
import type { Conclusion } from '../../src/lib/observation';
import {
	startRun,
	stepOf,
	stepRun,
	type RunEvent,
	type RunLog,
	type RunState
} from '../../src/lib/procedure';

/** A made-up scenario for tests of the pages. */
export function madeUpScenario(more: Record<string, unknown> = {}): Scenario {
	return ScenarioSchema.parse({
		format: 1,
		id: 'made-up',
		kind: 'case',
		title: 'Made up',
		opening: 'A Sunday. The corals look as they did last week.',
		minutes: 10,
		kitId: 'house-syringe',
		truth: { water: { alkalinityDkh: 8.6 } },
		verdict: 'stands',
		reveal: 'Nothing was wrong with the water.',
		checks: [
			{ check: 'repeatFull', minutes: 12 },
			{ check: 'repeatQuick', minutes: 6 },
			{
				check: 'secondMethod',
				minutes: 5,
				label: 'Another method',
				offset: 0.1,
				sd: 0.1,
				expandedUncertainty: 0.5
			},
			{
				check: 'reference',
				minutes: 12,
				label: 'Bicarbonate in purified water',
				nominal: 8,
				nominalExpandedUncertainty: 0.1,
				water: { matrix: 'purified', salinity: 0, alkalinityDkh: 8, ph: 8.2 }
			}
		],
		...more
	});
}

export const planOf = (more: Record<string, unknown> = {}): Plan => PlanSchema.parse(more);

/** The kinds of step in which a deed belongs; others are over before it. */
const kindOf: Partial<Record<BenchActionType, StepKind>> = {
	'sample.choose': 'choose',
	'sample.draw': 'measure',
	'sample.pour': 'measure',
	'sample.fillToLine': 'measure',
	'reagent.dose': 'dose',
	'tip.fit': 'fill',
	'titrant.draw': 'fill',
	'burette.fill': 'fill',
	'flow.start': 'titrate',
	'flow.give': 'titrate'
};

/** Plays runs for tests: hands follow a plan, and say what a learner would say. */
export class PlayedRun {
	readonly log: RunLog;
	run: RunState;
	#count = 0;

	constructor(scenario: Scenario = madeUpScenario(), seed = 5) {
		const kit = houseKitOf(scenario.kitId);
		this.log = {
			format: 1,
			id: 'played',
			scenarioId: scenario.id,
			seed,
			coaching: 'silent',
			startedAtEpochMs: 0,
			kit,
			entries: []
		};
		this.run = startRun(this.log, scenario);
	}

	add(at: number, event: RunEvent): this {
		const entry = { id: `e${this.#count++}`, at: Math.max(this.run.at, Math.round(at)), event };
		const next = stepRun(this.run, entry);
		if (next.refused) throw new Error(`refused: ${JSON.stringify(entry)}`);
		this.run = next;
		this.log.entries.push(entry);
		return this;
	}

	#step(number: number) {
		const titration = this.run.titrations.find((each) => each.number === number);
		if (!titration) throw new Error(`no titration ${number}`);
		return { titration, step: stepOf(titration.walk.context) };
	}

	#goOnTo(kind: StepKind, number: number, at: number): void {
		for (;;) {
			const { titration, step } = this.#step(number);
			if (!step || step.kind === kind) return;
			if (!titration.steps.slice(titration.steps.indexOf(step)).some((s) => s.kind === kind))
				return;
			this.add(at, {
				in: 'walk',
				titration: number,
				event: { type: 'step.done', stepId: step.id }
			});
		}
	}

	/** One titration from sample to value, by hands that follow the plan. */
	titrate(plan: Plan = planOf(), number = 0): this {
		const walk = (at: number, event: Extract<RunEvent, { in: 'walk' }>['event']) =>
			this.add(at, { in: 'walk', titration: number, event });
		const done = runHands(this.#step(number).titration.bench, plan);
		for (const { at, action } of done.actions) {
			const kind = kindOf[action.type];
			if (kind) this.#goOnTo(kind, number, at);
			this.add(at, { in: 'bench', titration: number, action });
		}
		const after = Math.max(this.run.at, done.state.at);
		this.#goOnTo('titrate', number, after);
		// What was touched off last is swirled in before the wait.
		const bench = (at: number, type: 'swirl.start' | 'swirl.stop') =>
			this.add(at, { in: 'bench', titration: number, action: { type } });
		bench(after + 1000, 'swirl.start');
		bench(after + 3000, 'swirl.stop');
		walk(after + 30_000, { type: 'colour.stayed' });
		walk(after + 30_100, { type: 'step.done', stepId: 'titrate' });
		walk(after + 40_000, { type: 'marks.read', marks: done.marks });
		const { sealMl, lineMl, levelMl, drops } = done.marks;
		const { refilledMl } = done;
		const { kit } = this.run;
		const markMl = sealMl ?? lineMl ?? levelMl;
		const { value } = valueFromMark(kit, { markMl, drops, refilledMl });
		walk(after + 60_000, {
			type: 'value.reported',
			value: Number(value.toFixed(unitOf(kit.unit, kit.analyte).decimals)),
			unit: kit.unit
		});
		if (number === 0) this.inquire({ type: 'reading.given' });
		return this;
	}

	inquire(event: Extract<RunEvent, { in: 'inquiry' }>['event']): this {
		return this.add(this.run.at + 1000, { in: 'inquiry', event });
	}

	conclude(conclusion: Conclusion, sure = 80): this {
		return this.inquire({ type: 'conclusion.given', conclusion, sure });
	}
}
