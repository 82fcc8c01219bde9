import { ON_LIMIT } from './chart-limits';

/**
 * Rules for a series of values in standard deviations from the target (s), one value at a time. All
 * limits are strict: a value on a limit is within it.
 *
 * - '1 beyond 3s': one value, either side
 * - '2 of 2 beyond 2s': two in a row, the same side
 * - '2 of 2 beyond 2s, opposite sides': two in a row
 * - '4 of 4 beyond 1s': four in a row, the same side
 * - '10 on one side': ten in a row, the same side of the target
 *
 * Source: Westgard, Barry, Hunt and Groth 1981 (Clin. Chem. 27:493; from memory).
 */
export const runRules = [
	'1 beyond 3s',
	'2 of 2 beyond 2s',
	'2 of 2 beyond 2s, opposite sides',
	'4 of 4 beyond 1s',
	'10 on one side'
] as const;
export type RunRule = (typeof runRules)[number];

/** Strictly above, but for rounding. */
export const isAbove = (z: number, limit: number): boolean => z > limit + ON_LIMIT;

/** The last `count` up to i are all beyond the limit on one side. */
function inARow(z: readonly number[], i: number, count: number, limit: number): boolean {
	if (i + 1 < count) return false;
	const last = z.slice(i + 1 - count, i + 1);
	return last.every((each) => isAbove(each, limit)) || last.every((each) => isAbove(-each, limit));
}

function areOpposite(z: readonly number[], i: number): boolean {
	const [before, now] = [z[i - 1] ?? 0, z[i] ?? 0];
	return (isAbove(before, 2) && isAbove(-now, 2)) || (isAbove(-before, 2) && isAbove(now, 2));
}

const isBroken: Record<RunRule, (z: readonly number[], i: number) => boolean> = {
	'1 beyond 3s': (z, i) => inARow(z, i, 1, 3),
	'2 of 2 beyond 2s': (z, i) => inARow(z, i, 2, 2),
	'2 of 2 beyond 2s, opposite sides': areOpposite,
	'4 of 4 beyond 1s': (z, i) => inARow(z, i, 4, 1),
	'10 on one side': (z, i) => inARow(z, i, 10, 0)
};

/** Which of the rules the value at i completes, in the order of the rules given. */
export const rulesBrokenAt = (
	z: readonly number[],
	i: number,
	rules: readonly RunRule[] = runRules
): RunRule[] => rules.filter((rule) => isBroken[rule](z, i));
