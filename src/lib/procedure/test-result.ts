import { beyondAnyTank, canBeTakenOff, type Kit, type Unit } from '../kits';
import {
	combineRepeats,
	ownRepeatability,
	shrinksOf,
	tipSdMlOf,
	type CombinedRepeats,
	type OwnRepeatability,
	type Shrink
} from '../metrology';
import type { DifferenceSummary, TestSummary } from '../observation';
import { slipsAtTank } from './tank-slips';
import type { TestState } from './tank-test';
import { differenceOfTest, sharedOf, type TestDifference } from './test-difference';
import { valueOfTitration, type Unvalued, type ValuedTitration } from './titration-value';

/** What a test says: its value, about 95 %, what that rests on, and what would make it surer. */
export type TestResult = {
	unit: Unit;
	value: number;
	/** All titrations, in order; those without a value say why. */
	titrations: (ValuedTitration | Unvalued)[];
	/** Those that count: they have a value and were not set aside. */
	counted: ValuedTitration[];
	combined: CombinedRepeats;
	shrinks: Shrink[];
	/** On which side of what tanks of seawater hold a value of tank water lies; null where one may hold it. */
	beyondTanks: 'below' | 'above' | null;
	/** Something found on the way speaks against taking the value as it is. */
	isSuspect: boolean;
	/** What is left once another value was taken off; null where nothing was. */
	difference: TestDifference | null;
} & Pick<
	CombinedRepeats,
	| 'standardUncertainty'
	| 'expandedUncertainty'
	| 'coverageFactor'
	| 'degreesOfFreedom'
	| 'repeatabilitySd'
	| 'lines'
>;

/** Value of each titration of a test by a leaflet. */
export function valuesOf(state: TestState, kit: Kit = state.kit): (ValuedTitration | Unvalued)[] {
	return state.titrations.map((titration) => valueOfTitration(titration, kit));
}

/** A valued titration as the budget takes it. */
export function measuredOf(kit: Kit, valued: ValuedTitration, temperatureC?: number) {
	const { value, valuePerMl, usedMl, sampleVolumeMl, refills, from, by } = valued;
	const isThroughTip = from === 'throughTip';
	return {
		value,
		valuePerMl,
		usedMl: Math.max(0, usedMl),
		sampleVolumeMl,
		refills,
		isStartRead: from === 'start' && by !== 'drops',
		tipSdMl: isThroughTip ? tipSdMlOf(kit) : undefined,
		temperatureC
	};
}

/**
 * The result of a test as it stands; null while no titration that counts has a value.
 *
 * @param options.kit a corrected leaflet; the one of that day when left out
 * @param options.own the person's own scatter with this kit, where it is known
 */
export function testResult(
	state: TestState,
	options: { kit?: Kit; own?: OwnRepeatability | null } = {}
): TestResult | null {
	const kit = options.kit ?? state.kit;
	const titrations = valuesOf(state, kit);
	const counted = titrations.filter(
		(each): each is ValuedTitration =>
			each.value !== null && state.titrations[each.titration]?.setAsideBecause === null
	);
	const first = counted[0];
	if (!first) return null;
	const own = options.own ?? undefined;
	const readings = counted.map((each) => measuredOf(kit, each, state.circumstances.temperatureC));
	const combined = combineRepeats(kit, readings, own);
	const isOfTank = (state.circumstances.water ?? 'tank') === 'tank';
	const beyondTanks = isOfTank ? beyondAnyTank(combined.value, kit.unit, kit.analyte) : null;
	const difference = differenceOfTest(state, { ...combined, unit: kit.unit, counted }, kit);
	return {
		unit: kit.unit,
		value: combined.value,
		difference,
		titrations,
		counted,
		combined,
		shrinks: shrinksOf(kit, readings, own),
		beyondTanks,
		isSuspect: beyondTanks !== null || isSuspect(state, counted, combined),
		standardUncertainty: combined.standardUncertainty,
		expandedUncertainty: combined.expandedUncertainty,
		coverageFactor: combined.coverageFactor,
		degreesOfFreedom: combined.degreesOfFreedom,
		repeatabilitySd: combined.repeatabilitySd,
		lines: combined.lines
	};
}

function isSuspect(
	state: TestState,
	counted: readonly ValuedTitration[],
	combined: CombinedRepeats
): boolean {
	const hasSlip = counted.some(({ titration }) => {
		const walked = state.titrations[titration];
		return (
			walked !== undefined &&
			slipsAtTank(walked, state.circumstances).some(({ provisional }) => !provisional)
		);
	});
	// What cannot be told from nothing at all is hardly water of a tank.
	const isNothing = combined.value < combined.expandedUncertainty;
	return hasSlip || isNothing || combined.spread?.agrees === false;
}

/** What a difference needs to know of a value that can be taken off another. */
function partsOf(
	{ circumstances: { salinity } }: TestState,
	{ lines, degreesOfFreedom }: TestResult
): Pick<TestSummary, 'shared' | 'salinity' | 'degreesOfFreedom'> {
	return {
		shared: sharedOf(lines),
		...(Number.isFinite(degreesOfFreedom) ? { degreesOfFreedom } : {}),
		...(salinity ? { salinity } : {})
	};
}

/** What is left once another value was taken off, for lists and pictures. */
function leftOf(result: TestResult, left: TestDifference): DifferenceSummary {
	const { from } = left.less;
	return {
		analyte: left.analyte,
		value: left.value,
		unit: left.unit,
		standardUncertainty: left.standardUncertainty,
		expandedUncertainty: left.expandedUncertainty,
		repeatabilitySd: left.repeatabilitySd,
		isSuspect: result.isSuspect || (from.is === 'test' && from.isSuspect),
		isAssumed: from.is === 'typed' && from.isAssumed
	};
}

/** What lists and pictures keep of a result. */
export function summaryOf(
	state: TestState,
	result: TestResult,
	valuedAnewByVersion?: number
): TestSummary {
	const { tester, lot, dosed, water, reference } = state.circumstances;
	return {
		value: result.value,
		unit: result.unit,
		standardUncertainty: result.standardUncertainty,
		expandedUncertainty: result.expandedUncertainty,
		repeatabilitySd: result.repeatabilitySd,
		values: result.counted.map(({ value }) => value),
		sampleVolumeMl: result.counted[0]?.sampleVolumeMl ?? Number.NaN,
		...(tester ? { tester } : {}),
		...(lot ? { lot } : {}),
		...(water ? { water } : {}),
		...(water === 'reference' && reference ? { reference } : {}),
		...(dosed ? { dosed } : {}),
		...(canBeTakenOff(state.kit.analyte) ? partsOf(state, result) : {}),
		...(result.difference ? { difference: leftOf(result, result.difference) } : {}),
		isSuspect: result.isSuspect,
		...(valuedAnewByVersion === undefined ? {} : { valuedAnewByVersion })
	};
}

/**
 * A person's own scatter, pooled from their earlier tests with repeats: the same kit, the same sample
 * volume and, where it was said, the same hands. Null while there is none.
 */
export function ownScatterOf(
	earlier: readonly TestSummary[],
	now: { tester?: string; sampleVolumeMl: number; unit: Unit }
): OwnRepeatability | null {
	const groups = earlier
		.filter(
			({ tester, sampleVolumeMl, unit, isSuspect }) =>
				tester === now.tester &&
				sampleVolumeMl === now.sampleVolumeMl &&
				unit === now.unit &&
				!isSuspect
		)
		.map(({ values }) => values)
		.filter((values) => values.length > 1);
	return ownRepeatability(groups);
}
