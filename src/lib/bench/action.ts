import * as z from 'zod/mini';

/**
 * What hands, eyes and lamp do at the practice bench. Every action carries its time when it is
 * given to the bench; between two actions everything follows from physics in closed form.
 */
export const BenchActionSchema = z.discriminatedUnion('type', [
	/** Which of the kit's sample volumes is used. */
	z.strictObject({ type: z.literal('sample.choose'), volumeId: z.string() }),
	/** Rinse the vial or the sample syringe; a film of that water stays behind. */
	z.strictObject({
		type: z.literal('ware.rinse'),
		ware: z.enum(['vial', 'sampler']),
		with: z.enum(['sample', 'purified', 'tap'])
	}),
	/** Draw sample to this numeral of the sample syringe, with its nose under water or half in air. */
	z.strictObject({
		type: z.literal('sample.draw'),
		toMl: z.number(),
		nose: z.optional(z.enum(['under', 'inAir']))
	}),
	/** Empty the sample syringe into the vial; or fill the vial to this level at its line. */
	z.strictObject({ type: z.literal('sample.pour') }),
	z.strictObject({ type: z.literal('sample.fillToLine'), levelMl: z.number() }),
	/** One drop, or one spoonful, of a reagent. */
	z.strictObject({ type: z.literal('reagent.dose'), reagentId: z.string() }),
	z.strictObject({ type: z.literal('swirl.start') }),
	z.strictObject({ type: z.literal('swirl.stop') }),
	z.strictObject({ type: z.literal('tip.fit'), firm: z.boolean() }),
	z.strictObject({ type: z.literal('tip.remove') }),
	/** Move the plunger with the end of the syringe in the titrant bottle, or in air. */
	z.strictObject({
		type: z.literal('titrant.draw'),
		sealMl: z.number(),
		end: z.enum(['inTitrant', 'inAir'])
	}),
	/** Turned tip-up: push until the seal stands here; air goes first. */
	z.strictObject({ type: z.literal('titrant.purge'), sealMl: z.number() }),
	z.strictObject({ type: z.literal('burette.fill'), levelMl: z.number() }),
	/** Run a little out to waste, so that the burette's jet is full. */
	z.strictObject({ type: z.literal('burette.runOut'), volumeMl: z.number() }),
	z.strictObject({ type: z.literal('tip.wipe') }),
	z.strictObject({ type: z.literal('tip.touchOff') }),
	/** Press: a drop swells and falls, the next swells; held long it becomes a stream. */
	z.strictObject({ type: z.literal('flow.start') }),
	z.strictObject({ type: z.literal('flow.stop') }),
	/** For hands that cannot hold: one press gives a whole drop, half a drop, or a short stream. */
	z.strictObject({ type: z.literal('flow.give'), size: z.enum(['drop', 'half', 'stream']) }),
	z.strictObject({ type: z.literal('dropper.tilt'), degrees: z.number() }),
	z.strictObject({ type: z.literal('dropper.squeeze'), hard: z.boolean() }),
	/** Raise or lower the eye: degrees off the level of the mark (0 is level). */
	z.strictObject({ type: z.literal('eye.move'), degrees: z.number() }),
	z.strictObject({ type: z.literal('lamp.set'), lamp: z.enum(['white', 'red', 'blue', 'dim']) }),
	/** Make a comparison vial: sample and indicator taken past the end with titrant. */
	z.strictObject({ type: z.literal('comparison.make') }),
	z.strictObject({ type: z.literal('comparison.putAway') }),
	/** A deliberate look, for those who take the colour in words. */
	z.strictObject({ type: z.literal('vial.look') })
]);
export type BenchAction = z.infer<typeof BenchActionSchema>;
export type BenchActionType = BenchAction['type'];
export type Lamp = 'white' | 'red' | 'blue' | 'dim';
