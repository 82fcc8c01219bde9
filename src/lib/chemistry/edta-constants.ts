/**
 * EDTA as a weak acid and as a binder of calcium, magnesium, strontium and sodium. Concentration
 * constants (mol/L) at 25 °C and an ionic strength of about 0.1; one set throughout, for constants of
 * different ionic strengths in one calculation give a wrong selectivity.
 */
export type EdtaConstants = {
	/** Six steps of H6Y2+, most acid first. */
	pKa: readonly number[];
	logKCalcium: number;
	logKMagnesium: number;
	logKStrontium: number;
	/** Of NaY3−; null leaves sodium out. Low confidence: 1.7 to 1.9 at ionic strength 0.1, from memory. */
	logKSodium: number | null;
	/**
	 * By how much the three constants of metals lie lower for ionic strength, apart from sodium. A
	 * parameter, 0 as delivered: the equation of Davies would give 0.3 between 0.1 and 0.7 mol/L, outside
	 * the range where it holds; the stoichiometry does not notice it.
	 */
	saltLowering: number;
};

// 25 °C, ionic strength 0.1: Martell & Smith, Critical Stability Constants, from memory.
const metalsAt25C = {
	logKCalcium: 10.65,
	logKMagnesium: 8.79,
	logKStrontium: 8.72,
	logKSodium: 1.8,
	saltLowering: 0
};

/**
 * What is used unless told otherwise. Steps as in Harris, Quantitative Chemical Analysis (from memory;
 * also stated in a stored exercise): chosen because its fractions of Y4− are printed there (0.30 at
 * pH 10, 0.98 at pH 12) and can be held against.
 */
export const edtaOfHarris: EdtaConstants = {
	pKa: [0.0, 1.5, 2.0, 2.69, 6.13, 10.37],
	...metalsAt25C
};

/** Steps as in titrationCurves, the R package of D. Harvey; the last step 0.13 lower. */
export const edtaOfHarvey: EdtaConstants = {
	pKa: [0.0, 1.5, 2.0, 2.66, 6.16, 10.24],
	...metalsAt25C
};

const knownSteps = new WeakMap<readonly number[], number[]>();
/** Binding constants of the steps, the first proton to bind first. */
export function protonConstants({ pKa }: EdtaConstants): readonly number[] {
	let steps = knownSteps.get(pKa);
	if (!steps) {
		steps = pKa.map((value) => 10 ** value).reverse();
		knownSteps.set(pKa, steps);
	}
	return steps;
}

/**
 * 1/α, the mean number of protons, and of its square, of EDTA that holds no metal but sodium.
 *
 * @param steps from `protonConstants`
 * @param sodiumPull constant of sodium times its concentration
 */
export function edtaProtons(
	h: number,
	steps: readonly number[],
	sodiumPull: number
): { sideReactions: number; meanProtons: number; meanSquares: number } {
	let term = 1;
	let sum = 1 + sodiumPull;
	let protons = 0;
	let squares = 0;
	for (let held = 0; held < steps.length; held++) {
		term *= h * steps[held]!;
		sum += term;
		protons += (held + 1) * term;
		squares += (held + 1) ** 2 * term;
	}
	return { sideReactions: sum, meanProtons: protons / sum, meanSquares: squares / sum };
}

/** How strongly sodium of this concentration holds EDTA: constant times concentration. */
export const sodiumPullOf = ({ logKSodium }: EdtaConstants, sodiumMolPerL: number): number =>
	logKSodium === null ? 0 : 10 ** logKSodium * sodiumMolPerL;

/**
 * Share of EDTA without a metal that is Y4−: 0.30 at pH 10 and 0.98 at pH 12 without sodium.
 *
 * @param sodiumMolPerL sodium that competes; 0.48 in seawater
 */
export function edtaAlpha(ph: number, constants = edtaOfHarris, sodiumMolPerL = 0): number {
	const pull = sodiumPullOf(constants, sodiumMolPerL);
	return 1 / edtaProtons(10 ** -ph, protonConstants(constants), pull).sideReactions;
}

/** log K′ of a metal with EDTA at a pH: log K less what protons, sodium and salt take from it. Hydrolysis of the metals is left out. */
export function conditionalLogK(
	metal: 'calcium' | 'magnesium' | 'strontium',
	ph: number,
	constants = edtaOfHarris,
	sodiumMolPerL = 0
): number {
	const logK = {
		calcium: constants.logKCalcium,
		magnesium: constants.logKMagnesium,
		strontium: constants.logKStrontium
	}[metal];
	return logK - constants.saltLowering + Math.log10(edtaAlpha(ph, constants, sodiumMolPerL));
}
