import * as z from 'zod/mini';

/**
 * The known ways in which hands and eyes go wrong. Each kind is detected in procedure/, mended in
 * bench/ and has its cue in judgement/; a new kind does not compile until all three answer.
 */
export const slipKinds = [
	'wareNotRinsed',
	'sampleOff',
	'indicatorOff',
	'phReagentOff',
	'waitOff',
	'tipFittedLate',
	'tipLoose',
	'airExpelled',
	'hangingAtStart',
	'mixedMarks',
	'wrongRim',
	'dropperTilted',
	'dropperSqueezed',
	'stoppedAtFlash',
	'overshot',
	'chasedColour',
	'swirledOddly',
	'wrongLight',
	'hangingAtEnd',
	'dropsMiscounted',
	'misread',
	'parallax',
	'scaleReversed',
	'refillForgotten',
	'wrongRow'
] as const;
export const SlipKindSchema = z.enum(slipKinds);
export type SlipKind = z.infer<typeof SlipKindSchema>;

/**
 * 'handling' may be said at once; 'judgement' only after the person has declared what the slip is
 * about, or the remark gives the answer away.
 */
export type SlipNature = 'handling' | 'judgement';

export type Slip = {
	kind: SlipKind;
	nature: SlipNature;
	/** The log entry at which it shows. */
	entryId: string;
	/** Provisional: can still be put right (filled by the line, not yet read). */
	provisional: boolean;
	/** Size in the slip's own terms, where the events tell it: mL of titrant or sample, or drops. */
	sizeMl?: number;
	drops?: number;
	/** Which way round, for slips that have two. */
	variant?: string;
};
