import type { Kit } from '../kits';
import { titrantPortion } from './titrant-portion';
import { kindOf } from './titration-kind';
import type { VialContents } from './vial-contents';

/** Whether a vial's colour, all that is in it mixed, has come to the kit's end. Without dye there is none. */
export function hasTurned(kit: Kit, contents: VialContents): boolean {
	const kind = kindOf(kit);
	return kind.hasDye(contents) && kind.placeOnTheWay(contents) >= kind.endPlaceOf(kit);
}

/** Added to what the sample takes, so that a sample that takes nothing has a volume to look at, mol. */
const LEAST_MOL = 1e-6;

/**
 * Titrant at which a sample, all mixed and at rest, first comes to its kit's end, mL; null when it never
 * does: no dye, or not within many times what it takes.
 *
 * @param sample what is in the vial as it comes to its end but for the titrant: see `withPassed`
 */
export function endVolumeMl(kit: Kit, sample: VialContents, titrantMolPerL: number): number | null {
	const kind = kindOf(kit);
	if (!kind.hasDye(sample)) return null;
	const end = kind.endPlaceOf(kit);
	const isPast = (volumeMl: number) =>
		kind.placeOnTheWay(kind.titratedTo(sample, titrantPortion(kit, volumeMl, titrantMolPerL))) >=
		end;
	if (isPast(0)) return 0;
	const mostMl = ((kind.mostTitrantMol(sample) + LEAST_MOL) / titrantMolPerL) * 1000;
	const place = kind.looksForEndAt.findIndex((times) => isPast(times * mostMl));
	if (place < 0) return null;
	let low = (kind.looksForEndAt[place - 1] ?? 0) * mostMl;
	let high = (kind.looksForEndAt[place] ?? 0) * mostMl;
	// To a thousandth of the smallest drop.
	for (let i = 0; i < 40 && high - low > 1e-5; i++) {
		const middle = (low + high) / 2;
		if (isPast(middle)) high = middle;
		else low = middle;
	}
	return (low + high) / 2;
}
