import * as z from 'zod/mini';
import { titrationKinds, unitsOf, type Analyte } from '../kits';
import { conclusions } from '../observation';
import { PlanSchema } from './plan';
import { TruthSchema, WaterSchema } from './world';

const words = z.string().check(z.minLength(1));
const minutes = z.int().check(z.gte(1), z.lte(60));
const positive = z.number().check(z.positive());

/** A unit of an analyte. */
const unitOfAnalyte = (analyte: Analyte) => z.enum(unitsOf(analyte));

/** Another value of the same tank as somebody wrote it down. */
const written = {
	label: words,
	value: z.number(),
	/** About 95 %. */
	expandedUncertainty: positive,
	daysAgo: z.number().check(z.nonnegative()),
	note: z.optional(words)
};
const writtenOf = <TAnalyte extends Analyte>(analyte: TAnalyte) =>
	z.strictObject({ of: z.literal(analyte), unit: unitOfAnalyte(analyte), ...written });
export const WrittenValueSchema = z.discriminatedUnion('of', [
	/** Practical salinity. */
	z.strictObject({ of: z.literal('salinity'), ...written }),
	writtenOf('alkalinity'),
	writtenOf('calcium'),
	writtenOf('magnesium')
]);
export type WrittenValue = z.infer<typeof WrittenValueSchema>;

/** How another value of the tank is measured: what it shows over the truth, its scatter, its claim. */
const measuring = {
	minutes,
	label: words,
	offset: z._default(z.number(), 0),
	sd: z.number().check(z.nonnegative()),
	expandedUncertainty: positive,
	note: z.optional(words)
};
const measuringOf = <TAnalyte extends Analyte>(analyte: TAnalyte) =>
	z.strictObject({ check: z.literal(analyte), unit: unitOfAnalyte(analyte), ...measuring });

/** A check that the learner may make in this case, with what it costs. */
export const CheckOfferSchema = z.discriminatedUnion('check', [
	z.strictObject({ check: z.literal('repeatFull'), minutes }),
	z.strictObject({ check: z.literal('repeatQuick'), minutes }),
	z.strictObject({ check: z.literal('largerSample'), minutes }),
	z.strictObject({
		check: z.literal('freshLot'),
		minutes,
		titrantMl: z.optional(positive),
		/** What is opened new: the titrant, or every bottle of the kit. */
		opens: z._default(z.enum(['titrant', 'allBottles']), 'titrant')
	}),
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
	}),
	/** Values of the same tank beside the one in question, by instruments or kits of their own. */
	z.strictObject({ check: z.literal('salinity'), ...measuring }),
	measuringOf('alkalinity'),
	measuringOf('calcium'),
	measuringOf('magnesium')
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
	/** The kinds of slip that this drill is about, first what it is about most, with its kit's titration. */
	skills: z._default(z.array(words), []),
	/** Those of them that are trained for another titration as well: the same moves. */
	alsoTrains: z._default(
		z.array(z.strictObject({ titration: z.enum(titrationKinds), skills: z.array(words) })),
		[]
	),
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
	/** Other values of the tank that stand in the book. */
	record: z._default(z.array(WrittenValueSchema), []),
	/** What was taken off the reading, for a kit that finds two things together. */
	takenOff: z.optional(
		z.strictObject({
			of: z.literal('calcium'),
			label: words,
			value: positive,
			unit: unitOfAnalyte('calcium'),
			expandedUncertainty: positive,
			/** A test of this tank found it; otherwise it was taken for granted. */
			isMeasured: z._default(z.boolean(), true)
		})
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
