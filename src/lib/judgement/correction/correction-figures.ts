import { analyteUnits, type Analyte } from '../../kits';
import { requireWithin } from '../../chemistry';
import type { CorrectionInput, PlannedMeans } from './correction';
import { meansFor } from './correction-means';
import { hydratesOf, isPowder } from './correction-powders';

const analytes = Object.keys(analyteUnits) as Analyte[];
/** Every means there is, of any analyte. */
const means = [...new Set(analytes.flatMap(meansFor))];

/** Cases come from files as well, where no type holds a word to those there are. */
function requireOneOf(field: string, known: readonly string[], found: unknown): void {
	if (!known.includes(found as string))
		throw new RangeError(`${field} must be one of ${known.join(', ')}; found ${String(found)}`);
}

/**
 * Figures that no tank has are a mistake in the call, not a reason to refuse.
 *
 * @throws RangeError naming the field, what it may be and what was found
 */
export function requireFigures(input: CorrectionInput): void {
	const within = (field: string, value: number | null | undefined, low: number, high: number) => {
		if (value !== null && value !== undefined) requireWithin(field, value, low, high);
	};
	if (typeof input.decision?.verdict !== 'string')
		throw new RangeError(`decision must be what decide gives; found ${String(input.decision)}`);
	if (typeof input.value?.unit !== 'string')
		throw new RangeError(`value.unit must be a unit; found ${String(input.value?.unit)}`);
	if (input.analyte !== undefined) requireOneOf('analyte', analytes, input.analyte);
	// Of these there is no doing without: what is left out is a mistake too.
	requireWithin('value.value', input.value.value, -1e6, 1e6);
	requireWithin('value.standardUncertainty', input.value.standardUncertainty, 0, 1e6);
	within('testExpandedUncertainty', input.testExpandedUncertainty, 0, 1e6);
	for (const other of input.otherValues ?? []) within('otherValues', other, -1e6, 1e6);
	within('target', input.target, 0, 1e6);
	within('waterL', input.waterL, 1, 1e6);
	within('waterExpandedUncertaintyL', input.waterExpandedUncertaintyL, 0, 1e6);
	within('consumptionPerDay', input.consumptionPerDay, 0, 1e6);
	within('dosedPerDay', input.dosedPerDay, 0, 1e6);
	within('salinity', input.salinity, 0, 60);
	within('temperatureC', input.temperatureC, 0, 40);
	within('ph', input.ph, 0, 14);
	within('maxRisePerDay', input.maxRisePerDay, 1e-6, 1e6);
	within('evaporationLPerDay', input.evaporationLPerDay, 0, 1e6);
	if (input.means !== null && input.means !== undefined) requireMeans(input.means);
}

/** A means is known whole or not at all; only how strong a product is may be unknown. */
function requireMeans(planned: PlannedMeans): void {
	if (typeof planned !== 'object')
		throw new RangeError(`means must say by what, as in { by: 'limewater' }; found ${planned}`);
	requireOneOf('means.by', means, planned.by);
	if (isPowder(planned)) {
		requireHydrate(planned);
		requireWithin('means.purity', planned.purity, 0.01, 1);
	} else if (planned.by === 'product' && planned.risePerMlIn100L !== null)
		requireWithin('means.risePerMlIn100L', planned.risePerMlIn100L, 1e-9, 1e6);
	else if (planned.by === 'waterChange') {
		requireWithin('means.newValue', planned.newValue, 0, 1e6);
		requireWithin('means.share', planned.share, 1e-6, 1);
	}
}

/** Taken without its water, a powder that has some would be weighed out too weak. */
function requireHydrate(powder: PlannedMeans): void {
	const hydrates = Object.keys(hydratesOf(powder.by));
	const told = 'hydrate' in powder ? powder.hydrate : undefined;
	if (hydrates.length > 0) requireOneOf('means.hydrate', hydrates, told);
	else if (told !== undefined)
		throw new RangeError(
			`means.hydrate must be left out of ${powder.by}, which has one form; found ${String(told)}`
		);
}
