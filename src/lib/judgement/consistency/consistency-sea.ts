import { convertValue, unitOf } from '../../kits';
import { metalsOfSeawater } from '../../chemistry';
import { densityKgPerL } from '../../chemistry/density';
import { limitsOf } from '../decision/limits';
import { salinityOff } from '../decision/salinity';
import type { ConsistencyInput, Finding, KnownValue } from './consistency';

/** ± of a salinity where nobody gave one; judgement. */
export const SALINITY_EXPANDED = 1;
/** By how much salt mixes and what was dosed make either metal differ from the sea, standard deviation as a share; judgement. */
const MIX_SPREAD = 0.05;

type Metal = 'calcium' | 'magnesium';
const molPerKgIn = { calcium: 'calciumMolPerKg', magnesium: 'magnesiumMolPerKg' } as const;

/** What the sea holds of a metal at a salinity, mmol/L at 25 °C. */
export const seaMmolPerL = (metal: Metal, salinity: number): number =>
	(metalsOfSeawater[molPerKgIn[metal]] * 1000 * densityKgPerL(salinity, 25) * salinity) / 35;

const inMmolPerL = (metal: Metal, { value, expandedUncertainty, unit }: KnownValue) => ({
	value: convertValue(value, unit, 'mmol/L', metal),
	expanded: convertValue(expandedUncertainty, unit, 'mmol/L', metal)
});

/** How far a metal stands from the sea of this salinity, as a share, and how surely. */
function shareOf(metal: Metal, known: KnownValue, salinity: number) {
	const { value, expanded } = inMmolPerL(metal, known);
	const sea = seaMmolPerL(metal, salinity);
	return { share: value / sea - 1, variance: (expanded / 2 / sea) ** 2 + MIX_SPREAD ** 2 };
}

/** Not to be broken across lines. */
const percent = (share: number) => `${Math.abs(Math.round(share * 100))}\u00a0%`;
/** 'about the same', '17 % less'. */
const moreOrLess = (share: number) =>
	Math.round(share * 100) === 0
		? 'about the same'
		: `${percent(share)}\u00a0${share < 0 ? 'less' : 'more'}`;

/** A salinity that is off itself comes before all else: everything dissolved moves with it. */
export function salinityFirst({ salinity }: ConsistencyInput): Finding | null {
	const sentence =
		salinity && salinityOff(salinity.value, undefined, 'whatever is dissolved moves');
	if (!sentence) return null;
	const { low, high, origin } = limitsOf().salinity;
	return {
		id: 'salinity',
		says: 'odd',
		sentence,
		because: `Salinity ${salinity.value}, against ${low} to ${high} (${origin}).`
	};
}

/**
 * Calcium and magnesium against the sea of this salinity: both off the same way and by as much speaks
 * for the salinity, which nothing else in the tank moves together like that.
 */
export function seaProportion({ calcium, magnesium, salinity }: ConsistencyInput): Finding | null {
	if (!calcium || !magnesium || !salinity) return null;
	const ca = shareOf('calcium', calcium, salinity.value);
	const mg = shareOf('magnesium', magnesium, salinity.value);
	const ofSalinity =
		((salinity.expandedUncertainty ?? SALINITY_EXPANDED) / 2 / salinity.value) ** 2;
	const weights = [1 / ca.variance, 1 / mg.variance] as const;
	const mean = (ca.share * weights[0] + mg.share * weights[1]) / (weights[0] + weights[1]);
	const sdOfMean = Math.sqrt(1 / (weights[0] + weights[1]) + ofSalinity);
	const apart = Math.abs(ca.share - mg.share) / Math.sqrt(ca.variance + mg.variance);
	const because = `Against the sea of salinity ${salinity.value}: calcium ${moreOrLess(ca.share)}, magnesium ${moreOrLess(mg.share)}.`;
	const id = 'seaProportion';
	if (apart > 2)
		return {
			id,
			says: 'odd',
			sentence:
				'Calcium and magnesium differ from the sea by different shares. Salinity moves both alike, so it is not the whole of it: a test, the salt mix or what is dosed.',
			because
		};
	if (Math.abs(mean) > 2 * sdOfMean) {
		const implied = Math.round(salinity.value * (1 + mean));
		return {
			id,
			says: 'odd',
			sentence: `Calcium and magnesium are both ${mean < 0 ? 'lower' : 'higher'} than in the sea by about ${percent(mean)}. One thing that does this to both is a salinity that is not what was measured, about ${implied}: check the instrument in a solution of known salinity first.`,
			because
		};
	}
	return {
		id,
		says: 'nothingOdd',
		sentence:
			'Calcium and magnesium stand to this salinity about as in the sea, as far as these tests and salt mixes can tell.',
		because
	};
}

/**
 * Where calcium was taken off to find magnesium, an error of calcium makes the opposite one in
 * magnesium, mole for mole.
 */
export function oneErrorInBoth(input: ConsistencyInput): Finding | null {
	const { calcium, magnesium, salinity, isMagnesiumByDifference } = input;
	if (!calcium || !magnesium || !isMagnesiumByDifference) return null;
	const ca = inMmolPerL('calcium', calcium);
	const mg = inMmolPerL('magnesium', magnesium);
	const off = {
		ca: ca.value - seaMmolPerL('calcium', salinity?.value ?? 35),
		mg: mg.value - seaMmolPerL('magnesium', salinity?.value ?? 35)
	};
	const isOpposite = off.ca * off.mg < 0;
	const areSeen = Math.abs(off.ca) > ca.expanded && Math.abs(off.mg) > mg.expanded / 2;
	const isEven = Math.abs(off.ca + off.mg) < Math.hypot(ca.expanded, mg.expanded);
	if (!(isOpposite && areSeen && isEven)) return null;
	const mgPerL = (metal: Metal, mmol: number) =>
		Math.abs(Math.round(mmol / unitOf('mg/L', metal).size));
	const way = (amount: number) => (amount > 0 ? 'above' : 'below');
	return {
		id: 'oneErrorInBoth',
		says: 'odd',
		sentence:
			'Calcium and magnesium are off in opposite ways, mole for mole. Magnesium was found by taking this calcium off: one error of the calcium test makes both. Do that test again before either is acted on.',
		because: `Calcium ${mgPerL('calcium', off.ca)} mg/L ${way(off.ca)} the sea, magnesium ${mgPerL('magnesium', off.mg)} mg/L ${way(off.mg)}; an error of 10 mg/L in calcium makes 6 in magnesium.`
	};
}
