import type { Delivery } from '$lib/kits';
import { LIFE_SIZE_PX_PER_ML } from './drawing/drop-shape';
import { THUMB, THUMB_GAP, TIP_LENGTH } from './drawing/syringe-shape';

/** What the learner works at: the sample, the indicator, filling, dropping, reading. */
export type BenchView = 'sample' | 'dose' | 'fill' | 'drop' | 'read';

/** Where things stand on the stage, px from its top left corner. */
export type StageLayout = {
	vial: { x: number; y: number; width: number; height: number };
	comparison: { x: number; y: number };
	/** Titrant's glass: the nozzle end of a syringe's barrel, or the end of a jet or nozzle. */
	delivery: { x: number; y: number; pxPerMl: number };
	/** Mouth of the titrant bottle in the fill view. */
	bottle: { x: number; y: number };
	/** Nose of the sample syringe when it is out of the water, and the length of its barrel. */
	sampler: { x: number; y: number; height: number };
	magnifier: { x: number; y: number; size: number };
	/** The slider for the height of the eye. */
	eye: { x: number; y: number; height: number };
};

const clamp = (low: number, value: number, high: number) => Math.max(low, Math.min(high, value));
const MARGIN = 12;
/** From the tip to the rim of the vial: small, so that no drop is lost beside it. */
const TIP_GAP = 18;
export const EYE_WIDTH = 44;
/** The titrant bottle below its mouth, and how deep the tip dips. */
export const BOTTLE_HEIGHT = 72;
export const DIP = 34;
/** The tip is lifted this far above the mouth. */
export const LIFT = 14;
/** A burette between its jet's end and its lowest line, and above the 0 line. */
const BURETTE_ENDS = 70 + 26;
/** The barrel is drawn back so far at most, in shares of itself, for the plunger to stay in sight. */
const DRAWN = 0.86;

/**
 * Lays out the stage for its size. Glass is drawn at life size where that fits and smaller where it
 * does not; nothing moves while a view lasts.
 */
export function layOutStage(
	view: BenchView,
	delivery: Delivery,
	width: number,
	height: number
): StageLayout {
	const isWide = width >= 620;
	const vialWidth = clamp(84, isWide ? width * 0.24 : width * 0.35, 176);
	const vialHeight = clamp(80, Math.min(height * 0.34, vialWidth * 1.15), 210);
	const centre = isWide ? width * 0.36 : MARGIN + vialWidth * 0.74;
	const vialX = view === 'sample' ? width * (isWide ? 0.62 : 0.72) : centre;
	const vial = { x: vialX, y: height - MARGIN - 4, width: vialWidth, height: vialHeight };
	const magnifier = magnifierPlace(view, centre + vialWidth * 0.3, isWide, width, height);
	return {
		vial,
		comparison: { x: centre + vialWidth * 1.2, y: vial.y },
		delivery: { x: centre, ...deliveryPlace(view, delivery, vial.y - vialHeight, height) },
		bottle: { x: centre, y: height - BOTTLE_HEIGHT },
		sampler: samplerPlace(width * (isWide ? 0.3 : 0.27), height),
		magnifier,
		eye: isWide
			? { x: magnifier.x + magnifier.size + MARGIN, y: magnifier.y, height: magnifier.size }
			: {
					x: width - MARGIN - EYE_WIDTH,
					y: magnifier.y + magnifier.size + MARGIN,
					height: clamp(100, height - magnifier.y - magnifier.size - 2 * MARGIN, 176)
				}
	};
}

/** Beside the glass; in the corner where that is all the room there is. */
function magnifierPlace(
	view: BenchView,
	from: number,
	isWide: boolean,
	width: number,
	height: number
): StageLayout['magnifier'] {
	const share = view === 'drop' ? 0.36 : isWide ? 0.4 : 0.46;
	const eye = isWide ? EYE_WIDTH + MARGIN : 0;
	const size = clamp(
		96,
		Math.min(width - from - 2 * MARGIN - eye, height * share),
		isWide ? 260 : 210
	);
	const x = isWide ? Math.min(from + 40, width - MARGIN - size - eye) : width - MARGIN - size;
	const y = isWide ? clamp(MARGIN, height * 0.12, 96) : MARGIN;
	return { x, y, size };
}

function deliveryPlace(
	view: BenchView,
	delivery: Delivery,
	vialTop: number,
	height: number
): { y: number; pxPerMl: number } {
	const endY =
		view === 'fill' && delivery.by === 'syringe'
			? height - BOTTLE_HEIGHT + DIP
			: view === 'drop' || view === 'dose' || view === 'sample'
				? vialTop - TIP_GAP
				: height - MARGIN - 34;
	if (delivery.by === 'dropper') return { y: endY, pxPerMl: LIFE_SIZE_PX_PER_ML };
	if (delivery.by === 'burette')
		return { y: endY, pxPerMl: Math.max(8, (endY - BURETTE_ENDS) / delivery.capacityMl) };
	const nozzleY = endY - TIP_LENGTH;
	const plunger = THUMB_GAP + THUMB + 6;
	const room =
		view === 'fill'
			? (nozzleY - plunger) / (delivery.barrelEndMl * (1 + DRAWN))
			: (nozzleY - plunger) / delivery.barrelEndMl;
	const pxPerMl = clamp(60, room, LIFE_SIZE_PX_PER_ML);
	// With room to spare a syringe that is only read stands in the middle.
	const spare =
		view === 'read' ? Math.max(0, nozzleY - plunger - 1.5 * delivery.barrelEndMl * pxPerMl) : 0;
	return { y: nozzleY - spare / 2, pxPerMl };
}

function samplerPlace(x: number, height: number): StageLayout['sampler'] {
	// Nose, beaker and a plunger drawn right out have to fit.
	const barrel = clamp(70, (height - 170) / 2, 220);
	return { x, y: height - 96, height: barrel };
}

/** Surface of the tank water in its beaker, in the sample view. */
export const beakerAt = (layout: StageLayout) => ({
	x: layout.sampler.x,
	y: layout.sampler.y + 24
});

/** Turned tip-up the syringe is held beside the bottle. */
export const turnedX = (layout: StageLayout) => Math.max(40, layout.delivery.x - 54);
