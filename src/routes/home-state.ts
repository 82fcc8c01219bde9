import type { Unit } from '$lib/kits';
import type { RunHeader, TestHeader } from '$lib/records';

/** A reading as the first page shows it. */
export type HomeReading = {
	id: string;
	value: string;
	band: string;
	unitName: string;
	age: string;
	isSuspect: boolean;
};
/** What the first page knows of what was done here before. */
export type HomeState = {
	runs: RunHeader[];
	unfinishedTest: TestHeader | null;
	readings: HomeReading[];
	hasOwnKit: boolean;
};

export const nothingYet: HomeState = {
	runs: [],
	unfinishedTest: null,
	readings: [],
	hasOwnKit: false
};

/** So many last readings are shown. */
const MOST = 3;

/**
 * Reads what this browser keeps. Storage comes after the page is there, and what writes readings
 * only where there are any, so that the page stays small.
 */
export async function homeState(unit: Unit, now: number): Promise<HomeState> {
	const { openRecords } = await import('$lib/records');
	const records = await openRecords();
	const [runs, unfinished, latest, kits] = await Promise.all([
		records.runs.list(),
		records.tests.unfinished(),
		records.tests.list({ limit: MOST }),
		records.kits.all()
	]);
	return {
		runs,
		unfinishedTest: unfinished[0] ?? null,
		readings: latest.length > 0 ? await readingsOf(latest, unit, now) : [],
		hasOwnKit: kits.length > 0
	};
}

async function readingsOf(
	headers: readonly TestHeader[],
	unit: Unit,
	now: number
): Promise<HomeReading[]> {
	const { homeReadings } = await import('./home-readings');
	return homeReadings(headers, unit, now);
}
