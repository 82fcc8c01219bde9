import * as z from 'zod/mini';
import { Persisted } from '../state';
import { benchDeeds, defaultKeys } from './keys';

const SettingsSchema = z.object({
	/** The colour as a tone, and a tick for each drop. */
	sound: z._default(z.boolean(), false),
	/** Presses instead of holding: a whole drop, a half, a short stream. */
	steadyHands: z._default(z.boolean(), false),
	/** Single keys work on the bench. */
	keysOn: z._default(z.boolean(), true),
	leftHand: z._default(z.boolean(), false),
	/** Key by deed, as the keyboard names it. */
	keys: z._default(
		z.record(z.enum(benchDeeds), z.string().check(z.regex(/^[A-Za-z0-9]+$/), z.maxLength(24))),
		defaultKeys
	)
});
export type BenchSettings = z.infer<typeof SettingsSchema>;

export const defaultSettings: BenchSettings = SettingsSchema.parse({});

/** How this person works at the bench; the same on every run in this browser. */
export function openBenchSettings(): Persisted<BenchSettings> {
	return new Persisted('halfdrop.bench', defaultSettings, (stored) => SettingsSchema.parse(stored));
}
