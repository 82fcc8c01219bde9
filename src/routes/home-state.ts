import type { Unit } from '$lib/kits';
import type { RunHeader, TestHeader } from '$lib/records';
import { glanceAtRecords } from '$lib/records/glance';

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
 * Reads what this browser keeps. What puts readings into words is loaded only where there are any, so
 * that the page stays small.
 */
export async function homeState(unit: Unit, now: number): Promise<HomeState> {
	const { runs, unfinishedTest, latest, hasKits } = await glanceAtRecords(MOST);
	return {
		runs,
		unfinishedTest,
		readings: latest.length > 0 ? await readingsOf(latest, unit, now) : [],
		hasOwnKit: hasKits
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
