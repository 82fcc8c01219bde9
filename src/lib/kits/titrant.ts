import type { Analyte, Contents } from './kit';

/** The kinds of titration, by what takes the analyte up. */
export const titrationKinds = [
	'strongAcid',
	'edta'
] as const satisfies readonly TitrationKindName[];
export type TitrationKindName = Contents['titrant']['kind'];

/** What takes up an analyte, drop by drop, as far as a leaflet goes. */
export type TitrantOfAnalyte = {
	kind: TitrationKindName;
	/** As it stands in a sentence, without and with its article. */
	name: string;
	withArticle: string;
	/** What it does, and what the curve of a titration with it shows, for those who do not know the names; null: everyday words. */
	explained: string | null;
	/** Moles of it that one mole of the analyte's base unit takes. */
	molPerMol: number;
	/**
	 * Its end colour goes back later, as carbon dioxide leaves, and was the end all the same; else a colour
	 * that goes back was not yet the end.
	 */
	endFadesLater: boolean;
	/**
	 * Strengths within which kits for small samples lie, mol/L; this project's choice: below, no few
	 * fillings would reach an ordinary tank; above, a drop would jump over it.
	 */
	usual: { lowMolPerL: number; highMolPerL: number };
};

const EDTA_EXPLAINED =
	'EDTA is what is dripped in: it takes hold of calcium and magnesium, one to one. pM tells how little of them is still free: 1 more is ten times less.';

/**
 * Alkalinity is counted by the acid that it takes up (an equivalent a mole); EDTA binds calcium and
 * magnesium one to one (textbook).
 */
export const titrantOf: Record<Analyte, TitrantOfAnalyte> = {
	alkalinity: {
		kind: 'strongAcid',
		name: 'acid',
		withArticle: 'an acid',
		explained: null,
		molPerMol: 1,
		endFadesLater: true,
		usual: { lowMolPerL: 0.005, highMolPerL: 0.2 }
	},
	calcium: {
		kind: 'edta',
		name: 'EDTA',
		withArticle: 'EDTA',
		explained: EDTA_EXPLAINED,
		molPerMol: 1,
		endFadesLater: false,
		usual: { lowMolPerL: 0.005, highMolPerL: 0.3 }
	},
	hardness: {
		kind: 'edta',
		name: 'EDTA',
		withArticle: 'EDTA',
		explained: EDTA_EXPLAINED,
		molPerMol: 1,
		endFadesLater: false,
		usual: { lowMolPerL: 0.005, highMolPerL: 1 }
	},
	magnesium: {
		kind: 'edta',
		name: 'EDTA',
		withArticle: 'EDTA',
		explained: EDTA_EXPLAINED,
		molPerMol: 1,
		endFadesLater: false,
		usual: { lowMolPerL: 0.005, highMolPerL: 1 }
	}
};
