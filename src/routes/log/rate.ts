import { convertValue, decimalsFor, unitName, type Analyte, type Unit } from '$lib/kits';
import { meanRate, type RatePoint } from '$lib/metrology';
import { isOfTank } from '$lib/observation';
import type { TestPoint } from '$lib/records';
import { plain } from '$lib/ui/charts/numbers';
import { soundSummary } from '../sound-summary';

const DAY = 86_400_000;

/**
 * Readings that one line may be drawn through: with the kit of the newest, whose bottles and ware
 * shift them all alike, and without those in doubt or of another water than the tank's.
 */
function ratePoints(points: readonly TestPoint[], unit: Unit, analyte: Analyte): RatePoint[] {
	const ofTank = points.filter(({ summary }) => summary === null || isOfTank(summary));
	const kitId = ofTank.at(-1)?.kitId;
	return ofTank.flatMap((point): RatePoint[] => {
		const summary = soundSummary(point.summary, analyte);
		if (!summary || summary.isSuspect || point.kitId !== kitId) return [];
		const scatter = summary.repeatabilitySd / Math.sqrt(Math.max(1, summary.values.length));
		return [
			{
				day: point.startedAtEpochMs / DAY,
				value: convertValue(summary.value, summary.unit, unit, analyte),
				standardUncertainty: convertValue(scatter, summary.unit, unit, analyte)
			}
		];
	});
}

/** Change per day over the tests of a picture, in a sentence; null while nothing can be said. */
export function rateSentence(
	points: readonly TestPoint[],
	unit: Unit,
	analyte: Analyte
): string | null {
	const said = ratePoints(points, unit, analyte);
	const days = (said.at(-1)?.day ?? 0) - (said[0]?.day ?? 0);
	// Two points always make a line, and within a day or two dosing alone moves the value.
	if (said.length < 3 || days < 3) return null;
	if (said.some(({ standardUncertainty }) => !(standardUncertainty > 0))) return null;
	const rate = meanRate(said);
	if (!rate) return null;
	const { perDay, expandedUncertainty, scatterRatio, n } = rate;
	if (scatterRatio !== null && scatterRatio > 2)
		return `These ${n} readings follow no straight line, so no rate is given.`;
	const decimals = decimalsFor(unit, expandedUncertainty, analyte);
	const band = `± ${plain(expandedUncertainty, decimals)} ${unitName(unit, analyte)} per day (95 %)`;
	const over = `over ${n} tests with one kit in ${Math.round(days)} days`;
	if (Math.abs(perDay) <= expandedUncertainty)
		return `No rise or fall can be told ${over}: ${plain(perDay, decimals)} ${band}.`;
	const way = perDay < 0 ? 'fell' : 'rose';
	return `On average it ${way} by ${plain(Math.abs(perDay), decimals)} ${band}, ${over}.`;
}
