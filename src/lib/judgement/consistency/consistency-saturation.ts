import { aragoniteSaturation } from '../../chemistry';
import { densityKgPerL } from '../../chemistry/density';
import { convertValue } from '../../kits';
import type { ConsistencyInput, Saturation } from './consistency';
import { SALINITY_EXPANDED } from './consistency-sea';

/** ± of a keeper's pH where none was given: the meter and its scale; common practice, no source. */
const PH_EXPANDED = 0.15;

type Inputs = Parameters<typeof aragoniteSaturation>[0];

/**
 * Saturation of aragonite from what was measured, with the range that the ± of each input leaves: each
 * moved by its own, and their effects added in squares on the logarithm (JCGM 100:2008, 5.1.3).
 */
export function saturationOf(input: ConsistencyInput): Saturation | null {
	const { alkalinity, calcium, salinity, ph, temperatureC = 25 } = input;
	if (!alkalinity || !calcium || !salinity || !ph) return null;
	const density = densityKgPerL(salinity.value, temperatureC);
	const molPerKg = (mmolPerL: number) => mmolPerL / 1000 / density;
	const meqPerL = (value: number) => convertValue(value, alkalinity.unit, 'meq/L');
	const mmolPerL = (value: number) => convertValue(value, calcium.unit, 'mmol/L', 'calcium');
	const at: Inputs = {
		salinity: salinity.value,
		temperatureC,
		alkalinityMolPerKg: molPerKg(meqPerL(alkalinity.value)),
		calciumMolPerKg: molPerKg(mmolPerL(calcium.value)),
		ph: ph.value
	};
	const expanded: Partial<Inputs> = {
		salinity: salinity.expandedUncertainty ?? SALINITY_EXPANDED,
		alkalinityMolPerKg: molPerKg(meqPerL(alkalinity.expandedUncertainty)),
		calciumMolPerKg: molPerKg(mmolPerL(calcium.expandedUncertainty)),
		ph: ph.expandedUncertainty ?? PH_EXPANDED
	};
	const value = aragoniteSaturation(at);
	const effects = (Object.entries(expanded) as [keyof Inputs, number][]).map(([field, reach]) =>
		Math.log(aragoniteSaturation({ ...at, [field]: at[field] + reach }) / value)
	);
	const reach = Math.exp(Math.hypot(...effects));
	const [low, high] = [value / reach, value * reach];
	return {
		value,
		low,
		high,
		sentence: `Aragonite, of which corals build, is saturated about ${value.toFixed(0)} times over (${low.toFixed(1)} to ${high.toFixed(1)}, most of it from the pH). It is worked out, not measured. Above 1 it does not dissolve; a high figure does not say that it falls out, nor a low one that a test is off. It is nothing to aim at.`
	};
}
