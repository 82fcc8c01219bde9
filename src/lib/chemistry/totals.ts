/** What seawater holds in constant proportion to its salinity, mol per kg of seawater. */
export type Totals = {
	borateMolPerKg: number;
	sulfateMolPerKg: number;
	fluorideMolPerKg: number;
	calciumMolPerKg: number;
};

const CHLORINITY_PER_SALINITY = 1 / 1.80655;

/** Total boron. Source: Lee et al. 2010 (Geochim. Cosmochim. Acta 74:1801), 432.6 µmol/kg at 35. */
const borateLee2010 = (salinity: number) => (432.6e-6 * salinity) / 35;

/** Sulfate. Source: Morris & Riley 1966, 0.14 g per g of chlorinity. */
const sulfateMorrisRiley1966 = (salinity: number) =>
	(0.14 / 96.062) * salinity * CHLORINITY_PER_SALINITY;

/** Fluoride. Source: Riley 1965, 6.7e-5 g per g of chlorinity. */
const fluorideRiley1965 = (salinity: number) =>
	(6.7e-5 / 18.998) * salinity * CHLORINITY_PER_SALINITY;

/** Calcium. Source: Riley & Tongudai 1967. */
const calciumRileyTongudai1967 = (salinity: number) =>
	(0.02128 / 40.087) * salinity * CHLORINITY_PER_SALINITY;

/** Totals of ocean water diluted or concentrated to `salinity`. Salt mixes differ a little. */
export function totalsOf(salinity: number): Totals {
	return {
		borateMolPerKg: borateLee2010(salinity),
		sulfateMolPerKg: sulfateMorrisRiley1966(salinity),
		fluorideMolPerKg: fluorideRiley1965(salinity),
		calciumMolPerKg: calciumRileyTongudai1967(salinity)
	};
}
