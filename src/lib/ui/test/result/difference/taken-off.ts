import {
	analyteName,
	convertValue,
	decimalsFor,
	plausibleRange,
	roundedAs,
	typedNumber,
	unitName,
	type Analyte,
	type Unit
} from '$lib/kits';
import type { TakenOff, TestSummary, ThingInCommon } from '$lib/observation';
import { plain } from '../../../charts/numbers';
import { momentWords } from '../../../log/log-words';

/** A test whose value can be taken off. */
export type TakeOffCandidate = {
	testId: string;
	summary: TestSummary;
	kitId: string;
	kitName: string;
	/** ms since 1970. */
	testedAtEpochMs: number;
};

/** '413 ± 16 mg/L', in a unit. */
export function valueWords(
	value: Pick<TakenOff, 'value' | 'unit' | 'expandedUncertainty'>,
	analyte: Analyte,
	unit: Unit
): string {
	const to = (amount: number) => convertValue(amount, value.unit, unit, analyte);
	const decimals = decimalsFor(unit, to(value.expandedUncertainty), analyte);
	const write = (amount: number) =>
		plain(roundedAs(to(amount), to(value.expandedUncertainty)), decimals);
	return `${write(value.value)} ± ${write(value.expandedUncertainty)} ${unitName(unit, analyte)}`;
}

/** Where it came from: 'tested 3 Nov 2026, 18:05', 'assumed'. */
export function sourceWords({ from }: Pick<TakenOff, 'from'>): string {
	if (from.is === 'test') return `tested ${momentWords(from.testedAtEpochMs)}`;
	return from.isAssumed ? 'assumed' : 'measured otherwise, and typed';
}

/** What was taken off, and where it came from: 'calcium 413 ± 16 mg/L, tested 3 Nov 2026, 18:05'. */
export const takenOffWords = (less: TakenOff): string =>
	`${analyteName(less.analyte)} ${valueWords(less, less.analyte, less.unit)}, ${sourceWords(less)}`;

/** A test as it is frozen when its value is taken off. */
export function takenOffTest(
	{ testId, summary, kitId, testedAtEpochMs }: TakeOffCandidate,
	analyte: Analyte
): TakenOff {
	const { value, unit, standardUncertainty, expandedUncertainty, repeatabilitySd } = summary;
	const { degreesOfFreedom, shared, salinity, isSuspect, values } = summary;
	return {
		analyte,
		value: Math.max(0, value),
		unit,
		standardUncertainty,
		expandedUncertainty,
		scatter: repeatabilitySd / Math.sqrt(Math.max(1, values.length)),
		...(degreesOfFreedom === undefined ? {} : { degreesOfFreedom }),
		...(shared ? { shared } : {}),
		from: {
			is: 'test',
			testId,
			testedAtEpochMs,
			kitId,
			isSuspect,
			...(salinity ? { salinity } : {})
		}
	};
}

/** What is typed in place of a test. */
export type TypedValue = { value: string; band: string; unit: Unit; isAssumed: boolean };
export type TypedProblems = Partial<Record<'value' | 'band', string>>;

/** An assumption of which nobody says how sure it is: so many per cent either way; judgement. */
const USUAL_BAND_SHARE = 0.1;

/** What is typed, or what is wrong with it. A ± that is left empty is a tenth of the value. */
export function takenOffTyped(
	typed: TypedValue,
	analyte: Analyte
): { less: TakenOff } | { problems: TypedProblems } {
	const { unit, isAssumed } = typed;
	const { high } = plausibleRange(unit, analyte);
	const name = unitName(unit, analyte);
	const most = Number((3 * high).toPrecision(2));
	const value = typedNumber(typed.value, `${analyteName(analyte)}, ${name}`, {
		low: 0,
		high: most,
		why: `${analyteName(analyte, 'start')} lies between 0 and ${most} ${name}`
	});
	const band =
		typed.band.trim() === ''
			? { value: USUAL_BAND_SHARE * ('value' in value ? value.value : 0) }
			: typedNumber(typed.band, `its ±, ${name}`, {
					low: 0,
					high: most,
					why: `A ± lies between 0 and ${most} ${name}`
				});
	if (!('value' in value) || !('value' in band))
		return {
			problems: {
				...('value' in value ? {} : { value: value.problem }),
				...('value' in band ? {} : { band: band.problem })
			}
		};
	return {
		less: {
			analyte,
			value: value.value,
			unit,
			// A ± is taken for about 95 % of what is nearly normal (JCGM 100:2008, 6.2).
			standardUncertainty: band.value / 2,
			expandedUncertainty: band.value,
			from: { is: 'typed', isAssumed }
		}
	};
}

/** How a thing that both tests may have in common is asked for, and spoken of. */
export const inCommonNames: Record<ThingInCommon, string> = {
	sampler: 'the sample syringe',
	titrant: 'the bottle of titrant',
	delivery: 'the titrant syringe',
	hands: 'the same eyes'
};

/** What two tests are taken to have in common before anybody says so: only what they name alike. */
export function likelyInCommon(
	candidate: TakeOffCandidate,
	now: { tester?: string; lot?: string }
): ThingInCommon[] {
	const { tester, lot } = candidate.summary;
	return [
		...(lot !== undefined && lot === now.lot ? (['titrant'] as const) : []),
		...(tester === now.tester ? (['hands'] as const) : [])
	];
}
