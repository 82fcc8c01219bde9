import * as z from 'zod/mini';
import { conclusions } from '../observation';
import { PlanSchema } from './plan';
import { TruthSchema, WaterSchema } from './world';

const words = z.string().check(z.minLength(1));
const minutes = z.int().check(z.gte(1), z.lte(60));
const positive = z.number().check(z.positive());

/** A check that the learner may make in this case, with what it costs. */
export const CheckOfferSchema = z.discriminatedUnion('check', [
	z.strictObject({ check: z.literal('repeatFull'), minutes }),
	z.strictObject({ check: z.literal('repeatQuick'), minutes }),
	z.strictObject({ check: z.literal('largerSample'), minutes }),
	z.strictObject({ check: z.literal('freshLot'), minutes, titrantMl: z.optional(positive) }),
	/** Fresh water from the tank, when the first sample was not what the tank is. */
	z.strictObject({ check: z.literal('freshSample'), minutes, water: WaterSchema }),
	z.strictObject({
		check: z.literal('secondMethod'),
		minutes,
		label: words,
		/** What it reports over the truth, dKH, and what it says of itself (expanded, k = 2). */
		offset: z.number(),
		sd: z.number().check(z.nonnegative()),
		expandedUncertainty: positive,
		/** Reports carbonate alkalinity only. */
		carbonateOnly: z._default(z.boolean(), false),
		note: z.optional(words)
	}),
	z.strictObject({
		check: z.literal('reference'),
		minutes,
		label: words,
		nominal: positive,
		nominalExpandedUncertainty: positive,
		/** What it really is. */
		water: WaterSchema,
		note: z.optional(words)
	})
]);
export type CheckOffer = z.infer<typeof CheckOfferSchema>;

export const ScenarioSchema = z.strictObject({
	format: z.literal(1),
	/** Neutral for a case: it stands in addresses. */
	id: z.string().check(z.regex(/^[a-z0-9-]+$/)),
	kind: z.enum(['drill', 'case']),
	/** Names the skill of a drill; tells nothing of the cause of a case. */
	title: words,
	/** The situation as the keeper would tell it, two to four sentences. */
	opening: words,
	minutes,
	kitId: words,
	/** Drills may start in the middle of the walk and end early, for one moment's practice. */
	from: z.optional(z.enum(['measure', 'dose', 'fill', 'titrate', 'read'])),
	until: z.optional(z.enum(['measure', 'dose', 'fill', 'titrate', 'read'])),
	/** The kinds of slip that this drill is about. */
	skills: z._default(z.array(words), []),
	coaching: z._default(z.enum(['prompted', 'corrected', 'silent']), 'corrected'),
	truth: TruthSchema,
	/** Readings from before, done on this bench by the hands given, on this water. */
	earlier: z._default(
		z.array(
			z.strictObject({
				label: words,
				daysAgo: z.number().check(z.nonnegative()),
				/** By this kit and these hands; the record says only what such a keeper would write. */
				hands: PlanSchema,
				note: z.optional(words),
				/** The water of that day, if it was another. */
				water: z.optional(WaterSchema)
			})
		),
		[]
	),
	/** Which reading is in question: the learner's own, or the last of the earlier ones. */
	inQuestion: z._default(z.enum(['own', 'earlier']), 'own'),
	checks: z._default(z.array(CheckOfferSchema), []),
	/** What is right to conclude when the learner's own hands made no slip that matters. */
	verdict: z.optional(z.enum(conclusions)),
	/** Shown after the conclusion: the cause, the remedy, in plain words. */
	reveal: z.optional(words)
});
export type Scenario = z.infer<typeof ScenarioSchema>;
