import { stepOf, type TitrationRun } from '$lib/procedure';
import { stepTitle } from './stations';

/** Where a titration was left, for somebody who comes back to it. It tells what hands did, no more. */
export function asLeft(titration: TitrationRun): string {
	const step = stepOf(titration.walk.context);
	const parts: string[] = [];
	if (step) parts.push(stepTitle(step, titration.bench.kit).toLowerCase());
	const { bench } = titration;
	// Whoever counts drops for the value has to know them; elsewhere it only helps to find the place.
	if (bench.dropsSinceFill > 0)
		parts.push(bench.dropsSinceFill === 1 ? '1 drop' : `${bench.dropsSinceFill} drops`);
	if (bench.dropsSinceFill === 0)
		for (const { id, name } of bench.kit.reagents)
			if (bench.doses[id]) parts.push(`${name} in (${bench.doses[id]})`);
	if (bench.dropsSinceFill > 0)
		parts.push(bench.swirledSinceDropS > 0.3 ? 'swirled' : 'not swirled since');
	if (bench.delivery.hangingMl > 0) parts.push('something hangs at the tip');
	return `As you left it: ${parts.join(', ')}.`;
}

/** A line for a list of runs: 'step 5, drop'. */
export function placeOf(titration: TitrationRun): string {
	const { stepIndex, steps } = titration.walk.context;
	const step = stepOf(titration.walk.context);
	return step
		? `step ${stepIndex + 1} of ${steps.length}, ${stepTitle(step, titration.bench.kit).toLowerCase()}`
		: 'read';
}
