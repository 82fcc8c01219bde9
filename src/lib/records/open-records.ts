import { LastingChecks, MemoryChecks, type CheckRecords } from './checks';
import { HalfdropDatabase } from './database';
import { Health } from './health';
import { LastingKits, MemoryKits, type KitRecords } from './kits';
import { troubleOf, type StorageTrouble } from './kept';
import { LastingRuns, MemoryRuns, type RunRecords } from './runs';
import { LastingTests } from './lasting-tests';
import { MemoryTests } from './memory-tests';
import type { CheckHeader, RunHeader, TestHeader } from './headers';
import type { LogShelf } from './log-store';
import type { TestRecords } from './tests';
import { watchOver, type LogWatch } from './watch';

/** All that is kept in this browser. */
export interface Records {
	/** Whether what is kept will be there tomorrow. False from the first failure of storage on. */
	readonly isLasting: boolean;
	/** What is wrong with storage; null while nothing is. */
	readonly trouble: StorageTrouble | null;
	readonly runs: RunRecords & LogShelf<RunHeader>;
	readonly tests: TestRecords & LogShelf<TestHeader>;
	readonly checks: CheckRecords & LogShelf<CheckHeader>;
	readonly kits: KitRecords;
	/** Calls when another window has gone on with this log; hands back how to stop. */
	watchLog: LogWatch['watch'];
}

/**
 * What a page remembers where storage fails, by the name of the database: the next page of the same
 * visit finds it again, as long as the window is not loaded anew.
 */
const remembered = new Map<string, Records>();
function inMemoryOf(name: string, trouble: StorageTrouble): Records {
	const records = remembered.get(name) ?? inMemory(trouble);
	remembered.set(name, records);
	return records;
}

/** How long storage may take to open, ms, before work begins without it. */
const usualPatienceMs = 8000;

/**
 * Opens the records of this browser; where storage is missing, blocked or refused, records that last
 * as long as the page does, so that work goes on. `isLasting` says which, `trouble` why.
 */
export async function openRecords(
	name = 'halfdrop',
	{ patienceMs = usualPatienceMs } = {}
): Promise<Records> {
	try {
		const database = new HalfdropDatabase(name);
		const trouble = await opened(database, patienceMs);
		return trouble ? inMemoryOf(name, trouble) : lasting(database);
	} catch (error) {
		return inMemoryOf(name, troubleOf(error));
	}
}

/** Null when the database is open; else what keeps it shut. */
async function opened(
	database: HalfdropDatabase,
	patienceMs: number
): Promise<StorageTrouble | null> {
	let isBlocked = false;
	let timer: ReturnType<typeof setTimeout> | undefined;
	database.on('blocked', () => (isBlocked = true));
	const outOfPatience = new Promise<StorageTrouble>((give) => {
		timer = setTimeout(
			() =>
				give(
					isBlocked
						? { why: 'blocked', detail: 'another window holds the storage in an older form' }
						: { why: 'failed', detail: 'the storage of this browser does not answer' }
				),
			patienceMs
		);
	});
	try {
		const trouble = await Promise.race([database.open().then(() => null), outOfPatience]);
		if (trouble) database.close();
		return trouble;
	} finally {
		clearTimeout(timer);
	}
}

function lasting(database: HalfdropDatabase): Records {
	const health = new Health();
	const { announce, watch } = watchOver(database.name);
	return {
		get isLasting() {
			return health.trouble === null;
		},
		get trouble() {
			return health.trouble;
		},
		runs: new LastingRuns(
			database,
			{
				headers: database.runs,
				heads: database.runHeads,
				entries: database.entries,
				idField: 'runId'
			},
			health,
			announce
		),
		tests: new LastingTests(
			database,
			{
				headers: database.tests,
				heads: database.testHeads,
				entries: database.testEntries,
				idField: 'testId'
			},
			health,
			announce
		),
		checks: new LastingChecks(
			database,
			{
				headers: database.checks,
				heads: database.checkHeads,
				entries: database.checkEntries,
				idField: 'checkId'
			},
			health,
			announce
		),
		kits: new LastingKits(database.kits, health),
		watchLog: watch
	};
}

function inMemory(trouble: StorageTrouble): Records {
	return {
		isLasting: false,
		trouble,
		runs: new MemoryRuns(),
		tests: new MemoryTests(),
		checks: new MemoryChecks(),
		kits: new MemoryKits(),
		watchLog: () => () => undefined
	};
}
