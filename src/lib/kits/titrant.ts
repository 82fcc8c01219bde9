import type { Analyte, Contents } from './kit';

/** What takes up an analyte, drop by drop, as far as a leaflet goes. */
export type TitrantOfAnalyte = {
	kind: Contents['titrant']['kind'];
	/** As it stands in a sentence, without and with its article. */
	name: string;
	withArticle: string;
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

/**
 * Alkalinity is counted by the acid that it takes up (an equivalent a mole); EDTA binds calcium and
 * magnesium one to one (textbook).
 */
export const titrantOf: Record<Analyte, TitrantOfAnalyte> = {
	alkalinity: {
		kind: 'strongAcid',
		name: 'acid',
		withArticle: 'an acid',
		molPerMol: 1,
		endFadesLater: true,
		usual: { lowMolPerL: 0.005, highMolPerL: 0.2 }
	},
	calcium: {
		kind: 'edta',
		name: 'EDTA',
		withArticle: 'EDTA',
		molPerMol: 1,
		endFadesLater: false,
		usual: { lowMolPerL: 0.005, highMolPerL: 0.3 }
	},
	hardness: {
		kind: 'edta',
		name: 'EDTA',
		withArticle: 'EDTA',
		molPerMol: 1,
		endFadesLater: false,
		usual: { lowMolPerL: 0.005, highMolPerL: 1 }
	},
	magnesium: {
		kind: 'edta',
		name: 'EDTA',
		withArticle: 'EDTA',
		molPerMol: 1,
		endFadesLater: false,
		usual: { lowMolPerL: 0.005, highMolPerL: 1 }
	}
};
