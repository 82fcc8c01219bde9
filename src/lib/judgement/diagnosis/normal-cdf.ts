/**
 * Normal distribution function for the thousands of looks that inference takes at it; off by less
 * than 1e-7.
 *
 * Source: Abramowitz and Stegun 1964, 26.2.17.
 */
export function normalCdf(z: number): number {
	if (z < -7) return 0;
	if (z > 7) return 1;
	const t = 1 / (1 + 0.2316419 * Math.abs(z));
	const tail =
		0.3989422804014327 *
		Math.exp(-0.5 * z * z) *
		t *
		(0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
	return z > 0 ? 1 - tail : tail;
}
