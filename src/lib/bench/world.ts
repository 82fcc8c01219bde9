import * as z from 'zod/mini';

/**
 * The hidden truth of one bench: what the water, the bottles and the ware really are. Everything
 * that is left out is ordinary. Nothing here may reach the screen before the conclusion.
 */
const within = (low: number, high: number) => z.number().check(z.gte(low), z.lte(high));

export const WaterSchema = z.strictObject({
	matrix: z._default(z.enum(['seawater', 'purified', 'sodiumChloride']), 'seawater'),
	/** Practical salinity; 0 for purified water, NaCl in g/L for sodium chloride. */
	salinity: z._default(within(0, 45), 35),
	temperatureC: z._default(within(5, 35), 25),
	alkalinityDkh: within(-5, 40),
	/** pH, total scale, of the water as it is measured out; gives the carbon. */
	ph: z._default(within(6, 9.5), 8.1),
	/** Calcium and magnesium, mg/L; when left out those of seawater of this salinity, none in other waters. */
	calciumMgPerL: z.optional(within(0, 2000)),
	magnesiumMgPerL: z.optional(within(0, 5000)),
	/** Copper or iron that takes an indicator of metals for good, µmol/L. */
	blockingMicromolPerL: z._default(within(0, 1000), 0),
	/** Grains of calcium carbonate in the sample, mg of CaCO3 in one nominal sample. */
	carbonateGrainsMg: z._default(within(0, 20), 0),
	/** Milky to the eye, 0 to 1. */
	haze: z._default(within(0, 1), 0)
});
export type Water = z.infer<typeof WaterSchema>;

export const TitrantTruthSchema = z.strictObject({
	/** Strength of the titrant over what the leaflet takes for granted. */
	strengthFactor: z._default(within(0.3, 2), 1)
});
export const IndicatorTruthSchema = z.strictObject({
	/** Dye over nominal: a pale, aged bottle is below 1. */
	strengthFactor: z._default(within(0, 3), 1)
});
/** What has become of the bottles that bring a sample to the pH of its titration. */
export const ReagentTruthSchema = z.strictObject({
	base: z.optional(
		z.strictObject({
			strengthFactor: z._default(within(0, 2), 1),
			/** Carbon dioxide taken up from air since it was made, as a share of what it can take, 0 to 1. */
			carbonatedShare: z._default(within(0, 1), 0)
		})
	),
	/**
	 * By how much the pH of the buffer is off. From about 1.6 too low in seawater, 1.3 where it is rich in metals, the
	 * dye never lets go of magnesium and no end comes: hands then read nothing.
	 */
	ammoniaBuffer: z.optional(z.strictObject({ phOff: z._default(within(-2, 2), 0) }))
});
export type ReagentTruth = z.infer<typeof ReagentTruthSchema>;
export const WareTruthSchema = z.strictObject({
	/** Volume the sample syringe or the vial's line really gives over what is printed. */
	sampleFactor: z._default(within(0.8, 1.2), 1),
	/** What stands in the vial before anybody rinses it, mL, and its alkalinity, meq/L. */
	vialLeftMl: z._default(within(0, 2), 0),
	vialLeftMeqPerL: z._default(within(-20000, 20000), 0),
	samplerLeftMl: z._default(within(0, 2), 0),
	/** Tip and nozzle of the titrant syringe, mL; the leaflet's figure when absent. */
	tipVolumeMl: z.optional(within(0, 0.5)),
	/** A seal that sticks moves in jumps of so much, mL; a smooth one when absent. */
	stickyJumpMl: z.optional(within(0, 0.3)),
	/** Mean drop over the kit's nominal drop. */
	dropFactor: z._default(within(0.5, 2), 1)
});

export const TruthSchema = z.strictObject({
	water: WaterSchema,
	titrant: z.optional(TitrantTruthSchema),
	indicator: z.optional(IndicatorTruthSchema),
	reagents: z.optional(ReagentTruthSchema),
	ware: z.optional(WareTruthSchema),
	light: z._default(z.enum(['white', 'blue', 'dim']), 'white')
});
export type Truth = z.infer<typeof TruthSchema>;
