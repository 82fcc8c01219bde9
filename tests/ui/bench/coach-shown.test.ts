import { describe, expect, test } from 'vitest';
import type { WalkEvent } from '../../../src/lib/observation';
import { coachShown } from '../../../src/lib/ui/bench/coach-shown';
import { madeUpScenario, PlayedRun } from '../played-run';

/** A run whose syringe was filled to a mark of its own, called done, and pushed until nothing comes. */
function emptiedFrom(sealMl: number): PlayedRun {
	const run = new PlayedRun(madeUpScenario());
	const say = (event: WalkEvent) => run.add(run.run.at + 1000, { in: 'walk', titration: 0, event });
	const does = (seconds: number, action: object) =>
		run.add(run.run.at + seconds * 1000, { in: 'bench', titration: 0, action } as never);
	for (const { id, kind } of run.run.titrations[0]!.steps) {
		if (kind === 'fill') break;
		say({ type: 'step.done', stepId: id });
	}
	does(1, { type: 'tip.fit', firm: true });
	does(3, { type: 'titrant.draw', sealMl, end: 'inTitrant' });
	say({ type: 'filling.done' });
	say({ type: 'step.done', stepId: 'fill' });
	does(1, { type: 'flow.start' });
	does(60, { type: 'flow.stop' });
	return run;
}
const shown = (run: PlayedRun, way: 'prompted' | 'corrected' | 'silent' = 'corrected') =>
	coachShown(run.run.titrations[0]!, way).map(({ text }) => text);

describe('a syringe that was filled beside every mark and runs empty', () => {
	test.each(['prompted', 'corrected', 'silent'] as const)(
		'is said to be empty, whatever was noted earlier, when %s',
		(way) => {
			expect(shown(emptiedFrom(0.5), way)).toEqual([
				'It is empty. Fill it again and go on, or stop here.'
			]);
		}
	);
	test('filled again, what was noted earlier stands there as before', () => {
		const run = emptiedFrom(0.5);
		run.add(run.run.at + 2000, {
			in: 'bench',
			titration: 0,
			action: { type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }
		});
		expect(shown(run).join(' ')).not.toContain('It is empty');
		expect(shown(run)).toHaveLength(1);
	});
});
