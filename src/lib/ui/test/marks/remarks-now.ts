import { remarksOn, type Remark } from '$lib/procedure';
import type { TankRun } from '../run';

/**
 * What there is to say about the present titration. Somebody who reads blind hears nothing that the
 * last value would have to be known for.
 */
export function remarksNow(run: TankRun): Remark[] {
	const { titration } = run;
	return remarksOn(titration, {
		at: run.now(),
		expected: titration.purpose === 'otherPerson' ? null : run.expected,
		circumstances: run.state.circumstances
	});
}
