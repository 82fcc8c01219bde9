import type { Slip } from '../observation';
import { endVolumeMl } from './end-point';
import { titrantMolPerL, type BenchState } from './state';
import { kindOf } from './titration-kind';

/** Where the end of the titration in the vial lies, mL of titrant; null where there is none. */
export function endMlOf(state: BenchState): number | null {
	const { kit, sampleContents, contents } = state;
	if (!sampleContents || !contents) return null;
	const kind = kindOf(kit);
	const passed = kind.passedBetween(sampleContents, contents);
	return endVolumeMl(kit, kind.onTheWay(sampleContents, passed, 1), titrantMolPerL(state));
}

/** Of a drop, so much is still on its way to the dye after this many time constants: a fifth. */
const FOLLOWED_CONSTANTS = 1.5;

/** The last drops followed each other faster than the dye shows them: see `showsInSeconds`. */
export function outranTheDye({ kit, contents, drops }: BenchState): boolean {
	if (!contents) return false;
	const limitMs = FOLLOWED_CONSTANTS * kindOf(kit).showsInSeconds(contents) * 1000;
	const [first, second, last] = drops.slice(-3);
	return (
		first !== undefined &&
		second !== undefined &&
		last !== undefined &&
		Math.max(second.at - first.at, last.at - second.at) < limitMs
	);
}

/** So far past the end a stop must be, in drops, that drops too many explain it. */
const pastDrops = ({ variant }: Slip): number =>
	// Single drops always end up to one past it; at once or into a flash, half a drop is in the leaflet's conversion.
	variant === 'hurried' ? 1 : 0.5;

/**
 * The slips that the end itself does not rule out. Drops that were too many leave more titrant in the vial
 * than half a drop past the end, which is where the leaflet's conversion has it; where less is in it they
 * were not too many, however they fell.
 */
export function slipsOfThisEnd(state: BenchState, slips: readonly Slip[]): Slip[] {
	const endMl = slips.some(({ kind }) => kind === 'overshot') ? endMlOf(state) : null;
	if (endMl === null) return [...slips];
	const past = (state.inVialMl - endMl) / state.kit.delivery.dropMl;
	return slips.filter((slip) => slip.kind !== 'overshot' || past > pastDrops(slip));
}
