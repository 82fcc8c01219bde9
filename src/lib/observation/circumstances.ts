import * as z from 'zod/mini';
import { UnitSchema } from '../kits';

/**
 * What is worth knowing before any number: whose water, taken when, under which light, by whom.
 * Everything may be left out; what is left out was not said.
 */
const text = z.string().check(z.maxLength(200));
const hours = z.number().check(z.nonnegative(), z.maximum(10_000));

/** What a known solution is made of, which moves the colour at the end. */
export const MatrixSchema = z.enum(['seawater', 'purified', 'sodiumChloride']);
export type Matrix = z.infer<typeof MatrixSchema>;

/** A solution of known content, as its maker or its label states it. */
export const KnownSolutionSchema = z.strictObject({
	nominal: z.number().check(z.positive()),
	/** Of the nominal content, about 95 % (k = 2), in the same unit. */
	expandedUncertainty: z.number().check(z.positive()),
	unit: UnitSchema,
	matrix: MatrixSchema,
	/** Tells one solution from another. */
	name: z.optional(text)
});
export type KnownSolution = z.infer<typeof KnownSolutionSchema>;

export const watersTested = ['tank', 'topOff', 'newMix', 'reference', 'other'] as const;
export type WaterTested = (typeof watersTested)[number];

export const CircumstancesSchema = z.strictObject({
	/** What is in the vial. */
	water: z.optional(z.enum(watersTested)),
	/** What it is known to hold, where it is a known solution. */
	reference: z.optional(KnownSolutionSchema),
	/** Where it was taken, in the keeper's words. */
	takenWhere: z.optional(text),
	/** ms since 1970. */
	takenAtEpochMs: z.optional(z.int().check(z.nonnegative())),
	hoursSinceDose: z.optional(hours),
	hoursSinceLightsOn: z.optional(hours),
	/** What is dosed, in the keeper's words, and whether it is running. */
	dosed: z.optional(text),
	dosingRuns: z.optional(z.enum(['yes', 'no', 'unsure'])),
	/** Who tests. */
	tester: z.optional(text),
	light: z.optional(z.enum(['white', 'blue', 'dim'])),
	whiteCard: z.optional(z.boolean()),
	temperatureC: z.optional(z.number().check(z.minimum(0), z.maximum(45))),
	temperatureBy: z.optional(text),
	/** As its instrument shows it; a specific gravity goes with two temperatures. */
	salinity: z.optional(
		z.strictObject({
			value: z.number().check(z.nonnegative()),
			unit: z.enum(['PSU', 'g/kg', 'mS/cm', 'specificGravity']),
			/** Temperature of the water in the instrument, and of the water it compares with, °C. */
			sampleC: z.optional(z.number()),
			referenceC: z.optional(z.number())
		})
	),
	salinityBy: z.optional(text),
	/** Name of the titrant's lot, and when its bottle was opened (ms since 1970). */
	lot: z.optional(text),
	lotOpenedAtEpochMs: z.optional(z.int().check(z.nonnegative()))
});
export type Circumstances = z.infer<typeof CircumstancesSchema>;
