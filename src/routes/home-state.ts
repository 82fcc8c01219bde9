import type { Analyte, Unit } from '$lib/kits';
import type { CheckHeader, RunHeader, TestHeader } from '$lib/records';
import { glanceAtRecords } from '$lib/records/glance';
import { scenarioIdNow } from './former-scenarios';

/** A reading as the first page shows it. */
export type HomeReading = {
	id: string;
	/** What was measured: 'Magnesium'. */
	name: string;
	value: string;
	band: string;
	unitName: string;
	age: string;
	isSuspect: boolean;
};
/** A check that was left before its end, as the first page shows it. */
export type HomeCheck = {
	id: string;
	/** '7.4 ± 0.4 dKH', and whether nobody gave the ±; null while no reading is in question. */
	value: string | null;
	where: string;
};
/** What the first page knows of what was done here before. */
export type HomeState = {
	runs: RunHeader[];
	unfinishedTest: TestHeader | null;
	unfinishedCheck: HomeCheck | null;
	readings: HomeReading[];
	hasOwnKit: boolean;
};

export const nothingYet: HomeState = {
	runs: [],
	unfinishedTest: null,
	unfinishedCheck: null,
	readings: [],
	hasOwnKit: false
};

type UnitOf = (analyte: Analyte) => Unit;

/** So many last readings are shown. */
const MOST = 3;

/**
 * Reads what this browser keeps. What puts readings into words is loaded only where there are any, so
 * that the page stays small.
 */
export async function homeState(unitOf: UnitOf, now: number): Promise<HomeState> {
	const { runs, unfinishedTest, unfinishedCheck, latest, hasKits } = await glanceAtRecords(MOST);
	return {
		runs: runs.map((run) => ({ ...run, scenarioId: scenarioIdNow(run.scenarioId) })),
		unfinishedTest,
		unfinishedCheck: unfinishedCheck && (await checkOf(unfinishedCheck, unitOf)),
		readings: latest.length > 0 ? await readingsOf(latest, unitOf, now) : [],
		hasOwnKit: hasKits
	};
}

async function checkOf(header: CheckHeader, unitOf: UnitOf): Promise<HomeCheck> {
	const { homeCheck } = await import('./home-readings');
	return homeCheck(header, unitOf);
}

async function readingsOf(
	headers: readonly TestHeader[],
	unitOf: UnitOf,
	now: number
): Promise<HomeReading[]> {
	const { homeReadings } = await import('./home-readings');
	return homeReadings(headers, unitOf, now);
}
