import type { TankTitration } from './tank-test';

/** When a step began and how it ended, so far. */
export type StepTime = {
	since: number;
	/** Null while it goes on. */
	until: number | null;
	ended: 'done' | 'skipped' | null;
};

/** Times of the steps reached so far, by id, ms. */
export function stepTimes({ walk, steps }: TankTitration): ReadonlyMap<string, StepTime> {
	const times = new Map<string, StepTime>();
	let since = walk.context.startedAt;
	const ends = walk.context.happened.filter(({ type }) =>
		['step.done', 'step.skipped', 'value.reported'].includes(type)
	);
	for (const [i, step] of steps.entries()) {
		const end = ends[i];
		const ended = end ? (end.type === 'step.skipped' ? 'skipped' : 'done') : null;
		times.set(step.id, { since, until: end?.at ?? null, ended });
		if (!end) break;
		since = end.at;
	}
	return times;
}
