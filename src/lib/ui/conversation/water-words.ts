import type { WaterTold } from '$lib/judgement';
import { capital } from './catalogue';

export type ToldCause = WaterTold['causes'][number];

/** What the causes are under. */
export const waterTitle = ({ direction }: Pick<WaterTold, 'direction'>): string =>
	direction === 'falls'
		? 'If the water really fell'
		: direction === 'rises'
			? 'If the water really rose'
			: 'If the water really changed';

/** How a cause shows itself: 'Look for: haze; or a dose went in fast.' */
export const signsOf = ({ shownBy }: Pick<ToldCause, 'shownBy'>): string =>
	`Look for: ${shownBy.join('; or ')}.`;

/** Before the remedy of what cannot wait: without a condition only where an answer speaks for it. */
export const urgencyOf = ({ isUrgent, isSpokenFor }: ToldCause): string | null =>
	!isUrgent ? null : isSpokenFor ? 'Do not wait.' : 'If you see that, do not wait.';

/** A cause on one line, for the report. */
export const causeLine = (cause: ToldCause): string =>
	[
		`${capital(cause.name)}${cause.isSpokenFor ? ' (an answer speaks for it)' : ''}.`,
		signsOf(cause),
		urgencyOf(cause),
		cause.remedy
	]
		.filter(Boolean)
		.join(' ');

/**
 * Those that are shown at once, and those that are folded: where answers speak for some, the others wait,
 * but never one that is urgent.
 */
export function shownAndFolded({ causes }: Pick<WaterTold, 'causes'>): {
	shown: ToldCause[];
	folded: ToldCause[];
} {
	const isAnySpokenFor = causes.some(({ isSpokenFor }) => isSpokenFor);
	const isShown = (each: ToldCause) => !isAnySpokenFor || each.isSpokenFor || each.isUrgent;
	return { shown: causes.filter(isShown), folded: causes.filter((each) => !isShown(each)) };
}
