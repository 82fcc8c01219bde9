import * as z from 'zod/mini';
import { UnitSchema } from '../kits';
import { EvidenceSchema } from './evidence';

/**
 * Everything that was said while a reading was checked. Like a test it is a log of what happened;
 * what is believed because of it is computed from it, never stored.
 */
const text = z.string().check(z.maxLength(2000));
const positive = z.number().check(z.positive());
const notNegative = z.number().check(z.nonnegative());

/** What is known of the tank, as far as a correction would need it. Left out is not known. */
export const TankSchema = z.strictObject({
	waterL: z.optional(positive),
	waterExpandedUncertaintyL: z.optional(notNegative),
	bandLow: z.optional(positive),
	bandHigh: z.optional(positive),
	/** Unit of the band, the target, consumption and dosing. */
	unit: z.optional(UnitSchema),
	target: z.optional(positive),
	consumptionPerDay: z.optional(notNegative),
	dosedPerDay: z.optional(notNegative),
	/** The person's own limit to the net rise a day. */
	maxRisePerDay: z.optional(positive),
	/** Water that evaporates in a day, L. */
	evaporationLPerDay: z.optional(notNegative),
	salinity: z.optional(z.number().check(z.minimum(0), z.maximum(60))),
	temperatureC: z.optional(z.number().check(z.minimum(0), z.maximum(45))),
	ph: z.optional(z.number().check(z.minimum(6), z.maximum(10))),
	hasStonyCorals: z.optional(z.boolean()),
	who: z.optional(z.enum(['keeper', 'sitter', 'child']))
});
export type Tank = z.infer<typeof TankSchema>;

/** What would be added to the tank. */
export const MeansSchema = z.discriminatedUnion('by', [
	z.strictObject({ by: z.literal('bicarbonate'), purity: z.number().check(z.gt(0), z.lte(1)) }),
	z.strictObject({
		by: z.literal('carbonate'),
		hydrate: z.enum(['anhydrous', 'monohydrate', 'decahydrate']),
		purity: z.number().check(z.gt(0), z.lte(1))
	}),
	z.strictObject({ by: z.literal('limewater') }),
	z.strictObject({
		by: z.literal('calciumChloride'),
		hydrate: z.enum(['anhydrous', 'dihydrate', 'hexahydrate']),
		purity: z.number().check(z.gt(0), z.lte(1))
	}),
	z.strictObject({
		by: z.literal('magnesiumChloride'),
		hydrate: z.enum(['anhydrous', 'hexahydrate']),
		purity: z.number().check(z.gt(0), z.lte(1))
	}),
	z.strictObject({
		by: z.literal('magnesiumSulfate'),
		hydrate: z.enum(['anhydrous', 'heptahydrate']),
		purity: z.number().check(z.gt(0), z.lte(1))
	}),
	/** `risePerMlIn100L`: rise that its label promises of 1 mL in 100 L, in the unit of the band. */
	z.strictObject({ by: z.literal('product'), risePerMlIn100L: positive }),
	z.strictObject({
		by: z.literal('waterChange'),
		/** Of the new water, measured. */
		newValue: notNegative,
		share: z.number().check(z.gt(0), z.lte(1))
	})
]);

/** A share is from 0 to 1; values are in the unit of the tank's band. */
export type Means = z.infer<typeof MeansSchema>;

/** How the animals look. It is evidence of little weight, and lags by a week or two. */
export const livestockLooks = ['well', 'someTroubled', 'manyTroubled', 'notLooked'] as const;
export type LivestockLook = (typeof livestockLooks)[number];

export const CheckEventSchema = z.discriminatedUnion('type', [
	/** A piece of evidence; the test in question is the first of kind 'test' from 'first'. */
	z.strictObject({
		type: z.literal('evidence.given'),
		evidence: EvidenceSchema,
		/** The stored test it came from. */
		testId: z.optional(z.string())
	}),
	/**
	 * Checks and questions, by their ids, that the person cannot do or answer. Takes the place of all
	 * that was left out before; empty puts everything back at hand.
	 */
	z.strictObject({
		type: z.literal('checks.leftOut'),
		ids: z.array(z.string().check(z.minLength(1), z.maxLength(200))).check(z.maxLength(200))
	}),
	/** Nobody is sure which unit the reading in question is in. */
	z.strictObject({ type: z.literal('unit.doubted'), isDoubted: z.boolean() }),
	/** Takes the place of all that was said of the tank before. */
	z.strictObject({ type: z.literal('tank.described'), tank: TankSchema }),
	z.strictObject({
		type: z.literal('livestock.seen'),
		look: z.enum(livestockLooks)
	}),
	/** Haze, gasping fish, a stuck doser: something that needs no number. */
	z.strictObject({ type: z.literal('emergency.seen'), isSeen: z.boolean() }),
	/** Takes the place of what was chosen before; null while it is not all told what is added. */
	z.strictObject({ type: z.literal('means.chosen'), means: z.nullable(MeansSchema) }),
	z.strictObject({ type: z.literal('note.written'), text }),
	/** The person is done with it: it goes to the log. */
	z.strictObject({ type: z.literal('check.closed') }),
	z.strictObject({ type: z.literal('check.removed') })
]);
export type CheckEvent = z.infer<typeof CheckEventSchema>;
