import { earlier } from './earlier';
import type { EvidenceForm } from './form';
import { inQuestion } from './in-question';
import { addition, blank, reference } from './known-content';
import { secondMethod } from './second-method';
import {
	freshLot,
	freshSample,
	otherHands,
	otherSample,
	otherVial,
	otherWay,
	repeat
} from './test-forms';
import { weighing } from './weighing';

/** Every kind of evidence that can be typed in, in the order in which it is offered. */
export const forms = {
	inQuestion,
	repeat,
	earlier,
	secondMethod,
	reference,
	freshSample,
	freshLot,
	otherSample,
	otherWay,
	otherHands,
	otherVial,
	blank,
	addition,
	weighing
} satisfies Record<string, EvidenceForm>;

export type FormId = keyof typeof forms;
export const formIds = Object.keys(forms) as FormId[];
