import { addAcid, addIndicator, phOf } from '../chemistry';
import type { Kit } from '../kits';
import type { Lamp } from './action';
import { vesselOfWater } from './deeds-sample';
import { colourDistance } from './look';
import { shownColour } from './observe';
import type { Srgb } from './seen';
import { WaterSchema } from './world';

const PATH_POINTS = 48;
/** pH from the first drop to well past any end. */
const FIRST_PH = 7;
const LAST_PH = 3.6;

/**
 * The way that a kit's colour takes in ordinary water, as the leaflet's maker would paint it on a
 * card: nothing of the water at hand goes in.
 *
 * @returns for a colour as seen under this lamp, how far along that way its nearest point lies, in
 *   CIEDE2000 walked from point to point; 0 at the start. For a tone that follows the colour.
 */
export function colourPathOf(kit: Kit, lamp: Lamp): (seen: Srgb) => number {
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? 1;
	let vessel = vesselOfWater(WaterSchema.parse({ alkalinityDkh: 8 }), nominalMl);
	for (const { id, dose } of kit.reagents)
		vessel = addIndicator(vessel, {
			volumeMl: dose.amount * (dose.unit === 'mL' ? 1 : (dose.unitMl ?? 0.03)),
			dyes: kit.contents?.dyes[id] ?? []
		});
	const colourAt = acidFor(vessel);
	const colours = Array.from({ length: PATH_POINTS }, (_, i) =>
		shownColour(colourAt(FIRST_PH + ((LAST_PH - FIRST_PH) * i) / (PATH_POINTS - 1)), lamp)
	);
	const walked: number[] = [];
	for (const [i, colour] of colours.entries()) {
		const before = colours[i - 1];
		walked.push(before ? (walked[i - 1] ?? 0) + colourDistance(before, colour) : 0);
	}
	return (seen) => placeOn(colours, walked, seen);
}

/** The vessel brought to a pH with strong acid. */
function acidFor(start: Parameters<typeof addAcid>[0]): (ph: number) => typeof start {
	const molPerL = 0.1;
	const at = (volumeMl: number) => addAcid(start, { volumeMl, molPerL });
	return (ph) => {
		let low = 0;
		let high = (Math.max(0, start.alkalinityMol) / molPerL) * 1000 + 1;
		for (let i = 0; i < 30; i++) {
			const middle = (low + high) / 2;
			if (phOf(at(middle)) > ph) low = middle;
			else high = middle;
		}
		return at(low);
	};
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
