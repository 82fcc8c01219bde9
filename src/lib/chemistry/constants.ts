/**
 * Equilibrium constants at 1 atm, mol per kg of solution. The name of each says what it is for, on
 * which pH scale it stands, and where it comes from. Equations as printed in the Guide to best
 * practices for ocean CO2 measurements (Dickson, Sabine & Christian 2007, PICES Special
 * Publication 3, chapter 5), unless said otherwise.
 */
export type Constants = {
	/** CO2 in water against air, mol per kg and atm. */
	k0: number;
	/** First and second of carbonic acid, boric acid, water: total scale. */
	k1: number;
	k2: number;
	kB: number;
	kW: number;
	/** Hydrogen sulfate and hydrogen fluoride: free scale. */
	kS: number;
	kF: number;
};

export const kelvin = (temperatureC: number) => temperatureC + 273.15;

/** Ionic strength of seawater, mol per kg of water. Source: the Guide, chapter 5. */
export const ionicStrength = (salinity: number) => (19.924 * salinity) / (1000 - 1.005 * salinity);

/** Solubility of CO2. Source: Weiss 1974 (Mar. Chem. 2:203). */
export function k0Weiss1974(salinity: number, temperatureC: number): number {
	const hundredK = kelvin(temperatureC) / 100;
	return Math.exp(
		-60.2409 +
			93.4517 / hundredK +
			23.3585 * Math.log(hundredK) +
			salinity * (0.023517 - 0.023656 * hundredK + 0.0047036 * hundredK * hundredK)
	);
}

/** First constant of carbonic acid, total scale. Source: Lueker, Dickson & Keeling 2000; S 19 to 43, 2 to 35 °C. */
export function k1TotalLueker2000(salinity: number, temperatureC: number): number {
	const t = kelvin(temperatureC);
	const pK =
		3633.86 / t -
		61.2172 +
		9.6777 * Math.log(t) -
		0.011555 * salinity +
		0.0001152 * salinity * salinity;
	return 10 ** -pK;
}

/** Second constant of carbonic acid, total scale. Source: Lueker, Dickson & Keeling 2000; S 19 to 43, 2 to 35 °C. */
export function k2TotalLueker2000(salinity: number, temperatureC: number): number {
	const t = kelvin(temperatureC);
	const pK =
		471.78 / t +
		25.929 -
		3.16967 * Math.log(t) -
		0.01781 * salinity +
		0.0001122 * salinity * salinity;
	return 10 ** -pK;
}

/** Boric acid, total scale. Source: Dickson 1990 (Deep-Sea Res. 37:755); S 5 to 45, 0 to 45 °C. */
export function kBTotalDickson1990(salinity: number, temperatureC: number): number {
	const t = kelvin(temperatureC);
	const root = Math.sqrt(salinity);
	return Math.exp(
		(-8966.9 -
			2890.53 * root -
			77.942 * salinity +
			1.728 * salinity * root -
			0.0996 * salinity ** 2) /
			t +
			148.0248 +
			137.1942 * root +
			1.62142 * salinity -
			(24.4344 + 25.085 * root + 0.2474 * salinity) * Math.log(t) +
			0.053105 * root * t
	);
}

/** Water, total scale. Source: Millero 1995, with the first term 148.9652 of the Guide. */
export function kWTotalMillero1995(salinity: number, temperatureC: number): number {
	const t = kelvin(temperatureC);
	return Math.exp(
		148.9652 -
			13847.26 / t -
			23.6521 * Math.log(t) +
			(118.67 / t - 5.977 + 1.0495 * Math.log(t)) * Math.sqrt(salinity) -
			0.01615 * salinity
	);
}

/** Hydrogen sulfate, free scale. Source: Dickson 1990 (J. Chem. Thermodyn. 22:113), made per kg of solution. */
export function kSFreeDickson1990(salinity: number, temperatureC: number): number {
	const t = kelvin(temperatureC);
	const i = ionicStrength(salinity);
	const root = Math.sqrt(i);
	return Math.exp(
		-4276.1 / t +
			141.328 -
			23.093 * Math.log(t) +
			(-13856 / t + 324.57 - 47.986 * Math.log(t)) * root +
			(35474 / t - 771.54 + 114.723 * Math.log(t)) * i -
			(2698 / t) * i * root +
			(1776 / t) * i * i +
			Math.log(1 - 0.001005 * salinity)
	);
}

/**
 * Hydrogen fluoride, total scale, as the Guide reads it. Source: Perez & Fraga 1987; S 10 to 40,
 * 9 to 33 °C. Reading it on the free scale instead moves alkalinity at pH 4.5 by 0.2 µmol/kg.
 */
export function kFTotalPerezFraga1987(salinity: number, temperatureC: number): number {
	return Math.exp(874 / kelvin(temperatureC) - 9.68 + 0.111 * Math.sqrt(salinity));
}

/**
 * All constants of seawater of one salinity and temperature.
 *
 * Below salinity 19 the carbonic constants are extrapolated by their own polynomials, which stay
 * smooth down to 0 but are no longer measured there (at 0 and 25 °C pK1 comes to 6.11, fresh water
 * has 6.35). A titration that dilutes seawater by a fifth does not get there; water that is fresh
 * from the start has constants of its own, in plain-water.ts.
 */
export function seawaterConstants(
	salinity: number,
	temperatureC: number,
	sulfateMolPerKg: number
): Constants {
	const kS = kSFreeDickson1990(salinity, temperatureC);
	return {
		k0: k0Weiss1974(salinity, temperatureC),
		k1: k1TotalLueker2000(salinity, temperatureC),
		k2: k2TotalLueker2000(salinity, temperatureC),
		kB: kBTotalDickson1990(salinity, temperatureC),
		kW: kWTotalMillero1995(salinity, temperatureC),
		kS,
		kF: kFTotalPerezFraga1987(salinity, temperatureC) / (1 + sulfateMolPerKg / kS)
	};
}
