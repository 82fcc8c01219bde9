import { unitOf, type Analyte, type Kit } from '$lib/kits';
import {
	criticalRange,
	enNumber,
	mean,
	readingBudget,
	recoveryOf,
	standardDeviation
} from '$lib/metrology';
import type { BenchCheckId, BenchEvidence, Reading } from '$lib/observation';
import { plain, signed, withUncertainty } from '../charts/numbers';

/** One thing that the numbers say: a figure, the statistician's word for it, and a plain sentence. */
export type Saying = { id: string; figure: string; term: string; sentence: string };

/**
 * Scatter to be expected between careful repeats with this kit, in its unit: what drops, ware and eye
 * give anew each time.
 */
export function expectedScatter(kit: Kit, value: number, valuePerMl: number): number {
	return readingBudget(kit, { value, valuePerMl }).repeatabilitySd;
}

const allowed = (a: Reading, b: { expandedUncertainty: number }) =>
	Math.hypot(a.expandedUncertainty, b.expandedUncertainty);

function repeats(tests: readonly Reading[], scatter: number, decimals: number): Saying[] {
	if (tests.length < 2) return [];
	const values = tests.map((test) => test.value);
	const n = Math.min(10, values.length);
	const apart = Math.max(...values) - Math.min(...values);
	const limit = criticalRange(n, scatter);
	const many = `${values.length} tests`;
	return [
		{
			id: 'mean',
			figure: plain(mean(values), decimals),
			term: 'mean',
			sentence: `The middle of your ${many} of this water.`
		},
		{
			id: 'spread',
			figure: plain(standardDeviation(values), decimals + 1),
			term: 'standard deviation',
			sentence: `How far your ${many} typically lie from their mean.${
				values.length < 4 ? ' From so few, only a rough figure.' : ''
			}`
		},
		{
			id: 'apart',
			figure: plain(apart, decimals),
			term: n === 2 ? 'against the repeatability limit' : 'against the critical range',
			sentence:
				`Your ${many} lie ${plain(apart, decimals)} apart. Careful hands with these drops and this scale ` +
				`seldom get more than ${plain(limit, decimals)}. ` +
				(apart <= limit + 1e-9
					? 'So this is no more than scatter.'
					: 'So something differed between them.')
		}
	];
}

function against(id: string, own: Reading, other: Reading, what: string, decimals: number): Saying {
	const en = Math.abs(
		enNumber(own.value, own.expandedUncertainty, other.value, other.expandedUncertainty)
	);
	const difference = other.value - own.value;
	return {
		id,
		figure: plain(en),
		term: 'E_n, the difference over what both allow; up to 1 they agree',
		sentence:
			`${what} says ${withUncertainty(other.value, other.expandedUncertainty, decimals)}, ` +
			`${signed(difference, decimals)} from yours. Both together allow ${plain(allowed(own, other), decimals)}. ` +
			(en <= 1
				? 'They agree within what both claim; that does not make both right.'
				: 'They differ by more than both claim.')
	};
}

/** What a sound kit makes of a known solution in purified water, where that is not its content. */
const inPurifiedWater: Partial<Record<Analyte, string>> = {
	alkalinity:
		' It is made in purified water, where the same colour comes a little sooner: 0.1 to 0.3 low is ordinary.'
};

function known(each: Extract<BenchEvidence, { kind: 'reference' }>, kit: Kit): Saying {
	const { reading, nominal, nominalExpandedUncertainty, matrix } = each;
	const { recovery, standardUncertainty, isOff } = recoveryOf(
		reading.value,
		reading.expandedUncertainty / 2,
		nominal,
		nominalExpandedUncertainty / 2
	);
	const percent = `${plain(recovery * 100, 0)} %`;
	const { decimals } = unitOf(kit.unit, kit.analyte);
	const note = matrix === 'purified' ? (inPurifiedWater[kit.analyte] ?? '') : '';
	return {
		id: `reference-${reading.id}`,
		figure: percent,
		term: 'recovery',
		sentence:
			`${reading.label} is said to hold ${withUncertainty(nominal, nominalExpandedUncertainty, decimals)}; ` +
			`your kit found ${plain(reading.value, decimals)}: ${percent} of it, ± ${plain(200 * standardUncertainty, 0)}. ` +
			(isOff ? 'That is off by more than both claim.' : 'That is within what both claim.') +
			note
	};
}

function since(
	own: Reading,
	each: Extract<BenchEvidence, { kind: 'earlier' }>,
	decimals: number
): Saying {
	const change = own.value - each.reading.value;
	const limit = allowed(own, each.reading);
	const days = plain(each.daysAgo, 0);
	return {
		id: `earlier-${each.reading.id}`,
		figure: signed(change, decimals),
		term: `change since ${each.reading.label}`,
		sentence:
			`${days} ${days === '1' ? 'day' : 'days'} ago it read ` +
			`${withUncertainty(each.reading.value, each.reading.expandedUncertainty, decimals)}. ` +
			(Math.abs(change) <= limit
				? `A change below ${plain(limit, decimals)} is too small to tell.`
				: `More than the ${plain(limit, decimals)} that both ± together allow: likely real, if neither test had a slip and the kit is sound.`)
	};
}

const sameWay: readonly ('first' | BenchCheckId)[] = ['first', 'repeatFull', 'repeatQuick'];
const testNames: Partial<Record<'first' | BenchCheckId, string>> = {
	largerSample: 'The larger sample',
	freshLot: 'The fresh bottle',
	freshSample: 'The fresh sample'
};

/**
 * What the readings say together, in plain words: the repeats among themselves, then each other
 * piece of evidence against the reading in question. Empty while there is one reading alone.
 *
 * @param valuePerMl value that 1 mL of titrant stands for, in the kit's unit, at the sample volume of the test
 */
export function whatReadingsSay(
	inQuestion: Reading,
	evidence: readonly BenchEvidence[],
	kit: Kit,
	valuePerMl: number
): Saying[] {
	const { decimals } = unitOf(kit.unit, kit.analyte);
	const others = evidence.filter((each) => each.reading.id !== inQuestion.id);
	const tests = others.flatMap((each) =>
		each.kind === 'test' && sameWay.includes(each.from) ? [each.reading] : []
	);
	return [
		...repeats(
			[inQuestion, ...tests],
			expectedScatter(kit, inQuestion.value, valuePerMl),
			decimals
		),
		...others.flatMap((each): Saying[] => {
			const id = each.reading.id;
			if (each.kind === 'secondMethod')
				return [against(id, inQuestion, each.reading, each.reading.label, decimals)];
			if (each.kind === 'reference') return [known(each, kit)];
			if (each.kind === 'earlier') return [since(inQuestion, each, decimals)];
			return sameWay.includes(each.from)
				? []
				: [
						against(
							id,
							inQuestion,
							each.reading,
							testNames[each.from] ?? each.reading.label,
							decimals
						)
					];
		})
	];
}
