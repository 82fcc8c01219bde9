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

/**
 * The slips that the end itself does not rule out. Drops that were too many leave more titrant in the vial
 * than half a drop past the end, which is where the leaflet's conversion has it; where less is in it they
 * were not too many, however they fell.
 */
export function slipsOfThisEnd(state: BenchState, slips: readonly Slip[]): Slip[] {
	const endMl = slips.some(({ kind }) => kind === 'overshot') ? endMlOf(state) : null;
	if (endMl === null) return [...slips];
	const isPast = state.inVialMl > endMl + state.kit.delivery.dropMl / 2;
	return slips.filter(({ kind }) => kind !== 'overshot' || isPast);
}
