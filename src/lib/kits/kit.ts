import * as z from 'zod/mini';

/**
 * What a leaflet says, as data. A kit is complete in itself: a log keeps a frozen copy, so that an
 * old test can be read and valued again when the kit at hand has changed.
 */

const positive = z.number().check(z.positive());
const notNegative = z.number().check(z.nonnegative());
const words = z.string().check(z.minLength(1));

export const AnalyteSchema = z.enum(['alkalinity', 'calcium', 'hardness', 'magnesium']);
/**
 * What a kit or another method measures. 'hardness' is calcium and magnesium together, as one titration
 * at pH 10 finds them; magnesium is then what is left when calcium is taken off.
 */
export type Analyte = z.infer<typeof AnalyteSchema>;

export const UnitSchema = z.enum(['dKH', 'meq/L', 'ppm CaCO3', 'mmol/L', 'mg/L', 'mmol/kg']);
/**
 * A unit in which a leaflet may give its value; which of them an analyte has, and what they mean there,
 * `analyteUnits` says. For alkalinity, mmol/L is that of acid taken up, the same number as meq/L.
 */
export type Unit = z.infer<typeof UnitSchema>;

export const ReagentSchema = z.strictObject({
	id: words,
	name: words,
	/** What it is for, in the leaflet's order of use. */
	role: z.enum(['indicator', 'base', 'buffer']),
	dose: z.strictObject({
		amount: positive,
		unit: z.enum(['drop', 'mL', 'spoon']),
		/** Volume of one drop or spoonful, mL, where known. */
		unitMl: z.optional(positive)
	}),
	/** Swirl this long after adding, seconds. */
	mixSeconds: notNegative,
	/** Then let it stand this long, seconds. */
	waitSeconds: notNegative
});
export type Reagent = z.infer<typeof ReagentSchema>;

/**
 * Positions on a syringe are measured from the nozzle end of the barrel, in mL, whatever numerals
 * are printed there: 0 is the plunger pushed home. `scale` says how the numerals run.
 */
export const SyringeDeliverySchema = z.strictObject({
	by: z.literal('syringe'),
	capacityMl: positive,
	graduationMl: positive,
	/** A numeral stands at every so many mL. */
	numeralEveryMl: positive,
	/** The seal can be drawn back this far before it leaves the barrel, mL. */
	barrelEndMl: positive,
	/** Tip and nozzle together, mL of dead air when fitted dry; null when the leaflet is silent. */
	tipVolumeMl: z.nullable(notNegative),
	/** 'down': the numerals fall as it empties (0 at the nozzle). 'up': 0 at the full mark. */
	scale: z.enum(['down', 'up']),
	/** Which volume the conversion asks for: what was used, or what is left. */
	counts: z.enum(['used', 'left']),
	/** Volume of one drop from its tip, mL: roughly, from the leaflet or from ten drops counted. */
	dropMl: positive,
	/** The leaflet has it filled again where one filling does not reach the end. */
	refilled: z.optional(z.boolean())
});
export const DropperDeliverySchema = z.strictObject({
	by: z.literal('dropper'),
	dropMl: positive
});
export const BuretteDeliverySchema = z.strictObject({
	by: z.literal('burette'),
	capacityMl: positive,
	graduationMl: positive,
	numeralEveryMl: positive,
	dropMl: positive,
	/** The leaflet has it filled again where one filling does not reach the end. */
	refilled: z.optional(z.boolean())
});
export const DeliverySchema = z.discriminatedUnion('by', [
	SyringeDeliverySchema,
	DropperDeliverySchema,
	BuretteDeliverySchema
]);
export type SyringeDelivery = z.infer<typeof SyringeDeliverySchema>;
export type DropperDelivery = z.infer<typeof DropperDeliverySchema>;
export type BuretteDelivery = z.infer<typeof BuretteDeliverySchema>;
export type Delivery = z.infer<typeof DeliverySchema>;

/**
 * How the leaflet turns the titrant used into a value for its nominal (first) sample volume:
 * so much per mL, so much per drop, or rows of a table read with interpolation between them.
 * `offset` is what the leaflet adds for every test (a mean half-drop, an end-point colour).
 */
export const ConversionSchema = z.discriminatedUnion('kind', [
	z.strictObject({ kind: z.literal('perMl'), valuePerMl: positive, offset: z.number() }),
	z.strictObject({ kind: z.literal('perDrop'), valuePerDrop: positive, offset: z.number() }),
	z.strictObject({
		kind: z.literal('rows'),
		/** What the first column of the leaflet's table counts. */
		column: z.enum(['mark', 'usedMl', 'leftMl', 'drops']),
		rows: z.array(z.strictObject({ at: z.number(), value: z.number() })).check(
			z.minLength(2),
			z.refine((rows) => new Set(rows.map(({ at }) => at)).size === rows.length, {
				error: 'each mark in one row only'
			})
		),
		/**
		 * Decimals to which the leaflet prints its values, where they all end in zeros: 2.0 and 4.0 are
		 * known ten times as well as 2 and 4. Read off the values when left out.
		 */
		valueDecimals: z.optional(z.int().check(z.minimum(0), z.maximum(6)))
	})
]);
export type Conversion = z.infer<typeof ConversionSchema>;

/** What is in the bottles, where that is known. The practice bench cannot work without it. */
export const ContentsSchema = z.strictObject({
	titrant: z.discriminatedUnion('kind', [
		/** Takes up alkalinity. */
		z.strictObject({
			kind: z.literal('strongAcid'),
			molPerL: positive,
			/** Of EDTA alone; here so that it can be asked for whatever the titrant. */
			hydroxidePerMol: z.optional(z.never())
		}),
		/** Binds calcium and magnesium, one to one. */
		z.strictObject({
			kind: z.literal('edta'),
			molPerL: positive,
			/**
			 * Hydroxide in the bottle for each mol of the disodium salt, 0 to 2: 0 for that salt in water, 2 for
			 * the tetrasodium salt. Each mol of the disodium salt that binds a metal sets two of hydrogen ion
			 * free, which use up base as the titration goes on (textbook); the tetrasodium salt sets none. Taken
			 * for 0 where nothing is said.
			 */
			hydroxidePerMol: z.optional(z.number().check(z.gte(0), z.lte(2)))
		})
	]),
	/** By reagent id: the dyes in it, mol per litre, and the form they were added in. */
	dyes: z.record(
		z.string(),
		z.array(z.strictObject({ dyeId: words, molPerL: positive, addedAs: z.enum(['acid', 'salt']) }))
	),
	/** By reagent id: what brings the sample to the pH of its titration, mol per litre. */
	phReagents: z.optional(
		z.record(
			z.string(),
			z.discriminatedUnion('kind', [
				z.strictObject({
					kind: z.literal('base'),
					hydroxideMolPerL: notNegative,
					carbonateMolPerL: notNegative
				}),
				z.strictObject({
					kind: z.literal('ammoniaBuffer'),
					ammoniaMolPerL: notNegative,
					ammoniumMolPerL: notNegative
				})
			])
		)
	)
});
export type Contents = z.infer<typeof ContentsSchema>;

const share = z.number().check(z.nonnegative(), z.maximum(0.5));

/**
 * What its owner knows better than the project's defaults about ware and bottles: shares of the
 * value, but for the two that say otherwise. What is left out is taken for granted (see
 * metrology/reading-budget).
 */
export const AssumedSchema = z.strictObject({
	/** Half-width of an even distribution. */
	sampleHalfWidth: z.optional(share),
	/** Half-width of an even distribution: the scale of the syringe or burette. */
	deliveryHalfWidth: z.optional(share),
	/** Standard uncertainty of the size of a dropper's drop. */
	dropSd: z.optional(share),
	/** Standard uncertainty of the titrant's strength. */
	titrantSd: z.optional(share),
	/** How finely the colour is judged, in drops (standard uncertainty). */
	colourDrops: z.optional(notNegative),
	/** Standard uncertainty of the volume of tip and nozzle, mL. */
	tipSdMl: z.optional(notNegative)
});
export type Assumed = z.infer<typeof AssumedSchema>;

export const KitSchema = z.strictObject({
	format: z.literal(1),
	id: words,
	name: words,
	/** True for the kits that come with the project: made up, like no kit on sale. */
	invented: z.boolean(),
	analyte: AnalyteSchema,
	/** The unit of the leaflet's values. */
	unit: UnitSchema,
	sample: z.strictObject({
		/** The first is the nominal one, which the conversion is for. */
		volumes: z
			.array(z.strictObject({ id: words, name: words, volumeMl: positive }))
			.check(z.minLength(1)),
		/** Measured in a syringe of its own, or in the vial up to its line. */
		measuredIn: z.enum(['syringe', 'vialLine'])
	}),
	reagents: z.array(ReagentSchema),
	delivery: DeliverySchema,
	conversion: ConversionSchema,
	endPoint: z.strictObject({
		startColour: words,
		endColour: words,
		/** The new colour counts when it has survived so long after swirling, seconds. */
		holdsSeconds: positive,
		/**
		 * Hue angle of the end colour (CIELAB, degrees) in white light, for kits whose bottles are
		 * known: the colour at which the leaflet's conversion was found.
		 */
		hueDegrees: z.optional(z.number())
	}),
	/**
	 * What the keeper is really after, where this titration finds it only together with something else:
	 * this value less the other, counted in moles. Magnesium is hardness less calcium.
	 */
	byDifference: z.optional(z.strictObject({ gives: AnalyteSchema, less: AnalyteSchema })),
	/** What the leaflet claims, in `unit`. */
	statedAccuracy: z.optional(positive),
	hazards: z.array(words),
	assumed: z.optional(AssumedSchema),
	contents: z.optional(ContentsSchema)
});
export type Kit = z.infer<typeof KitSchema>;
