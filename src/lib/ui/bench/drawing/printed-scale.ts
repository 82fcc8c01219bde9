/** One printed line of a scale. */
export type Tick = {
	/** Numeral of the line, mL. */
	numeralMl: number;
	isLong: boolean;
	/** What is printed beside it; only long lines have it. */
	label: string | null;
};

/**
 * The lines printed on a piece of glass: a long one with its numeral at every `numeralEveryMl`, short
 * ones between.
 *
 * @param highestMl the last numeral that has a line
 */
export function ticksOf(scale: {
	graduationMl: number;
	numeralEveryMl: number;
	highestMl: number;
}): Tick[] {
	const perNumeral = Math.round(scale.numeralEveryMl / scale.graduationMl);
	const count = Math.floor(scale.highestMl / scale.graduationMl + 1e-6);
	return Array.from({ length: count + 1 }, (_, i) => {
		const numeralMl = Number((i * scale.graduationMl).toFixed(4));
		const isLong = i % perNumeral === 0;
		return { numeralMl, isLong, label: isLong ? printed(numeralMl, scale.numeralEveryMl) : null };
	});
}

/** As print has it: '0.4' where numerals are tenths, '4' where they are whole. */
function printed(numeralMl: number, everyMl: number): string {
	return numeralMl.toFixed(everyMl < 1 ? 1 : 0);
}

/** A scale that suits a piece of ware of this size, for ware that the leaflet does not describe. */
export function plainScale(capacityMl: number): { graduationMl: number; numeralEveryMl: number } {
	if (capacityMl <= 10) return { graduationMl: 0.2, numeralEveryMl: 1 };
	if (capacityMl <= 20) return { graduationMl: 0.5, numeralEveryMl: 2 };
	return { graduationMl: 1, numeralEveryMl: 5 };
}

/**
 * One path for many printed lines. Print goes round the front of a tube: seen from above or below a
 * line sags, at eye level it is straight.
 *
 * @param ys heights of the lines, px
 * @param sag how far the line's far end hangs below its start, px; 0 at eye level
 */
export function printPath(ys: readonly number[], x: number, length: number, sag: number): string {
	const n = (value: number) => Number(value.toFixed(2));
	return ys
		.map((y) => `M${n(x)} ${n(y)}q${n(length * 0.4)} ${n(sag * 0.8)} ${n(length)} ${n(sag)}`)
		.join('');
}
