import { stepTimes } from './step-times';
import type { TankTitration } from './tank-test';
import { titrantWordsOf } from './tank-titrant-words';

/** From so many minutes on a pause counts as an interruption (common practice, no source). */
export const INTERRUPTED_AFTER_MIN = 5;

export type Interruption = {
	/** Whole minutes. */
	minutes: number;
	/** The last drop or word of the drops; or, with none noted yet, the measuring of the sample. */
	since: 'drop' | 'sample';
	advice: string;
};

/**
 * A pause in the drops that is long enough to matter: more than five minutes since the last drop or
 * word of them, or, before the first, since the sample was measured and the leaflet's own waits
 * were over. Only while drops are being added: later the colour has been declared, and a pause
 * changes nothing.
 *
 * @param at now, ms since 1970
 */
export function interruptionIn(titration: TankTitration, at: number): Interruption | null {
	const { kit, walk, steps } = titration;
	if (walk.status !== 'active' || !walk.matches('titrating')) return null;
	if (walk.matches({ titrating: 'holding' })) return null;
	const times = stepTimes(titration);
	const { happened } = walk.context;
	const began = happened.findLastIndex(({ type }) => type.startsWith('step.'));
	const last = happened.slice(began + 1).findLast(({ type }) => isOfDrops(type));
	const measure = steps.find(({ kind }) => kind === 'measure');
	const measuredAt = (measure && times.get(measure.id)?.until) ?? walk.context.startedAt;
	const asked = steps.reduce((sum, step) => sum + ('seconds' in step ? step.seconds : 0), 0);
	const since = last?.at ?? measuredAt + asked * 1000;
	const minutes = Math.floor((at - since) / 60_000);
	if (minutes < INTERRUPTED_AFTER_MIN) return null;
	return {
		minutes: last ? minutes : Math.floor((at - measuredAt) / 60_000),
		since: last ? 'drop' : 'sample',
		advice: last ? titrantWordsOf(kit).paused : SINCE_SAMPLE
	};
}

// Hands that count later note no drop: whether the vial stood, they alone know. Before any titrant
// went in, nothing leaves.
const SINCE_SAMPLE =
	'No drop is noted yet. If some went in and the vial stood since, a fresh sample is surer.';

/** Words by which hands show that they are at the drops; a step that just began says nothing. */
function isOfDrops(type: string): boolean {
	return ['titrant.', 'drop.', 'colour.', 'vial.'].some((words) => type.startsWith(words));
}
