import { compareMarks } from '$lib/metrology';
import type { Marks } from '$lib/observation';
import type { TankTitration } from '$lib/procedure';
import { marksInWords } from '$lib/ui/bench/marks-words';
import { valuedWith } from '../marks/cross-check';

export type OtherReading = {
	by: string;
	marks: string;
	/** In the kit's unit; null when their marks make none. */
	value: number | null;
	/** Do two eyes differ by so much? Null where they read different marks. */
	agrees: boolean | null;
	/** How far they lie apart, in divisions of the scale, without sign; null as above. */
	divisions: number | null;
};

/** Somebody else's marks off the same glass beside the first, each valued in the same way. */
export function otherReadingOf(
	titration: TankTitration,
	first: Marks,
	{ by, marks }: { by: string; marks: Marks }
): OtherReading {
	const { delivery } = titration.kit;
	const said = {
		by,
		marks: marksInWords(marks),
		value: valuedWith(titration, marks)?.value ?? null
	};
	const both = (['sealMl', 'lineMl', 'levelMl'] as const).flatMap((key) => {
		const [a, b] = [first[key], marks[key]];
		if (a === undefined || b === undefined || delivery.by === 'dropper') return [];
		return [compareMarks(a, b, delivery.graduationMl)];
	})[0];
	if (!both) return { ...said, agrees: null, divisions: null };
	return { ...said, agrees: both.agrees, divisions: Math.abs(both.divisions) };
}
