import {
	chelationConstants,
	metalsOfSeawater,
	type ChelationConstants
} from './chelation-constants';
import { requireConstants } from './chelation-required';
import type { Matrix } from './matrix';
import { requireObject, requireWithin } from './require-within';
import { fillVessel, volumeMlOf, type Vessel } from './vessel';

/**
 * A vial's contents in a titration with EDTA, as amounts; values are never changed in place. Additions
 * are plain bookkeeping, so that their order and fineness cannot matter; only waiting
 * (`settlePrecipitate`) makes or dissolves solid.
 *
 * Left out: complexes of magnesium and calcium with hydroxide, carbonate and ammonia beyond what the
 * constants of seawater carry, calcium carbonate as a solid with an equilibrium of its own (what grows on the
 * hydroxide while it stands takes calcium alone), and the hydrogen ion of the dye (tens of µmol/L beside
 * base by the hundredth of a mol).
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
	/** Calcium carried down with it, and lost to carbonate on it, mol. */
	occludedCalciumMol: number;
	/** Solid times share of the calcium that EDTA does not hold times time, mol s/L; see carbonate-growth.ts. */
	standingMolSPerL: number;
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
		standingMolSPerL: 0,
		heldPh: sample.heldPh === undefined ? null : requireWithin('heldPh', sample.heldPh, 0, 14),
		constants:
			sample.constants === undefined
				? chelationConstants
				: requireConstants({
						...chelationConstants,
						...requireObject('constants', sample.constants)
					})
	};
}

/** Volume of what is in the vessel, mL; the solid counts as if it were dissolved. */
export const chelationVolumeMl = (vessel: ChelationVessel): number => volumeMlOf(vessel.water);
