import { loadAs } from '../../kits';
import { EvidenceSchema, type Evidence } from '../../observation';

/** Pieces that were looked at before: evidence grows piece by piece and is judged anew each time. */
const sound = new WeakSet<Evidence>();

/**
 * Cases may be written by hand: what does not have the form of evidence is refused, since it would
 * otherwise be passed over in silence.
 *
 * @throws RangeError naming the piece by its place, the field, what was expected there and what was found
 */
export function requireSound(evidence: readonly Evidence[]): void {
	evidence.forEach((piece, at) => {
		if (sound.has(piece)) return;
		loadAs(piece, EvidenceSchema, `evidence[${at}]`);
		sound.add(piece);
	});
}
