import type { Band } from './dyes';

/**
 * Indicators of metals as data: three forms without a metal (H2In−, HIn2−, In3−) and one with it.
 * Adding an indicator is adding a record here.
 *
 * Almost every number is from memory: constants ±0.2 at the best, absorptivities ±30 %; bands fitted so
 * that the rendered colours agree with what the colours are called. What is less sure is said in
 * `origin` and can be set for one calculation (`ChelationConstants.dyeLogK`).
 */
export type MetalDye = {
	id: string;
	name: string;
	molarMassGPerMol: number;
	/** Second and third step: H2In− to HIn2−, HIn2− to In3−. */
	pKa: readonly [number, number];
	/** log K of M + In3− = MIn−; strontium is taken not to bind. */
	logKCalcium: number;
	logKMagnesium: number;
	/** Bands of H2In−, HIn2− and In3−. */
	freeForms: readonly [readonly Band[], readonly Band[], readonly Band[]];
	metalForm: readonly Band[];
	origin: string;
};

const redAzo: readonly Band[] = [[20000, 510, 4300]];
const orangeAzo: readonly Band[] = [[16000, 482, 4500]];

const eriochromeBlackT: MetalDye = {
	id: 'eriochromeBlackT',
	name: 'Eriochrome black T',
	molarMassGPerMol: 461.38,
	pKa: [6.2, 11.55],
	logKCalcium: 5.4,
	logKMagnesium: 7.0,
	freeForms: [
		redAzo,
		[
			[17000, 625, 2700],
			[8000, 565, 3300],
			[3000, 400, 5000]
		],
		orangeAzo
	],
	metalForm: [
		[15500, 536, 2900],
		[9000, 500, 4200],
		[7000, 425, 6500]
	],
	origin:
		'pKa: an encyclopaedia page. log K, ε: memory. Bands: memory and fit. In3− is orange; its band is judgement.'
};

const calmagite: MetalDye = {
	id: 'calmagite',
	name: 'calmagite',
	molarMassGPerMol: 358.37,
	pKa: [8.14, 12.35],
	logKCalcium: 6.05,
	logKMagnesium: 8.05,
	freeForms: [
		redAzo,
		[
			[16500, 616, 2600],
			[8000, 560, 3300],
			[2500, 400, 5000]
		],
		orangeAzo
	],
	metalForm: [
		[15000, 534, 3000],
		[8500, 497, 4300],
		[6500, 425, 6500]
	],
	origin:
		'pKa, log K: memory (Lindstrom & Diehl 1960). Bands: memory and fit; of H2In− and In3−, red and red-orange, judgement.'
};

const hydroxynaphtholBlueFree: readonly Band[] = [
	[17000, 650, 1900],
	[14000, 597, 2700],
	[3000, 410, 5000]
];
const hydroxynaphtholBlueMetal: readonly Band[] = [
	[13500, 548, 3000],
	[7500, 510, 4200],
	[4500, 430, 6500]
];
const hydroxynaphtholBlue: MetalDye = {
	id: 'hydroxynaphtholBlue',
	name: 'hydroxynaphthol blue',
	molarMassGPerMol: 620.5,
	pKa: [6.44, 12.9],
	logKCalcium: 6.1,
	logKMagnesium: 6,
	freeForms: [hydroxynaphtholBlueMetal, hydroxynaphtholBlueFree, hydroxynaphtholBlueFree],
	metalForm: hydroxynaphtholBlueMetal,
	origin:
		'Low confidence. pKa: memory (Itoh & Ueno 1970). log K of calcium: memory, unsure (log K′ 5 to 6). log K of magnesium: judgement, between what keeps it red with magnesium at pH 10 (5.5) and what still lets it turn blue beside Mg(OH)2 (6.5). Bands: memory and fit, ±15 nm.'
};

const calconcarboxylicFree: readonly Band[] = [
	[17000, 640, 2100],
	[12000, 590, 2900],
	[3000, 410, 5000]
];
const calconcarboxylicMetal: readonly Band[] = [
	[15500, 553, 2800],
	[9500, 515, 4200],
	[6500, 430, 6500]
];
const calconcarboxylicAcid: MetalDye = {
	id: 'calconcarboxylicAcid',
	name: 'calconcarboxylic acid',
	molarMassGPerMol: 438.41,
	pKa: [9.26, 13.67],
	logKCalcium: 5.85,
	logKMagnesium: 6.3,
	freeForms: [calconcarboxylicMetal, calconcarboxylicFree, calconcarboxylicFree],
	metalForm: calconcarboxylicMetal,
	origin:
		'Low confidence. pKa, log K of calcium: memory (the dye of Patton & Reeder 1956). log K of magnesium: judgement, as for hydroxynaphthol blue (6 to 7). Bands: memory and fit, ±15 nm.'
};

/** Every metal indicator that is known. */
export const metalDyes: readonly MetalDye[] = [
	eriochromeBlackT,
	calmagite,
	hydroxynaphtholBlue,
	calconcarboxylicAcid
];
