/**
 * A small syringe with a tip, by volumes alone. From the tip upward it holds, in this order: air at
 * the lower end (`tipAirMl`), liquid, and the cushion of air under the seal. Together they fill the
 * room below the seal: its position plus tip and nozzle, or plus the nozzle alone when no tip is on.
 *
 * Positions are distances from the nozzle end of the barrel in mL; 0 is the plunger pushed home.
 */
export type SyringeShape = {
	/** The seal can be drawn back so far, mL. */
	barrelEndMl: number;
	/** Tip and nozzle together when the tip is on, mL. */
	tipVolumeMl: number;
	/** The nozzle alone, part of the above, mL. */
	nozzleMl: number;
	/** From the leading to the trailing rim of the seal along the scale, mL. */
	sealRimMl: number;
};

export type Syringe = {
	shape: SyringeShape;
	tip: 'off' | 'fitted' | 'loose';
	/** Leading edge of the seal. */
	sealMl: number;
	liquidMl: number;
	tipAirMl: number;
	cushionMl: number;
};

/** An empty, dry syringe with its plunger home and no tip on. */
export function drySyringe(shape: SyringeShape): Syringe {
	return {
		shape,
		tip: 'off',
		sealMl: 0,
		liquidMl: 0,
		tipAirMl: 0,
		cushionMl: shape.nozzleMl
	};
}

const deadVolume = (syringe: Syringe) =>
	syringe.tip === 'off' ? syringe.shape.nozzleMl : syringe.shape.tipVolumeMl;

/** Volume below the seal, tip or nozzle included, mL. */
export function roomMl(syringe: Syringe): number {
	return syringe.sealMl + deadVolume(syringe);
}

/**
 * Liquid line above the nozzle end of the barrel, mL; null while all the liquid is in the tip.
 * Travel of the seal is what leaves; this line only follows it at a distance, the cushion.
 */
export function lineMl(syringe: Syringe): number | null {
	const line = syringe.tipAirMl + syringe.liquidMl - deadVolume(syringe);
	return line > 1e-9 ? line : null;
}

/** How much of the tip holds liquid, 0 to 1. */
export function tipFilling(syringe: Syringe): number {
	const dead = deadVolume(syringe);
	if (dead <= 0) return 1;
	return Math.min(1, Math.max(0, Math.min(syringe.liquidMl, dead - syringe.tipAirMl) / dead));
}

/**
 * Puts a tip on. It comes dry: what it adds to the dead volume is air. On an empty syringe that air
 * is part of the later cushion; on a filled one it lies below the liquid and must leave before any
 * drop does, so the first travel gives nothing.
 */
export function fitTip(syringe: Syringe, firm: boolean): Syringe {
	const tip = firm ? 'fitted' : 'loose';
	if (syringe.tip !== 'off') return { ...syringe, tip };
	const airMl = syringe.shape.tipVolumeMl - syringe.shape.nozzleMl;
	const isEmpty = syringe.liquidMl <= 0;
	return {
		...syringe,
		tip,
		tipAirMl: isEmpty ? syringe.tipAirMl : syringe.tipAirMl + airMl,
		cushionMl: isEmpty ? syringe.cushionMl + airMl : syringe.cushionMl
	};
}

/** Takes the tip off; what was in it goes with it. */
export function removeTip(syringe: Syringe): { syringe: Syringe; lostMl: number } {
	if (syringe.tip === 'off') return { syringe, lostMl: 0 };
	let gone = syringe.shape.tipVolumeMl - syringe.shape.nozzleMl;
	const air = Math.min(gone, syringe.tipAirMl);
	gone -= air;
	const lostMl = Math.min(gone, syringe.liquidMl);
	gone -= lostMl;
	return {
		syringe: {
			...syringe,
			tip: 'off',
			tipAirMl: syringe.tipAirMl - air,
			liquidMl: syringe.liquidMl - lostMl,
			cushionMl: syringe.cushionMl - gone
		},
		lostMl
	};
}

/**
 * Draws the seal back with the end in liquid or in air. Air at the lower end floats up into the
 * cushion when liquid is drawn after it, where it costs nothing.
 */
export function draw(syringe: Syringe, toSealMl: number, end: 'inTitrant' | 'inAir'): Syringe {
	const sealMl = Math.min(Math.max(toSealMl, syringe.sealMl), syringe.shape.barrelEndMl);
	const takenMl = sealMl - syringe.sealMl;
	if (takenMl <= 0) return syringe;
	if (end === 'inAir') return { ...syringe, sealMl, tipAirMl: syringe.tipAirMl + takenMl };
	return {
		...syringe,
		sealMl,
		liquidMl: syringe.liquidMl + takenMl,
		tipAirMl: 0,
		cushionMl: syringe.cushionMl + syringe.tipAirMl
	};
}

export type Pushed = { syringe: Syringe; liquidMl: number; airMl: number };

/** Pushes the seal forward, tip down: first the air at the end leaves, then liquid, last the cushion. */
export function push(syringe: Syringe, toSealMl: number): Pushed {
	const sealMl = Math.max(0, Math.min(toSealMl, syringe.sealMl));
	let travel = syringe.sealMl - sealMl;
	const endAirMl = Math.min(travel, syringe.tipAirMl);
	travel -= endAirMl;
	const liquidMl = Math.min(travel, syringe.liquidMl);
	travel -= liquidMl;
	return {
		syringe: {
			...syringe,
			sealMl,
			tipAirMl: syringe.tipAirMl - endAirMl,
			liquidMl: syringe.liquidMl - liquidMl,
			cushionMl: syringe.cushionMl - travel
		},
		liquidMl,
		airMl: endAirMl + travel
	};
}

/** Turned tip-up and pushed: all air leaves first, then liquid. */
export function purge(syringe: Syringe, toSealMl: number): Pushed {
	const upright = {
		...syringe,
		tipAirMl: syringe.tipAirMl + syringe.cushionMl,
		cushionMl: 0
	};
	const pushed = push(upright, toSealMl);
	// Turned down again, what air is left stands under the seal.
	return {
		...pushed,
		syringe: {
			...pushed.syringe,
			tipAirMl: 0,
			cushionMl: pushed.syringe.tipAirMl + pushed.syringe.cushionMl
		}
	};
}

/** Liquid that runs out of a badly seated tip without any push; air comes in above. */
export function leak(syringe: Syringe, volumeMl: number): { syringe: Syringe; liquidMl: number } {
	if (syringe.tip !== 'loose') return { syringe, liquidMl: 0 };
	const liquidMl = Math.min(volumeMl, syringe.liquidMl);
	return {
		syringe: {
			...syringe,
			liquidMl: syringe.liquidMl - liquidMl,
			cushionMl: syringe.cushionMl + liquidMl
		},
		liquidMl
	};
}

/**
 * A dry seal sticks: pushing is answered by nothing until it lets go, and then by a whole jump.
 *
 * @param pushedMl travel the hand has asked for since the seal last moved
 * @param jumpMl size of a jump; 0 for a seal that slides
 * @returns travel now made, and what is still held back
 */
export function slipOfSeal(
	pushedMl: number,
	jumpMl: number
): { travelMl: number; stuckMl: number } {
	if (!(jumpMl > 0)) return { travelMl: pushedMl, stuckMl: 0 };
	const travelMl = Math.floor(pushedMl / jumpMl) * jumpMl;
	return { travelMl, stuckMl: pushedMl - travelMl };
}
