import { kitInForce, loadKitVersion, nextVersion, type Kit, type KitVersion } from '$lib/kits';
import { replayTest } from '$lib/procedure';
import type { Kept, Records } from '$lib/records';
import type { ListedKit } from '$lib/ui/kits/listed-kit';
import { logOf } from '../test/open-test';

/** The leaflets of this browser's owner. */
export type Shelf = {
	versions: readonly KitVersion[];
	/** Newest versions of the kits in use, by name. */
	inUse: readonly KitVersion[];
	/** Those put away, by name. */
	putAway: readonly KitVersion[];
	/** What is wrong with versions that cannot be read; they stay stored. */
	unreadable: readonly string[];
};

const byName = (a: KitVersion, b: KitVersion) => a.kit.name.localeCompare(b.kit.name);

/** All leaflets that are kept, sorted into those in use and those put away. */
export async function openShelf(records: Records): Promise<Shelf> {
	const versions: KitVersion[] = [];
	const unreadable: string[] = [];
	for (const row of await records.kits.all()) {
		try {
			versions.push(loadKitVersion(row));
		} catch (error) {
			unreadable.push(error instanceof Error ? error.message : String(error));
		}
	}
	const ids = [...new Set(versions.map(({ kitId }) => kitId))];
	const inUse = ids.flatMap((id) => kitInForce(versions, id) ?? []);
	const putAway = ids.flatMap((id) => {
		const newest = versions.findLast(({ kitId, version }) => {
			return kitId === id && version === nextVersion(versions, id) - 1;
		});
		return newest?.kind === 'archived' ? [newest] : [];
	});
	return { versions, inUse: inUse.sort(byName), putAway: putAway.sort(byName), unreadable };
}

/** Adds a version of a kit; the ones before it stay. */
export function keepVersion(
	records: Records,
	versions: readonly KitVersion[],
	{ kit, kind, atEpochMs }: { kit: Kit; kind: KitVersion['kind']; atEpochMs: number }
): Promise<Kept> {
	const version: KitVersion = {
		format: 1,
		kitId: kit.id,
		version: nextVersion(versions, kit.id),
		savedAtEpochMs: atEpochMs,
		kind,
		kit
	};
	return records.kits.add(version);
}

/** When a kit was last used, and the bottle of titrant that was in use then. */
export async function lastUseOf(
	records: Records,
	kitId: string,
	beforeEpochMs: number
): Promise<Pick<ListedKit, 'lastUsedAtEpochMs' | 'lot'>> {
	const header = await records.tests.lastBefore(kitId, beforeEpochMs);
	if (!header) return { lastUsedAtEpochMs: null, lot: null };
	const lastUsedAtEpochMs = header.startedAtEpochMs;
	const stored = await records.tests.load(header.id);
	try {
		const { lot, lotOpenedAtEpochMs } = stored ? replayTest(logOf(stored)).circumstances : {};
		const openedAtEpochMs = lotOpenedAtEpochMs ?? null;
		const isKnown = lot !== undefined || openedAtEpochMs !== null;
		return { lastUsedAtEpochMs, lot: isKnown ? { name: lot ?? '', openedAtEpochMs } : null };
	} catch {
		// A damaged test still says when it was; the log page shows what is wrong with it.
		return { lastUsedAtEpochMs, lot: null };
	}
}
