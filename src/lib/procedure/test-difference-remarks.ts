import { analyteName, plausibleRange, type Kit } from '../kits';
import type { Circumstances, TakenOff } from '../observation';
import type { TestDifference } from './test-difference';

/** Something that speaks against a difference, or should be known of it. */
export type DifferenceRemark = {
	id: 'old' | 'salinity' | 'assumed' | 'suspect' | 'implausible' | 'nothingLeft';
	tone: 'say' | 'warn';
	text: string;
};

type Salinity = NonNullable<Circumstances['salinity']>;
const HOUR = 3_600_000;
/** From how far apart two tests are spoken of, and from when warned of, hours; judgement. */
const APART = { sayHours: 30, warnHours: 54 };
/**
 * Change of an instrument's number for one g/kg of salt: conductivity at 25 °C and specific gravity about
 * seawater of 35 g/kg (from memory).
 */
const perGramOfSalt: Record<Salinity['unit'], number> = {
	PSU: 1,
	'g/kg': 1,
	'mS/cm': 1.4,
	specificGravity: 0.00076
};
/** Salinities that differ by so much are not those of one water, g/kg; judgement. */
const SALT_APART = 1;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** How far two salinities lie apart, g/kg; null where they were shown in units that do not compare. */
function saltApart(a: Salinity | undefined, b: Salinity | undefined): number | null {
	if (!a || !b) return null;
	const alike = (unit: Salinity['unit']) => (unit === 'g/kg' ? 'PSU' : unit);
	if (alike(a.unit) !== alike(b.unit)) return null;
	return Math.abs(a.value - b.value) / perGramOfSalt[a.unit];
}

function ageRemark({ analyte, from }: TakenOff, testedAtEpochMs: number): DifferenceRemark[] {
	if (from.is !== 'test') return [];
	const hours = (testedAtEpochMs - from.testedAtEpochMs) / HOUR;
	if (Math.abs(hours) < APART.sayHours) return [];
	const days = Math.max(1, Math.round(Math.abs(hours) / 24));
	const much = days === 1 ? 'a day' : `${days} days`;
	const way = hours > 0 ? 'older' : 'younger';
	return [
		{
			id: 'old',
			tone: Math.abs(hours) >= APART.warnHours ? 'warn' : 'say',
			text: `The ${analyteName(analyte)} test is ${much} ${way} than this one: the water may hold another value by now.`
		}
	];
}

/**
 * What should be known of a value that is what is left of two tests, the most pressing first.
 *
 * @param test when the whole was tested (ms since 1970), what was said before it, and its kit
 */
export function differenceRemarks(
	difference: TestDifference,
	test: { testedAtEpochMs: number; circumstances: Circumstances; kit: Kit }
): DifferenceRemark[] {
	const { less, value, unit, analyte, expandedUncertainty } = difference;
	const { from } = less;
	const name = analyteName(less.analyte);
	const remarks: DifferenceRemark[] = [];
	const { low, high } = plausibleRange(unit, analyte);
	if (value <= expandedUncertainty)
		remarks.push({
			id: 'nothingLeft',
			tone: 'warn',
			text: `Next to nothing is left. Is ${name} in the unit that stands beside it, and the test the right one?`
		});
	else if (value < low || value > high)
		remarks.push({
			id: 'implausible',
			tone: 'warn',
			text: `Hardly any tank holds so ${value < low ? 'little' : 'much'} ${analyteName(analyte)}. Look at both tests before this is used.`
		});
	if (from.is === 'typed' && from.isAssumed)
		remarks.push({
			id: 'assumed',
			tone: 'warn',
			text: `${capital(name)} is an assumption here, not a measurement: ${analyteName(analyte)} is no surer than that.`
		});
	if (from.is === 'test' && from.isSuspect)
		remarks.push({
			id: 'suspect',
			tone: 'warn',
			text: `The ${name} test is in doubt itself, and its error goes into this value.`
		});
	const salt = from.is === 'test' ? saltApart(test.circumstances.salinity, from.salinity) : null;
	if (salt !== null && salt >= SALT_APART)
		remarks.push({
			id: 'salinity',
			tone: 'warn',
			text: `The two tests had water of different salinity: ${name} moves with it, about 3 % for each g/kg.`
		});
	return [...remarks, ...ageRemark(less, test.testedAtEpochMs)].sort(
		(a, b) => Number(b.tone === 'warn') - Number(a.tone === 'warn')
	);
}
