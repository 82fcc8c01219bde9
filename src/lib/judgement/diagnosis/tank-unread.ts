import type { Analysis } from './analysis';

/** An account that leaves so much of what was thought of tanks beforehand has learned nothing of this one; judgement. */
const LEFT_AS_BEFORE = 0.8;
/** From here on it is likelier than not that nothing was learned of it. */
const LIKELY = 0.5;

/**
 * Probably nothing that was read bears on the tank: what was in the cup was of another water, or what was
 * read says less than is known of tanks anyway. What is then believed of the tank is what was believed
 * of any, however it was come by.
 */
export function isTankUnread({ components, weights, model }: Analysis): boolean {
	const least = LEFT_AS_BEFORE ** 2 * model.tankVariance;
	let unread = 0;
	for (let i = 0; i < components.length; i++)
		if (components.tankVariance[i]! >= least) unread += weights[i]!;
	return unread >= LIKELY;
}
