/** Moves of a plunger by key, mL on a 1 mL syringe: a hair, a little, a stretch. */
const KEY_STEP_ML = 0.01;
const SHIFT_STEP_ML = 0.05;
const PAGE_STEP_ML = 0.1;

/** How far a key draws a plunger out, mL on a 1 mL syringe; negative pushes it in, null is another key. */
export function keyTravel(event: { key: string; shiftKey: boolean }): number | null {
	const step = event.shiftKey ? SHIFT_STEP_ML : KEY_STEP_ML;
	if (event.key === 'ArrowUp') return step;
	if (event.key === 'ArrowDown') return -step;
	if (event.key === 'PageUp') return PAGE_STEP_ML;
	if (event.key === 'PageDown') return -PAGE_STEP_ML;
	return null;
}

/** A hand trembles by so much without meaning it, px. */
const TREMOR_PX = 4;

/**
 * A drag of a plunger, 1:1 and relative: wherever it is taken hold of, it moves as far as the hand.
 * A turn of direction ends one deed and begins another, since pushing back does not undo drawing out.
 */
export class PlungerDrag {
	/** Where the plunger is now, mL. */
	positionMl: number;
	#extremeMl: number;
	#direction: -1 | 0 | 1 = 0;

	/**
	 * @param outward 1 when the plunger comes out upward on the screen, -1 when the syringe is turned
	 */
	constructor(
		private readonly from: { positionMl: number; y: number },
		private readonly glass: {
			pxPerMl: number;
			outward: 1 | -1;
			lowMl: number;
			highMl: number;
		}
	) {
		this.positionMl = from.positionMl;
		this.#extremeMl = from.positionMl;
	}

	/** The hand has come to `y`. Returns where the plunger turned, if it has turned since, to be kept. */
	moveTo(y: number): number | null {
		const { pxPerMl, outward, lowMl, highMl } = this.glass;
		const travelMl = ((this.from.y - y) * outward) / pxPerMl;
		this.positionMl = Math.min(highMl, Math.max(lowMl, this.from.positionMl + travelMl));
		const aheadMl = this.positionMl - this.#extremeMl;
		const isTremor = Math.abs(aheadMl) * pxPerMl <= TREMOR_PX;
		const way = aheadMl > 0 ? 1 : -1;
		if (this.#direction === 0 ? isTremor : way !== this.#direction && isTremor) return null;
		const turnedMl = this.#direction !== 0 && way !== this.#direction ? this.#extremeMl : null;
		this.#direction = way;
		this.#extremeMl = this.positionMl;
		return turnedMl;
	}
}
