import { analyteName, analyteUnits, type Analyte } from '../../kits';
import type { Fault, FaultSize } from './fault';
import { about, chelation, eitherWay, habitAndOnce, mixed } from './make-fault';

/** Unit confusions are ratios that come out exactly; what is left is rounding of the numbers. */
const EXACT_SD = 0.004;

/** A number in one unit of an analyte, written down as if it were in another. */
function confused(analyte: Analyte, weight: number, stated: string, really: string): FaultSize {
	const { units, traps } = analyteUnits[analyte];
	const sizeOf = (name: string) => {
		const found = [...Object.values(units), ...traps].find((each) => each.name === name);
		if (!found) throw new RangeError(`name must be one of the units of ${analyte}; found ${name}`);
		return found.size;
	};
	const ratio = sizeOf(stated) / sizeOf(really);
	return { weight, mean: ratio - 1, sd: EXACT_SD * ratio, of: 'share' };
}

const unitTaken = (analyte: Analyte, sizes: readonly FaultSize[]): Fault => ({
	id: `${analyte}UnitTaken`,
	name: `number of ${analyteName(analyte)} taken to be in another unit`,
	class: 'technique',
	target: 'arithmetic',
	scope: 'oneTest',
	analytes: [analyte],
	isOfTheNumber: true,
	sizes,
	prior: 0.02,
	remedy: 'Look for the unit beside the number on the leaflet, and work it out again.',
	shownBy: ['repeatFull', 'secondMethod'],
	origin: 'Ratios: exact, from the definitions of the units. Shares and prior: judgement.'
});

/** Used and left taken for each other: what the leaflet takes off each test counts twice, in the analyte's unit. */
const usedForLeft = (analyte: Analyte, mean: number, sd: number): Fault[] =>
	habitAndOnce(
		{
			id: `usedForLeft${analyte.charAt(0).toUpperCase()}${analyte.slice(1)}`,
			name: 'used and left taken for each other',
			class: 'technique',
			target: 'arithmetic',
			analytes: [analyte],
			deliveries: ['syringe'],
			sizes: about(mean, sd, 'fullScaleLess'),
			remedy: 'Say “used” or “left” when you write the number down.',
			shownBy: ['reference', 'largerSample'],
			origin:
				'Size: exact but for the leaflet’s offset, full scale less the value. Prior: judgement.'
		},
		{ habit: 0.008, once: 0.015 }
	);

/** What can go astray with numbers, other methods and the place of the sample, where metals are measured. */
export const chelationNumberFaults: readonly Fault[] = [
	unitTaken('calcium', [
		confused('calcium', 0.3, 'mg/L', 'mmol/L'),
		confused('calcium', 0.5, 'mg/L', 'ppm CaCO₃'),
		confused('calcium', 0.2, 'mg/L', 'German degrees')
	]),
	unitTaken('magnesium', [
		confused('magnesium', 0.4, 'mg/L', 'mmol/L'),
		confused('magnesium', 0.6, 'mg/L', 'ppm CaCO₃')
	]),
	...usedForLeft('calcium', -5, 6),
	...usedForLeft('hardness', -1.5, 1.5),
	...usedForLeft('magnesium', -36, 36),
	{
		id: 'metalsAfterDosing',
		name: 'water taken soon after metals were dosed, or at an outlet',
		class: 'sampling',
		target: 'water',
		scope: 'sampling',
		analytes: chelation,
		sizes: mixed('share', [0.6, 0.03, 0.012], [0.4, 0.1, 0.04]),
		prior: 0.03,
		remedy: 'Take water an hour or more after a dose, away from outlets, with the pumps running.',
		shownBy: ['freshSample'],
		origin: 'Judgement, size and prior.'
	},
	{
		id: 'otherMethodOffMetals',
		name: 'the other method of metals off by itself',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: chelation,
		sizes: mixed('share', [0.4, 0.06, 0.03], [0.4, -0.06, 0.03], [0.2, 0, 0.15]),
		prior: 0.13,
		remedy: 'Give both methods the same known solution.',
		shownBy: ['referenceBySecondMethod', 'reference'],
		origin: 'Judgement: what can befall this test can befall that one, though nobody doubts it yet.'
	},
	{
		id: 'photometerOffMetals',
		name: 'photometer with a dirty glass or a sample thinned beside its mark',
		class: 'secondMethod',
		target: 'method',
		scope: 'instrument',
		analytes: chelation,
		methods: ['photometer'],
		sizes: eitherWay(0.07, 0.025, 'share'),
		prior: 0.1,
		remedy: 'Wipe the glass, thin the sample with care, set zero anew, and measure again.',
		shownBy: ['referenceBySecondMethod', 'secondMethod'],
		origin: 'Judgement: a small portion is thinned many times, and its error counts in full.'
	}
];
