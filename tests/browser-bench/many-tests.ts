import type { Page } from '@playwright/test';
import { summaryOf, replayTest, testResult, type TestLog } from '../../src/lib/procedure';
import { wholeTest } from '../browser/tank-logs';

const HALF_DAY = 43_200_000;
/** Tests that have their log as well; the pages that are timed read headers. */
const WHOLE = 100;

/** A log as rows of the database have it. */
function rowsOf(log: TestLog) {
	const { entries, ...head } = log;
	const state = replayTest(log);
	const result = testResult(state);
	if (!result) throw new Error('the test that is multiplied has no value');
	const header = {
		id: log.id,
		kitId: log.kit.id,
		analyte: log.kit.analyte,
		startedAtEpochMs: log.startedAtEpochMs,
		changedAtEpochMs: state.at,
		state: 'kept',
		where: 'done',
		summary: summaryOf(state, result)
	};
	return { header, head, entries };
}

/**
 * Stores so many kept tests, two a day, the newest just now, in a browser that has opened the log
 * once. Written row by row into the database, for by hand it would take years.
 */
export async function storeTests(page: Page, count: number): Promise<void> {
	const newestAt = Date.now() - 60_000;
	const whole = Array.from({ length: Math.min(count, WHOLE) }, (_, i) =>
		rowsOf(wholeTest(`many-${i}`, newestAt - i * HALF_DAY, 0.42 + (i % 9) / 100))
	);
	const like = rowsOf(wholeTest('like', newestAt, 0.45)).header;
	await page.evaluate(
		({ whole, like, count, halfDay, newestAt }) =>
			new Promise<void>((done, fail) => {
				const opening = indexedDB.open('halfdrop');
				opening.onerror = () => fail(opening.error);
				opening.onsuccess = () => {
					const database = opening.result;
					const names = ['tests', 'testHeads', 'testEntries'];
					const change = database.transaction(names, 'readwrite');
					const [tests, heads, rows] = names.map((name) => change.objectStore(name));
					for (const { header, head, entries } of whole) {
						tests?.add(header);
						heads?.add({ id: header.id, head });
						entries.forEach((entry, seq) => rows?.add({ testId: header.id, seq, entry }));
					}
					for (let i = whole.length; i < count; i++) {
						const at = newestAt - i * halfDay;
						const value = 8 + Math.sin(i / 50) / 2;
						tests?.add({
							...like,
							id: `many-${i}`,
							startedAtEpochMs: at,
							changedAtEpochMs: at,
							summary: { ...like.summary, value, values: [value] }
						});
					}
					change.oncomplete = () => (database.close(), done());
					change.onabort = () => fail(change.error);
				};
			}),
		{ whole, like, count, halfDay: HALF_DAY, newestAt }
	);
}
