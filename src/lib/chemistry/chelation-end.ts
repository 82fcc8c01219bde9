import { blueShareOf } from './chelation-colour';
import { chelationStateOf } from './chelation-state';
import { preparedVessel, titratedVessel, type EdtaTitration } from './chelation-titration';
import { requireWithin } from './require-within';

/** Steps in which the end is looked for first. */
const STEPS = 64;

/**
 * EDTA that first turns the indicator, mL; null when it never turns within twice what all metals need, be it
 * blocked, missing or of the wrong pH. 0 when it is blue from the start.
 *
 * With strong base this is calcium (and strontium), at pH 10 calcium and magnesium; of purified water
 * with all reagents it is the blank.
 *
 * @param blueShare share of the dye without metal that counts as the end; 0.8, blue to the eye:
 *   judgement. 0.5 is purple, where the dye turns by definition; at pH 10 in seawater 0.8 comes 0.8 % after
 *   it and 0.95 4 %, for sodium makes the end of magnesium shallow.
 */
export function chelationEndVolumeMl(titration: EdtaTitration, blueShare = 0.8): number | null {
	requireWithin('blueShare', blueShare, 0.01, 0.999);
	requireWithin('edtaMolPerL', titration.edtaMolPerL, 1e-6, 2);
	const start = preparedVessel(titration);
	const isPast = (volumeMl: number) => {
		const share = blueShareOf(chelationStateOf(titratedVessel(start, titration, volumeMl)).dyes);
		return share !== null && share >= blueShare;
	};
	if (isPast(0)) return 0;
	const metalsMol = start.calciumMol + start.magnesiumMol + start.strontiumMol;
	const dyeMol = start.dyes.reduce((sum, { mol }) => sum + mol, 0);
	const mostMl = (2000 * (metalsMol + dyeMol)) / titration.edtaMolPerL;
	// With base short the colour may come, go and come again as EDTA sets acid free: the first counts.
	let step = 1;
	while (step <= STEPS && !isPast((mostMl * step) / STEPS)) step++;
	if (step > STEPS) return null;
	let low = (mostMl * (step - 1)) / STEPS;
	let high = (mostMl * step) / STEPS;
	const width = 1e-7 * mostMl;
	while (high - low > width) {
		const middle = (low + high) / 2;
		if (isPast(middle)) high = middle;
		else low = middle;
	}
	return (low + high) / 2;
}
