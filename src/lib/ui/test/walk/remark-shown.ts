import { remarksOn, type Remark } from '$lib/procedure';
import type { TankRun } from '../run';

/** The screen itself asks about a pause, and says what comes after the end. */
const saidElsewhere = ['titrate.pause', 'titrate.after'];

/**
 * The one remark worth the line now: a warning before a word. Somebody who reads blind hears nothing
 * for which the last value would have to be known.
 *
 * @param lookedAt when somebody last came back to the page, ms
 * @param isWanted leaves out what has no place on this screen
 */
export function remarkShown(
	run: TankRun,
	lookedAt: number,
	isWanted: (remark: Remark) => boolean = () => true
): Remark | null {
	const { titration, state } = run;
	const remarks = remarksOn(titration, {
		at: Math.max(lookedAt, run.now()),
		expected: titration.purpose === 'otherPerson' ? null : run.expected,
		circumstances: state.circumstances
	});
	const others = remarks.filter((each) => !saidElsewhere.includes(each.id) && isWanted(each));
	return others.find(({ tone }) => tone === 'warn') ?? others[0] ?? null;
}
