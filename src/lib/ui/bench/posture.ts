/** How the titrant's glass is held in the fill view. */
export type Hold = 'inBottle' | 'lifted' | 'tipUp';

/** What the learner's hands and eye do that the bench need not know. */
export type Posture = {
	hold: Hold;
	noseUnder: boolean;
	/** The magnifier lies over the seal or over the liquid line. */
	magnify: 'seal' | 'line';
	isNight: boolean;
	isStill: boolean;
	/** A drop of reagent on its way down, 0 to 1; null for none. */
	reagentDrop: number | null;
};
