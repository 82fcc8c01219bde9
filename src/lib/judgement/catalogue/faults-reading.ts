import { analyteUnits } from '../../kits';
import type { Fault, FaultSize } from './fault';
import { about, alkalinity, eitherWay, habitAndOnce, mixed } from './make-fault';

/** Unit confusions are ratios that come out exactly; what is left is rounding of the numbers. */
const EXACT_SD = 0.002;

const sizeOf = (name: string): number => {
	const { units, traps } = analyteUnits.alkalinity;
	const found = [...Object.values(units), ...traps].find((each) => each.name === name);
	if (!found) throw new RangeError(`name must be one of the units of alkalinity; found ${name}`);
	return found.size;
};
/** A number in the unit `really`, written down as if it were in the unit `stated`. */
const confused = (weight: number, stated: string, really: string): FaultSize => {
	const ratio = sizeOf(stated) / sizeOf(really);
	return { weight, mean: ratio - 1, sd: EXACT_SD * ratio, of: 'share' };
};

/** What can go astray between the last drop and the number that is written down. */
export const readingFaults: readonly Fault[] = [
	{
		id: 'wrongRim',
		name: 'one rim of the seal set, the other read',
		class: 'technique',
		target: 'constant',
		scope: 'hands',
		analytes: alkalinity,
		deliveries: ['syringe'],
		sizes: eitherWay(0.055, 0.015, 'mL'),
		prior: 0.02,
		remedy: 'Always the rim nearest the tip, at filling and at reading.',
		shownBy: ['reference', 'largerSample'],
		origin: 'Size: common practice, no source. Prior: judgement.'
	},
	{
		id: 'wrongTick',
		name: 'short lines counted from another number',
		class: 'technique',
		target: 'arithmetic',
		scope: 'oneTest',
		analytes: alkalinity,
		deliveries: ['syringe', 'burette'],
		sizes: eitherWay(2.5, 1.3, 'divisions'),
		prior: 0.03,
		remedy: 'Find the number first, then count the short lines from it. Say it aloud.',
		shownBy: ['repeatFull', 'repeatQuick'],
		origin: 'Size: common practice, no source, one to five lines. Prior: judgement.'
	},
	{
		id: 'parallax',
		name: 'eye above or below the mark',
		class: 'technique',
		target: 'constant',
		scope: 'hands',
		analytes: alkalinity,
		deliveries: ['syringe', 'burette'],
		sizes: about(0, 0.4, 'divisions'),
		prior: 0.03,
		remedy: 'Bring the eye level with the mark until its rim is a single line.',
		shownBy: ['otherHands', 'reference'],
		origin: 'Textbook: a fraction of a division. Prior: judgement.'
	},
	...habitAndOnce(
		{
			id: 'usedForLeft',
			name: 'used and left taken for each other',
			class: 'technique',
			target: 'arithmetic',
			analytes: alkalinity,
			deliveries: ['syringe'],
			// What the leaflet takes off every test counts twice.
			sizes: about(-0.1, 0.15, 'fullScaleLess'),
			remedy: 'Say “used” or “left” when you write the number down.',
			shownBy: ['reference', 'largerSample'],
			origin:
				'Size: exact but for the leaflet’s offset, full scale less the value; hidden in the middle of the scale. Prior: judgement.'
		},
		{ habit: 0.012, once: 0.028 }
	),
	{
		id: 'dropsMiscounted',
		name: 'another number of drops counted',
		class: 'technique',
		target: 'arithmetic',
		scope: 'oneTest',
		analytes: alkalinity,
		deliveries: ['dropper'],
		sizes: mixed('drops', [0.6, -1.3, 0.5], [0.4, 1.3, 0.5]),
		prior: 0.05,
		remedy: 'Count aloud, or make a stroke for every five.',
		shownBy: ['repeatFull', 'repeatQuick'],
		origin: 'Size: common practice, no source, one or two drops. Prior: judgement.'
	},
	{
		id: 'wrongRow',
		name: 'value of another row or another sample size',
		class: 'technique',
		target: 'arithmetic',
		scope: 'oneTest',
		analytes: alkalinity,
		needs: { isLookedUp: true },
		sizes: mixed('share', [0.3, 1, 0.01], [0.3, -0.5, 0.005], [0.2, 0.6, 0.15], [0.2, -0.37, 0.09]),
		prior: 0.02,
		remedy: 'Work the value out again from the mark, the row and the sample you took.',
		shownBy: ['largerSample', 'smallerSample', 'repeatFull'],
		origin:
			'Exact for twice and half the sample; other pairs of sizes between (judgement). Prior: judgement.'
	},
	{
		id: 'figureSlipped',
		name: 'a figure too many or too few, or a point misplaced',
		class: 'technique',
		target: 'arithmetic',
		scope: 'oneTest',
		analytes: alkalinity,
		isOfTheNumber: true,
		sizes: mixed('share', [0.7, 9, 0.05], [0.3, -0.9, 0.0005]),
		prior: 0.006,
		remedy: 'Look at the number you wrote down, figure by figure.',
		shownBy: ['repeatFull'],
		origin: 'Size: ten times or a tenth, exact. Prior: judgement.'
	},
	{
		id: 'unitTaken',
		name: 'number taken to be in another unit',
		class: 'technique',
		target: 'arithmetic',
		scope: 'oneTest',
		analytes: alkalinity,
		sizes: [
			confused(0.22, 'dKH', 'meq/L'),
			confused(0.14, 'meq/L', 'dKH'),
			confused(0.2, 'dKH', 'ppm CaCO₃'),
			confused(0.1, 'ppm CaCO₃', 'dKH'),
			confused(0.06, 'meq/L', 'ppm CaCO₃'),
			confused(0.04, 'ppm CaCO₃', 'meq/L'),
			confused(0.06, 'ppm CaCO₃', 'mg/L HCO₃'),
			confused(0.04, 'dKH', 'mg/L HCO₃'),
			confused(0.06, 'dKH', 'English degrees'),
			confused(0.04, 'dKH', 'French degrees'),
			confused(0.04, 'meq/L', 'mmol/L CaCO₃')
		],
		prior: 0.02,
		remedy: 'Look for the unit beside the number on the leaflet, and work it out again.',
		shownBy: ['repeatFull', 'secondMethod'],
		origin: 'Ratios: exact, from the definitions of the units. Shares and prior: judgement.'
	}
];
