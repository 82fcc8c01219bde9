/** Shares of a division as the page says them; an eighth is what an eye can place. */
const shares: Record<string, number> = {
	'on ': 0,
	'just past ': 1 / 8,
	'a quarter past ': 2 / 8,
	'more than a quarter past ': 3 / 8,
	'halfway past ': 4 / 8,
	'more than halfway past ': 5 / 8,
	'three quarters past ': 6 / 8,
	'almost a whole line past ': 7 / 8
};

/**
 * The numeral that a listener makes of a place told in words, such as 'halfway past the 2nd short
 * line past the long line marked 0.4'. Division and words are those of the syringe of the house.
 *
 * @throws RangeError when the words tell no place on the scale
 */
export function numeralFromWords(words: string, graduationMl = 0.02): number {
	const told =
		/stands (.*?)the (?:(\w+) short line past the )?long line marked (\d+(?:\.\d+)?)/.exec(words);
	const share = told && shares[told[1] ?? ''];
	if (!told || share === null || share === undefined)
		throw new RangeError(`the words must tell a place on the scale; found ${words}`);
	const ordinals = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
	const ordinal = told[2] ?? '';
	const lines = /^\d/.test(ordinal) ? Number.parseInt(ordinal, 10) : ordinals.indexOf(ordinal);
	if (lines < 0) throw new RangeError(`the line must be an ordinal; found ${ordinal}`);
	return Number(told[3]) + (lines + share) * graduationMl;
}
