import type { Titrant } from '../chemistry';
import type { Kit } from '../kits';

/**
 * So much of a kit's titrant: what the leaflet's bottle holds beside what is counted comes with it, in
 * proportion.
 *
 * @param molPerL what is really in the bottle; its other contents are for each mol of it
 */
export function titrantPortion(kit: Kit, volumeMl: number, molPerL: number): Titrant {
	const hydroxidePerMol = kit.contents?.titrant.hydroxidePerMol;
	return { volumeMl, molPerL, ...(hydroxidePerMol === undefined ? {} : { hydroxidePerMol }) };
}
