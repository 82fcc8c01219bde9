import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BenchAction } from '../../src/lib/bench';
import type { Kit } from '../../src/lib/kits';
import {
	coachLines,
	debriefOf,
	decodeRun,
	encodeRun,
	evidenceOf,
	replayRun,
	slipsIn,
	startRun,
	stepRun,
	wouldTake,
	type RunEvent,
	type RunLog,
	type RunState
} from '../../src/lib/procedure';
import { madeUpScenario } from '../ui/played-run';
import { buretteKit, dropperKit, everyEvent, syringeKit } from './house';

const mL = (max: number) => fc.double({ min: 0, max, noNaN: true });

const deed: fc.Arbitrary<BenchAction> = fc.oneof(
	fc.constantFrom<BenchAction>(
		{ type: 'ware.rinse', ware: 'vial', with: 'tap' },
		{ type: 'ware.rinse', ware: 'sampler', with: 'sample' },
		{ type: 'sample.choose', volumeId: 'fine' },
		{ type: 'sample.pour' },
		{ type: 'reagent.dose', reagentId: 'indicator' },
		{ type: 'swirl.start' },
		{ type: 'swirl.stop' },
		{ type: 'tip.fit', firm: true },
		{ type: 'tip.fit', firm: false },
		{ type: 'tip.remove' },
		{ type: 'tip.wipe' },
		{ type: 'tip.touchOff' },
		{ type: 'flow.start' },
		{ type: 'flow.stop' },
		{ type: 'flow.give', size: 'drop' },
		{ type: 'flow.give', size: 'half' },
		{ type: 'flow.give', size: 'stream' },
		{ type: 'dropper.squeeze', hard: true },
		{ type: 'lamp.set', lamp: 'blue' },
		{ type: 'vial.look' }
	),
	mL(8).map((toMl): BenchAction => ({ type: 'sample.draw', toMl })),
	mL(9).map((levelMl): BenchAction => ({ type: 'sample.fillToLine', levelMl })),
	mL(1.3).map((sealMl): BenchAction => ({ type: 'titrant.draw', sealMl, end: 'inTitrant' })),
	mL(1.3).map((sealMl): BenchAction => ({ type: 'titrant.purge', sealMl })),
	mL(10).map((levelMl): BenchAction => ({ type: 'burette.fill', levelMl })),
	mL(60).map((degrees): BenchAction => ({ type: 'dropper.tilt', degrees }))
);

/** What somebody does who presses anything at any time; the step's own end comes often enough to get on. */
const pressed = fc.record({
	waitMs: fc.nat(4000),
	what: fc.oneof(
		{ weight: 5, arbitrary: deed.map((action) => ({ kind: 'deed' as const, action })) },
		{ weight: 3, arbitrary: fc.constant({ kind: 'next' as const }) },
		{ weight: 3, arbitrary: fc.nat(100).map((pick) => ({ kind: 'word' as const, pick })) }
	)
});

function eventFor(
	run: RunState,
	what: { kind: string; action?: BenchAction; pick?: number }
): RunEvent {
	const { walk, steps } = run.titrations[0]!;
	const pick = what.pick ?? 0;
	if (what.action) return { in: 'bench', titration: 0, action: what.action };
	const step = steps[walk.context.stepIndex];
	if (what.kind === 'next' && step)
		return { in: 'walk', titration: 0, event: { type: 'step.done', stepId: step.id } };
	// A word that is taken here, if there is one: the chance alone would seldom get to a value.
	const words = everyEvent(steps).filter((event) =>
		['colour.turned', 'colour.stayed', 'marks.read', 'value.reported'].includes(event.type)
	);
	const fitting = words.filter((event) => walk.status === 'active' && walk.can(event));
	const from = fitting.length > 0 ? fitting : words;
	const { at: _at, entryId: _id, ...event } = from[pick % from.length]!;
	return { in: 'walk', titration: 0, event };
}

const scenario = (kit: Kit) =>
	madeUpScenario({
		kitId: kit.id,
		truth: { water: { alkalinityDkh: 8 }, light: 'dim' },
		checks: [{ check: 'repeatQuick', minutes: 6 }]
	});

describe.each([
	['syringe', syringeKit],
	['dropper', dropperKit],
	['burette', buretteKit]
])('whatever anybody presses at the %s', (_name, kit) => {
	it('nothing throws, and the log alone gives the same run again', () => {
		let valued = 0;
		fc.assert(
			fc.property(
				fc.array(pressed, { minLength: 30, maxLength: 100, size: 'max' }),
				fc.nat(1e6),
				(presses, seed) => {
					const log: RunLog = {
						format: 1,
						id: 'any',
						scenarioId: 'made-up',
						seed,
						coaching: 'corrected',
						startedAtEpochMs: 0,
						kit,
						entries: []
					};
					let run = startRun(log, scenario(kit));
					for (const [i, { waitMs, what }] of presses.entries()) {
						const at = run.at + waitMs;
						const event = eventFor(run, what);
						if (!wouldTake(run, at, event)) continue;
						run = stepRun(run, { id: `e${i}`, at, event });
						log.entries.push({ id: `e${i}`, at, event });
						const [titration] = run.titrations;
						for (const line of coachLines(titration!, 'prompted'))
							expect(line.text).not.toMatch(/NaN|undefined/);
					}
					const [titration] = run.titrations;
					expect(run.refused).toBeNull();
					expect(replayRun(log, scenario(kit))).toEqual(run);
					expect(replayRun(decodeRun(encodeRun(log)), scenario(kit)).titrations[0]?.bench).toEqual(
						titration!.bench
					);
					const ids = titration!.events.map(({ id }) => id);
					for (const slip of slipsIn(kit, titration!.steps, titration!.events)) {
						expect(ids).toContain(slip.entryId);
						expect(Number.isNaN(slip.sizeMl ?? 0)).toBe(false);
					}
					if (titration!.walk.value !== 'valued') return;
					const given = { in: 'inquiry', event: { type: 'reading.given' } } as const;
					const asked = {
						in: 'inquiry',
						event: { type: 'result.asked', check: 'repeatQuick' }
					} as const;
					for (const event of [given, asked])
						if (wouldTake(run, run.at, event)) run = stepRun(run, { id: 'q', at: run.at, event });
					const debrief = debriefOf(run);
					evidenceOf(run);
					if (debrief?.ledger) valued++;
					const sum = debrief?.ledger?.lines.reduce((total, line) => total + line.amount, 0);
					if (sum !== undefined)
						expect(sum).toBeCloseTo(debrief!.ledger!.reported - debrief!.ledger!.trueValue, 6);
				}
			),
			{ numRuns: 100 }
		);
		// Some of them get as far as a value, or the last lines above try nothing.
		expect(valued).toBeGreaterThan(0);
	}, 60_000);
});
