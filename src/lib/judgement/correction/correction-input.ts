import { convertValue, decimalsFor, type Analyte, type Unit } from '../../kits';
import type { Reading, Tank } from '../../observation';
import type { CorrectionInput, PlannedMeans } from './correction';
import type { Band, Decision } from '../decision/decision';
import type { Diagnosis } from '../diagnosis/diagnosis';
import { defaultBand } from '../decision/limits';
import { salinityOf } from '../decision/salinity';
import { splitNeedOf } from '../decision/split-need';

/** The band a person wants, as far as they said; the default of the analyte for the rest. */
export function bandOf(
	tank: Tank,
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): Band & { isDefault: boolean } {
	const own = tank.unit ?? unit;
	const usual = defaultBand(own, analyte);
	const low = tank.bandLow ?? usual.low;
	const high = tank.bandHigh ?? usual.high;
	const isDefault = tank.bandLow === undefined && tank.bandHigh === undefined;
	// One end alone may lie beyond the other end of the default.
	return { low: Math.min(low, high), high: Math.max(low, high), unit: own, isDefault };
}

/**
 * Everything a correction is computed from, out of what is known of the tank and of its value. The
 * value is taken no finer than its uncertainty, so that the sum begins with the figure that is shown.
 * Where several values are possible that lie apart, it is the one that asks for least.
 */
export function correctionInputOf({
	decision,
	diagnosis,
	tank,
	means,
	isUnitSure,
	testReading = null,
	analyte = 'alkalinity'
}: {
	decision: Decision;
	diagnosis: Diagnosis;
	tank: Tank;
	means: PlannedMeans | null;
	isUnitSure: boolean;
	/** By the test that a retest is made by: its ± is taken for that of the retest. */
	testReading?: Pick<Reading, 'expandedUncertainty' | 'unit'> | null;
	analyte?: Analyte;
}): CorrectionInput {
	const { isDefault: _, ...band } = bandOf(tank, diagnosis.unit, analyte);
	const { unit } = band;
	const inUnit = (value: number) => convertValue(value, diagnosis.unit, unit, analyte);
	const [low, high] = diagnosis.trueValue.interval95.map(inUnit) as [number, number];
	const split = splitNeedOf(diagnosis, band, decision.direction, analyte);
	const expanded = split ? 2 * split.nearest.standardUncertainty : (high - low) / 2;
	const asShown = (value: number) => Number(value.toFixed(decimalsFor(unit, expanded, analyte)));
	return {
		decision,
		value: {
			value: asShown(split?.nearest.value ?? inUnit(diagnosis.trueValue.mean)),
			standardUncertainty: expanded / 2,
			unit
		},
		testExpandedUncertainty:
			testReading && convertValue(testReading.expandedUncertainty, testReading.unit, unit, analyte),
		...(split ? { otherValues: split.others.map(({ value }) => asShown(value)) } : {}),
		target: tank.target,
		waterL: tank.waterL,
		waterExpandedUncertaintyL: tank.waterExpandedUncertaintyL,
		consumptionPerDay: tank.consumptionPerDay,
		dosedPerDay: tank.dosedPerDay,
		means,
		salinity: salinityOf(tank),
		temperatureC: tank.temperatureC,
		ph: tank.ph,
		maxRisePerDay: tank.maxRisePerDay,
		evaporationLPerDay: tank.evaporationLPerDay,
		band,
		isUnitSure,
		who: tank.who,
		analyte
	};
}
