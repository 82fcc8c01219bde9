import type { Kit, Step } from '../kits';
import type { Circumstances } from '../observation';
import type { FillingTrap } from './filling-trap';
import type { TankTitration } from './tank-test';
import type { TimedEvent } from './walk-log';

/** What a screen may offer with a remark, as one press. */
export const remarkOffers = [
	'refillToSeal',
	'readLineToo',
	'freshSample',
	'useLargerSample',
	'useSmallerSample',
	'dilute',
	'refill',
	'readOtherEnd',
	'countAgain',
	'whiteLight'
] as const;
export type RemarkOffer = (typeof remarkOffers)[number];

/** Something worth saying beside the tank, at its time. */
export type Remark = {
	/** The same for as long as it is the same remark; one remark of an id at a time. */
	id: string;
	/** 'warn': the value is at stake. 'say': good to know. */
	tone: 'say' | 'warn';
	/** One or two short sentences, without values: those are in `costValue`, for any unit. */
	text: string;
	/** What to draw beside it: seal, line and the air between them. */
	trap?: FillingTrap;
	/** By how much the value would be off, without sign, in `unit`. */
	costValue?: number;
	/** The kit's own unit, and what it measures; there where `costValue` is. */
	unit?: Kit['unit'];
	analyte?: Kit['analyte'];
	offers?: RemarkOffer[];
};

/** What else is known when remarks are made. */
export type RemarkOptions = {
	/** Now, ms since 1970. */
	at: number;
	/** Value of the last test, in the kit's unit; null when there was none. */
	expected: number | null;
	circumstances: Circumstances;
};

/** All that a remark may rest on. */
export type TankSight = RemarkOptions & {
	titration: TankTitration;
	kit: Kit;
	steps: readonly Step[];
	events: readonly TimedEvent[];
	/** The step that the walk stands at; null when it is over. */
	step: Step | null;
	/** Is a step of this kind over? Not when the kit has none. */
	isPast(kind: Step['kind']): boolean;
};

/** Makes remarks of one sort; the order within is from the most pressing down. */
export type Remarker = (sight: TankSight) => Remark[];
