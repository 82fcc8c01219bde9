import type { Analyte, Kit } from '../kits';
import type {
	CheckEvent,
	Entry,
	Evidence,
	EvidenceOf,
	LivestockLook,
	Means,
	Tank
} from '../observation';

export const CHECK_LOG_FORMAT = 1;
export type CheckEntry = Entry<CheckEvent>;
/** An entry that holds: it was not taken back, and says what it was last amended to. */
export type LiveCheckEntry = { id: string; at: number; event: CheckEvent };
/** A reading being checked: the whole truth about it, only ever appended to. */
export type CheckLog = {
	format: typeof CHECK_LOG_FORMAT;
	id: string;
	/** ms since 1970, as are the times of the entries. */
	startedAtEpochMs: number;
	/** What the reading in question is of; that of the kit, where there is one. */
	analyte: Analyte;
	/** The leaflet of the kit in question, frozen; null where there is nothing but a number. */
	kit: Kit | null;
	kitVersion: number | null;
	entries: CheckEntry[];
};

/** A piece of evidence as it was given; it is taken back by its entry. */
export type GivenEvidence = { entryId: string; at: number; evidence: Evidence; testId?: string };

/** A check as its log makes it. Plain data, replaced whole at each step. */
export type CheckState = {
	analyte: Analyte;
	kit: Kit | null;
	/**
	 * In the order in which it was given; what was taken back is not here. A question answered again
	 * has its last answer only, in the place of the first.
	 */
	evidence: readonly GivenEvidence[];
	/** The test in question: the first piece of kind 'test' from 'first'. */
	inQuestion: EvidenceOf<'test'> | null;
	/** Checks and questions that the person cannot do or answer. */
	leftOut: readonly string[];
	isUnitDoubted: boolean;
	tank: Tank;
	/** Null while nobody was asked. */
	livestock: LivestockLook | null;
	isEmergency: boolean;
	means: Means | null;
	note: string | null;
	isClosed: boolean;
	/** The entry that closed it: taken back, the check is open again. */
	closedBy: string | null;
	isRemoved: boolean;
	/** Time of the last entry, ms since 1970. */
	at: number;
	/** The first entry that did not belong; null when there is none. */
	refused: LiveCheckEntry | null;
	/**
	 * All that did not belong, in order. Things said of a check do not rest on each other, so what
	 * follows a refused entry counts all the same; and when what spoke against it is taken back, it
	 * belongs again.
	 */
	keptAside: readonly LiveCheckEntry[];
};
