/**
 * Density of seawater at one atmosphere, kg per litre.
 *
 * Source: Millero & Poisson 1981 (Deep-Sea Res. 28A:625), the international equation of state of
 * 1980. It takes temperature on the scale of 1968, hence the conversion.
 * Valid for salinity 0 to 42 and 0 to 40 °C; used up to salinity 45.
 */
export function densityKgPerL(salinity: number, temperatureC: number): number {
	const t = (temperatureC - 0.0002) / 0.99975;
	const water =
		999.842594 +
		t *
			(6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
	const a = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
	const b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
	const c = 4.8314e-4;
	return (water + salinity * (a + b * Math.sqrt(salinity) + c * salinity)) / 1000;
}

const LEAST_GRAVITY = 1;
const MOST_GRAVITY = 1.035;

/**
 * Salinity of seawater of a specific gravity: its density over that of pure water, both at one
 * temperature. At 20 instead of 25 °C the same gravity means 0.3 less.
 *
 * @param specificGravity 1 to 1.035
 * @param temperatureC 10 to 35
 * @returns practical salinity, 0 to about 46
 * @throws RangeError naming field, range and what was found
 * Source: `densityKgPerL`, turned round by bisection.
 */
export function salinityOfSpecificGravity(specificGravity: number, temperatureC = 25): number {
	if (!(specificGravity >= LEAST_GRAVITY && specificGravity <= MOST_GRAVITY))
		throw new RangeError(
			`specificGravity must be between ${LEAST_GRAVITY} and ${MOST_GRAVITY}; found ${specificGravity}`
		);
	if (!(temperatureC >= 10 && temperatureC <= 35))
		throw new RangeError(`temperatureC must be between 10 and 35; found ${temperatureC}`);
	const density = specificGravity * densityKgPerL(0, temperatureC);
	let low = 0;
	let high = 50;
	while (high - low > 1e-6) {
		const middle = (low + high) / 2;
		if (densityKgPerL(middle, temperatureC) < density) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}
