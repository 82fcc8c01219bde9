import { emptyDraft, kitOfDraft, type Kit, type KitDraft } from '$lib/kits';

/**
 * The kit as far as its figures go, as soon as sample, titrant and conversion make sense, whatever
 * else is still empty: for what the margin says. Null until then.
 */
export function kitSoFar(draft: KitDraft): Kit | null {
	return figuresOf(draft) ?? figuresOf({ ...draft, statedAccuracy: '' });
}

function figuresOf(draft: KitDraft): Kit | null {
	const needsEnd = draft.by === 'syringe' && draft.kind === 'rows' && draft.column === 'mark';
	const made = kitOfDraft({
		...draft,
		name: 'so far',
		reagents: [],
		// Which end is 0 matters only to a table of marks.
		scale: draft.scale === '' && !needsEnd ? 'down' : draft.scale,
		tipVolumeMl: '',
		barrelEndMl: '',
		startColour: 'start',
		endColour: 'end',
		holdsSeconds: '',
		assumed: emptyDraft().assumed
	});
	return 'kit' in made ? made.kit : null;
}
