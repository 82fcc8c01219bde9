import type { Kit } from '../kits';
import { studentTQuantile } from './distributions';
import {
	combineUncertainty,
	effectiveDegreesOfFreedom,
	type UncertaintyInput
} from './uncertainty';

/** Half-width of an even distribution as a standard uncertainty. */
const even = (halfWidth: number) => halfWidth / Math.sqrt(3);

/**
 * Half-widths, as shares of the value, taken for granted when a kit says nothing better. A syringe
 * may by ISO 7886-1 be 5 % off from half its capacity up; single ones are commonly found within
 * 1.5 to 2 %, and the leaflet's table takes up what a whole make has in common (common practice, no
 * source). Burette: ISO 8655-3, 0.6 % of 10 mL at worst.
 */
const HALF_WIDTH = { sample: 0.02, syringe: 0.015, burette: 0.006 };
/** Standard uncertainties as shares: a bottle's drop against the leaflet's, a lot of titrant within its date (common practice, no source). */
const SHARE = { drop: 0.04, titrant: 0.01 };

export type ReadingBudget = {
	/** In the kit's unit. */
	standardUncertainty: number;
	expandedUncertainty: number;
	coverageFactor: number;
	degreesOfFreedom: number;
	/** Largest first. */
	lines: { name: string; contribution: number }[];
};

/**
 * Uncertainty of one reading, about 95 %. Sample, delivery and titrant scale with the value; the
 * end point (a whole drop is added at once, and colour is judged) and the reading of the mark do not.
 *
 * Source: measurement model value = V_titrant · c / V_sample by JCGM 100; drop overshoot even over
 * one drop (EURACHEM/CITAC CG4 treats burette end points so).
 *
 * @param value in the kit's unit
 * @param valuePerMl value that 1 mL of titrant stands for at the sample volume used
 */
export function readingBudget(
	kit: Kit,
	reading: { value: number; valuePerMl: number }
): ReadingBudget {
	const { delivery } = kit;
	const size = Math.abs(reading.value);
	const inputs: UncertaintyInput[] = [
		{
			name: kit.sample.measuredIn === 'syringe' ? 'sample volume' : 'filling to the line',
			standardUncertainty: even(HALF_WIDTH.sample),
			sensitivity: size
		},
		{ name: 'titrant strength', standardUncertainty: SHARE.titrant, sensitivity: size },
		{
			name: 'whole drops',
			standardUncertainty: delivery.dropMl / Math.sqrt(12),
			sensitivity: reading.valuePerMl
		},
		{
			name: 'judging the colour',
			standardUncertainty: delivery.dropMl / 4,
			sensitivity: reading.valuePerMl
		}
	];
	if (delivery.by === 'dropper')
		inputs.push({ name: 'size of a drop', standardUncertainty: SHARE.drop, sensitivity: size });
	else
		inputs.push(
			{
				name: delivery.by === 'syringe' ? 'syringe scale' : 'burette scale',
				standardUncertainty: even(HALF_WIDTH[delivery.by]),
				sensitivity: size
			},
			{
				name: 'reading the mark',
				// Two readings, start and end, each to half a division.
				standardUncertainty: (Math.SQRT2 * (delivery.graduationMl / 2)) / Math.sqrt(12),
				sensitivity: reading.valuePerMl
			}
		);
	const combined = combineUncertainty(inputs);
	const degreesOfFreedom = effectiveDegreesOfFreedom(inputs);
	const coverageFactor = studentTQuantile(0.975, Math.max(1, degreesOfFreedom));
	return {
		standardUncertainty: combined.standardUncertainty,
		expandedUncertainty: coverageFactor * combined.standardUncertainty,
		coverageFactor,
		degreesOfFreedom,
		lines: [...combined.contributions].sort((a, b) => b.contribution - a.contribution)
	};
}
