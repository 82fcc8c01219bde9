import { carbonDioxideLoss } from '../glassware';
import type { Analyte, Kit } from '../kits';
import { askedDosesOf, nominalBottles, withDoses } from './dosing';
import { endVolumeMl, hasTurned } from './end-point';
import { kindOf, type Passed } from './titration-kind';
import { titrantPortion } from './titrant-portion';
import { trueValueOf } from './true-value';
import type { VialContents } from './vial-contents';
import { WaterSchema, type Water } from './world';

export const CLEAN_SWIRL_SECONDS = 2;
/** Drops are cut so fine here that the end does not depend on where a whole drop happens to fall. */
const PARTS_OF_A_DROP = 4;

/** A nominal sample of a water with everything that the leaflet has put into it, after its waits. */
export function indicated(kit: Kit, water: Water): VialContents {
	const kind = kindOf(kit);
	return kit.reagents.reduce(
		(contents, reagent) =>
			kind.settle(withDoses(kit, contents, reagent.id, askedDosesOf(reagent), nominalBottles), {
				seconds: reagent.mixSeconds + reagent.waitSeconds,
				carbonDioxideShare: 0
			}),
		kind.fill(water, kit.sample.volumes[0]?.volumeMl ?? 0)
	);
}

/**
 * The end that a clean hand comes to with this kit and water: nominal sample, titrant of nominal
 * strength, each drop near the end swirled in for the same time, to the kit's own end colour.
 *
 * @returns titrant in the vial at that colour, mL (null when there is none to see), and what had passed
 *   in the vial by then
 */
export function cleanEnd(kit: Kit, water: Water): { endMl: number | null; passed: Passed } {
	const kind = kindOf(kit);
	const molPerL = kit.contents?.titrant.molPerL ?? 0;
	const start = indicated(kit, water);
	const part = titrantPortion(kit, kit.delivery.dropMl / PARTS_OF_A_DROP, molPerL);
	const swirl = {
		seconds: CLEAN_SWIRL_SECONDS / PARTS_OF_A_DROP,
		carbonDioxideShare: carbonDioxideLoss(CLEAN_SWIRL_SECONDS / PARTS_OF_A_DROP, true)
	};
	const mostParts =
		kind.hasDye(start) && molPerL > 0
			? (2 * kind.mostTitrantMol(start) + 1e-6) / (part.volumeMl * molPerL * 1e-3)
			: 0;
	let contents = start;
	let isFar = false;
	for (let i = 0; i < mostParts && (isFar || !hasTurned(kit, contents)); i++) {
		contents = kind.addTitrant(contents, part);
		isFar = kind.isFar(contents);
		if (!isFar) contents = kind.settle(contents, swirl);
	}
	const passed = kind.passedBetween(start, contents);
	return { endMl: endVolumeMl(kit, kind.withPassed(start, passed), molPerL), passed };
}

export type Calibration = {
	valuePerMl: number;
	offset: number;
	worstError: number;
	points: { value: number; usedMl: number }[];
};

/** From low to high in even steps, both with. */
const steps = (low: number, high: number, step: number) =>
	Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + step * i);

/** Ordinary seawater (salinity 35, 25 °C, pH 8.1) with what is looked for in many strengths. */
const seawater = (more: Partial<Water>) => WaterSchema.parse({ alkalinityDkh: 8, ...more });
const watersOf: Record<Analyte, Water[]> = {
	alkalinity: steps(4, 14, 1).map((alkalinityDkh) => seawater({ alkalinityDkh })),
	calcium: steps(320, 520, 20).map((calciumMgPerL) => seawater({ calciumMgPerL })),
	magnesium: steps(1000, 1600, 60).map((magnesiumMgPerL) => seawater({ magnesiumMgPerL })),
	hardness: steps(1000, 1600, 60).map((magnesiumMgPerL) => seawater({ magnesiumMgPerL }))
};

/**
 * Finds a kit's conversion as a maker would: a clean hand, ordinary seawater (salinity 35, 25 °C,
 * pH 8.1) with the analyte over the range of tanks (alkalinity 4 to 14 dKH, calcium 320 to 520 mg/L,
 * magnesium 1000 to 1600 mg/L), titrated to the kit's own end colour; the last drop is on average half
 * too much, and that half is in the conversion.
 *
 * @returns value per mL and offset of the best straight line, in the kit's unit, for the nominal sample,
 *   and how far the worst point lies from it
 */
export function calibrateKit(kit: Kit): Calibration {
	const points = watersOf[kit.analyte].map((water) => {
		const { endMl } = cleanEnd(kit, water);
		return {
			value: trueValueOf(water, kit),
			usedMl: (endMl ?? Number.NaN) + kit.delivery.dropMl / 2
		};
	});
	const meanX = points.reduce((sum, p) => sum + p.usedMl, 0) / points.length;
	const meanY = points.reduce((sum, p) => sum + p.value, 0) / points.length;
	const sxx = points.reduce((sum, p) => sum + (p.usedMl - meanX) ** 2, 0);
	const sxy = points.reduce((sum, p) => sum + (p.usedMl - meanX) * (p.value - meanY), 0);
	const valuePerMl = sxy / sxx;
	const offset = meanY - valuePerMl * meanX;
	const worstError = Math.max(
		...points.map((p) => Math.abs(offset + valuePerMl * p.usedMl - p.value))
	);
	return { valuePerMl, offset, worstError, points };
}
