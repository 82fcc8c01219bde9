import {
	chelationConstants,
	metalsOfSeawater,
	type ChelationConstants
} from './chelation-constants';
import type { Matrix } from './matrix';
import { metalDyeOf } from './metal-dyes';
import { requireWithin } from './require-within';
import { addWater, fillVessel, volumeMlOf, type Vessel } from './vessel';

/**
 * A vial's contents in a titration with EDTA, as amounts; values are never changed in place. Additions
 * are plain bookkeeping, so that their order and fineness cannot matter; only waiting
 * (`settlePrecipitate`) makes or dissolves solid.
 *
 * Left out: complexes of magnesium and calcium with hydroxide, carbonate and ammonia beyond what the
 * constants of seawater carry, calcium carbonate as a solid, and the hydrogen ion of the dye (tens of
 * µmol/L beside base by the hundredth of a mol).
 */
export type ChelationVessel = {
	/** Mass, salt, inorganic carbon; alkalinity with base, ammonia and dissolved solid, EDTA counted as H2Y2−. */
	water: Vessel;
	/** In all, mol: free, bound, precipitated, carried down. */
	calciumMol: number;
	magnesiumMol: number;
	strontiumMol: number;
	sodiumMol: number;
	/** Copper or iron, mol: takes dye one to one and does not give it back. */
	blockingMol: number;
	edtaMol: number;
	/** Ammonia and ammonium, mol. */
	ammoniaMol: number;
	dyes: readonly { dyeId: string; mol: number }[];
	/** Magnesium that is solid hydroxide, mol. */
	solidMagnesiumMol: number;
	/** Calcium carried down with it, mol. */
	occludedCalciumMol: number;
	/** pH that is held whatever is added; null where base and buffer decide. */
	heldPh: number | null;
	constants: ChelationConstants;
};

export type ChelationSample = {
	/** Seawater unless said otherwise. */
	matrix?: Matrix;
	/** Practical salinity 0 to 45, or g of NaCl per kg; it alone gives the metals of seawater. */
	salinity: number;
	/** 0 to 40 °C; the constants of EDTA and dyes are those of 25 °C throughout. */
	temperatureC: number;
	volumeMl: number;
	/** mol per kg of sample; left out: those of seawater of this salinity, none in other waters. */
	calciumMolPerKg?: number;
	magnesiumMolPerKg?: number;
	strontiumMolPerKg?: number;
	/** Copper and iron that take the dye; none unless said. */
	blockingMolPerKg?: number;
	/** mol per kg; left out: 2.3 and 2.0 mmol/kg at salinity 35 and in proportion, none in other waters. */
	alkalinityMolPerKg?: number;
	dicMolPerKg?: number;
	/** pH that is held; left out: base and buffer decide. */
	heldPh?: number;
	constants?: Partial<ChelationConstants>;
};

/**
 * A measured sample.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function fillChelationVessel(sample: ChelationSample): ChelationVessel {
	const { matrix = 'seawater', salinity, temperatureC, volumeMl } = sample;
	const share = matrix === 'seawater' ? salinity / 35 : 0;
	const water = fillVessel({
		matrix,
		salinity,
		temperatureC,
		volumeMl,
		alkalinityMolPerKg: sample.alkalinityMolPerKg ?? 0.0023 * share,
		dicMolPerKg: sample.dicMolPerKg ?? 0.002 * share
	});
	const sodiumMolPerKg =
		matrix === 'sodiumChloride' ? salinity / 58.44 : metalsOfSeawater.sodiumMolPerKg * share;
	const mol = (field: 'calciumMolPerKg' | 'magnesiumMolPerKg' | 'strontiumMolPerKg') =>
		requireWithin(field, sample[field] ?? metalsOfSeawater[field] * share, 0, 2) * water.massKg;
	return {
		water,
		calciumMol: mol('calciumMolPerKg'),
		magnesiumMol: mol('magnesiumMolPerKg'),
		strontiumMol: mol('strontiumMolPerKg'),
		sodiumMol: sodiumMolPerKg * water.massKg,
		blockingMol:
			requireWithin('blockingMolPerKg', sample.blockingMolPerKg ?? 0, 0, 1) * water.massKg,
		edtaMol: 0,
		ammoniaMol: 0,
		dyes: [],
		solidMagnesiumMol: 0,
		occludedCalciumMol: 0,
		heldPh: sample.heldPh === undefined ? null : requireWithin('heldPh', sample.heldPh, 0, 14),
		constants: { ...chelationConstants, ...sample.constants }
	};
}

/** Volume of what is in the vessel, mL; the solid counts as if it were dissolved. */
export const chelationVolumeMl = (vessel: ChelationVessel): number => volumeMlOf(vessel.water);

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
		hydroxideMolPerL: fresh.hydroxideMolPerL - 2 * carbonDioxideMolPerL,
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

/** With EDTA as its disodium salt in water, mL and mol/L. Each mol that binds a metal sets two of hydrogen ion free. */
export function addEdta(
	vessel: ChelationVessel,
	titrant: { volumeMl: number; molPerL: number }
): ChelationVessel {
	const molPerL = requireWithin('molPerL', titrant.molPerL, 0, 2);
	const mol = (molPerL * titrant.volumeMl) / 1000;
	const diluted = withWater(vessel, titrant.volumeMl);
	return { ...diluted, edtaMol: vessel.edtaMol + mol, sodiumMol: vessel.sodiumMol + 2 * mol };
}
