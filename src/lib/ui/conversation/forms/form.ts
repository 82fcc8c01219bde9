import { convertValue, type Analyte, type Kit, type Unit } from '$lib/kits';
import type { CheckId, Evidence, Reading } from '$lib/observation';
import type { TestRole } from '$lib/procedure';
import type { LoggedLine } from '../run';

/** What somebody wrote into the blanks of a sentence, as they wrote it. */
export type Blanks = Readonly<Record<string, string>>;

/** What a sentence needs to know of the check it stands in. */
export type FormContext = {
	analyte: Analyte;
	/** In which values are written unless another unit is chosen. */
	unit: Unit;
	/** The reading in question; null while there is none. */
	first: Reading | null;
	/** The kit in question; null where there is nothing but a number. */
	kit: Kit | null;
	/** All that was given so far. */
	evidence: readonly Evidence[];
	/** An id for the reading that is made. */
	id: string;
};

export type BlankPart = {
	blank: string;
	label: string;
	kind?: 'decimal' | 'words';
	width?: number;
	/** What stands right behind it and goes with it to the next line. */
	after?: string;
	/** What an empty one is taken for. */
	taken?: string;
};
export type ChoicePart = {
	choice: string;
	label: string;
	options: readonly { value: string; words: string }[];
	after?: string;
};
/** A sentence with blanks, piece by piece. */
export type Part = string | BlankPart | ChoicePart;

/** What came of reading a sentence: a piece of evidence, or what is wrong at which blank. */
export type Told = { evidence: Evidence } | { problems: Readonly<Record<string, string>> };

/** One kind of evidence as a sentence with blanks. */
export type EvidenceForm = {
	title: string;
	/** What to know before it is filled in. */
	aside?: string;
	/** Where it makes sense; everywhere when left out. */
	suits?: (context: FormContext) => boolean;
	/** What stands in the blanks at first. */
	begin?: (context: FormContext) => Blanks;
	parts: (blanks: Blanks, context: FormContext) => readonly Part[];
	read: (blanks: Blanks, context: FormContext) => Told;
	/** Under the sentence, as it stands: what follows from it, what may be mistaken. */
	remark?: (blanks: Blanks, context: FormContext) => string | null;
	/** What is odd at which blank, though it can be: asked once before it is told. */
	doubts?: (blanks: Blanks, context: FormContext) => Readonly<Record<string, string>>;
	/** The check whose page works out what goes into the blanks, as they stand; null where none does. */
	helpedBy?: (blanks: Blanks, context: FormContext) => CheckId | null;
	/** What a stored test is to the check when it tells this. */
	logRole?: (blanks: Blanks) => TestRole;
	/** Which stored tests can tell it; tests of the tank's water when left out. */
	logTakes?: (line: Pick<LoggedLine, 'isSameKit' | 'holds'>) => boolean;
};

/** A test of the tank's water, not of a known solution. */
export const isOfTheTank = ({ holds }: Pick<LoggedLine, 'holds'>): boolean => holds === undefined;

/** The ± that a test with the kit in question is taken to have, in a unit; null where nobody knows. */
export function ownUncertainty({ first, analyte }: FormContext, unit: Unit): number | null {
	return first && convertValue(first.expandedUncertainty, first.unit, unit, analyte);
}
