import {
	draftOfKit,
	emptyDraft,
	houseKits,
	kitOfDraft,
	type Kit,
	type KitDraft,
	type KitVersion,
	type Unit
} from '$lib/kits';
import { usualCautions } from '$lib/ui/kits/usual-cautions';
import type { EditPlace } from '../place';

const kitOf = (versions: readonly KitVersion[], id: string): Kit | null =>
	versions.findLast(({ kitId }) => kitId === id)?.kit ??
	houseKits.find((kit) => kit.id === id) ??
	null;

/** The sign that this reader's own numbers have. */
export function decimalSign(): '.' | ',' {
	return (1.5).toLocaleString().includes(',') ? ',' : '.';
}

/**
 * What stands in the blanks before anything is typed here; null when there is no such kit.
 *
 * @param versions of the owner's kits, those of one kit in their order
 * @param unit that a new leaflet is taken to use until it is said: the one its owner reads in
 */
export function draftAtStart(
	versions: readonly KitVersion[],
	place: EditPlace,
	unit: Unit
): KitDraft | null {
	if (place.is === 'new') {
		const draft = emptyDraft();
		return { ...draft, unit, hazards: [...usualCautions[draft.analyte]] };
	}
	const kit = kitOf(versions, place.id);
	if (!kit || (place.is === 'kit' && kit.invented)) return null;
	const draft = draftOfKit(kit, decimalSign());
	if (place.is === 'kit') return draft;
	// What is in the bottles of a house kit is known only of that kit.
	return { ...draft, name: `Copy of ${kit.name}`, carried: { invented: false } };
}

/** A kit without its name and the words of care, as it comes out of the blanks. */
function figuresOf(kit: Kit): string {
	const typed = kitOfDraft(draftOfKit(kit), { id: kit.id });
	const { name: _name, hazards: _hazards, ...figures } = 'kit' in typed ? typed.kit : kit;
	return JSON.stringify(figures);
}

/** Whether a value can depend on what is different: on more than the name and the words of care. */
export function isOtherwiseValued(before: Kit, after: Kit): boolean {
	return figuresOf(before) !== figuresOf(after);
}
