import { convertUsed, valuePerMlAt } from './conversion';
import type { Kit } from './kit';
import { usedFromColumn } from './table-column';
import { lineOfTable } from './table-line';
import { titrantOf } from './titrant';
import { unitOf } from './units';
import { valueFromMark } from './value';

/**
 * Titrant strength that a leaflet's conversion implies, mol per litre: what 1 mL stands for, in
 * mmol/L, times nominal sample over 1 mL, and as many moles of titrant as one of the analyte takes.
 * Where the table bends, that of its middle.
 */
export function impliedTitrantStrength(kit: Kit): number {
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
	const mmolPerLPerMl = valuePerMlAt(kit, middleUse(kit)) * unitOf(kit.unit, kit.analyte).size;
	return (mmolPerLPerMl * titrantOf[kit.analyte].molPerMol * nominalMl) / 1000;
}

/** Titrant used in the middle of what the leaflet covers, mL. */
function middleUse(kit: Kit): number {
	const { delivery, conversion } = kit;
	if (conversion.kind === 'rows') {
		const marks = conversion.rows.map((row) => row.at);
		const middle = (Math.min(...marks) + Math.max(...marks)) / 2;
		return usedFromColumn(delivery, conversion.column, middle);
	}
	return delivery.by === 'dropper' ? 10 * delivery.dropMl : delivery.capacityMl / 2;
}

/**
 * The highest value that one filling can show by the leaflet, in the kit's unit, for one of its
 * sample volumes: at the end of the scale, or of the table where that comes first. Infinite for a
 * dropper, which has no end.
 *
 * @param refills how often it was filled again on the way, a whole number of 0 or above; each reaches on
 *   by a whole filling, but where a table bends: that tells nothing beyond its end
 * @throws RangeError when `refills` is no such number
 */
export function leafletEndOf(kit: Kit, volumeId?: string, refills = 0): number {
	const { delivery, conversion, sample } = kit;
	if (!(Number.isInteger(refills) && refills >= 0))
		throw new RangeError(`refills must be a whole number of 0 or above; found ${refills}`);
	if (delivery.by === 'dropper') return Number.POSITIVE_INFINITY;
	const isTable = conversion.kind === 'rows';
	const tableEndsMl = isTable
		? conversion.rows.map((row) => usedFromColumn(delivery, conversion.column, row.at))
		: [delivery.capacityMl];
	const isBent = isTable && lineOfTable(conversion.rows).shape === 'bent';
	const usedMl = Math.min(delivery.capacityMl, Math.max(...tableEndsMl));
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const sampleVolumeMl = sample.volumes.find((volume) => volume.id === volumeId)?.volumeMl;
	const markMl = isDown ? delivery.capacityMl - usedMl : usedMl;
	const refilledMl = isBent ? 0 : refills * delivery.capacityMl;
	return valueFromMark(kit, { markMl, refilledMl, sampleVolumeMl }).value;
}

/**
 * Titrant that a value takes by the leaflet, mL, whatever was filled again on the way among it.
 *
 * @param value in the kit's unit
 * @param sampleVolumeMl the nominal one when left out
 * @returns null where a table that bends does not reach so far
 */
export function usedMlForValue(kit: Kit, value: number, sampleVolumeMl?: number): number | null {
	const nominalMl = kit.sample.volumes[0]?.volumeMl ?? Number.NaN;
	const sought = (value * (sampleVolumeMl ?? nominalMl)) / nominalMl;
	let usedMl = middleUse(kit);
	try {
		// One step where the leaflet is straight; a few, from row to row, where it bends.
		for (let step = 0; step < STEPS; step++)
			usedMl += (sought - convertUsed(kit, usedMl).value) / valuePerMlAt(kit, usedMl);
	} catch {
		return null;
	}
	return Math.max(0, usedMl);
}

const STEPS = 6;

/** What the parts of a leaflet are worth for one of its sample volumes, in the kit's unit. */
export type Worth = {
	volumeId: string;
	name: string;
	/** One whole drop. */
	dropValue: number;
	/** One graduation; null for a dropper. */
	graduationValue: number | null;
	/** The most that one filling can show; null for a dropper. */
	fillingValue: number | null;
};

/** For each sample volume: what a drop and a graduation are worth, and how far one filling reaches. */
export function worthOf(kit: Kit): Worth[] {
	const { delivery, sample } = kit;
	const perMl = valuePerMlAt(kit, middleUse(kit));
	const nominalMl = sample.volumes[0]?.volumeMl ?? Number.NaN;
	return sample.volumes.map(({ id, name, volumeMl }) => {
		const valuePerMl = (perMl * nominalMl) / volumeMl;
		const hasScale = delivery.by !== 'dropper';
		return {
			volumeId: id,
			name,
			dropValue: valuePerMl * delivery.dropMl,
			graduationValue: hasScale ? valuePerMl * delivery.graduationMl : null,
			fillingValue: hasScale ? leafletEndOf(kit, id) : null
		};
	});
}
