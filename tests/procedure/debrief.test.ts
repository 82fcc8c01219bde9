import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { cleanPlan, ScenarioSchema, type Scenario } from '../../src/lib/bench';
import { isBenchCheck, type Conclusion } from '../../src/lib/observation';
import { debriefOf, loadRunLog, replayRun, type Debrief } from '../../src/lib/procedure';
import { madeUpScenario, PlayedRun, planOf } from '../ui/played-run';
import { dropperKit, syringeKit } from './house';
import { titrated, type Different } from './titrated';

const debriefed = (different: Different = {}, kit = syringeKit): Debrief =>
	debriefOf(titrated(kit, different).run)!;
const lineOf = (debrief: Debrief, id: string) =>
	debrief.ledger?.lines.find((line) => line.id === id)?.amount;

describe('the debrief', () => {
	it('sets what was reported beside what was true, and the lines add up', () => {
		const debrief = debriefed({ plan: { fillBy: 'line' } });
		const sum = debrief.ledger!.lines.reduce((total, line) => total + line.amount, 0);
		expect(debrief.trueValue).toBe(8.6);
		expect(sum).toBeCloseTo(debrief.reading!.value - debrief.trueValue, 9);
	});

	it('of clean work says that only scatter is left', () => {
		const debrief = debriefed();
		expect(debrief.slips).toEqual([]);
		expect(debrief.next).toEqual({
			text: 'Only scatter. Nothing to mend. Try it at the tank.',
			train: null,
			slipKind: null
		});
	});

	it('lays the filling trap’s difference on the slip that made it, and names what to train', () => {
		const debrief = debriefed({ plan: { fillBy: 'line' } });
		// 0.17 mL of air at 16 dKH per mL.
		expect(lineOf(debrief, 'slip-mixedMarks')).toBeCloseTo(-0.17 * 16, 1);
		expect(debrief.slips[0]).toMatchObject({ slip: { kind: 'mixedMarks' } });
		expect(debrief.next.train).toEqual({ slip: 'mixedMarks', titration: 'strongAcid' });
	});

	it('leads to the largest of several slips', () => {
		const small = { plan: { rinseSampler: 'purified' } };
		const large = { reported: (value: number) => value + 2 };
		expect(debriefed(small).next.train?.slip).toBe('wareNotRinsed');
		expect(debriefed({ ...small, ...large }).next.train?.slip).toBe('wrongRow');
	});

	it('values a line-read test by its line: right from filling to value, nothing to mend', () => {
		const debrief = debriefed({ plan: { fillBy: 'line', readBy: 'line' } });
		expect(debrief.slips).toEqual([]);
		expect(Math.abs(debrief.reading!.value - 8.6)).toBeLessThan(0.4);
	});

	it('with both marks read takes the one that the value was made of', () => {
		const debrief = debriefed({
			plan: { fillBy: 'line', readBy: 'line' },
			typed: ({ lineMl }) => ({ lineMl, sealMl: lineMl! + 0.17 }),
			// The value of the seal is handed in; that of the line is 0.17 mL of 16 dKH higher.
			reported: (bySeal) => Number((bySeal + 0.17 * 16).toFixed(1))
		});
		expect(debrief.slips).toEqual([]);
		expect(Math.abs(lineOf(debrief, 'unnamed') ?? 1)).toBeLessThan(0.16);
	});

	it('names a stop past the end for which no slip is to be seen', () => {
		const debrief = debriefed({ plan: { dropsPastEnd: 4 } });
		expect(debrief.slips).toEqual([]);
		expect(lineOf(debrief, 'eye')).toBeGreaterThan(0.8);
		expect(debrief.next.text).toMatch(/comparison vial/);
		const early = debriefed({ plan: { dropsPastEnd: -3 } });
		expect(lineOf(early, 'eye')).toBeLessThan(-0.5);
		expect(early.next.text).not.toBe(debrief.next.text);
	});

	it('two drops at once that ended before the end are no drops too many: such a test reads low', () => {
		const stream = [
			{ type: 'flow.give', size: 'stream' },
			{ type: 'tip.touchOff' },
			{ type: 'swirl.start' },
			{ type: 'swirl.stop' }
		] as const;
		const early = debriefed({ plan: { dropsPastEnd: -12 }, deeds: stream });
		expect(early.curve.stoppedMl).toBeLessThan(early.curve.endMl!);
		expect(early.reading!.value).toBeLessThan(early.trueValue);
		expect(early.slips.map(({ slip }) => slip.kind)).not.toContain('overshot');
		expect(lineOf(early, 'eye')).toBeLessThan(-0.5);
		expect(early.next.text).toMatch(/had not come all the way/);
		const late = debriefed({ plan: { dropsPastEnd: 0 }, deeds: stream });
		expect(late.curve.stoppedMl).toBeGreaterThan(late.curve.endMl!);
		expect(lineOf(late, 'slip-overshot')).toBeGreaterThan(0.3);
	});

	it('marks the slip that it sends to mend, and none where the eye is sent to look', () => {
		const bySlip = debriefed({ reported: (value: number) => value + 2 });
		expect(bySlip.next.slipKind).toBe('wrongRow');
		// Three drops early are worth −1; the slip of 0.5 is there and comes second.
		const byEye = debriefed({
			plan: { dropsPastEnd: -3 },
			reported: (value: number) => value + 0.5
		});
		expect(byEye.slips.map(({ slip }) => slip.kind)).toEqual(['wrongRow']);
		expect(byEye.next).toMatchObject({
			train: { slip: 'stoppedAtFlash', titration: 'strongAcid' },
			slipKind: null
		});
	});

	it('tells a fault of the bottle from one of the hands', () => {
		const debrief = debriefed({
			scenario: {
				truth: { water: { alkalinityDkh: 8.6 }, titrant: { strengthFactor: 1.1 } }
			}
		});
		expect(debrief.slips).toEqual([]);
		expect(lineOf(debrief, 'titrantStrength')).toBeLessThan(-0.6);
		expect(debrief.next).toMatchObject({ train: null });
		expect(debrief.next.text).toMatch(/known solution/);
	});

	it('shows the curve, with the end and the stop on it', () => {
		const { curve } = debriefed();
		expect(curve.points.length).toBeGreaterThan(50);
		expect(curve.points[0]!.readout).toBeGreaterThan(7.5);
		// A clean hand stops within the drop after the end.
		const past = curve.stoppedMl - curve.endMl!;
		expect(past).toBeGreaterThan(-0.2 * syringeKit.delivery.dropMl);
		expect(past).toBeLessThan(1.3 * syringeKit.delivery.dropMl);
	});

	it('for a drill that ends before a value has neither reading nor ledger', () => {
		const drill = madeUpScenario({ kind: 'drill', from: 'fill', until: 'fill', checks: [] });
		const run = new PlayedRun(drill);
		run.add(1000, { in: 'bench', titration: 0, action: { type: 'tip.fit', firm: true } });
		run.add(2000, { in: 'walk', titration: 0, event: { type: 'step.done', stepId: 'fill' } });
		run.inquire({ type: 'drill.ended' });
		expect(debriefOf(run.run)).toMatchObject({ reading: null, ledger: null, conclusion: null });
		expect(run.run.titrations[0]?.walk.value).toBe('valued');
	});
});

describe('a conclusion', () => {
	const concluded = (
		conclusion: Conclusion,
		plan = planOf(),
		checks: 'none' | 'second' = 'none'
	) => {
		const run = new PlayedRun(madeUpScenario()).titrate(plan);
		if (checks === 'second') run.inquire({ type: 'result.asked', check: 'secondMethod' });
		return debriefOf(run.conclude(conclusion, 70).run)!.conclusion!;
	};

	it('can be right and not yet earned', () => {
		expect(concluded('stands')).toMatchObject({
			given: 'stands',
			sure: 70,
			isRight: true,
			support: { verdict: 'notYet' }
		});
		expect(concluded('stands').wouldTellMore).not.toBeNull();
	});

	it('is earned by something independent that agrees', () => {
		expect(concluded('stands', planOf(), 'second')).toMatchObject({
			isRight: true,
			support: { verdict: 'earned' },
			wouldTellMore: null
		});
	});

	it.each(['waterChanged', 'secondMethod'] as const)(
		'that a reading stands is true as well where the right answer is %s',
		(verdict) => {
			const run = new PlayedRun({ ...madeUpScenario(), verdict }).titrate(planOf());
			const { right } = debriefOf(run.conclude('stands', 70).run)!.conclusion!;
			expect(right).toEqual([verdict, 'stands']);
		}
	);

	it('that a reading stands is wrong when own slips moved it by more than it can claim', () => {
		const slipped = planOf({ fillBy: 'line' });
		expect(concluded('stands', slipped)).toMatchObject({ isRight: false, right: ['technique'] });
		expect(concluded('technique', slipped).isRight).toBe(true);
	});
});

const files = readdirSync(new URL('../../scenarios', import.meta.url));
const cases = files
	.map((file) => new URL(`../../scenarios/${file}`, import.meta.url))
	.map((url): Scenario => ScenarioSchema.parse(JSON.parse(readFileSync(url, 'utf8'))))
	.filter((scenario) => scenario.kind === 'case');

test.each(cases.map((scenario) => [scenario.id, scenario] as const))(
	'clean hands that make every check offered earn the right conclusion of %s',
	(_id, scenario) => {
		const run = new PlayedRun(scenario, 3).titrate(cleanPlan);
		let titration = 1;
		for (const { check } of scenario.checks) {
			if (!isBenchCheck(check) || check === 'repeatQuick' || check === 'secondMethod') {
				run.inquire({ type: 'result.asked', check });
				continue;
			}
			run.inquire({ type: 'check.begun', check, titration });
			run.titrate(cleanPlan, titration).inquire({ type: 'check.done', titration });
			titration++;
		}
		run.conclude(scenario.verdict ?? 'stands');
		expect(debriefOf(run.run)?.conclusion).toMatchObject({
			isRight: true,
			support: { verdict: 'earned' }
		});
	}
);

test('a run of the first released form is loaded and played for ever', () => {
	const golden: unknown = JSON.parse(
		readFileSync(new URL('golden/run-log-1.json', import.meta.url), 'utf8')
	);
	const log = loadRunLog(golden);
	const run = replayRun(log, madeUpScenario({ kitId: dropperKit.id }));
	expect(run.refused).toBeNull();
	expect(run.titrations[0]?.walk.value).toBe('valued');
	expect(run.titrations[0]?.bench.dropsSinceFill).toBe(15);
	expect(run.inquiry.context).toEqual({
		checks: [{ check: 'secondMethod', titration: null, isDone: true }],
		conclusion: { conclusion: 'stands', sure: 60 }
	});
	expect(debriefOf(run)?.reading?.value).toBe(8.5);
});

test.each([
	['a run of another form', { format: 9 }],
	['no run', 'hello']
])('%s is refused with where it is wrong', (_what, log) => {
	expect(() => loadRunLog(log)).toThrow(/the run is damaged at/);
});
