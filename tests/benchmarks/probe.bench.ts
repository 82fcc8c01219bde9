import { bench, describe } from 'vitest';
import { fitAlkalinityTitration, granEndPoint, referenceReading } from '../../src/lib/chemistry';
import { chanceOf } from '../studies/chance';
import { simulatedReadings, titration } from '../chemistry/probe-readings';

const { normal } = chanceOf(3);
const points = simulatedReadings({
	alkalinityDkh: 8,
	readings: 30,
	phSd: 0.01,
	addedSdMl: 0.004,
	decimals: 2,
	normal
});

// The summary prints how many times faster the first is than the others, in the same run.
describe('alkalinity from 30 readings of a pH meter', () => {
	bench('plain Gran line', () => void granEndPoint(points, titration));
	bench(
		'corrected Gran line',
		() => void granEndPoint(points, { ...titration, granFunction: 'hanssonJagner1973' })
	);
	bench(
		'fit of an open vessel',
		() => void fitAlkalinityTitration(points, { ...titration, vessel: 'open' })
	);
	bench('fit of a closed vessel with slope', () => void fitAlkalinityTitration(points, titration));
});

describe('what a kit should read on a known solution', () => {
	bench(
		'plain water, by colour',
		() => void referenceReading({ alkalinityDkh: 8, matrix: 'purified' })
	);
});
