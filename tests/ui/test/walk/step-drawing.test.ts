import { cleanup, render } from '@testing-library/svelte';
import { afterEach, expect, test } from 'vitest';
import {
	houseCalciumKit,
	houseSyringeKit,
	stepsOf,
	type Kit,
	type Step
} from '../../../../src/lib/kits';
import StepDrawing from '../../../../src/lib/ui/test/walk/StepDrawing.svelte';

afterEach(cleanup);

const doseOf = (kit: Kit, reagentId: string) =>
	stepsOf(kit).find(
		(step): step is Extract<Step, { kind: 'dose' }> =>
			step.kind === 'dose' && step.reagentId === reagentId
	)!;
const drawn = (kit: Kit, reagentId: string) => {
	const step = doseOf(kit, reagentId);
	const { container } = render(StepDrawing, { step, sampleVolumeMl: 8 });
	const count = (selector: string) => container.querySelectorAll(selector).length;
	return { amount: step.amount, drops: count('.drop'), spoons: count('.spoon') };
};

test('a powder is drawn on its spoons, and no drop falls', () => {
	expect(drawn(houseCalciumKit, 'indicator')).toEqual({ amount: 2, drops: 0, spoons: 2 });
});
test('drops are drawn one by one, or as one where they are many', () => {
	expect(drawn(houseSyringeKit, 'indicator')).toEqual({ amount: 3, drops: 3, spoons: 0 });
	expect(drawn(houseCalciumKit, 'base')).toEqual({ amount: 14, drops: 1, spoons: 0 });
});
