import { unitName, type Analyte, type Unit } from '$lib/kits';
import type { CheckHeader, Records, TestHeader } from '$lib/records';
import type { LeftLine } from '$lib/ui/conversation/StartCheck.svelte';
import type { LoggedLine } from '$lib/ui/conversation/run';
import { shownIn } from '$lib/ui/log/in-unit';
import type { LogRow } from '$lib/ui/log/LogRows.svelte';
import { kitNamesOf, rowOf } from '../log/kept-tests';
import { soundSummary, unitFor } from '../sound-summary';
import { whenWords } from '../test/when-words';
import { checkLogOf } from './open-check';

/** So many tests of the log are offered. */
const OFFERED = 12;

/** The newest tests, as rows that lead to their check. */
export async function testRows(
	records: Records,
	unit: Unit,
	hrefOf: (id: string) => string
): Promise<LogRow[]> {
	const names = kitNamesOf(await records.kits.all());
	const headers = await records.tests.list({ limit: OFFERED });
	return headers
		.filter(({ summary }) => soundSummary(summary) !== null)
		.map((header) => rowOf(header, { names, unit, hrefOf }));
}

/** The newest tests of one analyte, to be taken as evidence. */
export async function loggedLines(
	records: Records,
	about: {
		analyte: Analyte;
		kitId: string | null;
		unit: Unit;
		now: number;
		but?: string | undefined;
	}
): Promise<LoggedLine[]> {
	const names = kitNamesOf(await records.kits.all());
	const headers = await records.tests.list({ analyte: about.analyte, limit: OFFERED });
	return headers.flatMap(({ id, kitId, startedAtEpochMs, summary: stored }: TestHeader) => {
		const summary = soundSummary(stored);
		if (!summary || id === about.but) return [];
		const { value, band } = shownIn(summary, about.unit);
		return [
			{
				id,
				value,
				band,
				unitName: unitName(about.unit, about.analyte),
				when: whenWords(startedAtEpochMs, about.now),
				kitName: names.get(kitId) ?? 'A kit that is gone',
				isSameKit: kitId === about.kitId
			}
		];
	});
}

/** Checks that were left before their end, the newest first. */
export function leftLines(
	headers: readonly CheckHeader[],
	{ unit, now, hrefOf }: { unit: Unit; now: number; hrefOf: (id: string) => string }
): LeftLine[] {
	return headers.map(({ id, analyte, startedAtEpochMs, where, summary }) => {
		const shown = unitFor(analyte as Analyte, unit);
		const said = summary && shownIn(summary, shown);
		return {
			href: hrefOf(id),
			value: said ? `${said.value} ± ${said.band} ${unitName(shown)}` : 'No reading yet',
			when: whenWords(startedAtEpochMs, now),
			where
		};
	});
}

/** The unfinished check of a stored test, if there is one: it is gone on with, and not begun twice. */
export async function checkBegunOf(records: Records, testId: string): Promise<string | null> {
	for (const { id } of await records.checks.unfinished()) {
		const stored = await records.checks.load(id);
		if (!stored) continue;
		try {
			const isOfIt = checkLogOf(stored).entries.some(
				(entry) =>
					'event' in entry &&
					entry.event.type === 'evidence.given' &&
					entry.event.testId === testId &&
					entry.event.evidence.kind === 'test' &&
					entry.event.evidence.from === 'first'
			);
			if (isOfIt) return id;
		} catch {
			// A damaged check is nobody's.
		}
	}
	return null;
}
