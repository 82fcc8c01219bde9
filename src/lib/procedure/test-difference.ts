import {
	amountOf,
	analyteUnits,
	unitOf,
	unitsOf,
	type Analyte,
	type Kit,
	type Unit
} from '../kits';
import {
	differenceOf,
	type BudgetLine,
	type BudgetLineId,
	type DifferenceTerm,
	type InCommon,
	type ValueOfDifference
} from '../metrology';
import type { TakenOff, ThingInCommon } from '../observation';
import type { TestState } from './tank-test';

/** Value and its ± (about 95 %), in the base unit: mmol/L. */
type Amount = { value: number; expandedUncertainty: number };

/** What is left of a test's value once another was taken off it. */
export type TestDifference = ValueOfDifference & {
	/** Whose value it is, and in which unit: its customary one. */
	analyte: Analyte;
	unit: Unit;
	/** What falls anew when both are tested again: a standard deviation, in `unit`. */
	repeatabilitySd: number;
	less: TakenOff;
	inCommon: readonly ThingInCommon[];
	/** The sum in moles: the whole, what is taken off, what is left. */
	sum: { base: string; whole: Amount; less: Amount; left: Amount };
	/** By how much it moves, in `unit`, for one more of `less.unit` taken off, without sign. */
	perUnitTakenOff: number;
};

/** Lines of a budget that one thing in common stands behind. */
const linesOf: Record<ThingInCommon, readonly BudgetLineId[]> = {
	sampler: ['sampleVolume'],
	titrant: ['titrantStrength'],
	delivery: ['deliveryScale', 'dropSize', 'tipVolume'],
	hands: ['endColour']
};
/**
 * How far the errors of one thing go together in two tests (a correlation); this project's choice. Ware
 * and bottle are used at another place of the scale, or some days later; a person's notion of the end is
 * about another colour each time.
 */
const togetherOf: Record<ThingInCommon, number> = {
	sampler: 0.9,
	titrant: 0.9,
	delivery: 0.9,
	hands: 0.5
};
/** What lasting causes make of a value, by line; those of scatter are left out. */
export function sharedOf(lines: readonly BudgetLine[]): Record<string, number> {
	return Object.fromEntries(
		lines
			.filter(({ kind }) => kind === 'shared')
			.map(({ id, contribution }) => [id, contribution] as const)
	);
}

/** A result as far as a difference needs it. */
type Whole = {
	value: number;
	unit: Unit;
	standardUncertainty: number;
	expandedUncertainty: number;
	degreesOfFreedom: number;
	repeatabilitySd: number;
	lines: readonly BudgetLine[];
	counted: readonly unknown[];
};

/** A value with all its parts as amounts. */
function termOf(
	value: Pick<TakenOff, 'value' | 'standardUncertainty' | 'shared' | 'degreesOfFreedom'>,
	toAmount: (part: number) => number
): DifferenceTerm {
	const shared = Object.entries(value.shared ?? {});
	return {
		value: toAmount(value.value),
		standardUncertainty: toAmount(value.standardUncertainty),
		shared: Object.fromEntries(shared.map(([cause, part]) => [cause, toAmount(part)])),
		...(value.degreesOfFreedom === undefined ? {} : { degreesOfFreedom: value.degreesOfFreedom })
	};
}

/**
 * What is left of a result once another value is taken off it, counted in moles, with the uncertainty
 * of both. Null where the kit is for no such thing, or nothing was taken off.
 *
 * @param kit the leaflet that the result rests on
 * @throws RangeError naming the unit or analyte when what was taken off does not go with the kit
 */
export function differenceOfTest(
	state: Pick<TestState, 'difference'>,
	whole: Whole,
	kit: Kit
): TestDifference | null {
	const { difference } = state;
	if (!difference || !kit.byDifference) return null;
	const { gives } = kit.byDifference;
	const { less, inCommon } = difference;
	const { base } = analyteUnits[kit.analyte];
	const unit = unitsOf(gives)[0] ?? kit.unit;
	const size = unitOf(unit, gives).size;
	const ofWhole = (part: number) => amountOf(part, whole.unit, kit.analyte, base);
	const ofLess = (part: number) => amountOf(part, less.unit, less.analyte, base);
	const causes = inCommon.flatMap((thing): InCommon[] =>
		linesOf[thing].map((cause) => ({ cause, correlation: togetherOf[thing] }))
	);
	const left = differenceOf(
		termOf({ ...whole, shared: sharedOf(whole.lines) }, ofWhole),
		termOf(less, ofLess),
		causes
	);
	const scatterOfWhole = whole.repeatabilitySd / Math.sqrt(Math.max(1, whole.counted.length));
	return {
		...left,
		value: left.value / size,
		standardUncertainty: left.standardUncertainty / size,
		expandedUncertainty: left.expandedUncertainty / size,
		separateUncertainty: left.separateUncertainty / size,
		analyte: gives,
		unit,
		repeatabilitySd: Math.hypot(ofWhole(scatterOfWhole), ofLess(less.scatter ?? 0)) / size,
		less,
		inCommon,
		sum: {
			base,
			whole: {
				value: ofWhole(whole.value),
				expandedUncertainty: ofWhole(whole.expandedUncertainty)
			},
			less: {
				value: ofLess(less.value),
				expandedUncertainty: ofLess(less.expandedUncertainty)
			},
			left: { value: left.value, expandedUncertainty: left.expandedUncertainty }
		},
		perUnitTakenOff: ofLess(1) / size
	};
}
