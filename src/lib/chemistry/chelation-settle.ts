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
 * What forms takes calcium down with it, as much as EDTA does not hold; what dissolves gives it back.
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
	if (!isForming) {
		const kept = before > 0 ? after / before : 0;
		return {
			...vessel,
			solidMagnesiumMol: after,
			occludedCalciumMol: vessel.occludedCalciumMol * kept
		};
	}
	const open = vessel.calciumMol - vessel.occludedCalciumMol;
	const uncomplexed =
		vessel.calciumMol > 0 ? Math.max(0, 1 - vessel.edtaMol / vessel.calciumMol) : 0;
	const formedMolPerL = (after - before) / (volumeMlOf(vessel.water) / 1000);
	const takenShare = -Math.expm1(-hydroxide.occlusionLPerMol * uncomplexed * formedMolPerL);
	return {
		...vessel,
		solidMagnesiumMol: after,
		occludedCalciumMol: vessel.occludedCalciumMol + open * takenShare
	};
}
