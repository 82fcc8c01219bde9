import { fillVessel, addAcid, loseCarbonDioxide, phOf, type Vessel } from './vessel';
import { requireWithin } from './require-within';

export type AcidTitration = {
	/** Practical salinity, 0 to 45. */
	salinity: number;
	/** 0 to 40 °C. */
	temperatureC: number;
	alkalinityMolPerKg: number;
	dicMolPerKg: number;
	sampleVolumeMl: number;
	/** Strong acid in plain water. */
	acidMolPerL: number;
};

/**
 * pH (total scale) of seawater in a closed vessel after each amount of strong acid.
 *
 * @param addedMl acid added in all at each point, mL; any order, any fineness: each point stands for
 *   itself
 * @throws RangeError naming the field that lies outside its range
 */
export function titrateWithAcid(
	titration: AcidTitration,
	addedMl: readonly number[]
): { addedMl: number; ph: number }[] {
	requireWithin('sampleVolumeMl', titration.sampleVolumeMl, 1e-6, 1e6);
	requireWithin('acidMolPerL', titration.acidMolPerL, 0, 12);
	const sample = fillVessel({
		matrix: 'seawater',
		salinity: titration.salinity,
		temperatureC: titration.temperatureC,
		alkalinityMolPerKg: titration.alkalinityMolPerKg,
		dicMolPerKg: titration.dicMolPerKg,
		volumeMl: titration.sampleVolumeMl
	});
	return addedMl.map((volumeMl, i) => {
		requireWithin(`addedMl[${i}]`, volumeMl, 0, 1e6);
		// No start from the point before: a point is then the same to the last digit in any list.
		return {
			addedMl: volumeMl,
			ph: phOf(addAcid(sample, { volumeMl, molPerL: titration.acidMolPerL }))
		};
	});
}

/** What is done to an open vessel: acid added, or a swirl that lets a share of the CO2 above air go. */
export type OpenStep = { addMl: number } | { swirlLoss: number };

/**
 * pH after each step of a titration in the open. CO2 leaves at swirls and nowhere else, so listing
 * an addition in two parts changes nothing.
 */
export function titrateInTheOpen(
	start: Vessel,
	acidMolPerL: number,
	steps: readonly OpenStep[]
): { vessel: Vessel; ph: number }[] {
	let vessel = start;
	return steps.map((step) => {
		vessel =
			'addMl' in step
				? addAcid(vessel, { volumeMl: step.addMl, molPerL: acidMolPerL })
				: loseCarbonDioxide(vessel, step.swirlLoss);
		return { vessel, ph: phOf(vessel) };
	});
}
