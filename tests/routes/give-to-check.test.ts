import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { houseSyringeKit } from '$lib/kits';
import type { Evidence } from '$lib/observation';
import { openRecords } from '$lib/records';
import { CheckRun } from '../../src/routes/check/check-run.svelte';
import { giveToCheck } from '../../src/routes/check/give-to-check';
import { Judging } from '../../src/routes/check/judging.svelte';
import { freshCheck, storedCheck } from '../../src/routes/check/open-check';

const probe =
	(value: number) =>
	(id: string): Evidence => ({
		kind: 'secondMethod',
		method: 'probe',
		instrument: 'pH probe',
		reading: { id, label: 'pH probe', value, expandedUncertainty: 0.2, unit: 'dKH' }
	});

test('the same figures given twice are one piece of evidence; other figures are another', async () => {
	const records = await openRecords();
	const clock = () => Date.now();
	const opened = await freshCheck(records, { kit: houseSyringeKit, version: 0 }, clock);
	const run = new CheckRun(opened, records.checks, () => 'dKH', clock, new Judging(() => null));
	const { id } = run.log;
	run.give({
		kind: 'test',
		from: 'first',
		reading: { id: 'a', label: 'a', value: 7.4, expandedUncertainty: 0.6, unit: 'dKH' }
	});
	await run.kept.settled();
	const pieces = async () =>
		(await storedCheck(records, id))?.log.entries.filter(
			(entry) => 'event' in entry && entry.event.type === 'evidence.given'
		).length;
	expect(await giveToCheck(id, probe(8), 'dKH')).toBeNull();
	expect(await giveToCheck(id, probe(8), 'dKH')).toBeNull();
	expect(await pieces()).toBe(2);
	expect(await giveToCheck(id, probe(8.1), 'dKH')).toBeNull();
	expect(await pieces()).toBe(3);
	run.leave();
});
