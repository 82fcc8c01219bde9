/** What the blanks of a sentence need of the form they stand in. */
export interface SentenceForm {
	/** What to say beside a blank, and which is empty or holds this text. */
	problemAt(path: string, text: string): string | undefined;
	/** What an empty blank is taken for; shown in it. */
	suggestionAt(path: string): string | undefined;
	/** The blank has been left. */
	leave(path: string): void;
	/** The id of a blank on the page. */
	idOf(path: string): string;
}
