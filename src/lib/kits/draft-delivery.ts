import { asked, type BlankReader } from './draft-blanks';
import type { Delivery } from './kit';
import type { KitDraft } from './kit-draft';
import { numberText } from './typed-number';

const fewest = (value: number) => numberText(Number(value.toPrecision(6)));

/** Whether one is so many whole times the other, but for the last digits of a computer. */
const isMultiple = (value: number, of: number) =>
	Math.abs(value / of - Math.round(value / of)) < 1e-6;

/** A blank that, left empty, follows from others; while those are not known, nothing is missing. */
function ofScale(
	path: 'numeralEveryMl' | 'barrelEndMl',
	draft: KitDraft,
	follows: number,
	blanks: BlankReader
): number {
	if (draft[path].trim() === '' && Number.isNaN(follows)) return Number.NaN;
	return blanks.number(path, draft[path], asked[path]);
}

/** The lines and numerals of a scale. */
function scaleOf(draft: KitDraft, blanks: BlankReader) {
	const capacityMl = blanks.number('capacityMl', draft.capacityMl, asked.capacityMl);
	const graduationMl = blanks.number('graduationMl', draft.graduationMl, asked.graduationMl);
	const numeralEveryMl = ofScale('numeralEveryMl', draft, capacityMl + graduationMl, blanks);
	if (graduationMl > capacityMl / 2)
		blanks.say(
			'graduationMl',
			`The lines must be closer together than half the capacity, ${fewest(capacityMl)} mL; found ${draft.graduationMl.trim()}.`
		);
	else if (numeralEveryMl > capacityMl)
		blanks.say(
			'numeralEveryMl',
			`The first numeral must come before the capacity, ${fewest(capacityMl)} mL; found ${draft.numeralEveryMl.trim()}.`
		);
	else if (numeralEveryMl > 0 && graduationMl > 0 && !isMultiple(numeralEveryMl, graduationMl))
		blanks.say(
			'numeralEveryMl',
			`A numeral stands at a line, so at a whole number of ${fewest(graduationMl)} mL; found ${draft.numeralEveryMl.trim() || fewest(numeralEveryMl)}.`
		);
	return { capacityMl, graduationMl, numeralEveryMl };
}

/**
 * How the titrant is given, from the blanks; what is wrong is noted with them.
 *
 * @param counts what the leaflet's conversion asks for
 */
export function deliveryOfDraft(
	draft: KitDraft,
	blanks: BlankReader,
	counts: 'used' | 'left'
): Delivery {
	const dropMl = blanks.number('dropMl', draft.dropMl, asked.dropMl);
	if (draft.by === 'dropper') return { by: 'dropper', dropMl };
	const scale = scaleOf(draft, blanks);
	const refilled = draft.isRefilled ? { refilled: true } : {};
	if (draft.by === 'burette') return { by: 'burette', ...scale, dropMl, ...refilled };
	const { capacityMl } = scale;
	const barrelEndMl = ofScale('barrelEndMl', draft, capacityMl, blanks);
	if (barrelEndMl < capacityMl || barrelEndMl > 2 * capacityMl)
		blanks.say(
			'barrelEndMl',
			`The barrel ends between the full mark, ${fewest(capacityMl)} mL, and twice that; found ${draft.barrelEndMl.trim()}.`
		);
	const tipVolumeMl = blanks.optionalNumber('tipVolumeMl', draft.tipVolumeMl, asked.tipVolumeMl);
	if (tipVolumeMl !== undefined && tipVolumeMl >= capacityMl)
		blanks.say(
			'tipVolumeMl',
			`A tip holds less than the syringe, ${fewest(capacityMl)} mL; found ${draft.tipVolumeMl.trim()}.`
		);
	if (draft.scale === '')
		blanks.say('scale', 'Look at the syringe and choose at which end its 0 stands.');
	return {
		by: 'syringe',
		...scale,
		barrelEndMl,
		tipVolumeMl: tipVolumeMl ?? null,
		scale: draft.scale === 'up' ? 'up' : 'down',
		counts,
		dropMl,
		...refilled
	};
}
