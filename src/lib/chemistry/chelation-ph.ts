import { fallingRoot } from './bracketed-root';
import type { ChelationLiquid } from './chelation-liquid';
import { shareOut } from './chelation-share';
import type { ChelationVessel } from './chelation-vessel';
import { alkalinityAt } from './speciation';

/** Where the pH will be about, from what base is left when EDTA and solid have had theirs: saves time, changes nothing else. */
function nearPh(
	liquid: ChelationLiquid,
	vessel: ChelationVessel,
	solidMolPerL: number | null
): number {
	const { water, ammoniaMol, calciumMol, magnesiumMol, strontiumMol, edtaMol } = vessel;
	const metalsMol = calciumMol + magnesiumMol + strontiumMol;
	let left = water.alkalinityMol - 2 * Math.min(edtaMol, metalsMol);
	left -= liquid.composition.medium.totals.borateMolPerKg * water.massKg + water.dicMol;
	if (solidMolPerL === null) {
		const open = magnesiumMol - Math.max(0, edtaMol - calciumMol - strontiumMol);
		left -= 2 * Math.max(0, Math.min(open, left / 2));
	} else left -= 2 * solidMolPerL * liquid.litres;
	const hydroxide = (left - ammoniaMol) / water.massKg;
	if (hydroxide > 1e-4) return -Math.log10(liquid.composition.medium.constants.kW / hydroxide);
	if (ammoniaMol === 0) return 9;
	const share = Math.min(0.99, Math.max(0.01, left / ammoniaMol));
	return vessel.constants.ammoniumPKa + Math.log10(share / (1 - share));
}

/** Of the last step, whose square is the error: the slope is exact. */
const ENOUGH_PH = 1e-7;

/** pH with so much solid, or with its equilibrium amount (null): where all that takes up acid adds to what was put in. */
export function phWith(
	liquid: ChelationLiquid,
	vessel: ChelationVessel,
	solidMolPerL: number | null
): number {
	if (vessel.heldPh !== null) return vessel.heldPh;
	const { water, ammoniaMol, constants, edtaMol } = vessel;
	const { litres } = liquid;
	const kAmmonium = 10 ** constants.ammoniumPKa;
	const out = { value: 0, slope: 0 };
	return fallingRoot(
		(ph, result) => {
			const h = 10 ** -ph;
			alkalinityAt(h, liquid.composition, out);
			const shares = shareOut(liquid, vessel, ph, solidMolPerL);
			const bareShare = 1 / (1 + h * kAmmonium);
			result.value =
				water.alkalinityMol -
				out.value * water.massKg -
				ammoniaMol * bareShare -
				2 * edtaMol +
				(shares.protons - 2 * shares.solid) * litres;
			const rise =
				ammoniaMol * bareShare * (1 - bareShare) +
				(shares.protonsRise - 2 * shares.solidRise) * litres;
			result.slope = -out.slope * water.massKg - Math.LN10 * rise;
		},
		-2,
		16,
		nearPh(liquid, vessel, solidMolPerL),
		ENOUGH_PH
	);
}
