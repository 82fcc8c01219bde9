import type { Kit } from '../kits';
import type { Lamp } from './action';
import { indicated } from './calibrate';
import { colourDistance } from './look';
import { shownColour } from './observe';
import type { Srgb } from './seen';
import { titrantPortion } from './titrant-portion';
import { kindOf } from './titration-kind';
import { WaterSchema } from './world';

const PATH_POINTS = 48;

/**
 * The way that a kit's colour takes in ordinary water, as the leaflet's maker would paint it on a
 * card: nothing of the water at hand goes in.
 *
 * @returns for a colour as seen under this lamp, how far along that way its nearest point lies, in
 *   CIEDE2000 walked from point to point; 0 at the start. For a tone that follows the colour.
 */
export function colourPathOf(kit: Kit, lamp: Lamp): (seen: Srgb) => number {
	const start = indicated(kit, WaterSchema.parse({ alkalinityDkh: 8 }));
	const colours = kindOf(kit)
		.wayOf(start, titrantPortion(kit, 0, kit.contents?.titrant.molPerL ?? 0), PATH_POINTS)
		.map((contents) => shownColour(kit, contents, lamp));
	const walked: number[] = [];
	for (const [i, colour] of colours.entries()) {
		const before = colours[i - 1];
		walked.push(before ? (walked[i - 1] ?? 0) + colourDistance(before, colour) : 0);
	}
	return (seen) => placeOn(colours, walked, seen);
}

/** Between the two neighbours of the nearest point, in proportion to how near they are. */
function placeOn(colours: readonly Srgb[], walked: readonly number[], seen: Srgb): number {
	const away = colours.map((colour) => colourDistance(colour, seen));
	const nearest = away.indexOf(Math.min(...away));
	const place = walked[nearest] ?? 0;
	const step = (neighbour: number): number => {
		const far = away[neighbour];
		const span = Math.abs((walked[neighbour] ?? place) - place);
		if (far === undefined || span === 0) return 0;
		// How far towards the neighbour a point lies that is so far from both.
		return Math.max(0, (span + (away[nearest] ?? 0) - far) / 2);
	};
	const onward = step(nearest + 1);
	const back = step(nearest - 1);
	return onward >= back ? place + onward : place - back;
}
