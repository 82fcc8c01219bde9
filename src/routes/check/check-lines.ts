import { measured } from '$lib/judgement';
import { analytesGiving, convertValue, unitName, type Analyte, type Unit } from '$lib/kits';
import { summaryFor, type KnownSolution } from '$lib/observation';
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

/**
 * What a stored test says in a check: of the analyte itself, or of what is left by difference; a known
 * solution as its kit read it. Null where it says nothing.
 */
function saidIn(
	{ summary: stored, analyte: titrated }: TestHeader,
	asked: { analyte: Analyte; unit: Unit }
) {
	const summary = soundSummary(stored, titrated);
	if (!summary) return null;
	const measured = titrated as Analyte;
	if (summary.reference && measured !== asked.analyte)
		return { summary, shown: { analyte: measured, unit: summary.unit } };
	const said = summaryFor(summary, titrated, asked.analyte);
	return said && { summary: said, shown: asked };
}

/** The newest tests that say something of an analyte, to be taken as evidence. */
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
	const lists = await Promise.all(
		analytesGiving(about.analyte).map((analyte) => records.tests.list({ analyte, limit: OFFERED }))
	);
	const headers = lists
		.flat()
		.sort((a, b) => b.startedAtEpochMs - a.startedAtEpochMs)
		.slice(0, OFFERED);
	return headers.flatMap((header) => {
		const { id, kitId, startedAtEpochMs } = header;
		const said = saidIn(header, about);
		if (!said || id === about.but) return [];
		const { summary, shown } = said;
		const { value, band } = shownIn(summary, shown.unit, shown.analyte);
		return [
			{
				id,
				value,
				band,
				unitName: unitName(shown.unit, shown.analyte),
				when: whenWords(startedAtEpochMs, about.now),
				kitName: names.get(kitId) ?? 'A kit that is gone',
				isSameKit: kitId === about.kitId,
				...(summary.reference ? { holds: holdsIn(summary.reference, shown) } : {})
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
