import type { CheckHeader, DatedHeader, RunHeader, TestHeader } from './headers';

/**
 * What a first page shows of the records. It reads the database without the library that writes it,
 * which is larger than all the rest of such a page together; so it has an entry of its own, beside
 * the room's index.
 */
export type Glance = {
	/** Practice runs, changed last first. */
	runs: RunHeader[];
	/** The test that was left before its end last; null when there is none. */
	unfinishedTest: TestHeader | null;
	/** The check that was left before its end last; null when there is none. */
	unfinishedCheck: CheckHeader | null;
	/** Kept tests, begun last first. */
	latest: TestHeader[];
	hasKits: boolean;
};

const nothing: Glance = {
	runs: [],
	unfinishedTest: null,
	unfinishedCheck: null,
	latest: [],
	hasKits: false
};

/**
 * A look at the records, which changes nothing and makes no database where there is none. Nothing is
 * thrown: where storage is missing or does not answer there is nothing to see.
 *
 * @param most at most so many kept tests
 */
export async function glanceAtRecords(most: number, name = 'halfdrop'): Promise<Glance> {
	try {
		const database = await opened(name);
		if (!database) return nothing;
		try {
			return await look(database, most);
		} finally {
			database.close();
		}
	} catch {
		return nothing;
	}
}

/** Null when there is no such database yet. */
function opened(name: string): Promise<IDBDatabase | null> {
	return new Promise((give, fail) => {
		const request = indexedDB.open(name);
		request.onupgradeneeded = () => request.transaction?.abort();
		request.onsuccess = () => {
			// Another window may want to bring the database up to date meanwhile.
			request.result.onversionchange = () => request.result.close();
			give(request.result);
		};
		request.onerror = () =>
			request.error?.name === 'AbortError' ? give(null) : fail(request.error as Error);
	});
}

async function look(database: IDBDatabase, most: number): Promise<Glance> {
	const names = ['runs', 'tests', 'checks', 'kits'].filter((each) =>
		database.objectStoreNames.contains(each)
	);
	if (names.length === 0) return nothing;
	const transaction = database.transaction(names, 'readonly');
	const has = (each: string) => names.includes(each);
	const dated = <T extends DatedHeader>(store: string, state: T['state'], limit: number) =>
		has(store)
			? lastOf<T>(
					transaction.objectStore(store).index('[state+startedAtEpochMs+id]'),
					IDBKeyRange.bound([state], [state, []]),
					limit
				)
			: [];
	const [runs, leftTests, leftChecks, latest, kits] = await Promise.all([
		has('runs')
			? lastOf<RunHeader>(transaction.objectStore('runs').index('changedAtEpochMs'), null, 1000)
			: [],
		dated<TestHeader>('tests', 'unfinished', 1),
		dated<CheckHeader>('checks', 'unfinished', 1),
		dated<TestHeader>('tests', 'kept', most),
		has('kits') ? counted(transaction.objectStore('kits')) : 0
	]);
	return {
		runs,
		unfinishedTest: leftTests[0] ?? null,
		unfinishedCheck: leftChecks[0] ?? null,
		latest,
		hasKits: kits > 0
	};
}

/** Up to so many rows of an index, the last first. */
function lastOf<T>(index: IDBIndex, range: IDBKeyRange | null, limit: number): Promise<T[]> {
	return new Promise((give, fail) => {
		const rows: T[] = [];
		const request = index.openCursor(range, 'prev');
		request.onerror = () => fail(request.error as Error);
		request.onsuccess = () => {
			const cursor = request.result;
			if (!cursor || rows.length >= limit) return give(rows);
			const { head: _, ...row } = cursor.value as T & { head?: unknown };
			rows.push(row as T);
			cursor.continue();
		};
	});
}

function counted(store: IDBObjectStore): Promise<number> {
	return new Promise((give, fail) => {
		const request = store.count();
		request.onerror = () => fail(request.error as Error);
		request.onsuccess = () => give(request.result);
	});
}
