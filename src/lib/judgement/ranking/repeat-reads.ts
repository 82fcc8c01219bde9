import type { Analysis } from '../diagnosis/analysis';
import type { Foreseen } from './foresee';
import type { CheckRanking } from './ranked-check';

/**
 * What the same test of the same water would probably read, in the customary unit: by all accounts of
 * today's reading as much lies below as above. What went wrong once is not expected again, what lasts is.
 * Null where there is no test in question.
 */
export function repeatReads(
	{ checks, water }: Analysis,
	{ weight, mean, tests }: Foreseen
): CheckRanking['repeatReads'] {
	const test = checks.indexOf('repeatFull');
	if (test < 0) return null;
	const rising = Array.from(weight, (share, c) => ({ share, value: mean[c * tests + test]! })).sort(
		(a, b) => a.value - b.value
	);
	let below = 0;
	const middle = rising.find(({ share }) => (below += share) >= 0.5) ?? rising.at(-1);
	return middle ? { value: middle.value, unit: water.unit } : null;
}
