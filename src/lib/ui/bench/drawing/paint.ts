import type { Srgb } from '$lib/bench';

/**
 * At night the light behind the vial is this much of the screen's white, and the liquid with it:
 * dimmer still, and the steps of colour near the end would shrink.
 */
export const NIGHT_GLOW = 231 / 255;

/** A display colour as CSS, scaled for the night. */
export function cssColour({ r, g, b }: Srgb, scale = 1): string {
	const byte = (channel: number) => Math.round(Math.min(1, Math.max(0, channel * scale)) * 255);
	return `rgb(${byte(r)},${byte(g)},${byte(b)})`;
}

// sRGB, IEC 61966-2-1.
const decode = (encoded: number) =>
	encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
const encode = (linear: number) =>
	linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;

/**
 * Where across a round vial its shades are set (0 and 1 are the walls), and how long the light's way
 * through the liquid is there, as a share of the mean way that the colour was worked out for. In the
 * middle it is held at that mean, so that the flat part shows the colour exactly.
 */
export const vialShades: readonly { across: number; way: number }[] = [0, 0.025, 0.08, 0.2].map(
	(across) => {
		const chord = Math.sqrt(1 - (2 * across - 1) ** 2) / (Math.PI / 4);
		return { across, way: Math.min(1, Math.max(0.22, chord)) };
	}
);

/** The colour of a shorter way through the same liquid: each channel's darkening shrinks as a power. */
export function shade(liquid: Srgb, light: Srgb, way: number): Srgb {
	const channel = (through: number, lamp: number) => {
		const lit = decode(lamp);
		if (lit <= 0) return through;
		return encode(lit * Math.max(1e-4, Math.min(1, decode(through) / lit)) ** way);
	};
	return {
		r: channel(liquid.r, light.r),
		g: channel(liquid.g, light.g),
		b: channel(liquid.b, light.b)
	};
}

/** Of the light that a cloud scatters, so much comes to the eye; the light behind the vial comes whole. Judgement. */
const CLOUD_BRIGHTNESS = 0.58;

/** Light that a cloud scatters has come through so much of the liquid: its colour is pale. Judgement. */
const CLOUD_WAY = 0.4;

/**
 * The colour of a liquid with something white in suspension, display values. It hides what is behind it by
 * its share, and in its place shows the light that it scatters: a light grey where the clear liquid is as
 * bright as the light behind it, paler and less saturated where the liquid is coloured.
 *
 * @param haze share of the light that is scattered on the mean way through, 0 to 1
 * @param way this way as a share of the mean one, as for `shade`
 */
export function clouded(liquid: Srgb, light: Srgb, haze: number, way = 1): Srgb {
	const through = shade(liquid, light, way);
	if (haze <= 0) return through;
	const scattered = shade(liquid, light, CLOUD_WAY);
	const hidden = 1 - (1 - haze) ** way;
	const channel = (clear: number, cloud: number) =>
		encode((1 - hidden) * decode(clear) + hidden * CLOUD_BRIGHTNESS * decode(cloud));
	return {
		r: channel(through.r, scattered.r),
		g: channel(through.g, scattered.g),
		b: channel(through.b, scattered.b)
	};
}
