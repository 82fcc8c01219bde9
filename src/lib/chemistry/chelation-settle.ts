import { carbonateLoss } from './carbonate-growth';
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
 * What forms takes calcium down with it, as much as EDTA does not hold; what dissolves gives it back. Where
 * it stands long, carbonate takes some more, and keeps it.
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
	const isForming = solidMol > before;
	const rate = hydroxideRatePerS(isForming, excessPh, hydroxide);
	const gone = rate === 0 ? 0 : -Math.expm1(-rate * seconds);
	const after = before + (solidMol - before) * gone;
	if (before === 0 && after === 0) return vessel;
	const litres = volumeMlOf(vessel.water) / 1000;
	const uncomplexed =
		vessel.calciumMol > 0 ? Math.max(0, 1 - vessel.edtaMol / vessel.calciumMol) : 0;
	// As if what there was had stood for a while, and for the rest of the time what there is in the end.
	const whileS = rate === 0 ? seconds : gone / rate;
	// In a wait too short to form anything, rounding can make that while longer than the wait.
	const restS = whileS < Infinity ? Math.max(0, seconds - whileS) : 0;
	const stoodMolSPerL = (through(before, whileS) + through(solidMol, restS)) / litres;
	const standingMolSPerL = vessel.standingMolSPerL + through(uncomplexed, stoodMolSPerL);
	const formedMolPerL = Math.max(0, after - before) / litres;
	const occlusion = hydroxide.occlusionLPerMol * uncomplexed * formedMolPerL;
	const dissolvedShare = after < before ? (before - after) / before : 0;
	return {
		...vessel,
		solidMagnesiumMol: after,
		standingMolSPerL,
		occludedCalciumMol: calciumHeld(vessel, standingMolSPerL, occlusion, dissolvedShare)
	};
}

/**
 * Calcium in the solid after a wait, mol. Hydroxide and carbonate each take a share of what the other leaves
 * open; what of it carbonate has follows from how long it stood, the rest is the hydroxide's.
 */
function calciumHeld(
	vessel: ChelationVessel,
	standingMolSPerL: number,
	occlusion: number,
	dissolvedShare: number
): number {
	const { calciumMol, occludedCalciumMol, constants } = vessel;
	const lossBefore = carbonateLoss(vessel.standingMolSPerL, constants.hydroxide);
	const grown = carbonateLoss(standingMolSPerL, constants.hydroxide) - lossBefore;
	const taken = -Math.expm1(-occlusion - grown) * (calciumMol - occludedCalciumMol);
	const ofHydroxide = Math.max(0, occludedCalciumMol + calciumMol * Math.expm1(-lossBefore));
	const held = occludedCalciumMol + taken - dissolvedShare * ofHydroxide * Math.exp(-grown);
	// Where nearly none or nearly all of it is held, rounding can pass either end by the last digit.
	return Math.min(calciumMol, Math.max(0, held));
}

/** What a rate comes to in a time: none, nothing, however long. */
const through = (rate: number, time: number) => (rate > 0 ? rate * time : 0);
