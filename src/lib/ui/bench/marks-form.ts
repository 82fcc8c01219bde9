import { scaleEndsOf, typedNumber, type Kit } from '$lib/kits';
import type { Marks } from '$lib/observation';

/** Numerals that can be read off this kit at all. */
export function markRange(kit: Kit): { low: number; high: number; why: string } {
	const { delivery } = kit;
	if (delivery.by === 'dropper') return { low: 0, high: 400, why: 'A count goes from 0 to 400' };
	const [low, high] = scaleEndsOf(delivery);
	const signed = low < 0 ? `−${-low}` : `${low}`;
	return {
		low,
		high,
		why:
			delivery.by === 'syringe'
				? `The scale runs from 0 to ${delivery.capacityMl}, and a mark stands between ${signed} and ${high}`
				: `The scale runs from 0 to ${delivery.capacityMl}`
	};
}

/**
 * The marks that somebody typed. A syringe needs one of its two; an empty field is not read.
 *
 * @returns `marks` when all that was typed can stand, otherwise what is wrong at which field
 */
export function typedMarks(
	kit: Kit,
	fields: readonly { key: keyof Marks; text: string }[]
): { marks: Marks | null; problems: Partial<Record<keyof Marks, string>> } {
	const problems: Partial<Record<keyof Marks, string>> = {};
	const marks: Marks = {};
	const filled = fields.filter(({ text }) => text.trim() !== '');
	const asked = filled.length > 0 ? filled : fields.slice(0, 1);
	for (const { key, text } of asked) {
		const typed = typedNumber(
			text,
			key === 'drops' ? 'the number of drops' : 'the numeral you read',
			markRange(kit)
		);
		if ('problem' in typed) problems[key] = typed.problem;
		else if (key === 'drops' && !Number.isInteger(typed.value))
			problems[key] = `Count whole drops; found ${text.trim()}.`;
		else marks[key] = typed.value;
	}
	return { marks: Object.keys(problems).length === 0 ? marks : null, problems };
}
