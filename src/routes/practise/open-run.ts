import type { Scenario } from '$lib/bench';
import { houseKitOf } from '$lib/kits';
import { loadRunLog, type RunLog } from '$lib/procedure';
import type { RunHeader, RunRecords } from '$lib/records';
import { scenarioIdNow } from '../former-scenarios';
import { PracticeRun } from './practice-run.svelte';

const files = import.meta.glob<unknown>('/scenarios/*.json', { import: 'default' });

/** A scenario by its id; only now does its truth come to the page. */
export async function loadScenario(id: string): Promise<Scenario> {
	const load = files[`/scenarios/${id}.json`];
	if (!load) throw new RangeError(`there is no scenario ${id}`);
	const { ScenarioSchema } = await import('$lib/bench');
	return ScenarioSchema.parse(await load());
}

/** A run in which nothing has happened yet; kept from its first entry on. */
export function freshRun(
	scenario: Scenario,
	records: RunRecords,
	like: Partial<Pick<RunLog, 'seed' | 'coaching'>> = {}
): PracticeRun {
	const log: RunLog = {
		format: 1,
		id: crypto.randomUUID?.() ?? `${Date.now()}-${randomSeed()}`,
		scenarioId: scenario.id,
		seed: like.seed ?? randomSeed(),
		coaching: like.coaching ?? scenario.coaching,
		startedAtEpochMs: Date.now(),
		kit: houseKitOf(scenario.kitId),
		entries: []
	};
	return new PracticeRun(log, scenario, records, false);
}

function randomSeed(): number {
	return crypto.getRandomValues(new Uint32Array(1))[0] ?? 1;
}

/** The runs of a scenario under any id that it ever had, changed last first. */
async function runsOf({ id }: Scenario, records: RunRecords): Promise<RunHeader[]> {
	const headers = await records.list();
	return headers.filter(({ scenarioId }) => scenarioIdNow(scenarioId) === id);
}

async function keptRun(id: string, scenario: Scenario, records: RunRecords) {
	const stored = await records.load(id);
	if (!stored) return null;
	const log = loadRunLog({ ...(stored.header.head as object), entries: stored.entries });
	return new PracticeRun(log, scenario, records, true);
}

/**
 * How a run came to the page: begun, gone on with, or begun because the kept one is damaged; and the
 * newest of this scenario that is over.
 */
export type Opened = {
	run: PracticeRun;
	came: 'fresh' | 'resumed' | 'damaged';
	finished: RunHeader | null;
};

/** The newest run of this scenario that is not over, or a fresh one. */
export async function openRun(scenario: Scenario, records: RunRecords): Promise<Opened> {
	const headers = await runsOf(scenario, records);
	const finished = headers.find(({ state }) => state === 'finished') ?? null;
	const open = headers.find(({ state }) => state === 'unfinished');
	try {
		const run = open && (await keptRun(open.id, scenario, records));
		if (run) return { run, came: 'resumed', finished };
		return { run: freshRun(scenario, records), came: 'fresh', finished };
	} catch {
		return { run: freshRun(scenario, records), came: 'damaged', finished };
	}
}

/** A run of this scenario that is over, to look at its debrief again; null where it is not kept here, or damaged. */
export async function openFinished(
	scenario: Scenario,
	records: RunRecords,
	id: string
): Promise<PracticeRun | null> {
	const headers = await runsOf(scenario, records);
	if (!headers.some((header) => header.id === id && header.state === 'finished')) return null;
	try {
		return await keptRun(id, scenario, records);
	} catch {
		return null;
	}
}
