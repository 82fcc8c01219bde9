/**
 * Parallax: a mark that lies behind the scale by a distance seems displaced along it when the eye is
 * off its level. The seal's edge stands about half a bore behind the print of a 1 mL barrel.
 *
 * @param eyeDegrees eye above (+) or below (−) the level of the mark
 * @param depthMm how far behind the scale the mark is
 * @param mlPerMm of the scale; about 1/57 for a 1 mL syringe (common practice, no source)
 * @returns by how much the mark seems shifted along the scale towards the eye's side, mL: seen from
 *   above it lines up with a higher line, so positive is upward
 */
export function parallaxMl(eyeDegrees: number, depthMm: number, mlPerMm: number): number {
	return Math.tan((Math.min(60, Math.max(-60, eyeDegrees)) * Math.PI) / 180) * depthMm * mlPerMm;
}

/** Half the bore of a 1 mL syringe, mm, and mL of its scale in one mm; common practice, no source. */
export const ONE_ML_SYRINGE_DEPTH_MM = 2.3;
export const ONE_ML_SYRINGE_ML_PER_MM = 1 / 57;

const ordinals = [
	'',
	'first',
	'second',
	'third',
	'fourth',
	'fifth',
	'sixth',
	'seventh',
	'eighth',
	'ninth',
	'tenth',
	'eleventh',
	'twelfth'
];

/**
 * Where a mark stands on a printed scale, in words that name the lines and leave the number to the
 * reader: 'third short line past the long line marked 0.4, halfway to the next'.
 *
 * @param numeralMl the mark, as a numeral of the scale
 */
export function scaleInWords(
	numeralMl: number,
	scale: { graduationMl: number; numeralEveryMl: number; highestMl: number }
): string {
	const { graduationMl, numeralEveryMl } = scale;
	if (numeralMl > scale.highestMl + graduationMl / 8)
		return `past the last numeral, ${printed(scale.highestMl)}`;
	if (numeralMl < -graduationMl / 8) return 'below the 0 line';
	// An eighth of a division is what an eye can place; finer than that the words would tell too much.
	const eighths = Math.round((numeralMl / graduationMl) * 8);
	const lines = Math.floor(eighths / 8);
	const part = eighths - lines * 8;
	const perNumeral = Math.round(numeralEveryMl / graduationMl);
	const numeral = Math.floor(lines / perNumeral) * numeralEveryMl;
	const past = lines % perNumeral;
	const line =
		past === 0
			? `the long line marked ${printed(numeral)}`
			: `the ${ordinals[past] ?? `${past}th`} short line past the long line marked ${printed(numeral)}`;
	if (part === 0) return `on ${line}`;
	const between = [
		'',
		'just past',
		'a quarter past',
		'more than a quarter past',
		'halfway past',
		'more than halfway past',
		'three quarters past',
		'almost a whole line past'
	];
	return `${between[part]} ${line}`;
}

const printed = (numeral: number) => String(Number(numeral.toFixed(3)));
