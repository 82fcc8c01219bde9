import type { KitDraft } from './kit-draft';
import { titrantOf } from './titrant';
import { numberText, typedNumber } from './typed-number';

/** What an empty blank is taken for, as it would be typed, and why. */
export type Suggestion = { text: string; why: string };

const size = (text: string): number | null => {
	const typed = typedNumber(text, 'it', { low: 1e-6, high: 1e6, why: '' });
	return 'value' in typed ? typed.value : null;
};
const rounded = (value: number) => numberText(Number(value.toPrecision(6)));

/** How long the end must be watched, by what is titrated with. */
const holdsOf: Record<ReturnType<typeof kindOf>, Suggestion> = {
	strongAcid: {
		text: '25',
		why: 'The first colour that survives 20 to 30 s (common practice, no source).'
	},
	edta: {
		text: '30',
		why: 'Near the end EDTA is slow: a blue that survives half a minute (common practice, no source).'
	}
};
const kindOf = (draft: KitDraft) => titrantOf[draft.analyte].kind;

/**
 * What each blank that may stay empty is taken for, by its path: to be shown in the empty blank, so
 * that nothing is filled in unseen. Blanks that depend on another appear once that one is typed.
 */
export function suggestionsFor(draft: KitDraft): Partial<Record<string, Suggestion>> {
	const suggestions: Partial<Record<string, Suggestion>> = {
		dropMl: {
			text: draft.by === 'syringe' ? '0.03' : '0.04',
			why:
				draft.by === 'syringe'
					? 'About the drop of a syringe’s tip (common practice, no source). Ten drops, counted along the scale, tell yours.'
					: 'About the drop of a bottle or tap (common practice, no source). Ten drops, weighed, tell yours.'
		},
		offset: { text: '0', why: 'The leaflet adds nothing once at the end.' },
		holdsSeconds: holdsOf[kindOf(draft)]
	};
	const capacityMl = draft.by === 'dropper' ? null : size(draft.capacityMl);
	const graduationMl = size(draft.graduationMl);
	if (capacityMl !== null && graduationMl !== null && graduationMl <= capacityMl)
		suggestions.numeralEveryMl = {
			text: rounded(Math.max(1, Math.round(capacityMl / 10 / graduationMl)) * graduationMl),
			why: 'A numeral at about every tenth of the capacity (common practice, no source).'
		};
	if (capacityMl !== null && draft.by === 'syringe')
		suggestions.barrelEndMl = {
			text: rounded(1.1 * capacityMl),
			why: 'The seal leaves most barrels a tenth beyond the full mark (common practice, no source).'
		};
	for (const [i, volume] of draft.volumes.entries()) {
		const volumeMl = size(volume.volumeMl);
		if (volumeMl !== null)
			suggestions[`volumes.${i}.name`] = {
				text: `${i === 0 ? 'Normal' : 'Fine'}, ${numberText(volumeMl)} mL`,
				why: 'Named by its volume.'
			};
	}
	for (const [i, reagent] of draft.reagents.entries()) {
		suggestions[`reagents.${i}.name`] = { text: reagent.role, why: 'Named by what it is for.' };
		suggestions[`reagents.${i}.mixSeconds`] = { text: '0', why: 'The leaflet names no time.' };
		suggestions[`reagents.${i}.waitSeconds`] = { text: '0', why: 'The leaflet names no time.' };
	}
	return suggestions;
}
