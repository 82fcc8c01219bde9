import {
	CheckEventSchema,
	isValued,
	liveEntries,
	type CheckEvent,
	type Evidence,
	type EvidenceOf
} from '../observation';
import type { CheckLog, CheckState, GivenEvidence, LiveCheckEntry } from './check-state';

/** A check of which nothing has been said yet. */
export function startCheck({
	analyte,
	kit,
	startedAtEpochMs
}: Pick<CheckLog, 'analyte' | 'kit' | 'startedAtEpochMs'>): CheckState {
	return {
		analyte,
		kit,
		evidence: [],
		inQuestion: null,
		leftOut: [],
		isUnitDoubted: false,
		tank: {},
		livestock: null,
		isEmergency: false,
		means: null,
		note: null,
		isClosed: false,
		closedBy: null,
		isRemoved: false,
		at: startedAtEpochMs,
		refused: null,
		keptAside: []
	};
}

const isInQuestion = (evidence: Evidence): evidence is EvidenceOf<'test'> =>
	evidence.kind === 'test' && evidence.from === 'first';

/** The evidence with one more piece; null when it would count something twice. */
function withEvidence(
	known: readonly GivenEvidence[],
	given: GivenEvidence
): readonly GivenEvidence[] | null {
	const { evidence } = given;
	if (evidence.kind === 'cue') {
		const asked = known.findIndex(
			(each) => each.evidence.kind === 'cue' && each.evidence.cue === evidence.cue
		);
		return asked < 0 ? [...known, given] : known.map((each, i) => (i === asked ? given : each));
	}
	// Another reading in question would make all the other evidence speak of something else.
	if (isInQuestion(evidence) && known.some((each) => isInQuestion(each.evidence))) return null;
	// The same reading, given again, is not a second one.
	const isKnown =
		isValued(evidence) &&
		known.some(
			(each) => isValued(each.evidence) && each.evidence.reading.id === evidence.reading.id
		);
	return isKnown ? null : [...known, given];
}

type EventOf<Type extends CheckEvent['type']> = Extract<CheckEvent, { type: Type }>;

function given(
	state: CheckState,
	{ evidence, testId }: EventOf<'evidence.given'>,
	{ id, at }: LiveCheckEntry
): Partial<CheckState> | null {
	const piece = { entryId: id, at, evidence, ...(testId === undefined ? {} : { testId }) };
	const all = withEvidence(state.evidence, piece);
	if (!all) return null;
	return { evidence: all, ...(isInQuestion(evidence) ? { inQuestion: evidence } : {}) };
}

/** What an entry changes; null when it does not belong there. */
function changeBy(state: CheckState, entry: LiveCheckEntry): Partial<CheckState> | null {
	const { event } = entry;
	// What cannot be read again must not get into a log: a number that is none, a name too long.
	if (!CheckEventSchema.safeParse(event).success) return null;
	if (event.type === 'note.written') return { note: event.text === '' ? null : event.text };
	if (event.type === 'check.removed') return state.isRemoved ? null : { isRemoved: true };
	// What the person has closed stays as it was then; a note may be added, or it is opened again.
	if (state.isClosed) return null;
	switch (event.type) {
		case 'evidence.given':
			return given(state, event, entry);
		case 'checks.leftOut':
			return { leftOut: event.ids };
		case 'unit.doubted':
			return { isUnitDoubted: event.isDoubted };
		case 'tank.described':
			return { tank: event.tank };
		case 'livestock.seen':
			return { livestock: event.look };
		case 'emergency.seen':
			return { isEmergency: event.isSeen };
		case 'means.chosen':
			return { means: event.means };
		case 'check.closed':
			return { isClosed: true, closedBy: entry.id };
	}
}

/**
 * The check after one entry of its log; null when the entry does not belong there and changes
 * nothing: a second reading in question, a reading whose id is known already, what its schema does
 * not allow, anything but a note or the removal once it is closed.
 */
export function stepCheck(state: CheckState, entry: LiveCheckEntry): CheckState | null {
	const change = changeBy(state, entry);
	return change && { ...state, ...change, at: Math.max(state.at, entry.at) };
}

/**
 * Plays a check through. Entries that do not belong are kept aside one by one: nothing said of a
 * check rests on what was said before, so that anything can be taken back in any order.
 */
export function replayCheck(log: CheckLog): CheckState {
	let state = startCheck(log);
	const keptAside: LiveCheckEntry[] = [];
	for (const entry of liveEntries(log.entries)) {
		const next = stepCheck(state, entry);
		if (next) state = next;
		else keptAside.push(entry);
	}
	return { ...state, refused: keptAside[0] ?? null, keptAside };
}
