import type { Scenario } from '$lib/bench';
import { houseKitOf } from '$lib/kits';
import { loadRunLog, type RunLog } from '$lib/procedure';
import type { RunRecords } from '$lib/records';
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

/** How a run came to the page: begun, gone on with, or begun because the kept one is damaged. */
export type Opened = { run: PracticeRun; came: 'fresh' | 'resumed' | 'damaged' };

/** The newest run of this scenario that is not over, or a fresh one. */
export async function openRun(scenario: Scenario, records: RunRecords): Promise<Opened> {
	const headers = await records.list();
	const open = headers.find(
		(header) => header.scenarioId === scenario.id && header.state === 'unfinished'
	);
	const stored = open && (await records.load(open.id));
	if (!stored) return { run: freshRun(scenario, records), came: 'fresh' };
	try {
		const log = loadRunLog({ ...(stored.header.head as object), entries: stored.entries });
		return { run: new PracticeRun(log, scenario, records, true), came: 'resumed' };
	} catch {
		return { run: freshRun(scenario, records), came: 'damaged' };
	}
}
