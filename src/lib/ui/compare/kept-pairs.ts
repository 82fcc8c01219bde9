/** Samples of the records that one kit and one other method measured, as lines of the list. */
export type KeptPairs = {
	/** 'the kit A and a photometer': unlike any other group's. */
	name: string;
	lines: readonly string[];
};
