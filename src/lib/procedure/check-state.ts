import type { Kit } from '../kits';
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
/** A reading being checked: the whole truth about it, only ever appended to. */
export type CheckLog = {
	format: typeof CHECK_LOG_FORMAT;
	id: string;
	/** ms since 1970, as are the times of the entries. */
	startedAtEpochMs: number;
	/** The leaflet of the kit in question, frozen; null where there is nothing but a number. */
	kit: Kit | null;
	kitVersion: number | null;
	entries: CheckEntry[];
};

/** A piece of evidence as it was given; it is taken back by its entry. */
export type GivenEvidence = { entryId: string; at: number; evidence: Evidence; testId?: string };

/** A check as its log makes it. Plain data, replaced whole at each step. */
export type CheckState = {
	kit: Kit | null;
	/** In the order in which it was given; what was taken back is not here. */
	evidence: readonly GivenEvidence[];
	/** The test in question: the first piece of kind 'test' from 'first'. */
	inQuestion: EvidenceOf<'test'> | null;
	isUnitDoubted: boolean;
	tank: Tank;
	/** Null while nobody was asked. */
	livestock: LivestockLook | null;
	isEmergency: boolean;
	means: Means | null;
	note: string | null;
	isClosed: boolean;
	isRemoved: boolean;
	/** Time of the last entry, ms since 1970. */
	at: number;
	/** The first entry that did not belong; it and what follows are kept aside. */
	refused: CheckEntry | null;
};
