import type { Page } from '@playwright/test';

/**
 * A moment for the last tap to be sent to the store, and then the store's own word that it has come. A
 * page that may not store anything has nothing to wait for.
 */
export async function untilKept(page: Page): Promise<void> {
	// Of this side's time: that of the page may stand still.
	await page.waitForTimeout(150);
	await page.evaluate(async () => {
		const stored = await indexedDB.databases().catch(() => []);
		for (const { name } of stored) {
			if (name === undefined) continue;
			const db = await new Promise<IDBDatabase>((done, fail) => {
				const opening = indexedDB.open(name);
				opening.onerror = () => fail(new Error(`${name} cannot be opened`));
				opening.onsuccess = () => done(opening.result);
			});
			if (db.objectStoreNames.length > 0)
				await new Promise<void>((done) => {
					// It is let in when every write that was sent before it is over.
					db.transaction([...db.objectStoreNames], 'readwrite').oncomplete = () => done();
				});
			db.close();
		}
	});
}
