import type { LampSpectrum } from './lamps';
import type { SeenColour } from './vessel-colour';

/** Something poured or spooned in besides sample, titrant and indicator; strengths in mol/L. */
export type Reagent =
	| { kind: 'base'; volumeMl: number; hydroxideMolPerL: number; carbonateMolPerL: number }
	| { kind: 'ammoniaBuffer'; volumeMl: number; ammoniaMolPerL: number; ammoniumMolPerL: number };

/** What is dropped in until the colour turns. */
export type Titrant = {
	volumeMl: number;
	molPerL: number;
	/** Of EDTA only: hydroxide in the bottle for each mol of its disodium salt, 0 to 2; 0 unless said. */
	hydroxidePerMol?: number;
};

/** Water of another kind: rinse water, tap water to dilute. */
export type OtherWater = {
	volumeMl: number;
	alkalinityMolPerL: number;
	dicMolPerL?: number;
	calciumMolPerL?: number;
	magnesiumMolPerL?: number;
};

export type IndicatorDose = {
	volumeMl: number;
	dyes: readonly { dyeId: string; molPerL: number; addedAs: 'acid' | 'salt' }[];
};

/** What passes by itself while nobody adds anything. */
export type Passing = {
	seconds: number;
	/** Share of the carbon dioxide above air that leaves meanwhile, 0 to 1; how it is shaken decides. */
	carbonDioxideShare: number;
};

/**
 * One kind of titration as whoever plays it needs it: contents as immutable plain data, and these
 * functions over them. A bench that holds contents and the functions of their kind needs to know
 * neither acid nor chelation.
 */
export type VialChemistry<Contents> = {
	addWater(contents: Contents, water: OtherWater): Contents;
	/** @throws RangeError naming `kind` when such a reagent has no part in this titration */
	addReagent(contents: Contents, reagent: Reagent): Contents;
	addIndicator(contents: Contents, dose: IndicatorDose): Contents;
	addTitrant(contents: Contents, titrant: Titrant): Contents;
	/** In closed form wherever the chemistry allows: how often it is asked must not matter there. */
	settle(contents: Contents, passing: Passing): Contents;
	/** `unmixedMolPerKg`: titrant more than is mixed in, where a drop fell; below 0: less, in the rest. */
	colourOf(
		contents: Contents,
		pathCm: number,
		lamp: LampSpectrum,
		unmixedMolPerKg?: number
	): SeenColour;
	volumeMlOf(contents: Contents): number;
	/** Solid in the liquid, mol/L: how hazy it is. */
	hazeMolPerL(contents: Contents): number;
	/** Whether there is a dye, without which no end is to be seen. */
	hasDye(contents: Contents): boolean;
	/** Titrant that the sample takes at most, mol: where looking for the end may stop. */
	mostTitrantMol(contents: Contents): number;
};
