import { convertValue, plausibleRange, unitName } from '../../kits';
import { CALCIUM_MG_PER_MEQ } from '../correction/correction-means';
import type { ConsistencyInput, Finding } from './consistency';

/** Calcium built in with each dKH of alkalinity, mg/L: one of calcium for two of alkalinity. */
export const CALCIUM_MG_PER_L_PER_DKH = CALCIUM_MG_PER_MEQ * convertValue(1, 'dKH', 'meq/L');

const rounded = (value: number, decimals = 0) => value.toFixed(decimals).replace('-', '−');

type Way = { isMoreCalcium: boolean; hasCalciumRisen: boolean; hasAlkalinityRisen: boolean };

/** What moves one of the two alone, by which of them went or came further than the other. */
function outOfProportion({ isMoreCalcium, hasCalciumRisen, hasAlkalinityRisen }: Way): string {
	if (!isMoreCalcium && hasCalciumRisen)
		return 'Calcium rose, and alkalinity does not bear that out: what grows only takes calcium. More of it was dosed than believed, or a test of calcium is off.';
	if (isMoreCalcium && hasAlkalinityRisen)
		return 'Alkalinity rose, and calcium does not bear that out. More of it was dosed than believed, or a test is off.';
	return isMoreCalcium
		? 'More calcium went than alkalinity asks for. Calcium alone was dosed less than believed, or a test is off.'
		: 'Alkalinity went without its calcium. Nitrate that builds up takes alkalinity alone, and so does a dosing part that failed.';
}

/**
 * What was used up of calcium against what was used up of alkalinity: what grows takes one of calcium for
 * two of alkalinity, and the tests seldom see it.
 */
export function useInProportion({ usedUp }: ConsistencyInput): Finding | null {
	if (!usedUp) return null;
	const { alkalinity, calcium } = usedUp;
	const toDkh = (value: number) => convertValue(value, alkalinity.unit, 'dKH');
	const toMg = (value: number) => convertValue(value, calcium.unit, 'mg/L', 'calcium');
	const used = toDkh(alkalinity.value);
	const expected = CALCIUM_MG_PER_L_PER_DKH * used;
	const expanded = Math.hypot(
		CALCIUM_MG_PER_L_PER_DKH * toDkh(alkalinity.expandedUncertainty),
		toMg(calcium.expandedUncertainty)
	);
	const found = toMg(calcium.value);
	const because = `${rounded(used, 1)} dKH × ${rounded(CALCIUM_MG_PER_L_PER_DKH, 2)} = ${rounded(expected)} mg/L of calcium; found ${rounded(found)}, and both tests together leave ± ${rounded(expanded)} open.`;
	const id = 'useInProportion';
	if (Math.abs(found - expected) > expanded)
		return {
			id,
			says: 'odd',
			sentence: outOfProportion({
				isMoreCalcium: found > expected,
				hasCalciumRisen: found < -toMg(calcium.expandedUncertainty),
				hasAlkalinityRisen: used < -toDkh(alkalinity.expandedUncertainty)
			}),
			because
		};
	if (expanded > Math.abs(expected))
		return {
			id,
			says: 'cannotTell',
			sentence:
				'So little was used up that these tests cannot tell whether calcium and alkalinity went together.',
			because
		};
	return {
		id,
		says: 'nothingOdd',
		sentence: 'Calcium and alkalinity went about as they do when skeletons grow.',
		because
	};
}

/** Above this magnesium makes no difference that is seen to how calcium holds, mg/L; common practice, no source. */
const MAGNESIUM_FOR_HOLDING = 1200;

/** Magnesium as a reason for calcium and alkalinity that will not hold. */
export function magnesiumForHolding({ magnesium }: ConsistencyInput): Finding | null {
	if (!magnesium) return null;
	const { value, expandedUncertainty, unit } = magnesium;
	const limit = convertValue(MAGNESIUM_FOR_HOLDING, 'mg/L', unit, 'magnesium');
	const digits = plausibleRange(unit, 'magnesium').high > 200 ? 0 : 1;
	const because = `Magnesium ${rounded(value, digits)} ± ${rounded(expandedUncertainty, digits)}, against about ${rounded(limit, digits)} ${unitName(unit, 'magnesium')} (common practice).`;
	const id = 'magnesiumForHolding';
	if (value + expandedUncertainty < limit)
		return {
			id,
			says: 'odd',
			sentence:
				'Magnesium is low enough that calcium and alkalinity may be hard to hold. Raise it slowly, once something independent bears it out.',
			because
		};
	if (value - expandedUncertainty < limit)
		return {
			id,
			says: 'cannotTell',
			sentence: 'Whether magnesium is low enough to matter is within its ±.',
			because
		};
	return {
		id,
		says: 'nothingOdd',
		sentence:
			'Magnesium is no reason for calcium that will not hold: above this, more of it makes no difference that is seen.',
		because
	};
}
