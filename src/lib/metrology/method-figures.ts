import {
	houseSyringeKit,
	leafletEndOf,
	plausibleRange,
	worthOf,
	type Analyte,
	type Kit,
	type Reagent,
	type Unit
} from '../kits';
import {
	colourFigure,
	dropFigure,
	sampleFigure,
	scaleFigure,
	strengthFigure
} from './budget-figures';
import { usedMlIn, type BudgetReading } from './budget-input';
import { scatterInputs } from './scatter-inputs';

/**
 * A way of measuring as the measurement equation needs it, for one sample volume. All in `unit`
 * unless the name says otherwise. It can be written down by hand for a kit that is known only by its
 * leaflet.
 */
export type MethodFigures = {
	analyte: Analyte;
	unit: Unit;
	delivery: 'syringe' | 'dropper' | 'burette';
	/** Value of 1 mL of titrant at this sample volume. */
	valuePerMl: number;
	sampleVolumeMl: number;
	dropMl: number;
	/** Smallest division of the scale, mL; null for a dropper. */
	graduationMl: number | null;
	/** Tip and nozzle together, mL; null where there is none. */
	tipMl: number | null;
	/** Value at full scale; null where there is no scale. */
	fullScale: number | null;
	/** What the leaflet adds to the sample before the titrant, by role; none where nothing is said. */
	reagents?: readonly Reagent['role'][];
	/**
	 * Volume of one filling, mL, and how many of them a usual value takes: a whole number of 1 or above, and
	 * 1 where the leaflet has it filled once only. Left out where there is no scale.
	 */
	filling?: { ml: number; count: number; isAgain: boolean };
	/**
	 * The value hangs on a row of a table or on which of several sample sizes was taken, and another one can be
	 * taken by mistake. Where nobody says, it may.
	 */
	isLookedUp?: boolean;
	/**
	 * All that is titrated over the value, where another value is taken off it: above 1. A share of the
	 * titrant or of the sample makes so many times that share of the value. Left out where nothing is taken off.
	 */
	wholeOverValue?: number;
	/** Smallest addition at the end, in drops. */
	endStepDrops: number;
	/** Ordinary spread between sound pieces, as standard deviations: shares of the value. */
	sampleWareSd: number;
	titrantWareSd: number;
	lotSd: number;
	/** Ordinary spread of where people see the end, lasting for a person, in `unit`. */
	endPointSd: number;
	/** Scatter of one test by the same hands, without the step of a drop or of the scale, in `unit`. */
	scatterSd: number;
	/** Setting the sample to its mark, anew each time, as a share of the value. */
	sampleSettingSd: number;
};

/** Tip and nozzle of a 1 mL syringe hold 0.15 to 0.20 mL; common practice, no source. */
const USUAL_TIP_ML = 0.175;

/** Where on the kit's scale the figures are wanted; each has a default. */
export type FiguresAt = {
	/** Value at which shares are taken, in the kit's unit; the middle of what tanks hold. */
	value?: number;
	/** One of the kit's sample volumes; the nominal one. `sampleVolumeMl` rules over it. */
	volumeId?: string;
	sampleVolumeMl?: number;
	endStepDrops?: number;
};

/** The middle, in ratios, of what a tank can plausibly hold. */
function middleValue(kit: Kit): number {
	const { low, high } = plausibleRange(kit.unit, kit.analyte);
	return Math.sqrt(low * high);
}

/** Fillings that so much titrant takes; null for a dropper. */
function fillingOf({ delivery }: Kit, usedMl: number): MethodFigures['filling'] | null {
	if (delivery.by === 'dropper') return null;
	const isAgain = delivery.refilled ?? false;
	const count = isAgain ? Math.max(1, Math.ceil(usedMl / delivery.capacityMl)) : 1;
	return { ml: delivery.capacityMl, count, isAgain };
}

/**
 * A kit as the measurement equation needs it: sizes from its leaflet, spreads as in the budget of a
 * reading (`readingBudget` names the origin of each figure).
 *
 * @throws RangeError naming the field when `at` lies outside what the kit has
 */
export function methodFiguresOf(kit: Kit, at: FiguresAt = {}): MethodFigures {
	const { delivery, analyte, unit, sample } = kit;
	const nominalMl = sample.volumes[0]?.volumeMl ?? Number.NaN;
	const named = sample.volumes.find(({ id }) => id === at.volumeId);
	if (at.volumeId !== undefined && !named)
		throw new RangeError(
			`volumeId must be one of ${sample.volumes.map(({ id }) => id).join(', ')}; found ${at.volumeId}`
		);
	const sampleVolumeMl = at.sampleVolumeMl ?? named?.volumeMl ?? nominalMl;
	const value = at.value ?? middleValue(kit);
	const endStepDrops = at.endStepDrops ?? 1;
	for (const [field, number] of Object.entries({ value, sampleVolumeMl, endStepDrops }))
		if (!(number > 0 && Number.isFinite(number)))
			throw new RangeError(`${field} must be above 0; found ${number}`);
	const scale = nominalMl / sampleVolumeMl;
	const valuePerMl = ((worthOf(kit)[0]?.dropValue ?? Number.NaN) / delivery.dropMl) * scale;
	const reading: BudgetReading = { value, valuePerMl, sampleVolumeMl, endStepDrops };
	const scatter = new Map(
		scatterInputs(kit, reading).map(({ id, standardUncertainty }) => [id, standardUncertainty])
	);
	const isDropper = delivery.by === 'dropper';
	const filling = fillingOf(kit, value / valuePerMl);
	// Each filling but the last was used whole, and would be read as nothing left.
	const wholeFillings = filling ? 2 * (filling.count - 1) * filling.ml * valuePerMl : 0;
	return {
		analyte,
		unit,
		delivery: delivery.by,
		valuePerMl,
		sampleVolumeMl,
		dropMl: delivery.dropMl,
		graduationMl: isDropper ? null : delivery.graduationMl,
		tipMl: delivery.by === 'syringe' ? (delivery.tipVolumeMl ?? USUAL_TIP_ML) : null,
		fullScale: isDropper ? null : leafletEndOf(kit) * scale + wholeFillings,
		reagents: [...new Set(kit.reagents.map(({ role }) => role))],
		...(filling ? { filling } : {}),
		isLookedUp: kit.conversion.kind === 'rows' || sample.volumes.length > 1,
		endStepDrops,
		sampleWareSd: sampleFigure(kit, reading).share,
		titrantWareSd: isDropper
			? dropFigure(kit).share
			: scaleFigure(kit, reading).share / usedMlIn(reading),
		lotSd: strengthFigure(kit).share,
		endPointSd: colourFigure(kit).share * delivery.dropMl * valuePerMl,
		scatterSd:
			valuePerMl * Math.hypot(scatter.get('judgingColour') ?? 0, scatter.get('dropsUnlike') ?? 0),
		sampleSettingSd: scatter.get('settingSample') ?? 0
	};
}

/** What is taken for a kit of which nothing is known but its number: the project's invented syringe kit. */
export const usualMethodFigures: MethodFigures = methodFiguresOf(houseSyringeKit);
