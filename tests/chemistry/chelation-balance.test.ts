import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	addEdta,
	chelationStateOf,
	fillChelationVessel,
	hydroxideEquilibrium,
	type ChelationVessel
} from '../../src/lib/chemistry';
import { deed, sample, wait, type Deed } from './chelation-fuzz';

const SHARE = 1e-9;
// Less than a single ion is nothing.
const ION_MOL = 1 / 6.022e23;

const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
const after = (vessel: ChelationVessel, deeds: readonly Deed[]) =>
	deeds.reduce((there, each) => each(there), vessel);

/** Each thing by name: found in all its forms, and put in; mol. */
function booksOf(vessel: ChelationVessel): [name: string, found: number, putIn: number][] {
	const state = chelationStateOf(vessel);
	const { free, withEdta, dyes } = state;
	const litres = state.volumeMl / 1000;
	return [
		[
			'calcium',
			free.calcium +
				withEdta.calcium +
				sumOf(dyes.map((dye) => dye.calciumMolPerL)) +
				state.occludedCalciumMolPerL,
			vessel.calciumMol
		],
		[
			'magnesium',
			free.magnesium +
				withEdta.magnesium +
				sumOf(dyes.map((dye) => dye.magnesiumMolPerL)) +
				state.solidMagnesiumMolPerL,
			vessel.magnesiumMol
		],
		['strontium', free.strontium + withEdta.strontium, vessel.strontiumMol],
		[
			'EDTA',
			state.edtaFreeMolPerL + withEdta.calcium + withEdta.magnesium + withEdta.strontium,
			vessel.edtaMol
		],
		...dyes.map((dye, i): [string, number, number] => [
			dye.dyeId,
			sumOf(dye.freeMolPerL) +
				dye.calciumMolPerL +
				dye.magnesiumMolPerL +
				dye.blockedMolPerL +
				dye.adsorbedMolPerL,
			vessel.dyes[i]!.mol
		])
	].map(([name, found, putIn]) => [name as string, (found as number) * litres, putIn as number]);
}

describe('whatever is poured together', () => {
	it('is found again, each thing to 1e-9 of it, at a pH that can be', () => {
		fc.assert(
			fc.property(sample, fc.array(fc.oneof(deed, wait), { maxLength: 12 }), (water, deeds) => {
				const vessel = after(fillChelationVessel(water), deeds);
				for (const [name, found, putIn] of booksOf(vessel)) {
					const missing = Math.abs(found - putIn);
					expect(missing, `${name}: ${found} of ${putIn}`).toBeLessThanOrEqual(
						SHARE * putIn + ION_MOL
					);
				}
				const { ph } = chelationStateOf(vessel);
				expect(ph).toBeGreaterThan(-2);
				expect(ph).toBeLessThan(16);
			}),
			{ numRuns: 300 }
		);
	});

	it('has no more solid than magnesium, and no more calcium in it than there is', () => {
		fc.assert(
			fc.property(sample, fc.array(fc.oneof(deed, wait), { maxLength: 12 }), (water, deeds) => {
				const vessel = after(fillChelationVessel(water), deeds);
				expect(vessel.solidMagnesiumMol).toBeGreaterThanOrEqual(0);
				expect(vessel.solidMagnesiumMol).toBeLessThanOrEqual(vessel.magnesiumMol);
				expect(vessel.occludedCalciumMol).toBeGreaterThanOrEqual(0);
				expect(vessel.occludedCalciumMol).toBeLessThanOrEqual(vessel.calciumMol);
				expect(hydroxideEquilibrium(vessel).solidMol).toBeGreaterThanOrEqual(0);
			}),
			{ numRuns: 100 }
		);
	});

	it('is the same in any order', () => {
		fc.assert(
			fc.property(sample, fc.array(deed, { maxLength: 8 }), (water, deeds) => {
				const start = fillChelationVessel(water);
				const there = chelationStateOf(after(start, deeds));
				const back = chelationStateOf(after(start, [...deeds].reverse()));
				expect(Math.abs(back.ph - there.ph)).toBeLessThan(1e-6);
				expect(Math.abs(back.free.calcium - there.free.calcium)).toBeLessThanOrEqual(
					1e-5 * there.free.calcium + 1e-24
				);
			}),
			{ numRuns: 100 }
		);
	});

	it('has less free metal the more EDTA there is, where the pH is held', () => {
		fc.assert(
			fc.property(
				sample,
				fc.double({ min: 8, max: 14, noNaN: true }),
				fc.double({ min: 0.01, max: 5, noNaN: true }),
				(water, heldPh, volumeMl) => {
					const start = fillChelationVessel({ ...water, heldPh, calciumMolPerKg: 0.01 });
					const free = [0, volumeMl, 2 * volumeMl].map(
						(ml) => chelationStateOf(addEdta(start, { volumeMl: ml, molPerL: 0.05 })).free.calcium
					);
					expect(free[1]).toBeLessThan(free[0]!);
					expect(free[2]).toBeLessThan(free[1]!);
				}
			),
			{ numRuns: 50 }
		);
	});
});
