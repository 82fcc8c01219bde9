import * as z from 'zod/mini';
import { UnitSchema, type Analyte, type Unit } from '../kits';
import { MatrixSchema } from './circumstances';
import { MarksSchema } from './marks';

/**
 * What is known about a reading in question, as plain data: a case can be written as JSON by hand.
 * Every value names its unit; values in different units of one analyte may stand side by side.
 */

const words = z.string().check(z.minLength(1), z.maxLength(200));
const finite = z.number();
const positive = z.number().check(z.positive());

/** A value somebody stands behind, with its expanded uncertainty, in the unit named. */
export const ReadingSchema = z.strictObject({
	id: words,
	/** A neutral name for lists: 'Your first test', 'Photometer'. */
	label: words,
	value: finite,
	/** About 95 %, unless the evidence says which coverage factor was meant. */
	expandedUncertainty: positive,
	/** Nobody gave the uncertainty: it was taken as is usual. */
	isUncertaintyTaken: z.optional(z.boolean()),
	/**
	 * Standard deviation between repeats of the same hands with the same ware and bottles: the part of
	 * the uncertainty that falls anew each time. Absent where nobody knows it.
	 */
	repeatabilitySd: z.optional(positive),
	unit: UnitSchema,
	marks: z.optional(MarksSchema),
	/**
	 * What was taken off to find it, where it is what is left: calcium off both metals, in a unit of its
	 * own. The reading's ± has that of it already. Absent where nobody knows.
	 */
	takenOff: z.optional(
		z.strictObject({
			value: z.number().check(z.nonnegative()),
			expandedUncertainty: z.number().check(z.nonnegative()),
			unit: UnitSchema
		})
	)
});
export type Reading = z.infer<typeof ReadingSchema>;

/** The ways of checking a reading that the practice bench knows. */
export const benchCheckIds = [
	'repeatFull',
	'repeatQuick',
	'secondMethod',
	'reference',
	'largerSample',
	'freshLot',
	'freshSample'
] as const;
/** A way of checking that can be done on the practice bench. */
export type BenchCheckId = (typeof benchCheckIds)[number];

/** What else of the same tank can be known on the practice bench: a check by that name measures it. */
export const relatedQuantities = ['salinity', 'alkalinity', 'calcium', 'magnesium'] as const;
export type RelatedQuantity = (typeof relatedQuantities)[number];
/** Whatever can be asked or done about a reading in practice: tests of it, and values beside it. */
export const practiceCheckIds = [...benchCheckIds, ...relatedQuantities] as const;
export type PracticeCheckId = (typeof practiceCheckIds)[number];

/** All ways of checking a reading. */
export const checkIds = [
	...benchCheckIds,
	'smallerSample',
	'standardAddition',
	'blank',
	'weighSampleWare',
	'weighTitrantWare',
	'otherHands',
	'probeTitration',
	'referenceBySecondMethod',
	'moreBase',
	'thinnedSample',
	'warmSlow',
	'takenOffAnew'
] as const;
export type CheckId = (typeof checkIds)[number];

/**
 * In what a test of the evidence differed from the test in question. Each name stands for one thing:
 * two tests that give the same name share it; left out, it was the thing of the test in question.
 */
export const DiffersSchema = z.strictObject({
	/** Name of another bottle of titrant. */
	lot: z.optional(words),
	/** Who did it, if somebody else. */
	hands: z.optional(words),
	/** Another syringe or vial for the sample. */
	sampleWare: z.optional(words),
	/** Another syringe, burette or dropper for the titrant. */
	titrantWare: z.optional(words),
	/** Another portion of water, taken anew. */
	sampling: z.optional(words),
	/** Volume of the sample over that of the test in question: 2 for twice the water. */
	sampleRatio: z.optional(z.number().check(z.minimum(0.1), z.maximum(10)))
});
export type Differs = z.infer<typeof DiffersSchema>;

const differs = z.optional(DiffersSchema);
const matrix = MatrixSchema;
/** What a ± was stated with; 2 when left out. */
const coverageFactor = z.optional(z.number().check(z.minimum(1), z.maximum(4)));

export const EvidenceSchema = z.discriminatedUnion('kind', [
	/**
	 * A test of the tank's water by the kit in question. What `from` implies need not be said again:
	 * 'freshLot' is another bottle, 'freshSample' another portion, 'otherHands' another person,
	 * 'largerSample' twice and 'smallerSample' half the water, unless `differs` says it otherwise.
	 * 'moreBase' had more of the base, 'thinnedSample' purified water beside the same sample, 'warmSlow' a
	 * warm sample and time between drops; 'takenOffAnew' is worked out with a fresh value taken off.
	 */
	z.strictObject({
		kind: z.literal('test'),
		reading: ReadingSchema,
		/** 'first' is the test in question. */
		from: z.enum(['first', ...checkIds]),
		differs
	}),
	/** A solution of known content, tested by the kit in question or by a second method. */
	z.strictObject({
		kind: z.literal('reference'),
		reading: ReadingSchema,
		/** What the solution is said to hold, in the reading's unit, with its expanded uncertainty (k = 2). */
		nominal: positive,
		nominalExpandedUncertainty: positive,
		/** Nobody gave the uncertainty of the content: it was taken as a share of it. */
		isNominalUncertaintyTaken: z.optional(z.boolean()),
		matrix,
		/** What it was made from, where its end depends on it; bicarbonate when left out. */
		madeWith: z.optional(z.enum(['bicarbonate', 'carbonate'])),
		/** Name of the solution: readings of one solution share what is wrong with it. */
		solution: z.optional(words),
		/** Name of the second method that read it; the kit in question when left out. */
		instrument: z.optional(words),
		differs
	}),
	/** The tank's water with a known amount added, tested by the kit in question. */
	z.strictObject({
		kind: z.literal('addition'),
		reading: ReadingSchema,
		/** Rise that the addition makes in the sample, in the reading's unit, with its expanded uncertainty (k = 2). */
		added: positive,
		addedExpandedUncertainty: positive,
		/** Nobody gave the uncertainty of the rise: it was taken as a share of it. */
		isAddedUncertaintyTaken: z.optional(z.boolean()),
		differs
	}),
	/** Water that holds nothing, tested by the kit in question. */
	z.strictObject({ kind: z.literal('blank'), reading: ReadingSchema, matrix, differs }),
	/** The tank's water by another method. */
	z.strictObject({
		kind: z.literal('secondMethod'),
		reading: ReadingSchema,
		method: z.optional(z.enum(['kit', 'photometer', 'laboratory', 'probe'])),
		/** Name of the kit or instrument: readings of one instrument share its offset. */
		instrument: z.optional(words),
		coverageFactor,
		/** 'carbonate': borate is left out, as in some laboratory reports. */
		reports: z.optional(z.enum(['total', 'carbonate'])),
		/** Name of another portion of water, if it was not that of the test in question. */
		sampling: z.optional(words)
	}),
	/** A reading from before, by the same kit unless an instrument is named. */
	z.strictObject({
		kind: z.literal('earlier'),
		reading: ReadingSchema,
		daysAgo: z.number().check(z.nonnegative(), z.maximum(10_000)),
		/**
		 * Change to be expected since then from what was dosed less what was consumed, in the reading's
		 * unit; 0 when left out with `dosed` and `consumed` (dosing and consumption in balance).
		 */
		expectedChange: z.optional(finite),
		/**
		 * What was dosed and what was used up since then, in the reading's unit, where `expectedChange` is
		 * not said outright. One of them alone leaves the other unknown: never nothing.
		 */
		dosed: z.optional(z.number().check(z.nonnegative())),
		consumed: z.optional(z.number().check(z.nonnegative())),
		instrument: z.optional(words),
		differs
	}),
	/** Water weighed to find what a piece of ware really delivers. */
	z.strictObject({
		kind: z.literal('weighing'),
		ware: z.enum(['sample', 'titrant']),
		/** Volume found over the volume the mark says (for a dropper: over the kit's drop). */
		foundOverNominal: z.number().check(z.minimum(0.3), z.maximum(3)),
		/** Expanded uncertainty (k = 2) of that ratio. */
		expandedUncertainty: positive
	}),
	/** An answer to a question about how it was done or how it looked. */
	z.strictObject({ kind: z.literal('cue'), cue: words, answer: words })
]);
/** One thing learned about a reading. */
export type Evidence = z.infer<typeof EvidenceSchema>;
export type EvidenceOf<TKind extends Evidence['kind']> = Extract<Evidence, { kind: TKind }>;
/** Evidence that brings a value. */
export type ValuedEvidence = Extract<Evidence, { reading: Reading }>;

/** What can be collected on the practice bench. */
export type BenchEvidence =
	| (EvidenceOf<'test'> & { from: 'first' | BenchCheckId })
	| EvidenceOf<'secondMethod' | 'reference' | 'earlier'>;

/** Is this a test with the kit in question, not a value beside it? */
export const isBenchCheck = (check: PracticeCheckId): check is BenchCheckId =>
	(benchCheckIds as readonly string[]).includes(check);

/** A value of the same tank beside the reading in question. */
export type RelatedValue = {
	id: string;
	of: RelatedQuantity;
	label: string;
	value: number;
	/** About 95 %. */
	expandedUncertainty: number;
	/** Null for salinity, which is practical salinity. */
	unit: Unit | null;
	daysAgo: number;
	/** Measured as a check; the others stood in the book. */
	isChecked: boolean;
	note: string | null;
};

/** Those of one quantity in the order of their days, the latest last; one measured as a check after what was written. */
export const relatedInOrder = (
	related: readonly RelatedValue[],
	of: RelatedQuantity
): RelatedValue[] =>
	related
		.filter((each) => each.of === of)
		.sort((a, b) => b.daysAgo - a.daysAgo || Number(a.isChecked) - Number(b.isChecked));

/** What was taken off a reading to find the rest of it: calcium, off both metals together. */
export type TakenFromReading = {
	of: Extract<RelatedQuantity, Analyte>;
	label: string;
	value: number;
	expandedUncertainty: number;
	unit: Unit;
	/** A test of this tank found it; otherwise it was taken for granted. */
	isMeasured: boolean;
};

export function isValued(evidence: Evidence): evidence is ValuedEvidence {
	return 'reading' in evidence;
}

export const conclusions = [
	'stands',
	'technique',
	'reagent',
	'secondMethod',
	'waterChanged',
	'salinity',
	'carriedOver',
	'cantTellYet'
] as const;
/**
 * What somebody may conclude about the reading in question. The order is fixed on every screen.
 * 'salinity': it went with everything that is dissolved. 'carriedOver': another value that was taken off
 * it is wrong.
 */
export type Conclusion = (typeof conclusions)[number];
