import type { EdtaTitration } from '../../src/lib/chemistry';

export const strongBase = { hydroxideMolPerL: 2, carbonateMolPerL: 0 };
/** Calcium of seawater at high pH. */
export const calcium: EdtaTitration = {
	salinity: 35,
	temperatureC: 25,
	volumeMl: 5,
	edtaMolPerL: 0.05,
	base: { volumeMl: 0.6, ...strongBase },
	indicator: { dyeId: 'hydroxynaphtholBlue', mol: 1e-7 }
};
/** Calcium and magnesium of seawater at pH 10. */
export const total: EdtaTitration = {
	salinity: 35,
	temperatureC: 25,
	volumeMl: 2,
	edtaMolPerL: 0.05,
	water: { volumeMl: 10 },
	ammoniaBuffer: { volumeMl: 1, ammoniaMolPerL: 5, ammoniumMolPerL: 1 },
	indicator: { dyeId: 'eriochromeBlackT', mol: 1e-7 }
};
