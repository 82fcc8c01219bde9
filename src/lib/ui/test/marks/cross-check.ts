import type { Marks } from '$lib/observation';
import { valueOfTitration, type TankTitration, type ValuedTitration } from '$lib/procedure';
import { plain } from '../../charts/numbers';

/**
 * Drops counted are rough, since drops differ in size and one is soon missed: this share and so many
 * drops may lie between the count and the scale (common practice, no source).
 */
const SHARE = 0.2;
const DROPS = 4;

export type CrossCheck = {
	/** In a sentence, with both numbers. */
	text: string;
	agrees: boolean;
	/** The marks, if the scale was read from its other end and fits so; null when it does not. */
	otherEnd: Marks | null;
};

/** What the titration would come to with these marks; null when they do not make a value. */
export function valuedWith(titration: TankTitration, marks: Marks): ValuedTitration | null {
	const at = titration.events.at(-1)?.at ?? 0;
	const event = { type: 'marks.read', marks } as const;
	const events = [...titration.events, { id: 'as-given', at, event }];
	const valued = valueOfTitration({ ...titration, events }, titration.kit);
	return valued.value === null ? null : valued;
}

/** The same marks read from the other end of the scale. */
function fromOtherEnd({ kit }: TankTitration, marks: Marks): Marks {
	if (kit.delivery.by === 'dropper') return marks;
	const { capacityMl } = kit.delivery;
	const turned = { ...marks };
	for (const key of ['sealMl', 'lineMl', 'levelMl'] as const) {
		const numeralMl = marks[key];
		if (numeralMl !== undefined) turned[key] = Number((capacityMl - numeralMl).toFixed(4));
	}
	return turned;
}

/**
 * Drops counted held against the travel of the mark, or, where none were counted, the value against
 * that of the last test. Null while there is nothing to compare.
 *
 * @param expected the last value, in the kit's unit; null where it must not be shown or is not known
 */
export function crossCheck(
	titration: TankTitration,
	marks: Marks,
	expected: number | null
): CrossCheck | null {
	const { delivery } = titration.kit;
	if (delivery.by === 'dropper') return null;
	const valued = valuedWith(titration, marks);
	if (!valued) return null;
	const turnedMarks = fromOtherEnd(titration, marks);
	const turned = valuedWith(titration, turnedMarks);
	if (marks.drops === undefined || marks.drops === 0)
		return expected === null ? null : againstLast(valued, turned, turnedMarks, expected);
	const dropsMl = marks.drops * delivery.dropMl;
	const limitMl = Math.max(SHARE * dropsMl, DROPS * delivery.dropMl);
	const fits = (usedMl: number) => Math.abs(usedMl - dropsMl) <= limitMl;
	const agrees = fits(valued.usedMl);
	const otherEnd = !agrees && turned && fits(turned.usedMl) ? turnedMarks : null;
	const both = `${marks.drops} drops make about ${plain(dropsMl, 2)} mL; by your mark ${plain(valued.usedMl, 2)} mL went in.`;
	return { text: agrees ? `${both} They agree.` : `${both} They do not agree.`, agrees, otherEnd };
}

/** A value this much off the last one, in mL of titrant, is asked about when the other end fits. */
const FAR_ML = 0.12;

function againstLast(
	valued: ValuedTitration,
	turned: ValuedTitration | null,
	turnedMarks: Marks,
	expected: number
): CrossCheck | null {
	if (!turned) return null;
	const far = FAR_ML * valued.valuePerMl;
	const isFar = Math.abs(valued.value - expected) > far;
	const fitsTurned = Math.abs(turned.value - expected) < far / 2;
	if (!isFar || !fitsTurned) return null;
	return {
		text: `This makes ${plain(valued.value)} ${valued.unit}; last time it was ${plain(expected)}. Read from the other end, it would be ${plain(turned.value)}.`,
		agrees: false,
		otherEnd: turnedMarks
	};
}
