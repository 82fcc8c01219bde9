import { lineMl } from '../glassware';
import { titrantMolPerL, type BenchState } from './state';

/**
 * The bench without its secrets about the water: what hands did to glass, complete and exact, for
 * whoever keeps the record. The screen never shows it.
 */
export type Facts = {
	tip: 'off' | 'fitted' | 'loose' | null;
	/** Positions from the nozzle end, mL. */
	sealMl: number | null;
	lineMl: number | null;
	/** Level of a burette as a numeral, mL. */
	levelMl: number | null;
	/** Air that will leave the end before any liquid, mL. */
	endAirMl: number;
	hangingMl: number;
	inVialMl: number;
	leakedMl: number;
	dropsFallen: number;
	/** Titrant not mixed in yet, in drops. */
	unmixedDrops: number;
	secondsSinceDrop: number | null;
	swirledSinceDropS: number;
	/** Some spread of drops: those that have landed, in order. */
	landed: BenchState['drops'];
	sample: BenchState['sample'];
	isEmpty: boolean;
};

export function factsOf(state: BenchState): Facts {
	const { delivery } = state;
	const lastDrop = state.drops[state.drops.length - 1];
	const dropMol = (state.kit.delivery.dropMl / 1000) * titrantMolPerL(state) || 1;
	const syringe = delivery.by === 'syringe' ? delivery.syringe : null;
	const burette = delivery.by === 'burette' ? delivery.burette : null;
	return {
		tip: syringe?.tip ?? null,
		sealMl: syringe?.sealMl ?? null,
		lineMl: syringe ? lineMl(syringe) : null,
		levelMl: burette?.levelMl ?? null,
		endAirMl: syringe?.tipAirMl ?? burette?.jetAirMl ?? 0,
		hangingMl: delivery.hangingMl,
		inVialMl: state.inVialMl,
		leakedMl: state.leakedMl,
		dropsFallen: state.dropsSinceFill,
		unmixedDrops: state.unmixedMol / dropMol,
		secondsSinceDrop: lastDrop ? (state.at - lastDrop.at) / 1000 : null,
		swirledSinceDropS: state.swirledSinceDropS,
		landed: state.drops,
		sample: state.sample,
		isEmpty:
			syringe !== null
				? syringe.sealMl <= 1e-6 || syringe.liquidMl <= 1e-6
				: burette !== null && (burette.levelMl ?? 0) >= burette.capacityMl - 1e-6
	};
}
