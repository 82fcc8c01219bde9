import { flag, LIMITS, two, type ProbeFlag } from './probe-flag';
import type { ProbePoint } from './probe-titration';

/** From the first reading to the last, in the order in which they stand. */
function courseOf(column: readonly number[]): { least: number; most: number; steps: number[] } {
	return {
		least: Math.min(...column),
		most: Math.max(...column),
		steps: column.slice(1).map((each, i) => each - column[i]!)
	};
}

/**
 * Whether the columns are what they are taken for: what stands as acid falls as a pH does while what stands as
 * pH rises; or a pH that hardly moves, however much acid was added. Where they are not, nothing else that
 * could be said of the readings is true.
 *
 * @param points in the order in which they were written
 */
export function flagsOfColumns(points: readonly ProbePoint[]): ProbeFlag[] {
	if (points.length < LIMITS.fewestToSeeColumns) return [];
	const acid = courseOf(points.map(({ addedMl }) => addedMl));
	const ph = courseOf(points.map((point) => point.ph));
	const { phOfSamples, stillPh } = LIMITS;
	const isLikePh =
		acid.least >= phOfSamples.low &&
		acid.most <= phOfSamples.high &&
		acid.steps.every((step) => step <= LIMITS.risePh) &&
		acid.most - acid.least > stillPh;
	if (isLikePh && ph.steps.every((step) => step >= 0) && ph.most > ph.least)
		return [
			flag(
				'columnsSwapped',
				'unusable',
				'The columns look swapped: what stands as acid falls like a pH, and what stands as pH rises like acid. Put the acid first, or write “pH mL” over the list.',
				{ firstAsAcidMl: points[0]!.addedMl, firstAsPh: points[0]!.ph }
			)
		];
	if (acid.most > acid.least && ph.most - ph.least <= stillPh)
		return [
			flag(
				'notFalling',
				'unusable',
				`The pH does not fall: it stays at about ${two((ph.most + ph.least) / 2)}, however much acid was added. Look whether the probe hangs in the sample and is plugged in, and whether the second column is the pH.`,
				{ fallPh: ph.most - ph.least }
			)
		];
	return [];
}

/**
 * What the readings show before anything is worked out from them.
 *
 * @param hasFit the value comes from a curve through all readings; the straight line stands beside it
 */
export function flagsOfReadings(
	points: readonly ProbePoint[],
	windowPh: { low: number; high: number },
	hasFit: boolean
): ProbeFlag[] {
	const flags: ProbeFlag[] = [];
	const count = points.length;
	if (count < LIMITS.fewestPoints)
		flags.push(
			flag(
				'tooFewPoints',
				count < 5 ? 'unusable' : 'doubt',
				`${count === 1 ? 'There is 1 reading' : `There are ${count} readings`}. Take at least ${LIMITS.fewestPoints}, better 20, closer together near the end and after it.`,
				{ readings: count }
			)
		);
	const lowestPh = Math.min(...points.map(({ ph }) => ph));
	if (count > 0 && lowestPh > LIMITS.farEnoughPh)
		flags.push(
			flag(
				'notFarEnough',
				lowestPh > 4.2 ? 'unusable' : 'doubt',
				`The readings stop at pH ${two(lowestPh)}. Add acid down to pH 3: where the end was is told by what comes after it.`,
				{ lowestPh }
			)
		);
	const inWindow = points.filter(({ ph }) => ph >= windowPh.low && ph <= windowPh.high).length;
	const { alone, besideFit } = LIMITS.fewestInWindow;
	if (inWindow < (hasFit ? besideFit : alone))
		flags.push(
			flag(
				'tooFewInWindow',
				'doubt',
				`${inWindow === 0 ? 'No reading lies' : inWindow === 1 ? 'Only 1 reading lies' : `Only ${inWindow} readings lie`} between pH ${windowPh.low} and ${windowPh.high}. The straight line needs ${alone} or more there.`,
				{ readings: inWindow }
			)
		);
	const sorted = points
		.map((point, index) => ({ ...point, index }))
		.sort((a, b) => a.addedMl - b.addedMl);
	const rises = sorted.filter((point, i) => {
		const before = sorted[i - 1];
		return before && point.addedMl > before.addedMl && point.ph - before.ph > LIMITS.risePh;
	});
	if (rises.length > 0)
		flags.push(
			flag(
				'notFalling',
				'doubt',
				`The pH rises after more acid at ${rises.map(({ addedMl }) => `${Number(addedMl.toPrecision(4))} mL`).join(', ')}. Look whether a number was written down wrong, and wait for the meter to settle.`,
				{ rises: rises.length },
				rises.map(({ index }) => index)
			)
		);
	return flags;
}
