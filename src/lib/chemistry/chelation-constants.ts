import { edtaOfHarris, type EdtaConstants } from './edta-constants';
import { magnesiumHydroxide, type PrecipitationConstants } from './precipitation';

/** Every number of a chelation titration that is not an amount. */
export type ChelationConstants = {
	edta: EdtaConstants;
	hydroxide: PrecipitationConstants;
	/** pKa of ammonium. 9.3, from memory: 9.25 at ionic strength 0, 9.2 to 9.4 in salt water. */
	ammoniumPKa: number;
	/** log K with In3− in place of those of the dye's record. */
	dyeLogK: Readonly<Record<string, { calcium?: number; magnesium?: number }>>;
};

export const chelationConstants: ChelationConstants = {
	edta: edtaOfHarris,
	hydroxide: magnesiumHydroxide,
	ammoniumPKa: 9.3,
	dyeLogK: {}
};

/**
 * Metals of seawater that EDTA binds, and sodium, mol per kg at salinity 35; in proportion to it.
 * Source: reference seawater of Millero et al. 2008 (Deep-Sea Res. I 55:50), from memory. Its calcium is
 * 0.03 % under that of Riley & Tongudai 1967, which totals.ts carries for saturation.
 */
export const metalsOfSeawater = {
	calciumMolPerKg: 0.0102821,
	magnesiumMolPerKg: 0.0528171,
	strontiumMolPerKg: 0.0000907,
	sodiumMolPerKg: 0.4689674
} as const;
