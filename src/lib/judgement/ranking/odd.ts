import type { Analysis } from '../diagnosis/analysis';
import { beliefsOf, tankMixture } from '../diagnosis/beliefs';
import { cumulativeOf } from '../diagnosis/mixture';
import type { Band } from '../decision/decision';

/** From this chance of lying outside the band on, a reading is odd; judgement. */
export const DOUBTED = 0.2;

/** How likely the tank's value is to lie outside a band in the customary unit. */
export function outsideOf(analysis: Analysis, { low, high }: Band): number {
	const mixture = tankMixture(analysis);
	return 1 - cumulativeOf(mixture, high) + cumulativeOf(mixture, low);
}

/** What the reading in question has moved by since those from before, expected changes taken off; null without such. */
function departureOf({ model, first }: Analysis): number | null {
	const { rows, count, value, amountMean } = model;
	const expected = rows
		.slice(0, count)
		.flatMap(({ isEarlier }, i) =>
			isEarlier ? [value[i]! + amountMean[first]! - amountMean[i]!] : []
		);
	if (first < 0 || expected.length === 0) return null;
	return value[first]! - expected.reduce((sum, each) => sum + each, 0) / expected.length;
}

/**
 * Whether a reading is odd in a way that may matter: the water may well lie outside the band; or
 * something is behind a change that would take it out of the band if it went on like this.
 */
export function isOdd(analysis: Analysis, band: Band): boolean {
	if (outsideOf(analysis, band) >= DOUBTED) return true;
	const departure = departureOf(analysis);
	if (departure === null) return false;
	const { none } = analysis.places;
	const nothing = beliefsOf(analysis).find(({ place }) => place === none)?.probability ?? 0;
	const next = analysis.model.value[analysis.first]! + departure;
	return nothing < DOUBTED && (next < band.low || next > band.high);
}
