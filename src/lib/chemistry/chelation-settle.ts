import { hydroxideEquilibrium } from './hydroxide-equilibrium';
import type { ChelationVessel } from './chelation-vessel';
import { hydroxideRatePerS } from './precipitation';
import { requireWithin } from './require-within';
import { volumeMlOf } from './vessel';

/**
 * After a wait: magnesium hydroxide forms, or dissolves, towards its equilibrium amount. In closed form:
 * two waits are the same as one of both lengths, however often one looks in between. For that the
 * equilibrium and the rate are worked out from what is in the vessel in all, not from how much of it is
 * solid already.
 *
 * What forms takes calcium down with it, as much as EDTA does not hold, and what stands takes more by and
 * by; what dissolves gives it back. Where solid dissolves, calcium that EDTA does not hold is taken as all
 * that it does not hold, with what is carried down already: the difference is a part of a hundredth of it.
 *
 * @param seconds 0 to Infinity
 * @throws RangeError naming `seconds` when it is below 0
 */
export function settlePrecipitate(vessel: ChelationVessel, seconds: number): ChelationVessel {
	requireWithin('seconds', seconds, 0, Infinity);
	const before = vessel.solidMagnesiumMol;
	if (seconds === 0 || vessel.magnesiumMol === 0) return vessel;
	const { hydroxide } = vessel.constants;
	const { solidMol, excessPh } = hydroxideEquilibrium(vessel);
	// At rest the last digit says nothing: what is neither forms nor dissolves counts as forming.
	const isForming = solidMol >= before * (1 - AT_REST);
	const rate = hydroxideRatePerS(isForming, excessPh, hydroxide);
	const gone = rate === 0 ? 0 : -Math.expm1(-rate * seconds);
	const after = before + (solidMol - before) * gone;
	const litres = volumeMlOf(vessel.water) / 1000;
	const uncomplexed =
		vessel.calciumMol > 0 ? Math.max(0, 1 - vessel.edtaMol / vessel.calciumMol) : 0;
	if (!isForming) {
		// Calcium in each mol of solid: what stands takes more, what dissolves gives its own back.
		const taken = through(
			(hydroxide.standingLPerMolPerS * uncomplexed * vessel.calciumMol) / litres,
			seconds
		);
		const held = after > 0 ? after * (vessel.occludedCalciumMol / before + taken) : 0;
		return {
			...vessel,
			solidMagnesiumMol: after,
			occludedCalciumMol: Math.min(vessel.calciumMol, held)
		};
	}
	const open = vessel.calciumMol - vessel.occludedCalciumMol;
	const formedMolPerL = (after - before) / litres;
	// Solid times time, while it comes to its amount.
	const stoodMolSPerL =
		(rate === 0
			? through(before, seconds)
			: through(solidMol, seconds) + ((before - solidMol) * gone) / rate) / litres;
	const takenShare = -Math.expm1(
		-through(uncomplexed, hydroxide.occlusionLPerMol * formedMolPerL) -
			through(uncomplexed * hydroxide.standingLPerMolPerS, stoodMolSPerL)
	);
	return {
		...vessel,
		solidMagnesiumMol: after,
		occludedCalciumMol: vessel.occludedCalciumMol + open * takenShare
	};
}

/** Share of the solid within which it is at its equilibrium; beside rounding, nothing. */
const AT_REST = 1e-9;

/** What a rate comes to: without one nothing, however long. */
const through = (rate: number, time: number) => (rate > 0 ? rate * time : 0);
