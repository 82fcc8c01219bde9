import type { Kit } from '$lib/kits';

/** A kit as a list shows it. */
export type ListedKit = {
	kit: Kit;
	/** When this version of the leaflet was typed in, ms since 1970; null for the house kits. */
	savedAtEpochMs: number | null;
	lastUsedAtEpochMs: number | null;
	/** The bottle of titrant in use, as far as the last test says. */
	lot: { name: string; openedAtEpochMs: number | null } | null;
	/** Something was typed in for it that is not kept yet. */
	isHalfTyped: boolean;
};
