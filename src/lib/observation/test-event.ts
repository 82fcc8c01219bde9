import * as z from 'zod/mini';
import { CircumstancesSchema } from './circumstances';
import { MarksSchema } from './marks';
import { TakenOffSchema, thingsInCommon } from './taken-off';
import { WalkEventSchema } from './walk-event';

/**
 * Everything of a test beside the tank that was done or said. A test is one sample's worth of water
 * and one kit, with one titration or more: repeats and other people's belong to it.
 */
export const titrationPurposes = ['first', 'repeat', 'otherPerson', 'freshSample'] as const;
export type TitrationPurpose = (typeof titrationPurposes)[number];

export const TestEventSchema = z.discriminatedUnion('in', [
	z.strictObject({
		in: z.literal('before'),
		event: z.discriminatedUnion('type', [
			/** Takes the place of all that was noted before it. */
			z.strictObject({
				type: z.literal('circumstances.noted'),
				circumstances: CircumstancesSchema
			}),
			/** On to the walk, with what was noted or without. */
			z.strictObject({ type: z.literal('circumstances.passed') })
		])
	}),
	z.strictObject({ in: z.literal('walk'), titration: z.int(), event: WalkEventSchema }),
	z.strictObject({
		in: z.literal('test'),
		event: z.discriminatedUnion('type', [
			/** A further titration in the same test; the first begins by itself. */
			z.strictObject({
				type: z.literal('titration.begun'),
				titration: z.int(),
				purpose: z.enum(titrationPurposes),
				by: z.optional(z.string())
			}),
			/** A titration that shall not count, for a reason found at the bench; undone like any entry. */
			z.strictObject({
				type: z.literal('titration.setAside'),
				titration: z.int(),
				because: z.string()
			}),
			/** Somebody else read the same glass without seeing what the first wrote down. */
			z.strictObject({
				type: z.literal('marks.readByOther'),
				titration: z.int(),
				by: z.string(),
				marks: MarksSchema
			}),
			/**
			 * Another value was taken off this one: what is left is what the keeper is after. A later one
			 * takes the place of an earlier; undone like any entry.
			 */
			z.strictObject({
				type: z.literal('difference.taken'),
				less: TakenOffSchema,
				inCommon: z.array(z.enum(thingsInCommon))
			}),
			z.strictObject({ type: z.literal('note.written'), text: z.string() }),
			/** The person is done with it: it goes to the log. */
			z.strictObject({ type: z.literal('test.closed') }),
			z.strictObject({ type: z.literal('test.removed') })
		])
	})
]);
export type TestEvent = z.infer<typeof TestEventSchema>;
