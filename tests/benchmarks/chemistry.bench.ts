import { bench, describe } from 'vitest';
import {
	addAcid,
	addIndicator,
	alkalinityAt,
	colourOf,
	compositionOf,
	fillVessel,
	phAtAlkalinity,
	phFromAlkalinityAndDic,
	spectrumOfBands,
	dyeOf,
	type Composition,
	type Vessel
} from '../../src/lib/chemistry';

const water = { salinity: 35, temperatureC: 25 };
const sample = addIndicator(
	fillVessel({
		matrix: 'seawater',
		...water,
		alkalinityMolPerKg: 0.0028,
		dicMolPerKg: 0.0025,
		volumeMl: 5
	}),
	{
		volumeMl: 0.05,
		dyes: [
			{ dyeId: 'bromocresolGreen', molPerL: 1.433e-3, addedAs: 'salt' },
			{ dyeId: 'methylRed', molPerL: 0.743e-3, addedAs: 'salt' }
		]
	}
);
const drop = { volumeMl: 0.0025, molPerL: 0.1 };

/** Vessels on the way of a titration: what a solver meets, from pH 8 to 3. */
const onTheWay: Vessel[] = [sample];
for (let i = 0; i < 63; i++) onTheWay.push(addAcid(onTheWay[i]!, drop));
const compositions = onTheWay.map(compositionOf);
const alkalinities = onTheWay.map((vessel) => vessel.alkalinityMol / vessel.massKg);

/** The plain way: the bracket halved until it is 1e-10 wide. */
function phByBisection(alkalinityMolPerKg: number, composition: Composition): number {
	const out = { value: 0, slope: 0 };
	let low = -2;
	let high = 16;
	while (high - low > 1e-10) {
		const middle = (low + high) / 2;
		alkalinityAt(10 ** -middle, composition, out);
		if (out.value < alkalinityMolPerKg) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}

// The summary prints how many times faster the first is than the others, in the same run. One round
// is 64 solves, so that microseconds are 15.6 times the milliseconds of a round.
describe('64 pH solves of one titration, indicator in it', () => {
	let sink = 0;
	bench('from the pH before', () => {
		let ph = 8;
		for (let i = 0; i < 64; i++) {
			ph = phAtAlkalinity(alkalinities[i]!, compositions[i]!, ph);
			sink += ph;
		}
	});
	bench('from pH 7 each time', () => {
		for (let i = 0; i < 64; i++) sink += phAtAlkalinity(alkalinities[i]!, compositions[i]!);
	});
	bench('plain bisection', () => {
		for (let i = 0; i < 64; i++) sink += phByBisection(alkalinities[i]!, compositions[i]!);
		if (Number.isNaN(sink)) throw new Error('a pH was not found');
	});
});

describe('one pH from alkalinity and carbon', () => {
	const input = { ...water, alkalinityMolPerKg: 0.0024, dicMolPerKg: 0.0021 };
	const composition: Composition = { ...compositions[0]!, dicMolPerKg: 0.0021, dyes: [] };
	bench('constants known', () => void phAtAlkalinity(0.0024, composition));
	bench('constants worked out too', () => void phFromAlkalinityAndDic(input));
	bench('plain bisection, constants known', () => void phByBisection(0.0024, composition));
});

describe('a titration of 60 drops with its colours', () => {
	bench('as the bench does it', () => {
		let vessel = sample;
		let startPh = 8;
		for (let i = 0; i < 60; i++) {
			vessel = addAcid(vessel, drop);
			startPh = colourOf(vessel, 2, 'white', { startPh }).ph;
		}
	});
	bench('by bisection and spectra made anew', () => {
		let vessel = sample;
		for (let i = 0; i < 60; i++) {
			vessel = addAcid(vessel, drop);
			phByBisection(vessel.alkalinityMol / vessel.massKg, compositionOf(vessel));
			for (const { dyeId } of vessel.dyes)
				for (const form of dyeOf(dyeId).forms) spectrumOfBands(form.bands);
			colourOf(vessel, 2, 'white');
		}
	});
});
