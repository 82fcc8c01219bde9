import type { Analyte, Unit } from '$lib/kits';
import { decimalsFor } from '$lib/kits';
import { analyteName, convertValue } from '$lib/kits/units';
import { isOfTank, summaryFor } from '$lib/observation/test-summary';
import type { TestHeader } from '$lib/records';
import { plain } from '$lib/ui/charts/numbers';
import { ageWords } from '$lib/ui/log/log-words';
import { lookedAt, type UnitFor } from '$lib/ui/together/together-fields';
import type { Latest } from '$lib/ui/together/together-form.svelte';
import { isAnalyte, soundSummary } from '../../sound-summary';

/** Values further back than this say nothing of one another, ms. */
const TOGETHER_MS = 14 * 86_400_000;

/**
 * The newest value of each that is kept in the log, of tests of the tank that nobody doubts; null where
 * there are not two.
 *
 * @param headers of kept tests, begun last first
 */
export function latestOf(
	headers: readonly TestHeader[],
	unitFor: UnitFor,
	now: number
): Latest | null {
	const texts: Record<string, string> = {};
	const words: string[] = [];
	const byDifference = new Set<Analyte>();
	for (const analyte of lookedAt)
		for (const { analyte: measured, startedAtEpochMs, summary: stored } of headers) {
			const whole = isAnalyte(measured) ? soundSummary(stored, measured) : null;
			const found = whole && summaryFor(whole, measured, analyte);
			if (!found || found.isSuspect || !isOfTank(found) || now - startedAtEpochMs > TOGETHER_MS)
				continue;
			const inUnit = (value: number, unit: Unit) =>
				convertValue(value, unit, unitFor(analyte), analyte);
			const expanded = inUnit(found.expandedUncertainty, found.unit);
			const decimals = decimalsFor(unitFor(analyte), expanded, analyte);
			texts[analyte] = plain(inUnit(found.value, found.unit), decimals);
			texts[`${analyte}U`] = plain(expanded, decimals);
			words.push(`${analyteName(analyte)}, ${ageWords(startedAtEpochMs, now)}`);
			if (measured !== analyte) byDifference.add(analyte);
			break;
		}
	return words.length > 1 ? { words: words.join('; '), texts, byDifference } : null;
}
