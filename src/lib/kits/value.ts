import { convertUsed, valuePerMlAt } from './conversion';
import type { BuretteDelivery, Kit, SyringeDelivery } from './kit';
import { scaleEndsOf } from './scale-ends';

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
	/** The leaflet's table ends before this mark: the value goes on as straight as the table was. */
	isBeyondTable: boolean;
};

/**
 * Value of a test from its mark, by the kit's own conversion. The conversion is for the nominal
 * sample volume; another volume scales the value inversely. A test that began elsewhere than at the
 * full mark, or was refilled on the way, is valued by the titrant used, as if out of one full measure.
 *
 * @throws RangeError naming the field when a mark is missing or off the scale, when less than nothing
 *   was used, or when the mark lies off a table that bends
 */
export function valueFromMark(kit: Kit, end: EndMark): Valued {
	const usedMl = usedMlOf(kit, end);
	const nominal = kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
	const sampleVolumeMl = end.sampleVolumeMl ?? nominal;
	if (!(sampleVolumeMl > 0))
		throw new RangeError(`sampleVolumeMl must be above 0; found ${sampleVolumeMl}`);
	const scale = nominal / sampleVolumeMl;
	const { value, isBeyondTable } = convertUsed(kit, usedMl);
	return {
		value: value * scale,
		usedMl,
		valuePerMl: valuePerMlAt(kit, usedMl) * scale,
		isBeyondTable
	};
}

/**
 * Titrant used, mL, from the marks or drops of a test. A mark that stands before its start by no
 * more than a graduation is the eye's doing and counts as it stands.
 *
 * @throws RangeError naming the field
 */
export function usedMlOf(kit: Kit, end: EndMark): number {
	const { delivery } = kit;
	if (delivery.by === 'dropper') {
		const drops = end.drops;
		if (drops === undefined || !(drops >= 0 && Number.isFinite(drops)))
			throw new RangeError(`drops must be a count of 0 or more; found ${drops}`);
		return drops * delivery.dropMl;
	}
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const startMarkMl = end.startMarkMl ?? (isDown ? delivery.capacityMl : 0);
	// A start that was reckoned through the tip may lie past the barrel's end; only the end was seen.
	if (!Number.isFinite(startMarkMl))
		throw new RangeError(`startMarkMl must be a numeral of the scale; found ${startMarkMl}`);
	requireOnScale(delivery, end.markMl);
	const refilledMl = end.refilledMl ?? 0;
	if (!(refilledMl >= 0 && Number.isFinite(refilledMl)))
		throw new RangeError(`refilledMl must be 0 or more; found ${refilledMl}`);
	const travelMl = isDown ? startMarkMl - end.markMl : end.markMl - startMarkMl;
	if (travelMl + refilledMl < -delivery.graduationMl - 1e-9)
		throw new RangeError(
			`markMl must not lie before the start, ${startMarkMl}; found ${end.markMl}`
		);
	return travelMl + refilledMl;
}

function requireOnScale(
	delivery: SyringeDelivery | BuretteDelivery,
	mark: number | undefined
): asserts mark is number {
	if (mark === undefined || !Number.isFinite(mark))
		throw new RangeError(`markMl must be a numeral of the scale; found ${mark}`);
	const [lowest, highest] = scaleEndsOf(delivery);
	if (mark < lowest - 1e-9 || mark > highest + 1e-9)
		throw new RangeError(`markMl must lie on the scale, ${lowest} to ${highest}; found ${mark}`);
}
