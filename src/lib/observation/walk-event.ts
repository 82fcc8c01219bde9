import * as z from 'zod/mini';
import { UnitSchema } from '../kits';
import { MarksSchema } from './marks';

/**
 * Things that happened during one titration, in the past tense. The bench reports them complete;
 * real hands report what they noticed, so everything but the kind of event is optional.
 */
const volume = z.optional(z.number());
const flag = z.optional(z.boolean());

export const WalkEventSchema = z.discriminatedUnion('type', [
	z.strictObject({ type: z.literal('sample.chosen'), volumeId: z.string() }),
	z.strictObject({
		type: z.literal('vial.rinsed'),
		ware: z.optional(z.enum(['vial', 'sampler'])),
		with: z.optional(z.enum(['sample', 'purified', 'tap']))
	}),
	z.strictObject({
		type: z.literal('sample.measured'),
		/** What the mark says, mL. */
		volumeMl: volume,
		/** Water of another kind that was in the ware and went along, mL. */
		strayWaterMl: volume,
		/** Of it, what took room inside the measure; the rest came on top, from the vial. */
		strayInMeasureMl: volume,
		/** Air that took the place of sample in the sample syringe, mL. */
		airMl: volume
	}),
	z.strictObject({
		type: z.literal('reagent.added'),
		reagentId: z.string(),
		amount: z.optional(z.number())
	}),
	z.strictObject({ type: z.literal('vial.swirled'), seconds: z.optional(z.number()) }),
	z.strictObject({ type: z.literal('wait.over') }),
	z.strictObject({ type: z.literal('tip.fitted'), firm: flag, liquidInside: flag }),
	z.strictObject({ type: z.literal('tip.wiped'), hangingMl: volume }),
	z.strictObject({
		type: z.literal('titrant.drawn'),
		sealMl: volume,
		lineMl: volume,
		levelMl: volume,
		tip: z.optional(z.enum(['off', 'fitted', 'loose'])),
		/** Air drawn into the tip that will leave before any liquid does, mL. */
		tipAirMl: volume,
		hangingMl: volume,
		/** By how much the seal went back to draw in more after the first drop, mL. */
		drawnAgainMl: volume,
		/** Numerals at which seal, line or level stood just before, where hands noted them. */
		before: z.optional(MarksSchema)
	}),
	/** The person says the filling is done. */
	z.strictObject({ type: z.literal('filling.done') }),
	z.strictObject({
		type: z.literal('titrant.fell'),
		drops: z.optional(z.number()),
		volumeMl: volume,
		/** Unmixed colour was still to be seen when it fell. */
		intoPlume: flag,
		/** Dropper: degrees from upright, and how hard it was squeezed. */
		tiltDegrees: z.optional(z.number()),
		squeezedHard: flag
	}),
	z.strictObject({ type: z.literal('drop.touchedOff'), volumeMl: volume }),
	z.strictObject({
		type: z.literal('lamp.changed'),
		lamp: z.enum(['white', 'red', 'blue', 'dim'])
	}),
	z.strictObject({ type: z.literal('colour.turned') }),
	z.strictObject({ type: z.literal('colour.faded') }),
	z.strictObject({
		type: z.literal('colour.stayed'),
		/** How long the vial had stood since the last drop fell, seconds. */
		secondsSinceDrop: z.optional(z.number()),
		/** Swirled since the last drop. */
		swirledSince: flag,
		hangingMl: volume,
		lamp: z.optional(z.enum(['white', 'red', 'blue', 'dim']))
	}),
	z.strictObject({ type: z.literal('titrant.spent') }),
	z.strictObject({
		type: z.literal('marks.read'),
		/** As typed by the person. */
		marks: MarksSchema,
		/** What stood there, for the bench, which knows. */
		stood: z.optional(MarksSchema),
		/** Eye off the level of the mark, degrees: what parallax did. */
		eyeDegrees: z.optional(z.number())
	}),
	z.strictObject({ type: z.literal('value.reported'), value: z.number(), unit: UnitSchema }),
	z.strictObject({ type: z.literal('step.skipped'), stepId: z.string() }),
	z.strictObject({ type: z.literal('step.done'), stepId: z.string() }),
	z.strictObject({ type: z.literal('walk.abandoned') })
]);
export type WalkEvent = z.infer<typeof WalkEventSchema>;
export type WalkEventType = WalkEvent['type'];
