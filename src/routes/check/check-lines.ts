import { measured } from '$lib/judgement';
import { convertValue, unitName, type Analyte, type Unit } from '$lib/kits';
import type { KnownSolution } from '$lib/observation';
import type { CheckHeader, Records, TestHeader } from '$lib/records';
import type { LeftLine } from '$lib/ui/conversation/StartCheck.svelte';
import type { LoggedLine } from '$lib/ui/conversation/run';
import { shownIn } from '$lib/ui/log/in-unit';
import type { LogRow } from '$lib/ui/log/LogRows.svelte';
import { kitNamesOf, rowOf } from '../log/kept-tests';
import { soundSummary } from '../sound-summary';
import { whenWords } from '../test/when-words';
import { checkLogOf } from './open-check';

/** So many tests of the log are offered. */
const OFFERED = 12;

/** The newest tests, as rows that lead to their check. */
export async function testRows(
	records: Records,
	unitOf: (analyte: Analyte) => Unit,
	hrefOf: (id: string) => string
): Promise<LogRow[]> {
	const names = kitNamesOf(await records.kits.all());
	const headers = await records.tests.list({ limit: OFFERED });
	return headers
		.filter(({ summary, analyte }) => soundSummary(summary, analyte) !== null)
		.map((header) => rowOf(asTitrated(header), { names, unitOf, hrefOf }));
}

/** A check is of what was titrated, not of what is left of it by difference. */
function asTitrated(header: TestHeader): TestHeader {
	if (!header.summary?.difference) return header;
	const { difference: _difference, ...summary } = header.summary;
	return { ...header, summary };
}

/** What a known solution is said to hold, as shown. */
function holdsIn(
	{ nominal, expandedUncertainty, unit: from }: KnownSolution,
	{ unit, analyte }: { unit: Unit; analyte: Analyte }
): string {
	return measured(
		convertValue(nominal, from, unit, analyte),
		convertValue(expandedUncertainty, from, unit, analyte),
		unit,
		analyte
	);
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
		const summary = soundSummary(stored, about.analyte);
		if (!summary || id === about.but) return [];
		const { value, band } = shownIn(summary, about.unit, about.analyte);
		return [
			{
				id,
				value,
				band,
				unitName: unitName(about.unit, about.analyte),
				when: whenWords(startedAtEpochMs, about.now),
				kitName: names.get(kitId) ?? 'A kit that is gone',
				isSameKit: kitId === about.kitId,
				...(summary.reference ? { holds: holdsIn(summary.reference, about) } : {})
			}
		];
	});
}

/** Checks that were left before their end, the newest first. */
export function leftLines(
	headers: readonly CheckHeader[],
	{
		unitOf,
		now,
		hrefOf
	}: { unitOf: (analyte: Analyte) => Unit; now: number; hrefOf: (id: string) => string }
): LeftLine[] {
	return headers.map(({ id, analyte, startedAtEpochMs, where, summary }) => {
		const measured = analyte as Analyte;
		const shown = unitOf(measured);
		const said = summary && shownIn(summary, shown, measured);
		return {
			href: hrefOf(id),
			value: said
				? `${said.value} ± ${said.band} ${unitName(shown, measured)}${summary?.isUncertaintyTaken ? ' (± taken as usual)' : ''}`
				: 'No reading yet',
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
