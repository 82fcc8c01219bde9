import { describe, expect, it } from 'vitest';
import type { WalkEvent } from '../../src/lib/observation';
import { coachLines, type CoachingWay, type TitrationRun } from '../../src/lib/procedure';
import { madeUpScenario, PlayedRun } from '../ui/played-run';
import { dropperKit, syringeKit } from './house';
import { titrated } from './titrated';

const first = (run: PlayedRun): TitrationRun => run.run.titrations[0]!;
const say = (run: PlayedRun, event: WalkEvent, seconds = 1) =>
	run.add(run.run.at + seconds * 1000, { in: 'walk', titration: 0, event });

/** A run of the syringe kit that stands at the filling, filled as told. */
function filled(sealMl: number): PlayedRun {
	const run = new PlayedRun(madeUpScenario());
	for (const { id, kind } of first(run).steps) {
		if (kind === 'fill') break;
		say(run, { type: 'step.done', stepId: id }, 0);
	}
	const draw = { type: 'titrant.draw', sealMl, end: 'inTitrant' } as const;
	run.add(1000, { in: 'bench', titration: 0, action: { type: 'tip.fit', firm: true } });
	return run.add(3000, { in: 'bench', titration: 0, action: draw });
}

const texts = (run: PlayedRun, way: CoachingWay) =>
	coachLines(first(run), way).map(({ text }) => text);
const warned = (run: PlayedRun, way: CoachingWay = 'corrected') =>
	coachLines(first(run), way).filter(({ tone }) => tone === 'warn');

describe('the three ways of coaching', () => {
	const run = new PlayedRun(madeUpScenario());

	it('prompted says what to do before it is done, with the trap in it', () => {
		expect(texts(run, 'prompted')).toEqual([
			'Choose how much water to test.',
			'More water makes each drop count for less.'
		]);
	});

	it('corrected says nothing while nothing went wrong', () => {
		expect(texts(run, 'corrected')).toEqual([]);
	});

	it('silent says nothing whatever happens', () => {
		expect(texts(filled(1.17), 'silent')).toEqual([]);
	});
});

describe('a filling beside every mark', () => {
	const over = (sealMl: number) => say(filled(sealMl), { type: 'filling.done' });

	it('is said when the filling is called done, and not before', () => {
		expect(warned(filled(1.09))).toEqual([]);
		expect(warned(over(1.09))).toMatchObject([
			{ slip: { kind: 'mixedMarks', variant: 'besideFull', provisional: true } }
		]);
	});

	it('is not said of a seal that stands at the full mark', () => {
		expect(warned(over(1))).toEqual([]);
	});
});

describe('a syringe that has run empty', () => {
	const emptied = () => {
		const run = filled(1);
		say(run, { type: 'step.done', stepId: 'fill' });
		run.add(run.run.at + 100, {
			in: 'bench',
			titration: 0,
			action: { type: 'flow.start' }
		});
		return run.add(run.run.at + 60000, {
			in: 'bench',
			titration: 0,
			action: { type: 'flow.stop' }
		});
	};

	it.each(['prompted', 'corrected', 'silent'] as const)('is said to be empty when %s', (way) => {
		expect(texts(emptied(), way)[0]).toBe('It is empty. Fill it again and go on, or stop here.');
	});

	it('is not said to be empty once it was filled again', () => {
		const run = emptied();
		run.add(run.run.at + 2000, {
			in: 'bench',
			titration: 0,
			action: { type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }
		});
		expect(texts(run, 'silent')).toEqual([]);
	});
});

describe('the filling trap', () => {
	it('is warned of the moment it is set, with picture, cost and both ways out', () => {
		const [line] = warned(filled(1.17));
		expect(line).toMatchObject({
			tone: 'warn',
			picture: 'cushion',
			trap: { waysOut: { refillSealToMl: 1 } }
		});
		expect(line?.trap?.sealMl).toBeCloseTo(1.17, 9);
		expect(line?.trap?.lineMl).toBeCloseTo(1, 9);
		// 0.17 mL of air at 16 dKH per mL.
		expect(line?.text).toContain('2.7 dKH');
	});

	it('comes before the prompt, and goes when the seal is set back', () => {
		const run = filled(1.17);
		expect(coachLines(first(run), 'prompted')[0]?.tone).toBe('warn');
		run.add(run.run.at + 1000, {
			in: 'bench',
			titration: 0,
			action: { type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }
		});
		expect(warned(run)).toEqual([]);
	});

	it('says at later steps to read the line as well, for as long as that helps', () => {
		const run = filled(1.17);
		say(run, { type: 'step.done', stepId: 'fill' });
		expect(warned(run)[0]?.text).toMatch(/read the line/i);
	});

	it('filled by the seal, the coach is silent though the line stands low', () => {
		expect(warned(filled(1))).toEqual([]);
	});
});

describe('slips of handling', () => {
	it('are said at once, and forgotten two steps later', () => {
		const run = new PlayedRun(madeUpScenario());
		say(run, { type: 'step.done', stepId: 'choose' }, 0);
		run.add(1000, {
			in: 'bench',
			titration: 0,
			action: { type: 'ware.rinse', ware: 'sampler', with: 'tap' }
		});
		say(run, { type: 'step.done', stepId: 'rinse-sampler' }, 0);
		say(run, { type: 'step.done', stepId: 'rinse-vial' }, 0);
		run.add(4000, { in: 'bench', titration: 0, action: { type: 'sample.draw', toMl: 6 } });
		run.add(5000, { in: 'bench', titration: 0, action: { type: 'sample.pour' } });
		expect(warned(run).map(({ slip }) => slip?.kind)).toEqual(['wareNotRinsed']);
		say(run, { type: 'step.done', stepId: 'measure' });
		expect(warned(run)).toHaveLength(1);
		say(run, { type: 'step.skipped', stepId: 'dose-indicator' });
		expect(warned(run).map(({ slip }) => slip?.kind)).toEqual(['indicatorOff']);
	});

	it('the latest is said first', () => {
		const run = filled(1.17);
		run.add(run.run.at + 500, {
			in: 'bench',
			titration: 0,
			action: { type: 'tip.fit', firm: false }
		});
		expect(warned(run)[0]?.slip?.kind).toBe('tipLoose');
		expect(warned(run).length).toBeGreaterThan(1);
	});
});

describe('slips of judgement', () => {
	const stopped = () => {
		const run = filled(1);
		say(run, { type: 'step.done', stepId: 'fill' });
		run.add(run.run.at + 500, {
			in: 'bench',
			titration: 0,
			action: { type: 'flow.give', size: 'drop' }
		});
		return say(run, { type: 'colour.stayed' }, 2) as PlayedRun;
	};

	it('are not said before the declaration is made', () => {
		expect(warned(stopped()).map(({ slip }) => slip?.kind)).not.toContain('stoppedAtFlash');
	});

	it('about the end are said when the drops are declared over', () => {
		const run = stopped();
		say(run, { type: 'step.done', stepId: 'titrate' });
		expect(warned(run).map(({ slip }) => slip?.kind)).toContain('stoppedAtFlash');
	});

	it('about the mark are said when the value is reported, not while it is being made', () => {
		const misread = titrated(syringeKit, { typed: ({ sealMl }) => ({ sealMl: sealMl! - 0.1 }) });
		expect(warned(misread).map(({ slip }) => slip?.kind)).toContain('misread');
		const reading = new PlayedRun(madeUpScenario());
		for (const entry of misread.log.entries.slice(0, -1))
			if ('event' in entry) reading.add(entry.at, entry.event);
		expect(warned(reading).map(({ slip }) => slip?.kind)).not.toContain('misread');
	});
});

describe('what the coach says depends on the hands and never on the water', () => {
	it.each([
		['syringe', syringeKit],
		['dropper', dropperKit]
	])('the same deeds with the %s on two waters get the same words at every entry', (_n, kit) => {
		const scenarios = [6.4, 12.1].map((alkalinityDkh) =>
			madeUpScenario({ kitId: kit.id, truth: { water: { alkalinityDkh } } })
		);
		const { log } = titrated(kit, {
			plan: { fillBy: 'line', rinseSampler: 'tap', rinseVial: 'tap', swirlMs: 800 },
			scenario: { truth: { water: { alkalinityDkh: 8 } } }
		});
		const runs = scenarios.map((scenario) => new PlayedRun(scenario));
		let spoken = 0;
		for (const entry of log.entries) {
			if (!('event' in entry) || entry.event.in === 'inquiry') continue;
			const { event } = entry;
			// Until the marks: what stands there is the same too, but what was typed is the learner's.
			if (event.in === 'walk' && event.event.type === 'marks.read') break;
			for (const run of runs) run.add(entry.at, event);
			for (const way of ['prompted', 'corrected'] as const) {
				const [here, there] = runs.map((run) => texts(run, way));
				expect(here).toEqual(there);
				spoken += here?.length ?? 0;
			}
		}
		expect(spoken).toBeGreaterThan(50);
	});
});
