import type { Assumed, Kit } from './kit';
import { emptyDraft, type KitDraft } from './kit-draft';
import { sharesAssumed } from './kit-of-draft';
import { numberText } from './typed-number';

/**
 * A kit as the blanks it would be typed in as: to be looked over, corrected or made into another.
 *
 * @param decimalSign as its owner types numbers
 */
export function draftOfKit(kit: Kit, decimalSign: '.' | ',' = '.'): KitDraft {
	const text = (value: number | null | undefined) =>
		value === null || value === undefined ? '' : numberText(value, decimalSign);
	const empty = emptyDraft();
	const { delivery, conversion, endPoint } = kit;
	const draft: KitDraft = {
		...empty,
		name: kit.name,
		analyte: kit.analyte,
		unit: kit.unit,
		volumes: kit.sample.volumes.map((volume) => ({ ...volume, volumeMl: text(volume.volumeMl) })),
		measuredIn: kit.sample.measuredIn,
		reagents: kit.reagents.map(({ id, name, role, dose, mixSeconds, waitSeconds }) => ({
			id,
			name,
			role,
			amount: text(dose.amount),
			unit: dose.unit,
			unitMl: text(dose.unitMl),
			mixSeconds: text(mixSeconds),
			waitSeconds: text(waitSeconds)
		})),
		by: delivery.by,
		dropMl: text(delivery.dropMl),
		kind: conversion.kind,
		rows: [],
		startColour: endPoint.startColour,
		endColour: endPoint.endColour,
		holdsSeconds: text(endPoint.holdsSeconds),
		statedAccuracy: text(kit.statedAccuracy),
		hazards: [...kit.hazards],
		assumed: { ...empty.assumed },
		carried: { invented: kit.invented }
	};
	// A blank for a finer sample stands ready where the kit has none.
	const [, fine] = empty.volumes;
	if (draft.volumes.length === 1 && fine && draft.volumes[0]?.id !== fine.id)
		draft.volumes.push(fine);
	if (kit.byDifference) draft.isForDifference = true;
	if (delivery.by !== 'dropper') {
		if (delivery.refilled) draft.isRefilled = true;
		draft.capacityMl = text(delivery.capacityMl);
		draft.graduationMl = text(delivery.graduationMl);
		draft.numeralEveryMl = text(delivery.numeralEveryMl);
	}
	if (delivery.by === 'syringe') {
		draft.barrelEndMl = text(delivery.barrelEndMl);
		draft.tipVolumeMl = text(delivery.tipVolumeMl);
		draft.scale = delivery.scale;
	}
	if (conversion.kind === 'rows') {
		draft.column = conversion.column;
		const { valueDecimals } = conversion;
		draft.rows = conversion.rows.map(({ at, value }) => ({
			at: text(at),
			value: withZeros(text(value), valueDecimals ?? 0, decimalSign)
		}));
	} else {
		draft.offset = text(conversion.offset);
		if (conversion.kind === 'perMl') draft.valuePerMl = text(conversion.valuePerMl);
		else draft.valuePerDrop = text(conversion.valuePerDrop);
	}
	for (const field of Object.keys(kit.assumed ?? {}) as (keyof Assumed)[]) {
		const own = kit.assumed?.[field];
		if (own === undefined) continue;
		const shown = sharesAssumed.includes(field) ? Number((own * 100).toPrecision(12)) : own;
		draft.assumed[field] = text(shown);
	}
	if (endPoint.hueDegrees !== undefined) draft.carried.hueDegrees = endPoint.hueDegrees;
	if (kit.contents) draft.carried.contents = kit.contents;
	return draft;
}

/** A number as text with at least so many decimals. */
function withZeros(text: string, decimals: number, decimalSign: '.' | ','): string {
	const [whole = '', part = ''] = text.split(decimalSign);
	return part.length >= decimals ? text : `${whole}${decimalSign}${part.padEnd(decimals, '0')}`;
}
