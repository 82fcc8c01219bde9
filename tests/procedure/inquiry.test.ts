import fc from 'fast-check';
import { transition } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import { describe, expect, it } from 'vitest';
import {
	inquiryMachine,
	startInquiry,
	stepInquiry,
	type InquiryEvent,
	type InquirySnapshot
} from '../../src/lib/procedure';

const events: InquiryEvent[] = [
	{ type: 'reading.given' },
	{ type: 'check.begun', check: 'repeatFull', titration: 1 },
	{ type: 'check.begun', check: 'reference', titration: 2 },
	{ type: 'check.done', titration: 1 },
	{ type: 'check.done', titration: 2 },
	{ type: 'result.asked', check: 'secondMethod' },
	{ type: 'conclusion.given', conclusion: 'stands', sure: 60 },
	{ type: 'drill.ended' }
];
const placeOf = (snapshot: InquirySnapshot) => JSON.stringify(snapshot.value);
const paths = getShortestPaths(inquiryMachine, { events, serializeState: placeOf });

describe('the inquiry', () => {
	it('reaches every state, and ends', () => {
		expect(new Set(paths.map(({ state }) => state.value))).toEqual(
			new Set(['working', 'checking', 'testing', 'concluded'])
		);
		expect(paths.find(({ state }) => state.value === 'concluded')?.state.status).toBe('done');
	});

	it('takes every refused event without harm', () => {
		let refusals = 0;
		for (const { state } of paths)
			for (const event of events) {
				if (state.status === 'active' && state.can(event)) continue;
				expect(stepInquiry(state, event)).toBeNull();
				const [after] = transition(inquiryMachine, state, event);
				expect(after.value).toEqual(state.value);
				expect(after.context).toEqual(state.context);
				refusals++;
			}
		expect(refusals).toBeGreaterThan(10);
	});

	it('lets one go on checking as long as one likes before concluding', () => {
		fc.assert(
			fc.property(fc.array(fc.constantFrom(...events), { maxLength: 60 }), (picks) => {
				let snapshot = stepInquiry(startInquiry(), { type: 'reading.given' })!;
				let begun = 0;
				for (const event of picks) {
					const next = stepInquiry(snapshot, event);
					if (next && (event.type === 'check.begun' || event.type === 'result.asked')) begun++;
					snapshot = next ?? snapshot;
				}
				expect(snapshot.context.checks).toHaveLength(begun);
				// A conclusion is there exactly when one was given.
				if (snapshot.context.conclusion !== null) expect(snapshot.value).toBe('concluded');
			}),
			{ numRuns: 200 }
		);
	});

	it('keeps what was concluded and how sure', () => {
		const checking = stepInquiry(startInquiry(), { type: 'reading.given' })!;
		const done = stepInquiry(checking, {
			type: 'conclusion.given',
			conclusion: 'reagent',
			sure: 35
		});
		expect(done?.context.conclusion).toEqual({ conclusion: 'reagent', sure: 35 });
	});
});
