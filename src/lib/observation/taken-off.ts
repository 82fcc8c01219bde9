import * as z from 'zod/mini';
import { AnalyteSchema, UnitSchema } from '../kits';
import { CircumstancesSchema } from './circumstances';

/**
 * A value that was taken off another: calcium off calcium and magnesium together. It is frozen as it
 * was known when somebody took it, so that what followed from it can be understood at any time.
 */
const notNegative = z.number().check(z.nonnegative());

export const TakenOffSchema = z.strictObject({
	analyte: AnalyteSchema,
	value: notNegative,
	unit: UnitSchema,
	standardUncertainty: notNegative,
	/** About 95 %, as it was shown then. */
	expandedUncertainty: notNegative,
	/** Infinite where left out. */
	degreesOfFreedom: z.optional(z.number().check(z.positive())),
	/** What lasting causes make of it, by line of the budget: standard uncertainties, in `unit`. */
	shared: z.optional(z.record(z.string(), notNegative)),
	/** What falls anew at each test: a standard deviation, of the mean where it is one. */
	scatter: z.optional(notNegative),
	from: z.discriminatedUnion('is', [
		z.strictObject({
			is: z.literal('test'),
			testId: z.string(),
			testedAtEpochMs: z.int().check(z.nonnegative()),
			kitId: z.string(),
			isSuspect: z.boolean(),
			salinity: CircumstancesSchema.shape.salinity
		}),
		/** Typed: of a measurement elsewhere, or what the tank is taken to hold. */
		z.strictObject({ is: z.literal('typed'), isAssumed: z.boolean() })
	])
});
export type TakenOff = z.infer<typeof TakenOffSchema>;

/** What two tests may have in common, so that its error is in both. */
export const thingsInCommon = ['sampler', 'titrant', 'delivery', 'hands'] as const;
export type ThingInCommon = (typeof thingsInCommon)[number];
