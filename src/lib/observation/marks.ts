import * as z from 'zod/mini';

/**
 * What was read off the glass, as the person read it. Positions are numerals as printed on the
 * scale (not distances): which end is 0 is the kit's business. All optional, since real hands give
 * what they saw and no more.
 */
export const MarksSchema = z.strictObject({
	/** Numeral at the leading edge of the syringe's seal. */
	sealMl: z.optional(z.number()),
	/** Numeral at the liquid line in the syringe. */
	lineMl: z.optional(z.number()),
	/** Numeral at the liquid level in a burette. */
	levelMl: z.optional(z.number()),
	/** Whole drops counted. */
	drops: z.optional(z.number())
});
export type Marks = z.infer<typeof MarksSchema>;
