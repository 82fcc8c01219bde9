import * as fc from 'fast-check';
import type { CorrectionInput } from '../../src/lib/judgement';
import { convertValue, type Unit } from '../../src/lib/kits';
import { toAdjust } from './made-diagnosis';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });

/** Means, values in dKH. */
export const anyMeans: fc.Arbitrary<NonNullable<CorrectionInput['means']>> = fc.oneof(
	fc.record({ by: fc.constant('bicarbonate' as const), purity: within(0.5, 1) }),
	fc.record({
		by: fc.constant('carbonate' as const),
		hydrate: fc.constantFrom('anhydrous' as const, 'monohydrate' as const, 'decahydrate' as const),
		purity: within(0.5, 1)
	}),
	fc.constant({ by: 'limewater' as const }),
	fc.record({ by: fc.constant('product' as const), risePerMlIn100L: within(0.02, 2) }),
	fc.record({
		by: fc.constant('waterChange' as const),
		newValue: within(3, 13),
		share: within(0.05, 1)
	})
);

/** Everything known and verified, in dKH; what limits refuse is still among it. */
export const anyComplete: fc.Arbitrary<CorrectionInput> = fc.record({
	decision: fc.constantFrom(toAdjust('raise'), toAdjust('raise'), toAdjust('lower')),
	value: fc.record({
		value: within(4, 11),
		standardUncertainty: within(0.05, 0.4),
		unit: fc.constant('dKH' as const)
	}),
	target: within(7, 9),
	waterL: within(20, 2000),
	waterExpandedUncertaintyL: within(0, 9),
	consumptionPerDay: within(0, 1),
	dosedPerDay: within(0, 1),
	means: anyMeans,
	salinity: within(33, 37),
	temperatureC: within(20, 30),
	ph: within(7.6, 8.5),
	maxRisePerDay: maybe(within(0.1, 1)),
	evaporationLPerDay: maybe(within(0.2, 20))
});

/** What a person may leave out, or may not do. */
export const anyInput: fc.Arbitrary<CorrectionInput> = fc
	.record({
		complete: anyComplete,
		lacks: fc.subarray(
			['target', 'waterL', 'consumptionPerDay', 'dosedPerDay', 'means', 'salinity', 'ph'] as const,
			{ maxLength: 3 }
		),
		isUnitSure: fc.boolean(),
		isVerified: fc.boolean(),
		who: fc.constantFrom('keeper' as const, 'sitter' as const, 'child' as const)
	})
	.map(({ complete, lacks, isUnitSure, isVerified, who }) => ({
		...complete,
		...Object.fromEntries(lacks.map((field) => [field, null])),
		decision: { ...complete.decision, isVerified },
		isUnitSure,
		who
	}));

/** The same correction in another unit. */
export function inUnit(input: CorrectionInput, unit: Unit): CorrectionInput {
	const to = (value: number) => convertValue(value, input.value.unit, unit);
	const maybeTo = (value: number | null | undefined) => (value == null ? value : to(value));
	const { means } = input;
	return {
		...input,
		value: {
			value: to(input.value.value),
			standardUncertainty: to(input.value.standardUncertainty),
			unit
		},
		target: maybeTo(input.target),
		consumptionPerDay: maybeTo(input.consumptionPerDay),
		dosedPerDay: maybeTo(input.dosedPerDay),
		maxRisePerDay: maybeTo(input.maxRisePerDay),
		means:
			means?.by === 'product' && means.risePerMlIn100L !== null
				? { ...means, risePerMlIn100L: to(means.risePerMlIn100L) }
				: means?.by === 'waterChange'
					? { ...means, newValue: to(means.newValue) }
					: means
	};
}
