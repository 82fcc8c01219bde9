import { decimalsFor, unitName, unitOf, type Analyte, type Unit } from '../../kits';

/**
 * A probability as one would say it: in tenths, at the ends in twentieths, never as nothing and
 * never as certain.
 *
 * @param probability within 0 to 1
 */
export function chanceInWords(probability: number): string {
	if (!(probability >= 0 && probability <= 1))
		throw new RangeError(`probability must be between 0 and 1; found ${probability}`);
	if (probability < 0.02) return 'less than 1 in 50';
	if (probability > 0.98) return 'more than 49 in 50';
	if (probability < 0.075) return 'about 1 in 20';
	if (probability > 0.925) return 'about 19 in 20';
	return `about ${Math.round(probability * 10)} in 10`;
}

/** A number with a real minus and without a minus before nothing. */
export function decimalsOf(value: number, decimals: number): string {
	const text = value.toFixed(decimals);
	return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** '7.4 ± 0.3 dKH': both ends with as many decimals as the ± allows. */
export function measured(
	value: number,
	expandedUncertainty: number,
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): string {
	const decimals = decimalsFor(unit, expandedUncertainty, analyte);
	return `${decimalsOf(value, decimals)} ± ${decimalsOf(expandedUncertainty, decimals)} ${unitName(unit, analyte)}`;
}

/** A value that somebody set, in the decimals customary for the unit: '7.0 dKH'. */
export function setValue(value: number, unit: Unit, analyte: Analyte = 'alkalinity'): string {
	return `${decimalsOf(value, unitOf(unit, analyte).decimals)} ${unitName(unit, analyte)}`;
}

/** '7.0 to 9.0 dKH'. */
export function bandInWords(
	band: { low: number; high: number; unit: Unit },
	analyte: Analyte = 'alkalinity'
): string {
	const { decimals } = unitOf(band.unit, analyte);
	return `${decimalsOf(band.low, decimals)} to ${setValue(band.high, band.unit, analyte)}`;
}

/** 'in 2 days', 'tomorrow', 'today'. */
export function inDaysInWords(days: number): string {
	if (days <= 0) return 'today';
	return days === 1 ? 'tomorrow' : `in ${days} days`;
}
