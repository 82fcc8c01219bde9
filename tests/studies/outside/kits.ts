import type { MethodFigures } from '../../../src/lib/metrology';
import type { Chance } from './chance';

/** dKH in one of the unit. 1 dKH is 10 mg/L CaO, 0.35665 meq/L, 17.848 mg/L as CaCO3. */
export const dkhIn: Readonly<Record<MethodFigures['unit'], number>> = {
	dKH: 1,
	'meq/L': 1 / 0.35665,
	'ppm CaCO3': 1 / 17.848,
	'mmol/L': 1 / 0.35665,
	// No units of alkalinity.
	'mg/L': Number.NaN,
	'mmol/kg': Number.NaN
};
/** Steps to which values are written down, in the unit. */
const writtenTo = { dKH: 0.1, 'meq/L': 0.05, 'ppm CaCO3': 1, 'mmol/L': 0.05 } as const;

/** An invented kit: what its leaflet says, and how its maker set it, which nobody is told. */
export type OutsideKit = {
	figures: MethodFigures;
	/** Value of 1 mL of titrant, in dKH. */
	dkhPerMl: number;
	writtenTo: number;
	/** Volume of tip and nozzle, mL; 0 where there is none. */
	tipMl: number;
	/** Largest volume that one filling gives, mL; for a dropper the whole bottle. */
	fillMl: number;
	/** pH of the end hue at which the maker set the kit, in seawater. */
	endPh: number;
	/** Share of the CO2 that was still there when the maker set it. */
	co2Left: number;
	/** Whether the maker set the value at the middle of the last step rather than at its end. */
	setsHalfStep: boolean;
};

type Shape = Pick<MethodFigures, 'delivery' | 'sampleVolumeMl' | 'dropMl' | 'graduationMl'> & {
	dkhPerMl: readonly [number, number];
	fillMl: number;
};

/** Figures are judgement: three common ways of delivery, each with a spread of sizes. */
const shapes: readonly Shape[] = [
	{
		delivery: 'syringe',
		sampleVolumeMl: 4,
		dropMl: 0.02,
		graduationMl: 0.01,
		dkhPerMl: [13, 17],
		fillMl: 1
	},
	{
		delivery: 'dropper',
		sampleVolumeMl: 5,
		dropMl: 0.045,
		graduationMl: null,
		dkhPerMl: [9, 18],
		fillMl: 15
	},
	{
		delivery: 'burette',
		sampleVolumeMl: 25,
		dropMl: 0.04,
		graduationMl: 0.05,
		dkhPerMl: [1.8, 2.6],
		fillMl: 10
	}
];
const weightOf = ({ delivery }: Shape) => ({ syringe: 6, dropper: 3, burette: 1 })[delivery];

/** The leaflet's figures of a kit drawn by chance, and its hidden settings. */
export function drawKit(chance: Chance): OutsideKit {
	const shape = chance.weighted(shapes, weightOf);
	const unit = chance.weighted(['dKH', 'meq/L', 'ppm CaCO3'] as const, (name) =>
		name === 'dKH' ? 8 : 1
	);
	const dkhPerMl = Math.round(chance.between(...shape.dkhPerMl) * 10) / 10;
	const inUnit = (dkh: number) => dkh / dkhIn[unit];
	const tipMl = shape.delivery === 'syringe' ? Math.round(chance.between(15, 20)) / 100 : 0;
	const isDropper = shape.delivery === 'dropper';
	return {
		dkhPerMl,
		writtenTo: writtenTo[unit],
		tipMl,
		fillMl: shape.fillMl,
		endPh: chance.between(4.3, 4.6),
		co2Left: chance.between(0.4, 0.8),
		setsHalfStep: chance.happens(0.7),
		figures: {
			analyte: 'alkalinity',
			unit,
			delivery: shape.delivery,
			valuePerMl: inUnit(dkhPerMl),
			sampleVolumeMl: shape.sampleVolumeMl,
			dropMl: shape.dropMl,
			graduationMl: shape.graduationMl,
			tipMl: tipMl > 0 ? tipMl : null,
			fullScale: isDropper ? null : inUnit(dkhPerMl * shape.fillMl),
			endStepDrops: 1,
			sampleWareSd: 0.015,
			titrantWareSd: isDropper ? 0.04 : 0.012,
			lotSd: 0.015,
			endPointSd: inUnit(0.1),
			scatterSd: inUnit(0.1),
			sampleSettingSd: 0.01
		}
	};
}
