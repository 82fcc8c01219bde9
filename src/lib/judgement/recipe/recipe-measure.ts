import { densityKgPerL, requireWithin } from '../../chemistry';
import { syringeLimitMl } from '../../metrology';

/**
 * A scale. `linearityG` is the most by which it may be off anywhere, any value alike;
 * `repeatabilityG` the standard deviation of one thing put on it again and again.
 */
export type Scale = {
	divisionG: number;
	linearityG: number;
	repeatabilityG: number;
	/** The most it takes, g. */
	capacityG: number;
};

/** How an amount is measured. A line (jug, cylinder) may be off by a share of it, any share alike. */
export type Measure =
	| { by: 'scale'; scale: Scale }
	| { by: 'line'; toleranceShare: number }
	| { by: 'syringe'; capacityMl: number };

/** A part of the uncertainty of one measured amount, in g or mL as it is measured. */
export type MeasurePart = {
	kind: 'division' | 'linearity' | 'repeatability' | 'line' | 'syringe';
	standardUncertainty: number;
};

/**
 * A scale of which only the smallest division is known: off by two divisions at most, repeatable to
 * one. An estimate for small household scales (judgement); a coin weighed ten times tells better.
 *
 * @param divisionG within 0.0001 to 10 g
 * @param own what is known of this very scale
 */
export function scaleOf(divisionG: number, own: Partial<Omit<Scale, 'divisionG'>> = {}): Scale {
	requireWithin('divisionG', divisionG, 1e-4, 10);
	const scale = {
		divisionG,
		linearityG: 2 * divisionG,
		repeatabilityG: divisionG,
		capacityG: usualCapacityG(divisionG),
		...own
	};
	for (const field of ['linearityG', 'repeatabilityG'] as const)
		requireWithin(field, scale[field], 0, 100);
	requireWithin('capacityG', scale.capacityG, 1, 1e5);
	return scale;
}

/** Common practice, no source: what scales of a division usually take. */
function usualCapacityG(divisionG: number): number {
	if (divisionG < 0.005) return 50;
	if (divisionG < 0.05) return 200;
	return divisionG < 0.5 ? 1000 : 5000;
}

/**
 * Parts of the uncertainty of an amount. A weighing is the difference of two readings, empty and
 * full, so each part of a scale counts twice in variance; even distributions over half a division and
 * over the linearity. A syringe keeps the limits of ISO 7886-1, most of them well within: triangular.
 *
 * @param amount g or mL, above 0
 */
export function partsOf(measure: Measure, amount: number): MeasurePart[] {
	requireWithin('amount', amount, 1e-4, 1e5);
	if (measure.by === 'line')
		return [
			{ kind: 'line', standardUncertainty: (amount * measure.toleranceShare) / Math.sqrt(3) }
		];
	if (measure.by === 'syringe') {
		const limit = syringeLimitMl(measure.capacityMl, amount);
		return [{ kind: 'syringe', standardUncertainty: limit / Math.sqrt(6) }];
	}
	const { divisionG, linearityG, repeatabilityG } = measure.scale;
	const twice = (kind: MeasurePart['kind'], of: number) => ({
		kind,
		standardUncertainty: Math.SQRT2 * of
	});
	return [
		twice('division', divisionG / 2 / Math.sqrt(3)),
		twice('linearity', linearityG / Math.sqrt(3)),
		twice('repeatability', repeatabilityG)
	];
}

/** Standard uncertainty of anything weighed on a scale, g. */
export function weighingUncertaintyG(scale: Scale): number {
	const parts = partsOf({ by: 'scale', scale }, scale.divisionG);
	return Math.hypot(...parts.map(({ standardUncertainty }) => standardUncertainty));
}

/** In what an amount is measured. */
export function measuredIn(measure: Measure): 'g' | 'mL' {
	return measure.by === 'scale' ? 'g' : 'mL';
}

const AIR_G_PER_ML = 0.0012;
const WEIGHTS_G_PER_ML = 8;

/**
 * mL of a liquid of which a scale shows one gram: its density and the air it displaces; 1.0029 for
 * water at 20 °C. Source: ISO 8655-6, the factor Z.
 */
export function mlPerWeighedG(densityGPerMl: number): number {
	requireWithin('densityGPerMl', densityGPerMl, 0.9, 1.5);
	return (1 + AIR_G_PER_ML * (1 / densityGPerMl - 1 / WEIGHTS_G_PER_ML)) / densityGPerMl;
}

/** Density of pure water, g/mL; 0.9982 at 20 °C. */
export function waterGPerMl(temperatureC: number): number {
	return densityKgPerL(0, requireWithin('temperatureC', temperatureC, 4, 40));
}
