import { remarksOn, type Remark } from '$lib/procedure';
import type { TankRun } from '../run';

/**
 * The one remark worth the line now: a warning before a word. Somebody who reads blind hears nothing
 * for which the last value would have to be known.
 *
 * @param lookedAt when somebody last came back to the page, ms
 */
export function remarkShown(run: TankRun, lookedAt: number): Remark | null {
	const { titration, state } = run;
	const remarks = remarksOn(titration, {
		at: Math.max(lookedAt, run.now()),
		expected: titration.purpose === 'otherPerson' ? null : run.expected,
		circumstances: state.circumstances
	});
	return remarks.find(({ tone }) => tone === 'warn') ?? remarks[0] ?? null;
}
