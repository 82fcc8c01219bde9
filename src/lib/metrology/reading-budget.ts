import type { Kit } from '../kits';
import { studentTQuantile } from './distributions';
import {
	combineUncertainty,
	effectiveDegreesOfFreedom,
	type UncertaintyInput
} from './uncertainty';

/** Half-width of an even distribution as a standard uncertainty (JCGM 100, 4.3.7). */
const even = (halfWidth: number) => halfWidth / Math.sqrt(3);
/** Step of a scale, or one whole drop, as a standard uncertainty (JCGM 100, F.2.2.1). */
const step = (size: number) => size / Math.sqrt(12);

/**
 * Half-widths, as shares of the value, taken for granted when a kit says nothing better. A syringe
 * may by ISO 7886-1 be 5 % off from half its capacity up; single ones are commonly found within
 * 1.5 to 2 %, and the leaflet's table takes up what a whole make has in common (common practice, no
 * source). Burette: ISO 8655-3, 0.6 % of 10 mL at worst.
 */
const HALF_WIDTH = { sample: 0.02, syringe: 0.015, burette: 0.006 };
/** Standard uncertainties as shares: a bottle's drop against the leaflet's, a lot of titrant within its date (common practice, no source). */
const SHARE = { drop: 0.04, titrant: 0.01 };
/** How finely a colour is judged, in drops; this project's choice. */
const COLOUR_DROPS = 1 / 4;

export type ReadingBudget = {
	/** In the kit's unit. */
	standardUncertainty: number;
	expandedUncertainty: number;
	coverageFactor: number;
	degreesOfFreedom: number;
	/** The part that falls anew at each test: standard deviation between repeats of the same hands. */
	repeatabilitySd: number;
	/** Largest first. */
	lines: { name: string; contribution: number }[];
};

/** A person's own scatter with this kit, pooled from their repeats, in the kit's unit. */
export type OwnRepeatability = { sd: number; degreesOfFreedom: number };

/** What ware and bottle do alike to every test: shares of the value. */
function sharedInputs(kit: Kit, size: number): UncertaintyInput[] {
	const { delivery, sample } = kit;
	return [
		{
			name: sample.measuredIn === 'syringe' ? 'sample volume' : 'filling to the line',
			standardUncertainty: even(HALF_WIDTH.sample),
			sensitivity: size
		},
		{ name: 'titrant strength', standardUncertainty: SHARE.titrant, sensitivity: size },
		delivery.by === 'dropper'
			? { name: 'size of a drop', standardUncertainty: SHARE.drop, sensitivity: size }
			: {
					name: delivery.by === 'syringe' ? 'syringe scale' : 'burette scale',
					standardUncertainty: even(HALF_WIDTH[delivery.by]),
					sensitivity: size
				}
	];
}

/** What falls anew at each test: volumes of titrant, the same at any value. */
function scatterInputs({ delivery }: Kit, valuePerMl: number): UncertaintyInput[] {
	const inputs: UncertaintyInput[] = [
		{
			name: 'whole drops',
			standardUncertainty: step(delivery.dropMl),
			sensitivity: valuePerMl
		},
		{
			name: 'judging the colour',
			standardUncertainty: delivery.dropMl * COLOUR_DROPS,
			sensitivity: valuePerMl
		}
	];
	if (delivery.by !== 'dropper')
		inputs.push({
			name: 'reading the mark',
			// Two readings, start and end, each to half a division.
			standardUncertainty: Math.SQRT2 * step(delivery.graduationMl / 2),
			sensitivity: valuePerMl
		});
	return inputs;
}

/**
 * Uncertainty of one reading, about 95 %. Sample, delivery and titrant scale with the value; the
 * end point (a whole drop is added at once, and colour is judged) and the reading of the mark do not.
 * The mean half-drop too much is no uncertainty: the kit's conversion has it.
 *
 * Source: measurement model value = V_titrant · c / V_sample by JCGM 100; drop overshoot even over
 * one drop (EURACHEM/CITAC CG4 treats burette end points so).
 *
 * @param reading.value in the kit's unit
 * @param reading.valuePerMl value that 1 mL of titrant stands for at the sample volume used
 * @param own a person's own scatter, where it is known: it takes the place of drops, eye and mark
 * @throws RangeError naming the field when a number is not finite or out of range
 */
export function readingBudget(
	kit: Kit,
	reading: { value: number; valuePerMl: number },
	own?: OwnRepeatability
): ReadingBudget {
	if (!Number.isFinite(reading.value))
		throw new RangeError(`value must be a number; found ${reading.value}`);
	if (!(reading.valuePerMl > 0 && Number.isFinite(reading.valuePerMl)))
		throw new RangeError(`valuePerMl must be above 0; found ${reading.valuePerMl}`);
	const scatter: UncertaintyInput[] = own
		? [
				{
					name: 'own scatter',
					standardUncertainty: own.sd,
					sensitivity: 1,
					degreesOfFreedom: own.degreesOfFreedom
				}
			]
		: scatterInputs(kit, reading.valuePerMl);
	const inputs = [...sharedInputs(kit, Math.abs(reading.value)), ...scatter];
	const { standardUncertainty, contributions } = combineUncertainty(inputs);
	const degreesOfFreedom = effectiveDegreesOfFreedom(inputs);
	const coverageFactor = studentTQuantile(0.975, Math.max(1, degreesOfFreedom));
	return {
		standardUncertainty,
		expandedUncertainty: coverageFactor * standardUncertainty,
		coverageFactor,
		degreesOfFreedom,
		repeatabilitySd: combineUncertainty(scatter).standardUncertainty,
		lines: [...contributions].sort((a, b) => b.contribution - a.contribution)
	};
}
