/** Sizes of a vial in the drawing, px; y is 0 at the foot and negative upward. */
export type VialSize = { width: number; height: number; fullMl: number };
export const WALL = 4;
export const BASE = 9;
/** A vial is drawn as one that is full at so many samples: room for titrant, and colour to look at. */
export const FULL_OVER_SAMPLE = 1.55;

/** Height of the liquid for a volume, px above the inner floor. */
export function depthOf(size: VialSize, levelMl: number): number {
	const room = size.height - BASE - 6;
	return (room * Math.max(0, Math.min(1.15 * size.fullMl, levelMl))) / (1.15 * size.fullMl);
}

const n = (value: number) => Number(value.toFixed(2));

/** The glass: walls, a lip, a thick round-cornered base. */
export function glassPath({ width, height }: VialSize): string {
	const h = width / 2;
	return (
		`M${n(-h - 2)} ${-height}H${n(-h + 3)}M${n(h - 3)} ${-height}H${n(h + 2)}` +
		`M${n(-h)} ${-height}V-8Q${n(-h)} 0 ${n(-h + 8)} 0H${n(h - 8)}Q${n(h)} 0 ${n(h)} -8V${-height}`
	);
}

/** The inner floor: the upper side of the thick base. */
export function floorPath({ width }: VialSize): string {
	const h = width / 2 - WALL;
	return `M${n(-h)} ${-BASE - 4}Q${n(-h)} ${-BASE} ${n(-h + 6)} ${-BASE}H${n(h - 6)}Q${n(h)} ${-BASE} ${n(h)} ${-BASE - 4}`;
}

/**
 * The liquid, its surface hollow at the walls.
 *
 * @param slope of the surface against the vial, px that it is higher on the right wall
 */
export function liquidPath(size: VialSize, levelMl: number, slope: number): string {
	const depth = depthOf(size, levelMl);
	if (depth < 0.5) return '';
	const h = size.width / 2 - WALL;
	const top = -BASE - depth;
	const left = n(top + slope - 3);
	const right = n(top - slope - 3);
	return (
		`M${n(-h)} ${left}Q0 ${n(top + 3)} ${n(h)} ${right}V${-BASE - 4}` +
		`Q${n(h)} ${-BASE} ${n(h - 6)} ${-BASE}H${n(-h + 6)}Q${n(-h)} ${-BASE} ${n(-h)} ${-BASE - 4}Z`
	);
}

/** A swirl tips the vial this far, degrees, so many times a second; the liquid is late by so much. */
const TIP_DEGREES = 4;
const SWIRLS_PER_S = 2;
const LAG_MS = 80;

/** Angle of a swirled vial and the slope of its surface at a moment of the swirl. */
export function swirlPose(swirlMs: number, width: number): { degrees: number; slope: number } {
	const angle = (ms: number) =>
		ms <= 0 ? 0 : TIP_DEGREES * Math.sin((2 * Math.PI * SWIRLS_PER_S * ms) / 1000);
	const degrees = angle(swirlMs);
	const late = angle(swirlMs - LAG_MS);
	const slope = (Math.tan(((degrees + 1.6 * late) * Math.PI) / 180) * width) / 2;
	return { degrees, slope };
}

/** Where the parts of a plume lie, for a vial of this width and liquid of this depth. */
export type Blob = { x: number; y: number; radius: number; stretch: number; opacity: number };

/**
 * Three soft clouds where the last drop fell. They sink and widen as they mix; what is left unmixed
 * says how far that has gone.
 *
 * @param share left unmixed, in drops, 1 at most
 */
export function plumeBlobs(share: number, width: number, depth: number, swirlMs: number): Blob[] {
	const gone = 1 - share;
	const turn = (2 * Math.PI * SWIRLS_PER_S * swirlMs) / 1000;
	const sway = Math.sin(turn) * width * 0.12;
	const cloud = (x: number, down: number, radius: number, opacity: number): Blob => ({
		x: x * width + sway * (1 + x),
		y: depth * down,
		radius: Math.max(6, width * radius),
		// A fresh streak hangs down; mixing makes it round.
		stretch: 1 + 0.5 * share,
		opacity: Math.min(1, share * opacity)
	});
	return [
		cloud(0, 0.14 + 0.32 * gone, 0.15 + 0.25 * gone, 1.15),
		cloud(0.045, 0.3 + 0.4 * gone, 0.11 + 0.22 * gone, 1),
		cloud(-0.04, 0.44 + 0.45 * gone, 0.085 + 0.26 * gone, 0.85)
	];
}
