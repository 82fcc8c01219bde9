import * as z from 'zod/mini';

/**
 * A way of working, without the water it meets: what hands do the same whatever happens (open-loop),
 * and the rules by which they pursue an aim (to fill to a mark, to stop at a colour, to read a mark)
 * with their habitual deviation from it.
 */
export const PlanSchema = z.strictObject({
	volumeId: z.optional(z.string()),
	rinseVial: z._default(z.enum(['sample', 'purified', 'tap', 'none']), 'sample'),
	rinseSampler: z._default(z.enum(['sample', 'purified', 'tap', 'none']), 'sample'),
	/** Sample over its mark, mL, and air in the sample syringe, mL. */
	sampleOffMl: z._default(z.number(), 0),
	sampleAirMl: z._default(z.number(), 0),
	/** Indicator doses over the leaflet's. */
	extraIndicator: z._default(z.int(), 0),
	/** Doses over the leaflet's of what makes the pH: base, buffer. */
	extraPhReagent: z._default(z.int(), 0),
	/** Time stood after a reagent over what the leaflet asks. */
	waitShare: z._default(z.number(), 1),
	tipFitted: z._default(z.enum(['before', 'after', 'loose']), 'before'),
	fillBy: z._default(z.enum(['seal', 'line']), 'seal'),
	/** Beyond the full mark by whatever it was filled by, mL. */
	fillOffMl: z._default(z.number(), 0),
	airDrawnMl: z._default(z.number(), 0),
	wiped: z._default(z.boolean(), true),
	/** Swirl after each drop near the end, ms; 0 for a vial that is left standing. */
	swirlMs: z._default(z.number(), 2000),
	/** Drops past the first that brings the end colour; below 0, a flash was taken for it. */
	dropsPastEnd: z._default(z.number(), 0),
	/** Answers a fading colour with one more drop, for so many rounds of waiting and swirling. */
	chaseRounds: z._default(z.int(), 0),
	touchedOff: z._default(z.boolean(), true),
	tiltDegrees: z._default(z.number(), 0),
	squeezedHard: z._default(z.boolean(), false),
	readBy: z._default(z.enum(['seal', 'line']), 'seal'),
	/** What is typed over what stands there, mL, or drops for a dropper. */
	readOff: z._default(z.number(), 0),
	scaleReversed: z._default(z.boolean(), false),
	/** Reckons with the last filling alone. */
	refillsForgotten: z._default(z.boolean(), false)
});
export type Plan = z.infer<typeof PlanSchema>;

/** Hands that make no mistake. */
export const cleanPlan: Plan = PlanSchema.parse({});
