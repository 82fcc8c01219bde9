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

/** How likely it is that the water itself has changed. */
function changeOf(analysis: Analysis): number {
	const { places, faults } = analysis;
	return beliefsOf(analysis).reduce(
		(sum, { place, probability }) =>
			place !== places.noneOfThese &&
			places.faultsAt(place).some((fault) => faults[fault]!.scope === 'tank')
				? sum + probability
				: sum,
		0
	);
}

/**
 * Whether a reading is odd in a way that may matter: the water may well lie outside the band; or it may
 * well have changed, by what would take it out of the band if it went on like this. A change that a slip
 * explains is the reading's own, and no reason to go on.
 */
export function isOdd(analysis: Analysis, band: Band): boolean {
	if (outsideOf(analysis, band) >= DOUBTED) return true;
	const departure = departureOf(analysis);
	if (departure === null || changeOf(analysis) < DOUBTED) return false;
	const next = analysis.model.value[analysis.first]! + departure;
	return next < band.low || next > band.high;
}
