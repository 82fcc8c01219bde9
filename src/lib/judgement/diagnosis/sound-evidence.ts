import { loadAs } from '../../kits';
import { EvidenceSchema, type Evidence } from '../../observation';

/** Pieces that were looked at before: evidence grows piece by piece and is judged anew each time. */
const sound = new WeakSet<Evidence>();

/**
 * Cases may be written by hand: what does not have the form of evidence is refused, since it would
 * otherwise be passed over in silence.
 *
 * @throws RangeError naming the piece by its place, the field, what was expected there and what was found;
 *   also for other than one test in question where there are tests, and an id used twice. Without any
 *   evidence there is the broad belief about tanks
 */
export function requireSound(evidence: readonly Evidence[]): void {
	evidence.forEach((piece, at) => {
		if (sound.has(piece)) return;
		loadAs(piece, EvidenceSchema, `evidence[${at}]`);
		sound.add(piece);
	});
	requireOneInQuestion(evidence);
	requireOwnIds(evidence);
}

/** Readings by other methods alone, or from before, can be judged without a test in question; tests cannot. */
function requireOneInQuestion(evidence: readonly Evidence[]): void {
	const tests = evidence.flatMap((piece, at) =>
		piece.kind === 'test' ? [{ at, isFirst: piece.from === 'first' }] : []
	);
	const firsts = tests.filter(({ isFirst }) => isFirst);
	if (firsts.length > 1)
		throw new RangeError(
			`evidence must hold one test from 'first', the one in question; found ${firsts.length}, at ${firsts.map(({ at }) => at).join(' and ')}`
		);
	if (tests.length > 0 && firsts.length === 0)
		throw new RangeError(
			`evidence must hold the test in question, from 'first', beside other tests; found none with evidence[${tests[0]!.at}]`
		);
}

/** One id is one reading: the same one twice would be counted twice. */
function requireOwnIds(evidence: readonly Evidence[]): void {
	const placeOf = new Map<string, number>();
	evidence.forEach((piece, at) => {
		if (!('reading' in piece)) return;
		const { id } = piece.reading;
		const before = placeOf.get(id);
		if (before !== undefined)
			throw new RangeError(
				`evidence[${at}].reading.id must be its own; found ${id}, as in evidence[${before}]`
			);
		placeOf.set(id, at);
	});
}
