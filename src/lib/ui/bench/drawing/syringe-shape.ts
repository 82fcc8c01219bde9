import type { SeenSyringe } from '$lib/bench';
import { ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM, parallaxMl } from '$lib/glassware';

/** Sizes of the drawing, px. The barrel is drawn wider than life so that its print can be read. */
export const BARREL_HALF = 19;
export const TIP_LENGTH = 50;
export const NOZZLE_LENGTH = 13;
export const TIP_TOP_HALF = 7;
export const TIP_END_HALF = 2.6;
export const FLANGE = 8;
/** Of the plunger above the flange when it is pushed home, and the thumb rest. */
export const THUMB_GAP = 14;
export const THUMB = 9;

/**
 * Where the parts of a syringe are seen, px: 0 is the nozzle end of the barrel, negative is up the
 * barrel, positive down the tip.
 */
export type SyringeView = {
	sealY: number;
	/** Liquid in the barrel from here up to there; null for none. */
	liquid: { fromY: number; toY: number } | null;
	/** Liquid in the tip, as shares of it counted from its lower end. */
	tip: { from: number; to: number };
	/** Half height of the rings that seal and line are when the eye is not level; below 0 from below. */
	ring: number;
};

/**
 * How far what is inside the barrel seems moved along the print, mL towards the full end: seen from
 * above, a mark that lies behind the print lines up with a higher line of it.
 */
export function apparentShiftMl(eyeDegrees: number): number {
	return parallaxMl(eyeDegrees, ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM);
}

/**
 * @param tipVolumeMl tip and nozzle; only shapes the liquid in the tip
 * @param isTurned held tip-up: the air has risen to the tip, the liquid stands on the seal
 */
export function syringeView(
	seen: SeenSyringe,
	glass: { pxPerMl: number; tipVolumeMl: number; eyeDegrees: number; isTurned: boolean }
): SyringeView {
	const { pxPerMl, tipVolumeMl, eyeDegrees, isTurned } = glass;
	const shift = apparentShiftMl(eyeDegrees) * pxPerMl;
	const at = (ml: number) => -ml * pxPerMl - shift;
	const ring = Math.min(7, Math.abs(shift) * 1.6) * Math.sign(shift);
	const sealY = at(seen.sealMl);
	if (isTurned) {
		const airMl = seen.cushionMl + seen.tipAirMl;
		const inBarrelMl = Math.max(0, airMl - tipVolumeMl);
		const hasLiquid = seen.lineMl !== null && inBarrelMl < seen.sealMl;
		return {
			sealY,
			liquid: hasLiquid ? { fromY: at(inBarrelMl), toY: sealY } : null,
			// Tip-up its lower end is the nozzle: what liquid reaches the tip stands there.
			tip: { from: Math.min(1, airMl / tipVolumeMl), to: 1 },
			ring
		};
	}
	const from = seen.lineMl !== null ? 1 - seen.tipLiquid : Math.min(1, seen.tipAirMl / tipVolumeMl);
	return {
		sealY,
		liquid: seen.lineMl === null ? null : { fromY: 0, toY: at(seen.lineMl) },
		tip: { from, to: Math.min(1, from + seen.tipLiquid) },
		ring
	};
}

/** Liquid in a tube between two heights, its upper end hollow as a meniscus is. */
export function tubeLiquidPath(half: number, fromY: number, toY: number, meniscus: number): string {
	if (fromY - toY < 0.2) return '';
	const n = (value: number) => Number(value.toFixed(2));
	const wall = n(toY - meniscus);
	return `M${-half} ${n(fromY)}V${wall}Q0 ${n(toY + meniscus)} ${half} ${wall}V${n(fromY)}Z`;
}

/** Outline of the tip from the nozzle down, and of the liquid in it between two shares. */
export function tipPath(from = 0, to = 1): string {
	const n = (value: number) => Number(value.toFixed(2));
	const y = (share: number) => TIP_LENGTH * (1 - share);
	const half = (share: number) => TIP_END_HALF + (TIP_TOP_HALF - TIP_END_HALF) * share;
	if (to - from < 1e-3) return '';
	return (
		`M${n(-half(to))} ${n(y(to))}L${n(-half(from))} ${n(y(from))}` +
		`H${n(half(from))}L${n(half(to))} ${n(y(to))}Z`
	);
}

/** Scale of a sample syringe whose barrel is so long: its last line stands a little below its end. */
export function samplerPxPerMl(height: number, capacityMl: number): number {
	return (height - 14) / capacityMl;
}
