import { runHands, type BenchAction, type BenchActionType } from '../../src/lib/bench';
import { valueFromMark, type Kit, type StepKind } from '../../src/lib/kits';
import type { Marks, WalkEvent } from '../../src/lib/observation';
import { standingMarks, stepOf, type TitrationRun } from '../../src/lib/procedure';
import { madeUpScenario, PlayedRun, planOf } from '../ui/played-run';

const kindOf: Partial<Record<BenchActionType, StepKind>> = {
	'sample.choose': 'choose',
	'sample.draw': 'measure',
	'sample.pour': 'measure',
	'sample.fillToLine': 'measure',
	'reagent.dose': 'dose',
	'tip.fit': 'fill',
	'titrant.draw': 'fill',
	'burette.fill': 'fill',
	'flow.give': 'titrate'
};

/** How a titration at the bench differs from a clean one. */
export type Different = {
	plan?: Record<string, unknown>;
	scenario?: Record<string, unknown>;
	seed?: number;
	/** Done at the bench after the drops, before the end is declared. */
	deeds?: readonly BenchAction[];
	/** From the last deed to the word that it stays, seconds. */
	waitSeconds?: number;
	/** Said, and done, between a first declared end and the last. */
	between?: readonly (WalkEvent | BenchAction)[];
	typed?: (marks: Marks) => Marks;
	reported?: (value: number) => number;
};

/** A whole titration at the bench with a kit, as its log makes it. */
export function titrated(kit: Kit, different: Different = {}): PlayedRun {
	const run = new PlayedRun(
		madeUpScenario({ kitId: kit.id, ...different.scenario }),
		different.seed ?? 5
	);
	const now = () => run.run.titrations[0]!;
	const say = (event: WalkEvent, seconds = 1) =>
		run.add(run.run.at + seconds * 1000, { in: 'walk', titration: 0, event });
	const act = (action: BenchAction, at: number) =>
		run.add(at, { in: 'bench', titration: 0, action });
	const goOnTo = (kind: StepKind) => {
		for (;;) {
			const step = stepOf(now().walk.context);
			if (!step || step.kind === kind) return;
			if (
				!now()
					.steps.slice(now().steps.indexOf(step))
					.some((each) => each.kind === kind)
			)
				return;
			say({ type: 'step.done', stepId: step.id }, 0);
		}
	};
	const done = runHands(now().bench, planOf(different.plan));
	for (const { at, action } of done.actions) {
		const kind = kindOf[action.type];
		if (kind) goOnTo(kind);
		act(action, at);
	}
	goOnTo('titrate');
	run.add(done.state.at, { in: 'walk', titration: 0, event: { type: 'colour.turned' } });
	for (const deed of different.deeds ?? []) act(deed, run.run.at + 1500);
	if (different.between) {
		say({ type: 'colour.stayed' }, 30);
		for (const each of different.between)
			if (isSaid(each)) say(each, 2);
			else act(each, run.run.at + 2000);
	}
	say({ type: 'colour.stayed' }, different.waitSeconds ?? 30);
	say({ type: 'step.done', stepId: 'titrate' });
	const stands =
		different.deeds || different.between ? asItStands(kit, now(), done.marks) : done.marks;
	const marks = different.typed?.(stands) ?? stands;
	say({ type: 'marks.read', marks }, 10);
	const end = { ...marks, markMl: marks.sealMl ?? marks.lineMl ?? marks.levelMl };
	const { sampleVolumeMl, refilledMl } = done;
	const { value } = valueFromMark(kit, { ...end, sampleVolumeMl, refilledMl });
	const rounded = Number(value.toFixed(1));
	return say({
		type: 'value.reported',
		value: different.reported?.(rounded) ?? rounded,
		unit: kit.unit
	}) as PlayedRun;
}

/** The same marks as an eye would write them now, to half a division. */
function asItStands(kit: Kit, { bench }: TitrationRun, like: Marks): Marks {
	const step = kit.delivery.by === 'dropper' ? 1 : kit.delivery.graduationMl / 2;
	const stands: Record<string, number | undefined> = standingMarks(bench);
	return Object.fromEntries(
		Object.keys(like).map((mark) => [
			mark,
			Number((Math.round((stands[mark] ?? 0) / step) * step).toFixed(4))
		])
	);
}

const isSaid = (each: WalkEvent | BenchAction): each is WalkEvent =>
	each.type.startsWith('colour.');
