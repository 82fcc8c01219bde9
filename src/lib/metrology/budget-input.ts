import type { UncertaintyInput } from './uncertainty';

/** One reading, as far as its uncertainty depends on how it came about. */
export type BudgetReading = {
	/** In the kit's unit. */
	value: number;
	/** Value that 1 mL of titrant stands for at the sample volume used. */
	valuePerMl: number;
	/** Titrant used, mL; value over `valuePerMl` when left out. */
	usedMl?: number;
	/** Volume of the sample, mL; the kit's nominal one when left out. */
	sampleVolumeMl?: number;
	/** The start mark was read off; else the ware was filled to its full mark, which is set by eye too. */
	isStartRead?: boolean;
	/** Times that titrant was drawn in again; each has an end and a start of its own. */
	refills?: number;
	/** The count goes through the tip: standard uncertainty of the volume of tip and nozzle, mL. */
	tipSdMl?: number;
	/** Temperature of the water, °C; 20 when left out. */
	temperatureC?: number;
	/** Smallest addition at the end, in drops: 1, or 0.5 for half-drops touched off. */
	endStepDrops?: number;
	/** How finely the mark is written down, in divisions of the scale; half a division. */
	readToDivisions?: number;
};

/** What may stand in a budget; screens find a line by this and show its name. */
export type BudgetLineId =
	| 'sampleVolume'
	| 'titrantStrength'
	| 'deliveryScale'
	| 'dropSize'
	| 'endColour'
	| 'leafletHalfDrop'
	| 'tipVolume'
	| 'temperature'
	| 'tableRounding'
	| 'settingSample'
	| 'wholeDrops'
	| 'judgingColour'
	| 'readingMark'
	| 'dropsUnlike'
	| 'ownScatter';

/**
 * 'shared': ware, bottle and habit do it alike to every test of this kit. 'scatter': it falls anew
 * each time.
 */
export type BudgetKind = 'shared' | 'scatter';

export type BudgetInput = UncertaintyInput & {
	id: BudgetLineId;
	kind: BudgetKind;
	/** Where the figure comes from, in a few words. */
	origin: string;
	degreesOfFreedom: number;
};

function requireAtLeastZero(field: string, value: number | undefined): void {
	if (value !== undefined && !(value >= 0 && Number.isFinite(value)))
		throw new RangeError(`${field} must be 0 or above; found ${value}`);
}

/** @throws RangeError naming the field that is no number or out of range */
export function requireReading(reading: BudgetReading): void {
	if (!Number.isFinite(reading.value))
		throw new RangeError(`value must be a number; found ${reading.value}`);
	for (const field of [
		'valuePerMl',
		'sampleVolumeMl',
		'endStepDrops',
		'readToDivisions'
	] as const) {
		const value = reading[field];
		if (value === undefined && field !== 'valuePerMl') continue;
		if (!(value !== undefined && value > 0 && Number.isFinite(value)))
			throw new RangeError(`${field} must be above 0; found ${value}`);
	}
	for (const field of ['usedMl', 'refills', 'tipSdMl'] as const)
		requireAtLeastZero(field, reading[field]);
	const { temperatureC } = reading;
	if (temperatureC !== undefined && !(temperatureC >= 0 && temperatureC <= 45))
		throw new RangeError(`temperatureC must be between 0 and 45; found ${temperatureC}`);
}

/** Titrant used, mL. */
export const usedMlIn = (reading: BudgetReading): number =>
	reading.usedMl ?? Math.abs(reading.value) / reading.valuePerMl;
