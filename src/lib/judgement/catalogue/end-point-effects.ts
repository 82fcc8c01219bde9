/**
 * What moves the end of a titration and is neither a share of the value nor a volume, dKH: change of
 * the value that the leaflet gives, against a clean hand in ordinary seawater of the same content,
 * over the house kits and three alkalinities. Written by tests/studies/fault-effects.test.ts, which
 * finds it on the practice bench and compares it again; not to be changed by hand.
 */
export type EndPointEffect = {
	mean: number;
	/** Spread over kits and alkalinities. */
	sd: number;
	least: number;
	most: number;
	/** Mean over the kits at each alkalinity of `effectsAtDkh`. */
	byDkh: readonly number[];
};

export const effectsAtDkh: readonly number[] = [5, 8, 12];

export const endPointEffects = {
	stillVial: {
		mean: -0.105,
		sd: 0.065,
		least: -0.24,
		most: -0.023,
		byDkh: [-0.048, -0.098, -0.169]
	},
	shakenVial: { mean: 0.072, sd: 0.039, least: 0.03, most: 0.143, byDkh: [0.048, 0.071, 0.097] },
	chasedColour: { mean: 0.096, sd: 0.082, least: 0, most: 0.286, byDkh: [0.054, 0.139, 0.095] },
	carbonGone: { mean: 0.087, sd: 0.05, least: 0.022, most: 0.175, byDkh: [0.066, 0.089, 0.107] },
	violetForMauve: {
		mean: -0.104,
		sd: 0.023,
		least: -0.147,
		most: -0.076,
		byDkh: [-0.091, -0.104, -0.117]
	},
	roseForMauve: { mean: 0.133, sd: 0.018, least: 0.111, most: 0.17, byDkh: [0.121, 0.133, 0.146] },
	fullRoseForMauve: {
		mean: 0.214,
		sd: 0.024,
		least: 0.183,
		most: 0.263,
		byDkh: [0.196, 0.214, 0.234]
	},
	indicatorDoubled: { mean: 0, sd: 0.008, least: -0.011, most: 0.012, byDkh: [0.002, 0, -0.001] },
	indicatorHalved: {
		mean: -0.007,
		sd: 0.002,
		least: -0.011,
		most: -0.003,
		byDkh: [-0.008, -0.007, -0.007]
	},
	indicatorPale: {
		mean: -0.008,
		sd: 0.003,
		least: -0.012,
		most: -0.004,
		byDkh: [-0.009, -0.008, -0.007]
	},
	salinity30: {
		mean: -0.005,
		sd: 0.001,
		least: -0.006,
		most: -0.004,
		byDkh: [-0.006, -0.005, -0.005]
	},
	salinity40: { mean: 0.006, sd: 0.001, least: 0.005, most: 0.007, byDkh: [0.006, 0.006, 0.006] },
	bicarbonateInPurified: {
		mean: -0.225,
		sd: 0.04,
		least: -0.296,
		most: -0.185,
		byDkh: [-0.19, -0.224, -0.262]
	},
	carbonateInPurified: {
		mean: -0.127,
		sd: 0.015,
		least: -0.151,
		most: -0.108,
		byDkh: [-0.12, -0.126, -0.135]
	},
	bicarbonateInSodiumChloride: {
		mean: 0.01,
		sd: 0.008,
		least: 0.001,
		most: 0.026,
		byDkh: [0.005, 0.01, 0.014]
	},
	carbonateInSodiumChloride: {
		mean: 0.052,
		sd: 0.029,
		least: 0.017,
		most: 0.107,
		byDkh: [0.037, 0.053, 0.067]
	}
} as const satisfies Record<string, EndPointEffect>;
