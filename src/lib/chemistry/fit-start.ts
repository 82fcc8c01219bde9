import { modelOf, type MixedPoint, type ProbeParameters } from './probe-model';

const MOST_TRIALS = 24;
const MOST_POINTS = 16;
/** Ends beyond the last reading, over the last volume: such a titration stopped too early. */
const BEYOND = [1.25, 1.6, 2.2];

/** So many of a list, evenly from its first to its last. */
function some<T>(list: readonly T[], most: number): T[] {
	if (list.length <= most) return [...list];
	return Array.from(
		{ length: most },
		(_, i) => list[Math.round((i * (list.length - 1)) / (most - 1))]!
	);
}

/**
 * Where a fit begins: alkalinity as if the end were at one volume after another, a carbon, the offset
 * that then fits best; of all these the one that comes nearest.
 *
 * @param points that the fit uses, by rising volume
 * @param volumesMl of all readings, rising
 * @param mmolPerMl alkalinity that a millilitre of acid takes from a kilogram of sample
 * @param carbonShares carbon over alkalinity, to be tried
 */
export function startOf(
	points: readonly MixedPoint[],
	volumesMl: readonly number[],
	mmolPerMl: number,
	carbonShares: readonly number[]
): ProbeParameters {
	const largest = volumesMl.at(-1)!;
	const between = volumesMl.slice(1).map((ml, i) => (ml + volumesMl[i]!) / 2);
	const ends = [
		...some(
			between.filter((ml) => ml > 0),
			MOST_TRIALS
		),
		...BEYOND.map((times) => times * largest)
	];
	const looked = some(points, MOST_POINTS);
	const model = modelOf(looked);
	let best: ProbeParameters = [largest * mmolPerMl, largest * mmolPerMl, 0, 1];
	let least = Infinity;
	for (const end of ends)
		for (const share of carbonShares) {
			const alkalinity = end * mmolPerMl;
			const off = model([alkalinity, share * alkalinity, 0, 1]).map(
				({ ph }, i) => looked[i]!.ph - ph
			);
			// The median, and differences capped: next to a wrong end readings are far off.
			const offset = [...off].sort((a, b) => a - b)[Math.floor(off.length / 2)]!;
			const misfit = off.reduce((sum, each) => sum + Math.min(0.25, (each - offset) ** 2), 0);
			if (misfit < least) {
				least = misfit;
				best = [alkalinity, share * alkalinity, offset, 1];
			}
		}
	return best;
}
