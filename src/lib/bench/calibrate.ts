import { addAcid, addIndicator, colourOf, loseCarbonDioxide, type Vessel } from '../chemistry';
import { carbonDioxideLoss } from '../glassware';
import type { Kit } from '../kits';
import { vesselOfWater } from './deeds-sample';
import { endVolumeMl, hasDye, hueOnTheWay } from './end-point';
import { VIAL_PATH_CM } from './observe';
import { WaterSchema, type Water } from './world';

/** Above this pH a clean hand lets drops follow each other; from there on each is swirled in. */
export const NEAR_END_PH = 5.6;
export const CLEAN_SWIRL_SECONDS = 2;
/** Drops are cut so fine here that the end does not depend on where a whole drop happens to fall. */
const PARTS_OF_A_DROP = 4;

function indicated(kit: Kit, water: Water): Vessel {
	let vessel = vesselOfWater(water, kit.sample.volumes[0]?.volumeMl ?? 0);
	for (const { id, dose } of kit.reagents)
		vessel = addIndicator(vessel, {
			volumeMl: dose.amount * (dose.unit === 'mL' ? 1 : (dose.unitMl ?? 0.03)),
			dyes: kit.contents?.dyes[id] ?? []
		});
	return vessel;
}

/**
 * The end that a clean hand comes to with this kit and water: nominal sample, titrant of nominal
 * strength, each drop near the end swirled in for the same time, to the kit's own end colour.
 *
 * @returns titrant in the vial at that colour, mL (null when there is none to see), and the share of
 *   the sample's carbon that the swirling left
 */
export function cleanEnd(kit: Kit, water: Water): { endMl: number | null; carbonKept: number } {
	const molPerL = kit.contents?.titrant.molPerL ?? 0;
	const hue = kit.endPoint.hueDegrees ?? 340;
	const start = indicated(kit, water);
	const part = { volumeMl: kit.delivery.dropMl / PARTS_OF_A_DROP, molPerL };
	const loss = carbonDioxideLoss(CLEAN_SWIRL_SECONDS / PARTS_OF_A_DROP, true);
	const mostParts =
		hasDye(start) && molPerL > 0
			? (2 * Math.max(0, start.alkalinityMol) + 1e-6) / (part.volumeMl * molPerL * 1e-3)
			: 0;
	let vessel = start;
	for (let i = 0; i < mostParts && hueOnTheWay(vessel) < hue; i++) {
		vessel = addAcid(vessel, part);
		if (colourOf(vessel, VIAL_PATH_CM, 'white').ph <= NEAR_END_PH)
			vessel = loseCarbonDioxide(vessel, loss);
	}
	const carbonKept = start.dicMol > 0 ? vessel.dicMol / start.dicMol : 1;
	return { endMl: endVolumeMl(start, carbonKept, molPerL, hue), carbonKept };
}

export type Calibration = {
	valuePerMl: number;
	offset: number;
	worstErrorDkh: number;
	points: { alkalinityDkh: number; usedMl: number }[];
};

/**
 * Finds a kit's conversion as a maker would: a clean hand, ordinary seawater (salinity 35, 25 °C,
 * pH 8.1), alkalinities from 4 to 14 dKH, titrated to the kit's own end colour; the last drop is on
 * average half too much, and that half is in the conversion.
 *
 * @returns value per mL and offset of the best straight line, in dKH, for the nominal sample, and
 *   how far the worst point lies from it
 */
export function calibrateKit(kit: Kit): Calibration {
	const points = Array.from({ length: 11 }, (_, i) => 4 + i).map((alkalinityDkh) => {
		const { endMl } = cleanEnd(kit, WaterSchema.parse({ alkalinityDkh }));
		return { alkalinityDkh, usedMl: (endMl ?? Number.NaN) + kit.delivery.dropMl / 2 };
	});
	const meanX = points.reduce((sum, p) => sum + p.usedMl, 0) / points.length;
	const meanY = points.reduce((sum, p) => sum + p.alkalinityDkh, 0) / points.length;
	const sxx = points.reduce((sum, p) => sum + (p.usedMl - meanX) ** 2, 0);
	const sxy = points.reduce((sum, p) => sum + (p.usedMl - meanX) * (p.alkalinityDkh - meanY), 0);
	const valuePerMl = sxy / sxx;
	const offset = meanY - valuePerMl * meanX;
	const worstErrorDkh = Math.max(
		...points.map((p) => Math.abs(offset + valuePerMl * p.usedMl - p.alkalinityDkh))
	);
	return { valuePerMl, offset, worstErrorDkh, points };
}
