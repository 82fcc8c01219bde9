import type { Marks } from '$lib/observation';
import {
	dropCheckOf,
	fromOtherEnd,
	valueOfTitration,
	type DropCheck,
	type TankTitration,
	type ValuedTitration
} from '$lib/procedure';
import { plain } from '../../charts/numbers';

export type CrossCheck = {
	/** In a sentence, with both numbers. */
	text: string;
	agrees: boolean;
	/** The marks, if the scale was read from its other end and fits so; null when it does not. */
	otherEnd: Marks | null;
};

/** The events as they would be with these marks read. */
function eventsWith({ events }: TankTitration, marks: Marks): TankTitration['events'] {
	const at = events.at(-1)?.at ?? 0;
	return [...events, { id: 'as-given', at, event: { type: 'marks.read', marks } }];
}

/** What the titration would come to with these marks; null when they do not make a value. */
export function valuedWith(titration: TankTitration, marks: Marks): ValuedTitration | null {
	const events = eventsWith(titration, marks);
	const valued = valueOfTitration({ ...titration, events }, titration.kit);
	return valued.value === null ? null : valued;
}

/** The same marks read from the other end of the scale. */
function turnedMarks({ kit }: TankTitration, marks: Marks): Marks {
	const turned = { ...marks };
	for (const key of ['sealMl', 'lineMl', 'levelMl'] as const) {
		const numeralMl = marks[key];
		if (numeralMl !== undefined) turned[key] = Number(fromOtherEnd(kit, numeralMl).toFixed(4));
	}
	return turned;
}

/**
 * Drops counted held against the travel of the mark, by the uncertainty of both, or, where none were
 * counted, the value against that of the last test. Null while there is nothing to compare.
 *
 * @param expected the last value, in the kit's unit; null where it must not be shown or is not known
 */
export function crossCheck(
	titration: TankTitration,
	marks: Marks,
	expected: number | null
): CrossCheck | null {
	const { kit } = titration;
	const valued = kit.delivery.by === 'dropper' ? null : valuedWith(titration, marks);
	if (!valued) return null;
	const turned = turnedMarks(titration, marks);
	if (marks.drops !== undefined) {
		const check = dropCheckOf(kit, eventsWith(titration, marks), valued);
		return check && againstDrops(check, marks.drops, turned);
	}
	const valuedTurned = valuedWith(titration, turned);
	return expected === null || !valuedTurned
		? null
		: againstLast(valued, { ...valuedTurned, marks: turned }, expected);
}

function againstDrops(
	{ dropsMl, travelMl, agrees, causes }: DropCheck,
	drops: number,
	turned: Marks
): CrossCheck {
	const both = `${drops} drops make about ${plain(dropsMl, 2)} mL; by your mark ${plain(travelMl, 2)} mL went in.`;
	return {
		text: agrees ? `${both} They agree.` : `${both} They do not agree.`,
		agrees,
		otherEnd: causes[0] === 'otherEnd' ? turned : null
	};
}

/** A value this much off the last one, in mL of titrant, is asked about when the other end fits. */
const FAR_ML = 0.12;

function againstLast(
	valued: ValuedTitration,
	turned: ValuedTitration & { marks: Marks },
	expected: number
): CrossCheck | null {
	const far = FAR_ML * valued.valuePerMl;
	const isFar = Math.abs(valued.value - expected) > far;
	const fitsTurned = Math.abs(turned.value - expected) < far / 2;
	if (!isFar || !fitsTurned) return null;
	return {
		text: `This makes ${plain(valued.value)} ${valued.unit}; last time it was ${plain(expected)}. Read from the other end, it would be ${plain(turned.value)}.`,
		agrees: false,
		otherEnd: turned.marks
	};
}
