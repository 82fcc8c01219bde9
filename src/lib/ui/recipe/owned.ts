import {
	scaleOf,
	substancesFor,
	type MadeAnalyte,
	type Measure,
	type RecipeMatrix,
	type SubstanceId
} from '$lib/judgement';

/** What a person may have for it, as the choices of the page, the usual first. */
export const powders = {
	sodiumBicarbonate: 'baking soda (sodium bicarbonate)',
	driedSodiumCarbonate: 'dried sodium carbonate',
	calciumChlorideDihydrate: 'calcium chloride dihydrate, CaCl₂·2H₂O',
	magnesiumSulfateHeptahydrate: 'Epsom salt (magnesium sulfate heptahydrate, MgSO₄·7H₂O)',
	magnesiumChlorideHexahydrate: 'magnesium chloride hexahydrate, MgCl₂·6H₂O'
} as const satisfies Record<SubstanceId, string>;

/** Those of which a solution of an analyte can be made. */
export const powdersFor = (analyte: MadeAnalyte) =>
	Object.fromEntries(substancesFor(analyte).map((id) => [id, powders[id]])) as Record<
		SubstanceId,
		string
	>;

export const scales = {
	hundredth: '0.01 g',
	thousandth: '0.001 g',
	tenth: '0.1 g',
	whole: '1 g only'
} as const;
export type ScaleName = keyof typeof scales;
const divisionsG: Record<ScaleName, number> = {
	hundredth: 0.01,
	thousandth: 0.001,
	tenth: 0.1,
	whole: 1
};
export const ownScale = (name: ScaleName) => scaleOf(divisionsG[name]);

/** How water is measured. Tolerances of lines: common practice, no source. */
export const waterWays = {
	kitchen: 'weighed on a kitchen scale (1 g)',
	cylinder: 'in a measuring cylinder',
	jug: 'in a kitchen jug'
} as const;
export type WaterWay = keyof typeof waterWays;
const waterMeasures: Record<WaterWay, Exclude<Measure, { by: 'syringe' }>> = {
	kitchen: { by: 'scale', scale: scaleOf(1) },
	cylinder: { by: 'line', toleranceShare: 0.01 },
	jug: { by: 'line', toleranceShare: 0.02 }
};
export const waterMeasureOf = (way: WaterWay) => waterMeasures[way];

export const waters = {
	deionised: 'distilled or deionised',
	unsure: 'from a membrane alone, or not sure',
	blank: 'I tested it with my kit'
} as const;

export const matrices = {
	purified: 'the water alone',
	sodiumChloride: 'with 35 g of plain salt in a litre'
} as const satisfies Record<RecipeMatrix, string>;

export const syringes = {
	none: 'none',
	one: '1 mL',
	five: '5 mL',
	ten: '10 mL',
	twenty: '20 mL'
} as const;
const capacitiesMl: Record<keyof typeof syringes, number | null> = {
	none: null,
	one: 1,
	five: 5,
	ten: 10,
	twenty: 20
};
export const syringeCapacityMl = (name: keyof typeof syringes) => capacitiesMl[name];

/** How the stock of an addition is measured. */
export const doseWays = { scale: 'on the scale above', syringe: 'with a 1 mL syringe' } as const;

export const stocks = { made: 'the stock made above', other: 'another solution' } as const;
