/**
 * Indicators as data: how each dye binds hydrogen ion and what each of its forms absorbs. Adding
 * an indicator is adding a record here.
 *
 * Origins of numbers:
 * - YB98: Yao & Byrne 1998 (Deep-Sea Res. I 45:1383): bromocresol green in seawater, its constant
 *   and the absorbance ratios 616/444 nm.
 * - NE18: Nand & Ellwood 2018 (Limnol. Oceanogr. Methods): bromophenol blue in seawater.
 * - ZH12: Zhang et al. 2012 (Acta Phys.-Chim. Sin. 28:1030): band maxima of methyl red.
 * - TA96: Tamura et al. 1996 (Anal. Sci. 12:927): phenolphthalein.
 * - memory: not checked against a text; absorptivities ±20 to 30 %.
 * - fit: chosen here so that the rendered colours agree with the published colour table.
 */

/** One Gaussian band: ε (L per mol and cm) at its centre (nm), full width at half height (1/cm). */
export type Band = readonly [epsilon: number, centreNm: number, fwhmPerCm: number];

export type Dye = {
	id: string;
	name: string;
	molarMassGPerMol: number;
	/** From the most protonated form to the least; one more than there are constants. */
	forms: readonly { name: string; bands: readonly Band[] }[];
	/** In fresh water of ionic strength 0.01 and less, activity scale, 25 °C. */
	pKFresh: readonly number[];
	/** In sodium chloride of 0.5 mol/kg and more, activity scale. */
	pKSodiumChloride: readonly number[];
	/** In seawater, total scale, 25 °C; salinities far from 29 to 37 are extrapolated. */
	pKSeawater: (salinity: number) => readonly number[];
	origin: string;
};

const bromocresolGreen: Dye = {
	id: 'bromocresolGreen',
	name: 'bromocresol green',
	molarMassGPerMol: 698.01,
	forms: [
		{
			name: 'yellow',
			bands: [
				[9400, 463, 3400],
				[11800, 421, 4350],
				[10, 610, 2500]
			]
		},
		{
			name: 'blue',
			bands: [
				[27100, 619, 930],
				[16900, 590.3, 1780],
				[6500, 546, 3300],
				[7900, 398, 3800]
			]
		}
	],
	pKFresh: [4.8],
	pKSodiumChloride: [4.42],
	pKSeawater: (salinity) => [
		4.2699 + 0.002578 * (35 - salinity) - Math.log10(1 - 0.001005 * salinity)
	],
	origin:
		'pK in seawater and ratios of ε: YB98. pK in fresh water and NaCl: memory (salt-effect table of Kolthoff). ε at 616 nm: memory, ±30 %. Band shapes: fit.'
};

const methylRed: Dye = {
	id: 'methylRed',
	name: 'methyl red',
	molarMassGPerMol: 269.3,
	forms: [
		{
			name: 'red',
			bands: [
				[27900, 526, 2350],
				[19800, 496, 3900]
			]
		},
		{ name: 'yellow', bands: [[20500, 432, 4900]] }
	],
	pKFresh: [5.0],
	pKSodiumChloride: [5.0],
	pKSeawater: () => [4.87],
	origin:
		'pK in fresh water: memory, hardly any salt effect; in seawater the same moved to the total scale, ±0.15: fit. Maxima: ZH12. ε: memory and fit, ±20 %.'
};

const bromophenolBlue: Dye = {
	id: 'bromophenolBlue',
	name: 'bromophenol blue',
	molarMassGPerMol: 669.96,
	forms: [
		{
			name: 'yellow',
			bands: [
				[17400, 457.3, 3460],
				[22000, 416.1, 4420]
			]
		},
		{
			name: 'blue-violet',
			bands: [
				[48800, 592.9, 945],
				[31000, 566.5, 1820],
				[12200, 525.4, 3370]
			]
		}
	],
	pKFresh: [4.06],
	pKSodiumChloride: [3.75],
	pKSeawater: (salinity) => [3.513 + 0.001746 * (35 - salinity)],
	origin: 'pK in seawater and ratio of ε: NE18. pK in fresh water: memory. ε: memory, ±10 %.'
};

const methylOrange: Dye = {
	id: 'methylOrange',
	name: 'methyl orange',
	molarMassGPerMol: 327.33,
	forms: [
		{
			name: 'red',
			bands: [
				[33000, 512, 2700],
				[18000, 480, 3900],
				[6000, 550, 1500]
			]
		},
		{ name: 'orange-yellow', bands: [[26500, 464, 4900]] }
	],
	pKFresh: [3.46],
	pKSodiumChloride: [3.46],
	pKSeawater: () => [3.33],
	origin: 'pK: memory; in seawater moved to the total scale, ±0.15: fit. ε and bands: memory.'
};

const phenolphthalein: Dye = {
	id: 'phenolphthalein',
	name: 'phenolphthalein',
	molarMassGPerMol: 318.32,
	forms: [
		{ name: 'colourless', bands: [] },
		{ name: 'colourless', bands: [] },
		{
			name: 'magenta',
			bands: [
				[22000, 556, 1750],
				[12500, 529, 2800],
				[5000, 374, 4000]
			]
		}
	],
	pKFresh: [9.05, 9.5],
	pKSodiumChloride: [9.05, 9.5],
	pKSeawater: () => [9.05, 9.5],
	origin: 'pK: TA96, taken unchanged for seawater. ε: memory, ±20 %.'
};

const dyes: readonly Dye[] = [
	bromocresolGreen,
	methylRed,
	bromophenolBlue,
	methylOrange,
	phenolphthalein
];
const byId = new Map(dyes.map((dye) => [dye.id, dye]));

/** Ids of every dye that is known. */
export const dyeIds: readonly string[] = dyes.map((dye) => dye.id);

/**
 * The record of a dye.
 *
 * @throws RangeError naming `dyeId` when there is none of that id
 */
export function dyeOf(dyeId: string): Dye {
	const dye = byId.get(dyeId);
	if (!dye) throw new RangeError(`dyeId must be one of ${dyeIds.join(', ')}; found ${dyeId}`);
	return dye;
}
