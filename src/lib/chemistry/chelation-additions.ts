import type { ChelationVessel } from './chelation-vessel';
import { metalDyeOf } from './metal-dyes';
import { requireWithin } from './require-within';
import { addWater } from './vessel';
import type { Titrant } from './vial-contents';

const withWater = (
	vessel: ChelationVessel,
	volumeMl: number,
	alkalinityMolPerL = 0,
	dicMolPerL = 0
): ChelationVessel => ({
	...vessel,
	water: addWater(vessel.water, { volumeMl, alkalinityMolPerL, dicMolPerL })
});

/**
 * With water that may be hard: to dilute, a rest of rinse water.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function addPlainWater(
	vessel: ChelationVessel,
	water: {
		volumeMl: number;
		calciumMolPerL?: number;
		magnesiumMolPerL?: number;
		alkalinityMolPerL?: number;
		dicMolPerL?: number;
	}
): ChelationVessel {
	const { calciumMolPerL = 0, magnesiumMolPerL = 0 } = water;
	const litres = water.volumeMl / 1000;
	requireWithin('calciumMolPerL', calciumMolPerL, 0, 2);
	requireWithin('magnesiumMolPerL', magnesiumMolPerL, 0, 2);
	const diluted = withWater(vessel, water.volumeMl, water.alkalinityMolPerL, water.dicMolPerL);
	return {
		...diluted,
		calciumMol: vessel.calciumMol + calciumMolPerL * litres,
		magnesiumMol: vessel.magnesiumMol + magnesiumMolPerL * litres
	};
}

/** Sodium (or potassium) hydroxide in water, with the carbonate it holds, mol/L. */
export type Base = { hydroxideMolPerL: number; carbonateMolPerL: number };

/**
 * Base that has taken up carbon dioxide: each mol turns two of hydroxide into one of carbonate, and
 * beyond that carbonate into bicarbonate is not followed.
 *
 * @param carbonDioxideMolPerL taken up, at most half of the hydroxide
 */
export function agedBase(fresh: Base, carbonDioxideMolPerL: number): Base {
	requireWithin('carbonDioxideMolPerL', carbonDioxideMolPerL, 0, fresh.hydroxideMolPerL / 2);
	return {
		// Half of the smallest number, rounded, may be more than half.
		hydroxideMolPerL: Math.max(0, fresh.hydroxideMolPerL - 2 * carbonDioxideMolPerL),
		carbonateMolPerL: fresh.carbonateMolPerL + carbonDioxideMolPerL
	};
}

/** With strong base. Two mol of hydroxide go to each mol of magnesium before the pH can stay above 12. */
export function addBase(
	vessel: ChelationVessel,
	dose: Base & { volumeMl: number }
): ChelationVessel {
	const hydroxide = requireWithin('hydroxideMolPerL', dose.hydroxideMolPerL, 0, 15);
	const carbonate = requireWithin('carbonateMolPerL', dose.carbonateMolPerL, 0, 5);
	const sodiumMol = ((hydroxide + 2 * carbonate) * dose.volumeMl) / 1000;
	const based = withWater(vessel, dose.volumeMl, hydroxide + 2 * carbonate, carbonate);
	return { ...based, sodiumMol: vessel.sodiumMol + sodiumMol };
}

/** With ammonia and ammonium chloride: equal amounts hold the pH near 9.3, five to one near 10. */
export function addAmmoniaBuffer(
	vessel: ChelationVessel,
	dose: { volumeMl: number; ammoniaMolPerL: number; ammoniumMolPerL: number }
): ChelationVessel {
	const ammonia = requireWithin('ammoniaMolPerL', dose.ammoniaMolPerL, 0, 16);
	const ammonium = requireWithin('ammoniumMolPerL', dose.ammoniumMolPerL, 0, 6);
	const buffered = withWater(vessel, dose.volumeMl, ammonia);
	return {
		...buffered,
		ammoniaMol: vessel.ammoniaMol + ((ammonia + ammonium) * dose.volumeMl) / 1000
	};
}

/** With a metal indicator; a spoon of solid is a dose without volume: `mol` instead of mL and mol/L. */
export function addMetalDye(
	vessel: ChelationVessel,
	dose: { dyeId: string } & ({ mol: number } | { volumeMl: number; molPerL: number })
): ChelationVessel {
	metalDyeOf(dose.dyeId);
	const mol =
		'mol' in dose
			? requireWithin('mol', dose.mol, 0, 10)
			: (requireWithin('molPerL', dose.molPerL, 0, 10) * dose.volumeMl) / 1000;
	const diluted = 'mol' in dose ? vessel : withWater(vessel, dose.volumeMl);
	const isThere = vessel.dyes.some(({ dyeId }) => dyeId === dose.dyeId);
	const dyes = isThere
		? vessel.dyes.map((dye) => (dye.dyeId === dose.dyeId ? { ...dye, mol: dye.mol + mol } : dye))
		: [...vessel.dyes, { dyeId: dose.dyeId, mol }];
	return { ...diluted, dyes };
}

/**
 * With EDTA in water, mL and mol/L. Of its disodium salt each mol that binds a metal sets two of hydrogen
 * ion free, which dissolve a mol of magnesium hydroxide where base is short; hydroxide that the bottle
 * holds for each mol of it, 0 to 2, takes as many back.
 *
 * @param titrant.hydroxidePerMol 0 unless said: disodium salt; 2: tetrasodium salt
 */
export function addEdta(vessel: ChelationVessel, titrant: Titrant): ChelationVessel {
	const molPerL = requireWithin('molPerL', titrant.molPerL, 0, 2);
	const hydroxide = requireWithin('hydroxidePerMol', titrant.hydroxidePerMol ?? 0, 0, 2);
	const mol = (molPerL * titrant.volumeMl) / 1000;
	const diluted = withWater(vessel, titrant.volumeMl, hydroxide * molPerL);
	return {
		...diluted,
		edtaMol: vessel.edtaMol + mol,
		sodiumMol: vessel.sodiumMol + (2 + hydroxide) * mol
	};
}
