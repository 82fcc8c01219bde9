import type { LogOrigin } from '../headers';
import type { Kept } from '../kept';
import type { Damage } from './read-file';

/** How an import went: kits, tests, checks and runs together. */
export type ImportReport = {
	added: number;
	/** Logs that the file knew more of. */
	grown: number;
	/** What was here already. */
	already: number;
	/** Of those added: what is kept beside something else, and the id it got. */
	keptApart: ({ where: string; id: string } & LogOrigin)[];
	/** What could not be read, with its place in the file, what is wrong there, and as it stands. */
	damaged: Damage[];
	/** What storage did not take. */
	refused: ({ where: string } & Exclude<Kept, { kept: true }>)[];
};
