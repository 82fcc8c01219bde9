import { densityKgPerL } from './density';
import { dyeOf } from './dyes';
import { mediumOf, requireMatrix, type Matrix, type Medium } from './matrix';
import { requireWithin } from './require-within';
import {
	carbonDioxideMolPerKg,
	dyeConstants,
	phAtAlkalinity,
	type Composition,
	type DissolvedDye
} from './speciation';

/**
 * A vial's contents as amounts, so that whatever is added or lost is plain bookkeeping and the order
 * or fineness of additions cannot matter. Values are never changed in place.
 *
 * Constants under dilution: the mixture is taken for sample diluted with plain water, so its
 * salinity falls with the sample's share of the mass, and constants and totals are those of that
 * salinity. Titrants of small kits are dilute acid in water, not in a salt solution. The other
 * usual model (acid made up in sodium chloride of the sample's ionic strength, constants fixed on
 * the free scale) gives the same end point at pH 4.5 within 0.006 dKH up to 15 % dilution and 13 dKH,
 * and 0.02 dKH apart at 7 dKH and a dilution of half.
 *
 * Masses come from the density of seawater; a solution of NaCl of the same g/kg is 0.15 % lighter.
 */
export type Vessel = {
	matrix: Matrix;
	temperatureC: number;
	massKg: number;
	/** Salt: kg for seawater and sodium chloride; nothing for purified water. */
	saltKg: number;
	/** Ions of purified water that make up its ionic strength, mol. */
	plainSaltMol: number;
	/** Alkalinity with the dyes counted in the form they were added, mol. Below 0: free acid. */
	alkalinityMol: number;
	dicMol: number;
	dyes: readonly { dyeId: string; mol: number; protonsWhenAdded: number }[];
};

/** CO2 of outdoor air, µatm (about 2020; rooms are often at twice that). */
export const AIR_CO2_MICROATM = 420;

/**
 * A measured sample.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function fillVessel(sample: {
	matrix: Matrix;
	/** Practical salinity, or g of NaCl per kg; 0 for purified water. */
	salinity: number;
	temperatureC: number;
	alkalinityMolPerKg: number;
	dicMolPerKg: number;
	volumeMl: number;
}): Vessel {
	const { matrix, temperatureC, alkalinityMolPerKg, dicMolPerKg } = sample;
	requireMatrix(matrix);
	requireWithin('temperatureC', temperatureC, 0, 40);
	const salinity = matrix === 'purified' ? 0 : requireWithin('salinity', sample.salinity, 0, 45);
	requireWithin('alkalinityMolPerKg', alkalinityMolPerKg, -0.5, 0.5);
	requireWithin('dicMolPerKg', dicMolPerKg, 0, 0.5);
	requireWithin('volumeMl', sample.volumeMl, 1e-6, 1e6);
	const massKg = (sample.volumeMl / 1000) * densityKgPerL(salinity, temperatureC);
	return {
		matrix,
		temperatureC,
		massKg,
		saltKg: (salinity / 1000) * massKg,
		plainSaltMol: Math.max(Math.abs(alkalinityMolPerKg), 1e-5) * massKg,
		alkalinityMol: alkalinityMolPerKg * massKg,
		dicMol: dicMolPerKg * massKg,
		dyes: []
	};
}

const salinityOf = (vessel: Vessel) => (1000 * vessel.saltKg) / vessel.massKg;

/** Volume of what is in the vessel, mL. */
export function volumeMlOf(vessel: Vessel): number {
	return (vessel.massKg / densityKgPerL(salinityOf(vessel), vessel.temperatureC)) * 1000;
}

/** Hydroxide of 15 mol/L with carbonate of 5, the strongest base of all additions, mol/L. */
const MOST_ALKALINE = 25;

/**
 * With water of another kind in it: a rest of rinse water, tap water, a trace of base.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function addWater(
	vessel: Vessel,
	water: { volumeMl: number; alkalinityMolPerL: number; dicMolPerL?: number }
): Vessel {
	const litres = requireWithin('volumeMl', water.volumeMl, 0, 1e6) / 1000;
	requireWithin('alkalinityMolPerL', water.alkalinityMolPerL, -MOST_ALKALINE, MOST_ALKALINE);
	const dicMolPerL = requireWithin('dicMolPerL', water.dicMolPerL ?? 0, 0, 20);
	return {
		...vessel,
		massKg: vessel.massKg + litres * densityKgPerL(0, vessel.temperatureC),
		alkalinityMol: vessel.alkalinityMol + litres * water.alkalinityMolPerL,
		dicMol: vessel.dicMol + litres * dicMolPerL
	};
}

/** With strong acid in water added, mL and mol per litre. Takes as much alkalinity as it brings acid. */
export function addAcid(vessel: Vessel, acid: { volumeMl: number; molPerL: number }): Vessel {
	requireWithin('molPerL', acid.molPerL, 0, 12);
	return addWater(vessel, { volumeMl: acid.volumeMl, alkalinityMolPerL: -acid.molPerL });
}

/**
 * With alkalinity and carbon added without volume: a grain of carbonate that dissolves brings two
 * of the first and one of the second; below 0 for one that forms.
 *
 * @throws RangeError naming the field, `dicMol` when more carbon would go than there is
 */
export function addAlkalinity(
	vessel: Vessel,
	added: { alkalinityMol: number; dicMol: number }
): Vessel {
	requireWithin('alkalinityMol', added.alkalinityMol, -100, 100);
	requireWithin('dicMol', added.dicMol, -vessel.dicMol, 100);
	return {
		...vessel,
		alkalinityMol: vessel.alkalinityMol + added.alkalinityMol,
		dicMol: vessel.dicMol + added.dicMol
	};
}

/**
 * With a dose of indicator. The form in which a dye is added counts as no alkalinity; so the salt
 * form takes up acid as it turns, and the acid form gives it.
 *
 * @throws RangeError naming the field that lies outside its range, or `dyeId` when there is no such dye
 */
export function addIndicator(
	vessel: Vessel,
	dose: {
		volumeMl: number;
		dyes: readonly { dyeId: string; molPerL: number; addedAs: 'acid' | 'salt' }[];
	}
): Vessel {
	const diluted = addWater(vessel, { volumeMl: dose.volumeMl, alkalinityMolPerL: 0 });
	const dyes = diluted.dyes.map((dye) => ({ ...dye }));
	for (const added of dose.dyes) {
		const steps = dyeOf(added.dyeId).pKFresh.length;
		const protonsWhenAdded = added.addedAs === 'acid' ? steps : 0;
		const mol = (requireWithin('molPerL', added.molPerL, 0, 10) * dose.volumeMl) / 1000;
		const same = dyes.find(
			(dye) => dye.dyeId === added.dyeId && dye.protonsWhenAdded === protonsWhenAdded
		);
		if (same) same.mol += mol;
		else dyes.push({ dyeId: added.dyeId, mol, protonsWhenAdded });
	}
	return { ...diluted, dyes };
}

/** Constants and totals of what is in the vessel now. */
export function mediumIn(vessel: Vessel): Medium {
	return mediumOf(
		vessel.matrix,
		Math.min(45, salinityOf(vessel)),
		vessel.temperatureC,
		vessel.plainSaltMol / vessel.massKg
	);
}

/** What decides the pH in the vessel, per kg. */
export function compositionOf(vessel: Vessel): Composition {
	const medium = mediumIn(vessel);
	return {
		medium,
		dicMolPerKg: vessel.dicMol / vessel.massKg,
		dyes: vessel.dyes.map((dye): DissolvedDye => ({
			dyeId: dye.dyeId,
			molPerKg: dye.mol / vessel.massKg,
			protonsWhenAdded: dye.protonsWhenAdded,
			k: dyeConstants(dye.dyeId, medium)
		}))
	};
}

/** pH in the vessel, on the scale of its medium (total scale in seawater). */
export function phOf(vessel: Vessel, startPh?: number): number {
	return phAtAlkalinity(vessel.alkalinityMol / vessel.massKg, compositionOf(vessel), startPh);
}

/** CO2 in the vessel over what air would hold in it, mol; below 0 when air would give some. */
export function carbonDioxideExcessMol(vessel: Vessel, airMicroAtm = AIR_CO2_MICROATM): number {
	requireWithin('airMicroAtm', airMicroAtm, 0, 1e6);
	const composition = compositionOf(vessel);
	const ph = phAtAlkalinity(vessel.alkalinityMol / vessel.massKg, composition);
	const dissolved = carbonDioxideMolPerKg(10 ** -ph, composition);
	return (dissolved - composition.medium.constants.k0 * airMicroAtm * 1e-6) * vessel.massKg;
}

/**
 * After a share of the CO2 above air has left. Alkalinity stays; the pH rises. Where there is less
 * than air would give, that share of the lack comes in.
 *
 * What bicarbonate makes anew when the CO2 has gone waits for the next swirl: even a share of 1 ends
 * a little above air, and some such swirls in a row reach it.
 *
 * @param fraction 0 (closed) to 1 (all of the excess that is there now)
 * @throws RangeError naming the field that lies outside its range
 */
export function loseCarbonDioxide(
	vessel: Vessel,
	fraction: number,
	airMicroAtm = AIR_CO2_MICROATM
): Vessel {
	requireWithin('fraction', fraction, 0, 1);
	const lost = fraction * carbonDioxideExcessMol(vessel, airMicroAtm);
	return { ...vessel, dicMol: Math.max(0, vessel.dicMol - lost) };
}
