import type { Comparison } from './comparison';
import { endsOf, figureOf, withPlusMinus } from './figures';
import type { ThroughBoth } from './line';

const percentOf = ({ slope }: ThroughBoth): string => {
	const { value, plusMinus } = figureOf(100 * Math.abs(slope.value - 1), 100 * slope.plusMinus);
	return `${value}\u00a0±\u00a0${plusMinus}\u00a0%`;
};

/** Why there is no line, in a sentence. */
export function noLineWords({ pairs }: Comparison): string {
	if (pairs.length < 3)
		return 'From three samples on a line can be drawn, and from about ten it says something. They should hold clearly different amounts: tank water, a fresh salt mix, a sample with some added.';
	return 'All samples hold about the same, so no line can be laid through them. Measure some that hold clearly more or less.';
}

export const offsetText = ({ offset }: ThroughBoth): string =>
	withPlusMinus(offset.value, offset.plusMinus);
export const slopeText = ({ slope }: ThroughBoth): string =>
	withPlusMinus(slope.value, slope.plusMinus);

/** What the offset means. */
export function offsetWords({ offset, isTooWide }: ThroughBoth, unit: string): string {
	const [low, high] = endsOf(offset.interval);
	if (isTooWide)
		return `It is what the line says where water holds nothing, far from your samples: anything between ${low} and ${high} ${unit} fits, and no cause can be read from it.`;
	if (!offset.isClear) return `It may be none: anything between ${low} and ${high} ${unit} fits.`;
	return `Your kit reads ${offset.value > 0 ? 'more' : 'less'} by the same amount, whatever the water holds. Look at what is the same in every test: a drop too many or too few, air or dead volume at filling, the colour taken for the end, something left in the vial.`;
}

/** What the slope means. */
export function slopeWords(line: ThroughBoth): string {
	const { slope, isTooWide } = line;
	const [low, high] = endsOf(slope.interval);
	if (isTooWide)
		return `Known too badly to read a cause from it: anything between ${low} and ${high} fits. More samples help, and most those that hold clearly more or less.`;
	if (!slope.isClear)
		return `It may be 1, so that nothing grows with the value: anything between ${low} and ${high} fits.`;
	return `Your kit reads ${slope.value > 1 ? 'more' : 'less'} in proportion, by ${percentOf(line)}. Look at what multiplies a value: the strength of the titrant, the volume of the sample, the scale of the syringe, the size of a drop.`;
}

/** What both together mean, and what the line rests on. */
export function lineSentences(
	line: ThroughBoth,
	{ pairs, differences }: Comparison,
	isRatioKnown: boolean
): string[] {
	const { offset, slope, by, isConsistent, isTooWide } = line;
	const isPointing = !isTooWide && (offset.isClear || slope.isClear);
	const isDifferent = differences?.isDifferent ?? false;
	return [
		...(isPointing
			? ['The cause may as well sit in the other method: the line shows only how the two differ.']
			: isDifferent
				? [
						'That the two differ is clear; whether by the same amount or in proportion, these samples cannot tell.'
					]
				: []),
		by === 'york'
			? 'Each sample counts by its own ± (York’s line). What is wrong alike in every sample, as the strength of one bottle, is in those ± too and makes the line look less sure than it is.'
			: `Both ways are taken to scatter ${isRatioKnown ? 'as you said' : 'alike'}, everywhere the same (Deming’s line). With a ± for both values of every sample each would count by its own.`,
		...(isConsistent
			? []
			: [
					'The samples lie farther off the line than their ± allow: some ± is too small, or something changed between them. The ± of the line were widened for that.'
				]),
		...(by === 'deming' && pairs.length < 10
			? [`From ${pairs.length} samples the ± of the line are rough themselves.`]
			: [])
	];
}
