import { describe, expect, it } from 'vitest';
import { advance, reduce } from '../../src/lib/bench';
import type { WalkEvent } from '../../src/lib/observation';
import {
	lastDeclaration,
	replayRun,
	setAside,
	startRun,
	stepRun,
	takeBack,
	whatFollows,
	wouldTake,
	type RunEvent,
	type RunLog
} from '../../src/lib/procedure';
import { madeUpScenario, PlayedRun, planOf } from '../ui/played-run';

const scenario = madeUpScenario();
const played = new PlayedRun(scenario).titrate();

/** A made-up source of ids for appended entries. */
function ids(prefix = 'n'): () => string {
	let n = 0;
	return () => `${prefix}${n++}`;
}

const walkEvent = (event: WalkEvent, titration = 0): RunEvent => ({ in: 'walk', titration, event });

describe('a run', () => {
	it('played again from its log is the same, whether at once or step by step', () => {
		expect(replayRun(played.log, scenario)).toEqual(played.run);
		const again = played.log.entries.reduce(
			(run, entry) => ('event' in entry && !('amends' in entry) ? stepRun(run, entry) : run),
			startRun(played.log, scenario)
		);
		expect(again).toEqual(played.run);
	});

	it('with another seed meets other chance, and the same truth', () => {
		const other = new PlayedRun(scenario, 6).titrate();
		const volumes = (run: PlayedRun) => run.run.titrations[0]!.bench.drops.map((d) => d.volumeMl);
		expect(volumes(other)).not.toEqual(volumes(played));
		expect(other.run.scenario.truth).toEqual(played.run.scenario.truth);
	});

	it('comes to a value, and is reported to the inquiry', () => {
		const [first] = played.run.titrations;
		expect(first?.walk.value).toBe('valued');
		expect(played.run.inquiry.value).toBe('checking');
	});

	it('counts in the walk what fell at the bench, to the last drop', () => {
		const [first] = played.run.titrations;
		const fell = first!.events.flatMap(({ event }) =>
			event.type === 'titrant.fell' || event.type === 'drop.touchedOff' ? [event] : []
		);
		const sum = fell.reduce((total, event) => total + (event.volumeMl ?? 0), 0);
		expect(sum).toBeCloseTo(first!.bench.inVialMl, 9);
	});
});

describe('what does not belong', () => {
	it('stops the replay there and is named; the state before it stays', () => {
		const run = startRun(played.log, scenario);
		const entry = {
			id: 'x',
			at: 10,
			event: walkEvent({ type: 'value.reported', value: 8, unit: 'dKH' })
		};
		const refused = stepRun(run, entry);
		expect(refused.refused).toEqual(entry);
		expect({ ...refused, refused: null }).toEqual(run);
		expect(wouldTake(run, 10, entry.event)).toBe(false);
	});

	it('is set aside, and the run goes on from the last moment that made sense', () => {
		const log: RunLog = {
			...played.log,
			entries: [
				{ id: 'a', at: 1, event: walkEvent({ type: 'step.done', stepId: 'choose' }) },
				{ id: 'b', at: 2, event: walkEvent({ type: 'colour.stayed' }) },
				{ id: 'c', at: 3, event: walkEvent({ type: 'step.done', stepId: 'rinse-sampler' }) }
			]
		};
		expect(replayRun(log, scenario).refused?.id).toBe('b');
		const mended = setAside(log, 'b', 4, ids());
		const run = replayRun(mended, scenario);
		expect(run.refused).toBeNull();
		expect(run.titrations[0]?.walk.value).toBe('rinsing');
		expect(mended.entries.slice(0, 3)).toEqual(log.entries);
	});

	it.each<[string, RunEvent]>([
		[
			'glass that the kit does not have',
			{ in: 'bench', titration: 0, action: { type: 'burette.fill', levelMl: 0 } }
		],
		[
			'a reagent that is not in the kit',
			{ in: 'bench', titration: 0, action: { type: 'reagent.dose', reagentId: 'tea' } }
		],
		['a titration that was never begun', walkEvent({ type: 'wait.over' }, 7)],
		['a check of a reading that is not there', { in: 'inquiry', event: { type: 'reading.given' } }],
		[
			'a check before there is a reading',
			{ in: 'inquiry', event: { type: 'result.asked', check: 'secondMethod' } }
		]
	])('%s is refused and does not throw', (_what, event) => {
		const run = startRun(played.log, scenario);
		expect(wouldTake(run, 5, event)).toBe(false);
		expect(stepRun(run, { id: 'x', at: 5, event }).refused?.id).toBe('x');
	});

	it('is anything that would have happened before what is already written', () => {
		const run = { ...played.run };
		expect(wouldTake(run, run.at - 1, { in: 'inquiry', event: { type: 'drill.ended' } })).toBe(
			false
		);
		expect(wouldTake(run, run.at, { in: 'inquiry', event: { type: 'drill.ended' } })).toBe(true);
	});

	it('a second tap on Next comes late and does no harm', () => {
		const run = startRun(played.log, scenario);
		const tap = walkEvent({ type: 'step.done', stepId: 'choose' });
		const once = stepRun(run, { id: 'a', at: 1, event: tap });
		const twice = stepRun(once, { id: 'b', at: 2, event: tap });
		expect(twice.refused).toBeNull();
		expect(twice.titrations[0]?.walk.context).toEqual(once.titrations[0]?.walk.context);
	});
});

describe('a deed out of turn', () => {
	it('happens at the bench and is kept among the events, though the walk stays where it is', () => {
		let run = startRun(played.log, scenario);
		run = stepRun(run, {
			id: 'a',
			at: 100,
			event: { in: 'bench', titration: 0, action: { type: 'tip.fit', firm: true } }
		});
		run = stepRun(run, {
			id: 'b',
			at: 900,
			event: {
				in: 'bench',
				titration: 0,
				action: { type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }
			}
		});
		const [titration] = run.titrations;
		expect(titration?.walk.value).toBe('choosing');
		expect(titration?.walk.context.happened).toEqual([]);
		expect(titration?.events.map(({ event }) => event.type)).toEqual([
			'tip.fitted',
			'titrant.drawn'
		]);
	});
});

describe('taking back', () => {
	const log = played.log;

	it('takes the last declaration and what rested on it, and leaves the drops in', () => {
		const back = takeBack(log, played.run.at, ids());
		const run = replayRun(back, scenario);
		expect(lastDeclaration(log)?.event).toMatchObject({ event: { type: 'value.reported' } });
		expect(run.refused).toBeNull();
		expect(run.titrations[0]?.walk.matches({ reading: 'read' })).toBe(true);
		expect(run.inquiry.value).toBe('working');
		expect(run.titrations[0]?.bench.inVialMl).toBe(played.run.titrations[0]?.bench.inVialMl);
	});

	it('goes back step by step to the drops: value, mark, end', () => {
		let back = log;
		const newId = ids();
		for (let i = 0; i < 3; i++) back = takeBack(back, played.run.at, newId);
		const run = replayRun(back, scenario);
		expect(run.refused).toBeNull();
		expect(run.titrations[0]?.walk.matches('titrating')).toBe(true);
		expect(lastDeclaration(back)).toBeNull();
		expect(() => takeBack(back, 0, newId)).toThrow(RangeError);
	});

	it('never offers a deed: titrant that is in stays in', () => {
		const deeds = log.entries.slice(0, 20);
		expect(deeds.some((entry) => 'event' in entry && entry.event.in === 'bench')).toBe(true);
		expect(lastDeclaration({ ...log, entries: deeds })).toBeNull();
	});

	it('offers a conclusion, and no longer a reading that a check has begun on', () => {
		const checked = new PlayedRun(scenario)
			.titrate()
			.inquire({ type: 'result.asked', check: 'secondMethod' });
		expect(lastDeclaration(checked.log)).toBeNull();
		checked.conclude('stands');
		const back = takeBack(checked.log, checked.run.at, ids());
		expect(replayRun(back, scenario).inquiry.value).toBe('checking');
	});
});

describe('checks of a run', () => {
	it('at the bench are titrations of their own, with the water that they are for', () => {
		const run = new PlayedRun(scenario)
			.titrate()
			.inquire({ type: 'check.begun', check: 'reference', titration: 1 });
		const [, second] = run.run.titrations;
		expect(second?.bench.truth.water.matrix).toBe('purified');
		expect(second?.bench.at).toBe(run.run.at);
		expect(
			wouldTake(run.run, run.run.at, { in: 'inquiry', event: { type: 'check.done', titration: 1 } })
		).toBe(false);
		run.titrate(planOf(), 1).inquire({ type: 'check.done', titration: 1 });
		expect(run.run.inquiry.context.checks).toEqual([
			{ check: 'reference', titration: 1, isDone: true }
		]);
		expect(replayRun(run.log, scenario)).toEqual(run.run);
	});

	it.each<[string, RunEvent]>([
		[
			'that the scenario does not offer',
			{ in: 'inquiry', event: { type: 'check.begun', check: 'freshLot', titration: 1 } }
		],
		[
			'under the number of another titration',
			{ in: 'inquiry', event: { type: 'check.begun', check: 'reference', titration: 0 } }
		],
		[
			'by asking for what has to be done',
			{ in: 'inquiry', event: { type: 'result.asked', check: 'reference' } }
		]
	])('%s are refused', (_how, event) => {
		expect(wouldTake(played.run, played.run.at, event)).toBe(false);
	});
});

describe('what follows by itself when a titration is over', () => {
	const upTo = (run: PlayedRun, type: string) => {
		const end = run.log.entries.findIndex(
			(entry) => 'event' in entry && entry.event.in === 'walk' && entry.event.event.type === type
		);
		return replayRun({ ...run.log, entries: run.log.entries.slice(0, end + 1) }, run.run.scenario);
	};

	it('is its reading, once there is a value', () => {
		expect(whatFollows(upTo(played, 'marks.read'))).toBeNull();
		expect(whatFollows(upTo(played, 'value.reported'))).toEqual({ type: 'reading.given' });
		expect(whatFollows(played.run)).toBeNull();
	});

	it('is the end, where it was given up or came to no value', () => {
		const given = stepRun(startRun(played.log, scenario), {
			id: 'x',
			at: 5,
			event: walkEvent({ type: 'walk.abandoned' })
		});
		expect(whatFollows(given)).toEqual({ type: 'drill.ended' });
		const read = upTo(played, 'marks.read');
		const skipped = walkEvent({ type: 'step.skipped', stepId: 'read' });
		expect(whatFollows(stepRun(read, { id: 'x', at: read.at, event: skipped }))).toEqual({
			type: 'drill.ended'
		});
	});

	it('is the end of a drill that has nothing to check', () => {
		const drill = new PlayedRun(madeUpScenario({ kind: 'drill', checks: [] })).titrate();
		expect(whatFollows(upTo(drill, 'value.reported'))).toEqual({ type: 'drill.ended' });
	});

	it('is that the check is done, when it was one', () => {
		const checking = new PlayedRun(scenario)
			.titrate()
			.inquire({ type: 'check.begun', check: 'repeatFull', titration: 1 });
		expect(whatFollows(checking.run)).toBeNull();
		checking.titrate(planOf(), 1);
		expect(whatFollows(checking.run)).toEqual({ type: 'check.done', titration: 1 });
	});
});

it('drops on their way when something is said have fallen before it', () => {
	const run = new PlayedRun(scenario);
	const before = run.run.titrations[0]!.bench;
	expect(before.drops).toEqual([]);
	for (const stepId of run.run.titrations[0]!.steps.map((step) => step.id).slice(0, -2))
		run.add(run.run.at, walkEvent({ type: 'step.done', stepId }));
	const deeds = [
		{ type: 'sample.draw', toMl: 6 },
		{ type: 'sample.pour' },
		{ type: 'reagent.dose', reagentId: 'indicator' },
		{ type: 'tip.fit', firm: true },
		{ type: 'titrant.draw', sealMl: 1, end: 'inTitrant' },
		{ type: 'tip.wipe' },
		{ type: 'flow.give', size: 'drop' }
	] as const;
	let bench = before;
	for (const [i, action] of deeds.entries()) {
		run.add(1000 * (i + 1), { in: 'bench', titration: 0, action });
		bench = reduce(bench, action, 1000 * (i + 1));
	}
	run.add(20_000, walkEvent({ type: 'colour.turned' }));
	const said = run.run.titrations[0]!.events.map(({ event }) => event.type).slice(-2);
	expect(said).toEqual(['titrant.fell', 'colour.turned']);
	expect(run.run.titrations[0]!.bench.drops).toEqual(advance(bench, 20_000).drops);
});
