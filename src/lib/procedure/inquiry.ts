import { assign, initialTransition, setup, transition, type SnapshotFrom } from 'xstate';
import * as z from 'zod/mini';
import {
	benchCheckIds,
	conclusions,
	practiceCheckIds,
	type Conclusion,
	type PracticeCheckId
} from '../observation';

/** What the learner decides after the reading: which check, and what to conclude. */
export const InquiryEventSchema = z.discriminatedUnion('type', [
	/** The first titration is over and valued. */
	z.strictObject({ type: z.literal('reading.given') }),
	/** A check that is done at the bench begins; its titration bears the number given. */
	z.strictObject({
		type: z.literal('check.begun'),
		check: z.enum(benchCheckIds),
		titration: z.int()
	}),
	/** That titration is over. */
	z.strictObject({ type: z.literal('check.done'), titration: z.int() }),
	/** A check that gives its result at once. */
	z.strictObject({ type: z.literal('result.asked'), check: z.enum(practiceCheckIds) }),
	z.strictObject({
		type: z.literal('conclusion.given'),
		conclusion: z.enum(conclusions),
		/** How sure, per cent. */
		sure: z.int().check(z.gte(0), z.lte(100))
	}),
	/** A drill that ends without a value. */
	z.strictObject({ type: z.literal('drill.ended') })
]);
export type InquiryEvent = z.infer<typeof InquiryEventSchema>;

export type InquiryContext = {
	/** Checks in the order they were made; bench checks with the number of their titration. */
	checks: readonly { check: PracticeCheckId; titration: number | null; isDone: boolean }[];
	conclusion: { conclusion: Conclusion; sure: number } | null;
};

/** The second machine: reading → checks → conclusion. It takes finished walks as evidence. */
export const inquiryMachine = setup({
	types: { context: {} as InquiryContext, events: {} as InquiryEvent },
	actions: {
		begin: assign({
			checks: ({ context, event }) =>
				event.type === 'check.begun'
					? [...context.checks, { check: event.check, titration: event.titration, isDone: false }]
					: context.checks
		}),
		finish: assign({
			checks: ({ context, event }) =>
				event.type === 'check.done'
					? context.checks.map((each) =>
							each.titration === event.titration ? { ...each, isDone: true } : each
						)
					: context.checks
		}),
		take: assign({
			checks: ({ context, event }) =>
				event.type === 'result.asked'
					? [...context.checks, { check: event.check, titration: null, isDone: true }]
					: context.checks
		}),
		conclude: assign({
			conclusion: ({ event }) =>
				event.type === 'conclusion.given'
					? { conclusion: event.conclusion, sure: event.sure }
					: null
		})
	}
}).createMachine({
	id: 'inquiry',
	context: { checks: [], conclusion: null },
	initial: 'working',
	states: {
		working: { on: { 'reading.given': 'checking', 'drill.ended': 'concluded' } },
		checking: {
			on: {
				'check.begun': { target: 'testing', actions: 'begin' },
				'result.asked': { actions: 'take' },
				'conclusion.given': { target: 'concluded', actions: 'conclude' },
				'drill.ended': 'concluded'
			}
		},
		testing: { on: { 'check.done': { target: 'checking', actions: 'finish' } } },
		concluded: { type: 'final' }
	}
});
export type InquirySnapshot = SnapshotFrom<typeof inquiryMachine>;

export function startInquiry(): InquirySnapshot {
	return initialTransition(inquiryMachine)[0];
}

/** The inquiry after an event, or null when it does not belong there. */
export function stepInquiry(
	snapshot: InquirySnapshot,
	event: InquiryEvent
): InquirySnapshot | null {
	return snapshot.status === 'active' && snapshot.can(event)
		? transition(inquiryMachine, snapshot, event)[0]
		: null;
}
