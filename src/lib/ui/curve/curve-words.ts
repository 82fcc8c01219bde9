import { decimalsFor, unitName, type Unit } from '$lib/kits';
import { plain } from '../charts/numbers';
import type { CurveInput } from './curve-input';
import type { CurveResult, PartOfDoubt, Said } from './curve-result';

/** '7.03' and '0.17', with the digits that the ± allows. */
export function saidTexts({ value, expandedUncertainty }: Said, unit: Unit) {
	const decimals = decimalsFor(unit, expandedUncertainty);
	return { value: plain(value, decimals), plusMinus: plain(expandedUncertainty, decimals) };
}
export function saidText(said: Said, unit: Unit): string {
	const { value, plusMinus } = saidTexts(said, unit);
	return `${value}\u00a0±\u00a0${plusMinus}\u00a0${unitName(unit)}`;
}

const partNames: Readonly<Record<PartOfDoubt, string>> = {
	acid: 'how well the acid’s strength is known',
	sample: 'how well the sample is measured',
	delivery: 'how well the acid is measured out',
	readings: 'the readings themselves'
};

/** What the ± comes from, and what was taken where nothing was said. */
export function doubtWords({ mostOf, found }: CurveResult): string | null {
	if (!mostOf) return null;
	const taken = Object.entries(found.assumed).map(
		([part, share]) =>
			`${{ acid: 'the acid', sample: 'the sample', delivery: 'the measuring of the acid' }[part] ?? part} ± ${plain(200 * share, 0)} %`
	);
	const said =
		taken.length === 0 ? '' : ` Where you typed none, this was taken: ${taken.join(', ')}.`;
	return `Most of the ± comes from ${partNames[mostOf.part]}.${said}`;
}

/**
 * What the readings do not show, how far it moves the value, and what shows it instead; null where there
 * is no value, or where it was seen. The sizes are those of simulated titrations of 8 dKH.
 */
export function unseenWords({ value, found }: CurveResult): string | null {
	if (!value || found.flags.some(({ id }) => id === 'drift' || id === 'notAsSet')) return null;
	const instead =
		'Wait until each reading stands still. Read one buffer before and once more after: if it has moved by more than 0.1, set the meter and titrate again.';
	return found.fit?.vessel === 'closed'
		? `A meter that drifts slowly hardly shows here, and hardly moves the value. Readings taken too soon may not show, and put it 2 % or more too high. ${instead}`
		: `In an open vessel a meter that drifts, or is read too soon, hardly shows. A drift of 0.2 puts the value about 2 % off, readings taken too soon 4 % or more. ${instead}`;
}

/** What was looked at where nothing was found, and what that leaves open; null where something was. */
export function nothingFoundWords(
	{ value, found }: CurveResult,
	input: Pick<CurveInput, 'known' | 'options'>
): string | null {
	if (!value || found.flags.length > 0) return null;
	const { fit } = found;
	const meter = input.options?.meterSetOn
		? fit?.isSlopeFitted
			? 'offset and slope are those of a meter that was set'
			: 'the offset is that of a meter that was set; its slope these readings do not show'
		: 'the meter is not far off';
	const acid = input.known ? '' : ' That says nothing of the strength of the acid.';
	return `No reading lies far off the curve, and ${meter}.${acid}`;
}

/** What is still needed, in a sentence; null where nothing is. */
export function missingWords({ missing }: CurveInput, readings: number): string | null {
	const names = { sample: 'the sample', acid: 'the strength of the acid', known: null };
	const needed = [
		...missing.flatMap((each) => names[each] ?? []),
		...(readings === 0 ? ['readings'] : [])
	];
	if (needed.length === 0) return null;
	const last = needed.pop();
	return `Still needed: ${needed.length > 0 ? `${needed.join(', ')} and ` : ''}${last}.`;
}

/** What a reading of a known solution says of probe and acid; null where none is known. */
export function againstKnown(result: CurveResult, { known, unit }: CurveInput): string | null {
	if (!known || !result.value) return null;
	const off = result.value.value / known.value - 1;
	const both = Math.hypot(result.value.expandedUncertainty, known.expandedUncertainty);
	const size = plain(Math.abs(100 * off), Math.abs(off) < 0.1 ? 1 : 0);
	return Math.abs(result.value.value - known.value) <= both
		? `It is said to hold ${saidText(known, unit)}: the two agree within their ±.`
		: `It is said to hold ${saidText(known, unit)}: the titration comes out ${size} % ${off > 0 ? 'above' : 'below'} that, more than their ± explains.`;
}

/**
 * That the strength of the acid goes into the value as it was typed: the offset of the electrode, which is
 * fitted, takes up nearly all that would show in the shape of a curve. Null
 * where a known solution was titrated, which does.
 */
export function acidStrengthWords({ value }: CurveResult, { known }: CurveInput): string | null {
	return value && !known
		? 'No curve shows whether the acid is as strong as was typed: an acid 5 % off puts the value 5 % off, and the curve looks the same. One a tenth off mostly looks like nothing at all, and one a quarter off like a meter that is not set. Titrate a known solution with the same acid to see it.'
		: null;
}
