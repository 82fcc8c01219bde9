import { bench, describe } from 'vitest';
import {
	addAcid,
	addIndicator,
	colourOf,
	fillVessel,
	titrateWithEdta,
	type EdtaTitration
} from '../../src/lib/chemistry';

const sample = {
	salinity: 35,
	temperatureC: 25,
	volumeMl: 5,
	edtaMolPerL: 0.05
};
const calcium: EdtaTitration = {
	...sample,
	base: { volumeMl: 0.6, hydroxideMolPerL: 2, carbonateMolPerL: 0 },
	indicator: { dyeId: 'hydroxynaphtholBlue', mol: 1e-7 }
};
const total: EdtaTitration = {
	...sample,
	water: { volumeMl: 20 },
	ammoniaBuffer: { volumeMl: 2, ammoniaMolPerL: 5, ammoniumMolPerL: 1 },
	indicator: { dyeId: 'eriochromeBlackT', mol: 2e-7 }
};
const volumes = (mostMl: number) => Array.from({ length: 60 }, (_, i) => (i * mostMl) / 60);
const acidSample = addIndicator(
	fillVessel({
		matrix: 'seawater',
		salinity: 35,
		temperatureC: 25,
		alkalinityMolPerKg: 0.0028,
		dicMolPerKg: 0.0025,
		volumeMl: 5
	}),
	{ volumeMl: 0.05, dyes: [{ dyeId: 'bromocresolGreen', molPerL: 1.433e-3, addedAs: 'salt' }] }
);

// Compiled first: the mark is for what a page does all the time.
const options = { time: 2000, warmupIterations: 40 };

// The summary prints how many times as long each takes as the quickest; the mark is 5 ms for one.
describe('60 points with their colours', () => {
	bench(
		'alkalinity with acid',
		() => {
			for (const volumeMl of volumes(0.15))
				colourOf(addAcid(acidSample, { volumeMl, molPerL: 0.1 }), 2, 'white');
		},
		options
	);
	bench(
		'calcium and magnesium with EDTA, pH held at 10',
		() => {
			titrateWithEdta({ ...total, heldPh: 10 }, volumes(8));
		},
		options
	);
	bench(
		'calcium and magnesium with EDTA, ammonia buffer',
		() => {
			titrateWithEdta(total, volumes(8));
		},
		options
	);
	bench(
		'calcium with EDTA, base short',
		() => {
			titrateWithEdta({ ...calcium, base: { ...calcium.base!, volumeMl: 0.25 } }, volumes(1.8));
		},
		options
	);
	bench(
		'calcium with EDTA, strong base, magnesium hydroxide',
		() => {
			titrateWithEdta(calcium, volumes(1.8));
		},
		options
	);
});
