import type { StepKind } from '$lib/kits';
import { presentTitration, type TestState } from '$lib/procedure';

const stepWords: Record<StepKind, string> = {
	choose: 'choose the sample',
	rinse: 'rinse',
	measure: 'measure the water',
	dose: 'add the reagent',
	mix: 'swirl',
	wait: 'wait',
	fill: 'fill',
	titrate: 'titrate',
	read: 'read the mark'
};

/** Where a test stands, for a list: 'step 5, swirl'. */
export function whereOf(state: TestState): string {
	if (state.phase === 'before') return 'before the first step';
	if (state.phase === 'closed') return 'done';
	if (state.phase === 'result') return 'the result';
	const { steps, walk } = presentTitration(state);
	const { stepIndex } = walk.context;
	const step = steps[stepIndex];
	return step ? `step ${stepIndex + 1}, ${stepWords[step.kind]}` : 'the result';
}
