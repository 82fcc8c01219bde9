/**
 * Size of a drop from a dropper bottle over its size when held upright and pressed slowly.
 *
 * Tilted, the drop leaves from the rim of the nozzle and is smaller, so more are counted: 5 to 15 %
 * between upright and level. Pressed hard, or with a wet nozzle, it is larger: 5 to 10 %.
 * Common practice, no source; a straight line in the tilt is this project's choice.
 *
 * @param tiltDegrees 0 upright to 90 level
 */
export function dropperDropFactor(tiltDegrees: number, squeezedHard: boolean): number {
	const tilt = Math.min(90, Math.max(0, Math.abs(tiltDegrees)));
	const tilted = 1 / (1 + 0.13 * (tilt / 60));
	return squeezedHard ? tilted * 1.08 : tilted;
}
