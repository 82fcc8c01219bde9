import { colourDifference, labFromXyz, xyzFromRgb } from '../chemistry';
import { normalAt } from './noise';
import type { Seen, Srgb } from './seen';

/**
 * What a helper with ordinary eyes would say, so that somebody who does not see the colour can do
 * the test. Only what is seen goes in. A difference below what an eye notices is not told.
 */

/** Just noticeable for two looks in turn, CIEDE2000; common practice puts it at 2 to 3. */
export const NOTICEABLE = 2.5;
const CLEAR = 6;

const labOf = (rgb: Srgb) => labFromXyz(xyzFromRgb(rgb));

/** Which way along teal, blue, violet or purple, mauve, rose or wine red: positive is redder. Hues as they are on the screen. */
function redness(rgb: Srgb): number {
	const lab = labOf(rgb);
	const hue = lab.hueDegrees < 120 ? lab.hueDegrees + 360 : lab.hueDegrees;
	return hue;
}

function compare(now: Srgb, other: Srgb, wobble: number): 'same' | 'a little' | 'clearly' {
	const difference = Math.max(0, colourDifference(labOf(now), labOf(other)) + wobble);
	if (difference < NOTICEABLE) return 'same';
	return difference < CLEAR ? 'a little' : 'clearly';
}

/** From these shares of scattered light a cloud is told. Judgement. */
const CLOUDY = 0.2;
const FAINTLY_CLOUDY = 0.05;

/** A cloud in a liquid without colour is what is seen; in a coloured one it stands beside the colour. */
function cloudName({ lamp, vial: { haze, bulk } }: Seen): string | null {
	if (haze <= FAINTLY_CLOUDY) return null;
	const isColourless = lamp !== 'red' && hueName(bulk) === 'clear';
	if (isColourless) return haze > CLOUDY ? 'a white cloud' : 'a faint white cloud';
	return haze > CLOUDY ? 'cloudy' : 'a little cloudy';
}

/** Under a one-coloured lamp only light and dark can be told. */
function direction(now: Srgb, other: Srgb, lamp: Seen['lamp']): string {
	if (lamp === 'red') return labOf(now).l > labOf(other).l ? 'brighter' : 'darker';
	return redness(now) > redness(other) ? 'redder' : 'bluer';
}

/** From this chroma over lightness a colour is deep, as metal indicators are and mixed ones for acid are not. */
const DEEP = 0.7;

/**
 * From this hue angle on a blue has violet in it. What metal indicators end at is 268 to 271° on the screen in
 * seawater and in half of it, and half a drop before it 272 to 275: plain blue is the end, to half a drop.
 */
const VIOLET_BLUE = 272;

/** The plain word for a colour of the vial in white light. */
export function hueName(rgb: Srgb): string {
	const { hueDegrees, chroma, l } = labOf(rgb);
	if (chroma < 5) return l > 85 ? 'clear' : 'grey';
	if (chroma > DEEP * l) {
		if (hueDegrees >= 332 || hueDegrees < 20) return 'wine red';
		if (hueDegrees < 36) return 'red';
		if (hueDegrees < 65) return 'orange';
		if (hueDegrees >= 290) return 'purple';
	}
	if (hueDegrees >= 165 && hueDegrees < 225) return 'teal';
	if (hueDegrees >= 225 && hueDegrees < VIOLET_BLUE) return 'blue';
	if (hueDegrees >= VIOLET_BLUE && hueDegrees < 290) return 'violet blue';
	if (hueDegrees >= 290 && hueDegrees < 322) return 'violet';
	if (hueDegrees >= 322 && hueDegrees < 352) return 'mauve';
	if (hueDegrees >= 352 || hueDegrees < 40) return 'rose';
	return hueDegrees < 110 ? 'yellowish' : 'green';
}

/** What the liquid looks like by itself. */
function firstWords(now: Seen): string {
	if (now.lamp === 'red') return 'under the red lamp';
	const name = hueName(now.vial.bulk);
	return name === 'clear' ? (cloudName(now) ?? name) : name;
}

/** What has become of it since the last look under the same lamp. */
function changeWords(now: Seen, before: Seen, wobble: number): string {
	const step = compare(now.vial.bulk, before.vial.bulk, wobble);
	if (step !== 'same')
		return `${step} ${direction(now.vial.bulk, before.vial.bulk, now.lamp)} than before`;
	const cloud = cloudName(now);
	return cloud === cloudName(before) ? 'same as before' : (cloud ?? 'no longer cloudy');
}

/**
 * The words for a deliberate look.
 *
 * The wobble of the judgement is fixed by the state of the vial, so asking again gives the same
 * answer and cannot average it away.
 *
 * @param before what was seen at the last look, or null at the first
 */
export function lookWords(now: Seen, before: Seen | null, seed: number): string {
	const { bulk, plume, plumeShare } = now.vial;
	const key = [bulk.r, bulk.g, bulk.b].map((channel) => Math.round(channel * 255)).join(' ');
	const wobble = 0.6 * normalAt(seed, 'look', key);
	const parts: string[] = [];
	parts.push(before?.lamp === now.lamp ? changeWords(now, before, wobble) : firstWords(now));
	if (plumeShare > 0.15 && compare(plume, bulk, 0) !== 'same')
		parts.push(`a streak ${direction(plume, bulk, now.lamp)} than the rest`);
	if (now.comparison) {
		const step = compare(bulk, now.comparison, wobble);
		parts.push(
			step === 'same'
				? 'like the comparison vial'
				: `${step} ${direction(bulk, now.comparison, now.lamp)} than the comparison vial`
		);
	}
	const cloud = cloudName(now);
	if (cloud && !parts.includes(cloud)) parts.push(cloud);
	if (now.vial.grains) parts.push('grains at the bottom');
	return parts.join('; ');
}

/**
 * Distance between two colours as they are seen, for a pitch that follows the colour: about 60 from
 * the start to well past the end.
 */
export function colourDistance(one: Srgb, other: Srgb): number {
	return colourDifference(labOf(one), labOf(other));
}
