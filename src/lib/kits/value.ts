import { MEQ_PER_L_PER_DKH } from '../chemistry';
import type { BuretteDelivery, Conversion, Kit, SyringeDelivery } from './kit';
import { numeralAt } from './steps';

/** What was read at the end, as numerals of the scale or as drops. */
export type EndMark = {
	/** Numeral at the end; for a syringe at the edge or line that is read, for a burette at the level. */
	markMl?: number;
	/** Numeral at the start; the full mark of the syringe, 0 of the burette, when left out. */
	startMarkMl?: number;
	/** Titrant drawn in again on the way, mL in all. */
	refilledMl?: number;
	drops?: number;
	/** Volume of the sample; the kit's nominal one when left out. */
	sampleVolumeMl?: number;
};

export type Valued = {
	/** In the kit's unit. */
	value: number;
	usedMl: number;
	/** Value that 1 mL of titrant stands for at this sample volume. */
	valuePerMl: number;
};

/**
 * Value of a test from its mark, by the kit's own conversion. The conversion is for the nominal
 * sample volume; another volume scales the value inversely.
 *
 * @throws RangeError naming the field when a mark is missing, off the scale, or off the table
 */
export function valueFromMark(kit: Kit, end: EndMark): Valued {
	const usedMl = usedMlOf(kit, end);
	const nominal = kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
	const sampleVolumeMl = end.sampleVolumeMl ?? nominal;
	if (!(sampleVolumeMl > 0))
		throw new RangeError(`sampleVolumeMl must be above 0; found ${sampleVolumeMl}`);
	const scale = nominal / sampleVolumeMl;
	return {
		value: convert(kit, usedMl) * scale,
		usedMl,
		valuePerMl: slopeAt(kit, usedMl) * scale
	};
}

/** Titrant used, mL, from the marks or drops of a test. */
export function usedMlOf(kit: Kit, end: EndMark): number {
	const { delivery } = kit;
	if (delivery.by === 'dropper') {
		const drops = end.drops;
		if (drops === undefined || !(drops >= 0))
			throw new RangeError(`drops must be a count of 0 or more; found ${drops}`);
		return drops * delivery.dropMl;
	}
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const start = end.startMarkMl ?? (isDown ? delivery.capacityMl : 0);
	const mark = end.markMl;
	if (mark === undefined || !Number.isFinite(mark))
		throw new RangeError(`markMl must be a numeral of the scale; found ${mark}`);
	const [lowest, highest] = endsOfScale(delivery);
	if (mark < lowest - 1e-9 || mark > highest + 1e-9)
		throw new RangeError(
			`markMl must lie on the scale, ${Number(lowest.toFixed(4))} to ${highest}; found ${mark}`
		);
	return (isDown ? start - mark : mark - start) + (end.refilledMl ?? 0);
}

/** Numerals between which anything can stand: a syringe's seal may be drawn past its full mark. */
function endsOfScale(delivery: SyringeDelivery | BuretteDelivery): [number, number] {
	if (delivery.by === 'burette') return [0, delivery.capacityMl];
	const ends = [numeralAt(delivery, 0), numeralAt(delivery, delivery.barrelEndMl)];
	return [Math.min(...ends), Math.max(...ends)];
}

type Column = Extract<Conversion, { kind: 'rows' }>['column'];

/** First column of the leaflet's table, or the factor's own quantity, for titrant used. */
function columnFromUsed(kit: Kit, column: Column, usedMl: number): number {
	const { delivery } = kit;
	if (column === 'drops') return usedMl / delivery.dropMl;
	if (column === 'leftMl' && delivery.by !== 'dropper') return delivery.capacityMl - usedMl;
	if (column === 'usedMl' || delivery.by !== 'syringe') return usedMl;
	return delivery.scale === 'down' ? delivery.capacityMl - usedMl : usedMl;
}

function convert(kit: Kit, usedMl: number): number {
	const { conversion } = kit;
	if (conversion.kind === 'perMl') return usedMl * conversion.valuePerMl + conversion.offset;
	if (conversion.kind === 'perDrop')
		return (usedMl / kit.delivery.dropMl) * conversion.valuePerDrop + conversion.offset;
	return interpolate(conversion.rows, columnFromUsed(kit, conversion.column, usedMl));
}

function slopeAt(kit: Kit, usedMl: number): number {
	const { conversion } = kit;
	if (conversion.kind === 'perMl') return conversion.valuePerMl;
	if (conversion.kind === 'perDrop') return conversion.valuePerDrop / kit.delivery.dropMl;
	const step = 1e-6;
	const middle = clampToTable(kit, conversion, usedMl, step);
	return (convert(kit, middle + step) - convert(kit, middle - step)) / (2 * step);
}

/** The titrant used, moved so far inside the table that a step to both sides stays on it. */
function clampToTable(
	kit: Kit,
	conversion: Extract<Conversion, { kind: 'rows' }>,
	usedMl: number,
	step: number
): number {
	const at = conversion.rows.map((row) => row.at);
	const perColumn =
		columnFromUsed(kit, conversion.column, 1) - columnFromUsed(kit, conversion.column, 0);
	const toUsed = (column: number) =>
		(column - columnFromUsed(kit, conversion.column, 0)) / perColumn;
	const ends = [toUsed(Math.min(...at)), toUsed(Math.max(...at))].sort((a, b) => a - b);
	return Math.min(Math.max(usedMl, (ends[0] ?? 0) + 2 * step), (ends[1] ?? 0) - 2 * step);
}

/** Straight line between the two rows on either side. */
function interpolate(rows: readonly { at: number; value: number }[], at: number): number {
	const sorted = [...rows].sort((a, b) => a.at - b.at);
	const first = sorted[0];
	const last = sorted[sorted.length - 1];
	if (!first || !last || at < first.at - 1e-9 || at > last.at + 1e-9)
		throw new RangeError(
			`the mark must lie in the leaflet's table, ${first?.at} to ${last?.at}; found ${Number(at.toFixed(4))}`
		);
	const upper = Math.max(
		1,
		sorted.findIndex((row) => row.at >= at - 1e-9)
	);
	const a = sorted[upper - 1] ?? first;
	const b = sorted[upper] ?? last;
	return a.value + ((b.value - a.value) * (at - a.at)) / (b.at - a.at);
}

/**
 * Titrant strength that a leaflet's conversion implies for a strong acid, mol per litre: value per
 * mL times nominal sample over 1 mL. Where the table bends, that of its middle.
 */
export function impliedTitrantStrength(kit: Kit): number {
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
	return (slopeAt(kit, middleUse(kit)) * MEQ_PER_L_PER_DKH * nominalMl) / 1000;
}

function middleUse(kit: Kit): number {
	const { delivery, conversion } = kit;
	if (conversion.kind === 'rows') {
		const at = conversion.rows.map((row) => row.at);
		const middle = (Math.min(...at) + Math.max(...at)) / 2;
		if (conversion.column === 'drops') return middle * delivery.dropMl;
		if (conversion.column === 'leftMl' && delivery.by !== 'dropper')
			return delivery.capacityMl - middle;
		if (conversion.column === 'usedMl' || delivery.by !== 'syringe') return middle;
		return delivery.scale === 'down' ? delivery.capacityMl - middle : middle;
	}
	return delivery.by === 'dropper' ? 10 * delivery.dropMl : delivery.capacityMl / 2;
}

/**
 * The highest value that one filling can show by the leaflet, in the kit's unit, for one of its
 * sample volumes; infinite for a dropper, which has no end.
 */
export function leafletEndOf(kit: Kit, volumeId?: string): number {
	const { delivery, sample } = kit;
	if (delivery.by === 'dropper') return Number.POSITIVE_INFINITY;
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const sampleVolumeMl = sample.volumes.find((volume) => volume.id === volumeId)?.volumeMl;
	return valueFromMark(kit, { markMl: isDown ? 0 : delivery.capacityMl, sampleVolumeMl }).value;
}
