import { unitOf, type Kit } from '$lib/kits';

/** What the leaflet says about turning a mark into a value. */
export type ConversionWords = {
	sentences: string[];
	rows: { columnName: string; cells: { at: string; value: string }[] } | null;
};

const plain = (value: number) => String(Number(value.toFixed(4)));

/**
 * The leaflet's own words and table, for its nominal sample; for another sample, by how much the
 * value then has to be multiplied.
 */
export function conversionWords(kit: Kit, volumeId: string | null): ConversionWords {
	const { conversion, sample } = kit;
	const unit = unitOf(kit.unit, kit.analyte);
	const nominal = sample.volumes[0];
	const chosen = sample.volumes.find((volume) => volume.id === volumeId) ?? nominal;
	const sentences: string[] = [];
	if (conversion.kind === 'perMl')
		sentences.push(
			`Each mL of titrant used stands for ${plain(conversion.valuePerMl)} ${unit.name}.`
		);
	if (conversion.kind === 'perDrop')
		sentences.push(`Each drop stands for ${plain(conversion.valuePerDrop)} ${unit.name}.`);
	if (conversion.kind !== 'rows' && conversion.offset !== 0)
		sentences.push(
			`${conversion.offset < 0 ? 'Take off' : 'Add'} ${plain(Math.abs(conversion.offset))} at the end, once.`
		);
	if (conversion.kind === 'rows')
		sentences.push('Between two columns, go the same share of the way in both lines.');
	if (nominal && chosen && chosen.volumeMl !== nominal.volumeMl)
		sentences.push(
			`This holds for ${plain(nominal.volumeMl)} mL of sample. You took ${plain(chosen.volumeMl)} mL: multiply the value by ${plain(nominal.volumeMl / chosen.volumeMl)}.`
		);
	return {
		sentences,
		rows:
			conversion.kind === 'rows'
				? {
						columnName: { mark: 'seal at', usedMl: 'used, mL', leftMl: 'left, mL', drops: 'drops' }[
							conversion.column
						],
						cells: conversion.rows.map((row) => ({
							at: plain(row.at),
							value: row.value.toFixed(unit.decimals).replace('-', '−')
						}))
					}
				: null
	};
}
