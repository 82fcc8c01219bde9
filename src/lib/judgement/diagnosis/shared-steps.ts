import type { Loading, Row } from './row';

/**
 * Which readings ended on the same step, and how much of their rounding they share. Repeats much
 * steadier than a drop all end on the same one; their error is then one and the same, and many of
 * them are no better than one.
 */
export function sharedSteps(
	rows: readonly Pick<Row, 'alike' | 'value' | 'step' | 'sharedStepVariance'>[]
): Map<number, Loading> {
	const found = new Map<number, Loading>();
	const groups = new Map<string, number[]>();
	rows.forEach(({ alike, step }, i) => {
		if (step > 0) groups.set(alike, [...(groups.get(alike) ?? []), i]);
	});
	for (const [alike, group] of groups) {
		const valueOf = (i: number) => rows[i]?.value ?? Number.NaN;
		const sorted = [...group].sort((a, b) => valueOf(a) - valueOf(b));
		let on = 0;
		sorted.forEach((i, place) => {
			const before = sorted[place - 1];
			const row = rows[i];
			if (!row) return;
			if (before !== undefined && valueOf(i) - valueOf(before) > row.step / 2) on++;
			const amount = Math.sqrt(row.sharedStepVariance);
			if (amount > 0) found.set(i, { of: `step:${on}:${alike}`, amount });
		});
	}
	return found;
}
