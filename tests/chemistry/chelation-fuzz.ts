import fc from 'fast-check';
import {
	addAmmoniaBuffer,
	addBase,
	addEdta,
	addMetalDye,
	addPlainWater,
	agedBase,
	metalDyeIds,
	settlePrecipitate,
	type ChelationSample,
	type ChelationVessel
} from '../../src/lib/chemistry';

/** Anything that can be in a vial, what is not there as often as anything else. */
export const amount = (max: number) =>
	fc.oneof(
		{ weight: 1, arbitrary: fc.constant(0) },
		{ weight: 3, arbitrary: fc.double({ min: 0, max, noNaN: true }) }
	);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export type Deed = (vessel: ChelationVessel) => ChelationVessel;

const base = fc
	.record({ volumeMl: amount(2), strength: amount(15), taken: fc.oneof(amount(1), fc.constant(1)) })
	.map(({ volumeMl, strength, taken }): Deed => {
		const fresh = { hydroxideMolPerL: strength, carbonateMolPerL: 0 };
		// More than 5 mol/L of carbonate does not dissolve.
		const aged = agedBase(fresh, Math.min(5, (taken * strength) / 2));
		return (vessel) => addBase(vessel, { volumeMl, ...aged });
	});
const edta = fc
	.record({ volumeMl: amount(10), molPerL: amount(2), hydroxidePerMol: amount(2) })
	.map(
		(titrant): Deed =>
			(vessel) =>
				addEdta(vessel, titrant)
	);
const buffer = fc
	.record({ volumeMl: amount(3), ammoniaMolPerL: amount(16), ammoniumMolPerL: amount(6) })
	.map(
		(dose): Deed =>
			(vessel) =>
				addAmmoniaBuffer(vessel, dose)
	);
const water = fc
	.record({
		volumeMl: amount(100),
		calciumMolPerL: amount(0.01),
		magnesiumMolPerL: amount(0.01),
		alkalinityMolPerL: amount(0.01),
		dicMolPerL: amount(0.01)
	})
	.map(
		(added): Deed =>
			(vessel) =>
				addPlainWater(vessel, added)
	);
const dye = fc.record({ dyeId: fc.constantFrom(...metalDyeIds), mol: amount(1e-5) }).map(
	(dose): Deed =>
		(vessel) =>
			addMetalDye(vessel, dose)
);

/** What is poured in: its order cannot matter. */
export const deed = fc.oneof(edta, base, buffer, water, dye);
export const wait = fc.oneof(amount(1000), fc.constant(Infinity)).map(
	(seconds): Deed =>
		(vessel) =>
			settlePrecipitate(vessel, seconds)
);

export const sample: fc.Arbitrary<ChelationSample> = fc.record(
	{
		matrix: fc.constantFrom('seawater' as const, 'sodiumChloride' as const),
		salinity: fc.oneof(amount(45), fc.constant(45)),
		temperatureC: between(5, 35),
		volumeMl: between(0.5, 100),
		calciumMolPerKg: amount(0.05),
		magnesiumMolPerKg: amount(0.2),
		strontiumMolPerKg: amount(0.001),
		blockingMolPerKg: amount(1e-5),
		heldPh: between(4, 14)
	},
	{ requiredKeys: ['matrix', 'salinity', 'temperatureC', 'volumeMl'] }
);
