import { addIndicator } from '../chemistry';
import type { Kit } from '../kits';
import { vesselOfWater } from './deeds-sample';
import { carbonDioxideLoss } from '../glassware';
import { endVolumeMl } from './end-point';
import { WaterSchema } from './world';

/**
 * Carbon that is left at the end of a clean test: the leaflet's 2 s swirl after each of some ten
 * drops near the end loses most of the CO2 that is over air by then.
 */
export const CLEAN_SWIRLS_NEAR_END = 10;
export const CLEAN_SWIRL_SECONDS = 2;

/** Share of the sample's carbon that a clean hand keeps to the end. */
export function cleanCarbonKept(): number {
	return 1 - carbonDioxideLoss(CLEAN_SWIRLS_NEAR_END * CLEAN_SWIRL_SECONDS, true);
}

/**
 * Finds a kit's conversion as a maker would: a clean hand, ordinary seawater (salinity 35, 25 °C,
 * pH 8.1), alkalinities from 4 to 14 dKH, titrated to the kit's own end colour; the last drop is on
 * average half too much, and that half is in the conversion.
 *
 * @returns value per mL and offset of the best straight line, in dKH, for the nominal sample, and
 *   how far the worst point lies from it
 */
export function calibrateKit(kit: Kit): {
	valuePerMl: number;
	offset: number;
	worstErrorDkh: number;
	points: { alkalinityDkh: number; usedMl: number }[];
} {
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? 0;
	const points = Array.from({ length: 11 }, (_, i) => 4 + i).map((alkalinityDkh) => {
		let vessel = vesselOfWater(WaterSchema.parse({ alkalinityDkh }), nominalMl);
		for (const reagent of kit.reagents)
			vessel = addIndicator(vessel, {
				volumeMl:
					reagent.dose.amount * (reagent.dose.unit === 'mL' ? 1 : (reagent.dose.unitMl ?? 0.03)),
				dyes: kit.contents?.dyes[reagent.id] ?? []
			});
		const end = endVolumeMl(
			vessel,
			cleanCarbonKept(),
			kit.contents?.titrant.molPerL ?? 0,
			kit.endPoint.hueDegrees ?? 340
		);
		return { alkalinityDkh, usedMl: (end ?? Number.NaN) + kit.delivery.dropMl / 2 };
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
