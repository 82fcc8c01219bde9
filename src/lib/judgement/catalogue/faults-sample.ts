import type { Fault } from './fault';
import { about, alkalinity, eitherWay, habitAndOnce, mixed } from './make-fault';

/** What can go astray with the portion of water: how it was measured, and where it came from. */
export const sampleFaults: readonly Fault[] = [
	...habitAndOnce(
		{
			id: 'sampleBesideMark',
			name: 'sample beside its mark',
			class: 'technique',
			target: 'gain',
			analytes: alkalinity,
			sizes: eitherWay(0.027, 0.01, 'share'),
			remedy: 'Eye level with the mark, and the same edge on the line each time.',
			shownBy: ['weighSampleWare', 'repeatFull'],
			origin: 'Size: textbook, 2 to 3 in a hundred. Prior: judgement.'
		},
		{ habit: 0.02, once: 0.02 }
	),
	{
		id: 'sampleAir',
		name: 'air in the sample syringe',
		class: 'technique',
		target: 'gain',
		scope: 'oneTest',
		analytes: alkalinity,
		sizes: about(-0.05, 0.025, 'share'),
		prior: 0.02,
		remedy: 'Push the air out, and draw again until only water stands below the mark.',
		shownBy: ['repeatFull', 'repeatQuick'],
		origin: 'Size: textbook, 2 to 10 in a hundred. Prior: judgement.'
	},
	{
		id: 'sampleWareWet',
		name: 'other water left in the sample ware',
		class: 'technique',
		target: 'gain',
		scope: 'hands',
		analytes: alkalinity,
		sizes: about(-0.032, 0.012, 'share'),
		prior: 0.025,
		remedy: 'Rinse with the water you are going to test, and shake it out.',
		shownBy: ['otherHands', 'reference'],
		origin:
			'Size: 2 to 4 in a hundred where the wet piece is the one that measures; textbook kind. Prior: judgement.'
	},
	{
		id: 'sampledAfterDosing',
		name: 'water taken soon after dosing, or at an outlet',
		class: 'sampling',
		target: 'water',
		scope: 'sampling',
		analytes: alkalinity,
		sizes: mixed('customaryUnit', [0.55, 0.6, 0.3], [0.45, 1.8, 0.7]),
		prior: 0.04,
		remedy: 'Take water an hour or more after a dose, away from outlets, with the pumps running.',
		shownBy: ['freshSample'],
		origin: 'Size: common practice, no source. Prior: judgement.'
	},
	{
		id: 'wrongCup',
		name: 'another water in the cup',
		class: 'sampling',
		target: 'water',
		scope: 'sampling',
		analytes: alkalinity,
		sizes: about(0.03, 0.03, 'otherWater'),
		prior: 0.008,
		remedy: 'Take a new portion from the tank, and label the cup.',
		shownBy: ['freshSample'],
		origin:
			'Size: top-off water holds about nothing, and what little it holds is not of the tank. Prior: judgement.'
	},
	{
		id: 'grainsInSample',
		name: 'sand or carbonate snow in the sample',
		class: 'sampling',
		target: 'water',
		scope: 'sampling',
		analytes: alkalinity,
		sizes: about(0.9, 0.5, 'customaryUnit'),
		prior: 0.015,
		remedy: 'Let it settle or filter it, and take clear water from the top.',
		shownBy: ['freshSample'],
		origin:
			'Size: 0.1 mg of CaCO3 in 6 mL is 0.9 dKH, computed; how much there is is judgement, as is the prior.'
	}
];
