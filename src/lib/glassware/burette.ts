/** A burette by volumes: the level falls as it empties, so numerals grow downward from 0. */
export type Burette = {
	capacityMl: number;
	/** Numeral at the bottom of the meniscus; null before it was filled. */
	levelMl: number | null;
	/** Air in the jet below the tap, mL: it leaves before any drop does. */
	jetAirMl: number;
};

/** Jet full of air, nothing in the tube. */
export function dryBurette(capacityMl: number, jetVolumeMl: number): Burette {
	return { capacityMl, levelMl: null, jetAirMl: jetVolumeMl };
}

/** Filled to a numeral; 0 is full. Above 0 (a negative numeral) there is no scale: it stands at most 0.5 mL over. */
export function fillBurette(burette: Burette, levelMl: number): Burette {
	return { ...burette, levelMl: Math.min(burette.capacityMl, Math.max(-0.5, levelMl)) };
}

/** Lets so much run: air of the jet leaves first, then titrant, no more than there is. */
export function runBurette(
	burette: Burette,
	volumeMl: number
): { burette: Burette; liquidMl: number; airMl: number } {
	if (burette.levelMl === null) return { burette, liquidMl: 0, airMl: 0 };
	const moved = Math.min(Math.max(0, volumeMl), burette.capacityMl - burette.levelMl);
	const airMl = Math.min(moved, burette.jetAirMl);
	return {
		burette: {
			...burette,
			levelMl: burette.levelMl + moved,
			jetAirMl: burette.jetAirMl - airMl
		},
		liquidMl: moved - airMl,
		airMl
	};
}
