/**
 * Asks the browser not to clear this site's storage when room is short. Some browsers decide by
 * themselves, some ask the person; where there is nothing to ask, nothing happens.
 *
 * @returns whether storage lasts now
 */
export async function askToLast(): Promise<boolean> {
	try {
		const storage = globalThis.navigator?.storage;
		if (!storage?.persist) return false;
		return (await storage.persisted?.()) || (await storage.persist());
	} catch {
		return false;
	}
}

/** Storage used by this site and room that the browser grants it, bytes; null where it does not say. */
export async function roomOfStorage(): Promise<{ usedBytes: number; grantedBytes: number } | null> {
	try {
		const { usage, quota } = (await globalThis.navigator?.storage?.estimate?.()) ?? {};
		return usage === undefined || quota === undefined
			? null
			: { usedBytes: usage, grantedBytes: quota };
	} catch {
		return null;
	}
}
