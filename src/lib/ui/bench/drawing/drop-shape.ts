/** Length on a 1 mL barrel that holds 1 mL, mm; common practice, no source. */
export const MM_PER_ML = 57;
/** Life size on a screen that holds to the CSS pixel (96 to the inch). */
export const LIFE_SIZE_PX_PER_ML = (MM_PER_ML / 25.4) * 96;

/** Radius of a round drop of this volume, mm. */
export function dropRadiusMm(volumeMl: number): number {
	return Math.cbrt((3 * Math.max(0, volumeMl) * 1000) / (4 * Math.PI));
}

/**
 * Outline of a drop that hangs at (0, 0): a bead that grows, then gets a neck as its weight pulls.
 *
 * @param radiusPx of a round drop of the same volume
 * @param ripe 0 to 1: how near it is to letting go
 * @param rimPx half the width of the end that it hangs from
 */
export function hangingDropPath(radiusPx: number, ripe: number, rimPx: number): string {
	if (radiusPx < 0.4) return '';
	const n = (value: number) => Number(value.toFixed(2));
	const r = radiusPx;
	const rim = Math.min(rimPx, r);
	const neck = r * (0.35 + 0.75 * ripe * ripe);
	const bottom = neck + 2 * r * 0.92;
	const belly = neck + r * 0.95;
	return (
		`M${n(-rim)} 0C${n(-rim)} ${n(neck * 0.6)} ${n(-r)} ${n(belly - r * 0.75)} ${n(-r)} ${n(belly)}` +
		`C${n(-r)} ${n(belly + r * 0.55)} ${n(-r * 0.55)} ${n(bottom)} 0 ${n(bottom)}` +
		`C${n(r * 0.55)} ${n(bottom)} ${n(r)} ${n(belly + r * 0.55)} ${n(r)} ${n(belly)}` +
		`C${n(r)} ${n(belly - r * 0.75)} ${n(rim)} ${n(neck * 0.6)} ${n(rim)} 0Z`
	);
}

/** Share of the way down after a share of the time of a free fall: it goes with the square. */
export function fallenShare(timeShare: number): number {
	return Math.min(1, Math.max(0, timeShare)) ** 2;
}
