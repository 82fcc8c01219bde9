/**
 * Mixing in a vial as two compartments: the place where drops fall, and the bulk. What has not
 * mixed yet fades exponentially: slowly when the vial stands, fast when it is swirled.
 *
 * Times by common practice, no source: a streak stays for some seconds in a still vial and is gone
 * within a second of swirling.
 */
export const STILL_MIXING_SECONDS = 6;
export const SWIRLED_MIXING_SECONDS = 0.35;
/** Share of the liquid in which a fresh drop is spread before it mixes. */
export const PLUME_SHARE = 0.12;

/** What is left unmixed after a time, as a share of what was unmixed before. */
export function unmixedShare(seconds: number, isSwirled: boolean): number {
	return Math.exp(
		-Math.max(0, seconds) / (isSwirled ? SWIRLED_MIXING_SECONDS : STILL_MIXING_SECONDS)
	);
}

/**
 * CO2 over air leaves as an exponential of time: swirled, 8 % in 2 s; still, 0.03 % in a second.
 * The rates are this project's choice. With a 2 s swirl after each drop near the end, a test with
 * coarse drops keeps about 0.7 of its carbon and one with fine drops 0.2, so that ends lie between
 * that of a closed vial (about 0.16 dKH low at pH 4.5 and 7 dKH) and of one open to air (0.1 high).
 */
const SWIRLED_LOSS_PER_S = -Math.log(1 - 0.08) / 2;
const STILL_LOSS_PER_S = 0.0003;

/** Share of the CO2 over air that leaves in a time. */
export function carbonDioxideLoss(seconds: number, isSwirled: boolean): number {
	return 1 - Math.exp(-Math.max(0, seconds) * (isSwirled ? SWIRLED_LOSS_PER_S : STILL_LOSS_PER_S));
}
