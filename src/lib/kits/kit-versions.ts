import * as z from 'zod/mini';
import { KitSchema, type Kit } from './kit';
import { loadAs } from './load';

export const KIT_VERSION_FORMAT = 1;

/** Why a version was saved. */
export const kitVersionKinds = ['new', 'correction', 'change', 'archived', 'restored'] as const;

export const KitVersionSchema = z
	.strictObject({
		format: z.literal(KIT_VERSION_FORMAT),
		kitId: z.string().check(z.minLength(1)),
		/** Counts from 0. */
		version: z.int().check(z.nonnegative()),
		savedAtEpochMs: z.int().check(z.nonnegative()),
		/**
		 * 'correction': the leaflet had been typed in wrongly, so tests by the version before it are
		 * valued anew. 'change': another leaflet or bottle; tests before it stand. 'archived': the kit is
		 * out of use, until a later version takes it back in: as it was, by one that is 'restored'.
		 */
		kind: z.enum(kitVersionKinds),
		kit: KitSchema
	})
	.check(
		z.refine(({ kit, kitId }) => kit.id === kitId, {
			path: ['kit', 'id'],
			error: 'the id that the version bears'
		})
	);
/** A version of a kit. Versions are only ever added. */
export type KitVersion = z.infer<typeof KitVersionSchema>;

/**
 * A version of a kit from outside (storage, a file).
 *
 * @throws RangeError saying which field is damaged and what is wrong there
 */
export function loadKitVersion(unknownVersion: unknown): KitVersion {
	return loadAs(unknownVersion, KitVersionSchema, 'the version of a kit');
}

/**
 * Versions of one kit, the oldest first. Where two windows or devices saved the same number, the one
 * saved later counts.
 */
function versionsOf(versions: readonly KitVersion[], kitId: string): KitVersion[] {
	const latest = new Map<number, KitVersion>();
	for (const version of versions) {
		const known = latest.get(version.version);
		if (version.kitId === kitId && !(known && known.savedAtEpochMs >= version.savedAtEpochMs))
			latest.set(version.version, version);
	}
	return [...latest.values()].sort((a, b) => a.version - b.version);
}

/** The newest version of a kit; null when there is none or the kit is out of use. */
export function kitInForce(versions: readonly KitVersion[], kitId: string): KitVersion | null {
	const newest = versionsOf(versions, kitId).at(-1);
	return newest && newest.kind !== 'archived' ? newest : null;
}

/** What the next version of a kit must be numbered. */
export function nextVersion(versions: readonly KitVersion[], kitId: string): number {
	return (versionsOf(versions, kitId).at(-1)?.version ?? -1) + 1;
}

/**
 * The leaflet that a test is valued by today: the one frozen in it, or its correction, or the
 * correction of that. The chain ends at a change and where a version is missing; going out of use
 * and coming back do not break it.
 *
 * @param test the kit as the test's log has it, and the number of its version
 */
export function kitForTest(
	versions: readonly KitVersion[],
	test: { kit: Kit; kitVersion: number }
): { kit: Kit; version: number; isCorrected: boolean } {
	let inForce = { kit: test.kit, version: test.kitVersion, isCorrected: false };
	let reached = test.kitVersion;
	for (const { version, kind, kit } of versionsOf(versions, test.kit.id)) {
		if (version <= reached) continue;
		if (version !== reached + 1 || kind === 'change' || kind === 'new') break;
		reached = version;
		if (kind === 'correction') inForce = { kit, version, isCorrected: true };
	}
	return inForce;
}
