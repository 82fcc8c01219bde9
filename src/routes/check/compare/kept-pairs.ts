import { convertValue, decimalsFor, type Analyte, type Unit } from '$lib/kits';
import type { EvidenceOf, Reading } from '$lib/observation';
import { replayCheck, type CheckState } from '$lib/procedure';
import type { CheckHeader, Records } from '$lib/records';
import { plain } from '$lib/ui/charts/numbers';
import { cellText } from '$lib/ui/compare/pairs';
import type { KeptPairs } from '$lib/ui/compare/kept-pairs';
import { checkLogOf } from '../open-check';

type Asked = { analyte: Analyte; unit: Unit };
/** So many of the newest checks are looked at. */
const LOOKED_AT = 200;

const methodNames = {
	kit: 'another kit',
	photometer: 'a photometer',
	laboratory: 'a laboratory',
	probe: 'a pH probe'
} as const;

/** The same portion of water, and all of what is dissolved in it: else it is no pair. */
const isOfSameSample = ({ sampling, reports }: EvidenceOf<'secondMethod'>) =>
	sampling === undefined && reports !== 'carbonate';

const nameOf = ({ instrument, method }: EvidenceOf<'secondMethod'>) =>
	instrument ?? (method ? methodNames[method] : 'a second method');

/** '7.4 ± 0.4', the ± about 19 times in 20. */
function textOf(
	{ value, expandedUncertainty, unit: from }: Reading,
	{ analyte, unit }: Asked,
	coverageFactor = 2
): string {
	const inUnit = (each: number) => convertValue(each, from, unit, analyte);
	const u = (inUnit(expandedUncertainty) * 2) / coverageFactor;
	const decimals = decimalsFor(unit, u, analyte);
	return cellText(plain(inUnit(value), decimals), plain(u, decimals));
}

/** The reading in question of a check beside the first reading of each second method. */
function pairsOf({ inQuestion, evidence, kit }: CheckState, asked: Asked) {
	if (!inQuestion) return [];
	const found = new Map<string, string>();
	for (const { evidence: piece } of evidence) {
		if (piece.kind !== 'secondMethod' || !isOfSameSample(piece)) continue;
		const name = `${kit?.name ?? 'your kit'} and ${nameOf(piece)}`;
		// Further readings by it of this sample would count the own one twice.
		if (found.has(name)) continue;
		const other = textOf(piece.reading, asked, piece.coverageFactor);
		found.set(name, `${textOf(inQuestion.reading, asked)}; ${other}`);
	}
	return [...found];
}

async function stateOf(records: Records, { id }: CheckHeader): Promise<CheckState | null> {
	const stored = await records.checks.load(id);
	try {
		return stored && replayCheck(checkLogOf(stored));
	} catch {
		// A damaged check says nothing here; where checks are listed it is told.
		return null;
	}
}

/**
 * Samples that kept checks know to have been measured by one kit and by a second method, by the two of
 * them, the oldest first.
 */
export async function keptPairs(records: Records, asked: Asked): Promise<KeptPairs[]> {
	const { analyte } = asked;
	const headers = [
		...(await records.checks.list({ analyte, limit: LOOKED_AT })),
		...(await records.checks.unfinished()).filter((header) => header.analyte === analyte)
	].sort((a, b) => a.startedAtEpochMs - b.startedAtEpochMs);
	const groups = new Map<string, string[]>();
	for (const header of headers) {
		const state = await stateOf(records, header);
		for (const [name, line] of state ? pairsOf(state, asked) : [])
			groups.set(name, [...(groups.get(name) ?? []), line]);
	}
	return [...groups].map(([name, lines]) => ({ name, lines }));
}
