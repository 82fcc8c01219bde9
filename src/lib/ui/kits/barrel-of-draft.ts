import { suggestionsFor, typedNumber, type KitDraft } from '$lib/kits';

/** A scale as far as it is typed in, to be drawn; null while too little is known of it. */
export type Barrel = { capacityMl: number; graduationMl: number; numeralEveryMl: number };

const size = (text: string): number => {
	const typed = typedNumber(text, 'it', { low: 1e-3, high: 1e3, why: '' });
	return 'value' in typed ? typed.value : Number.NaN;
};

/** The barrel that the blanks describe; while they are empty, an ordinary one of 1 mL. */
export function barrelOf(draft: KitDraft): Barrel | null {
	const capacityMl = draft.capacityMl.trim() === '' ? 1 : size(draft.capacityMl);
	const numeral = draft.numeralEveryMl.trim() || suggestionsFor(draft).numeralEveryMl?.text || '';
	const numeralEveryMl = numeral === '' ? capacityMl / 10 : size(numeral);
	const graduationMl = draft.graduationMl.trim() === '' ? numeralEveryMl : size(draft.graduationMl);
	const isScale =
		graduationMl <= numeralEveryMl && numeralEveryMl <= capacityMl && graduationMl > 0;
	return isScale ? { capacityMl, graduationMl, numeralEveryMl } : null;
}
