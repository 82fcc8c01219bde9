import { requireWithin } from '../../chemistry';
import type { Unit } from '../../kits';
import { combineUncertainty, type UncertaintyInput } from '../../metrology';
import { measuredIn, mlPerWeighedG, partsOf } from './recipe-measure';
import type { Measured } from './recipe';

/** A value with its standard uncertainty. */
type Known = { value: number; standardUncertainty: number };

export type AdditionInput = {
	unit: Unit;
	/** Strength of the solution that is added, in `unit`, and its density; 1.0 g/mL when left out. */
	stock: Known & { gPerMl?: number };
	/** What the tank's water reads, in `unit`. */
	tank: Known;
	/** How much of the tank's water is taken, mL, 10 to 2000, and how it is measured. */
	waterMl: number;
	water: Measured['measure'];
	/** How the stock is measured. */
	dose: Measured['measure'];
	/** By how much the reading shall rise; about as much as is there when left out. */
	rise?: number;
	/** Value at full scale of the kit; the rise then stays below it. */
	fullScale?: number;
	/** Of the tank's water; 1.0233, salinity 35 at 25 °C, when left out. */
	tankGPerMl?: number;
};

/** A known amount of stock put into a known amount of the tank's water. */
export type Addition = {
	input: AdditionInput;
	water: Measured;
	dose: Measured;
	/** The kit's scale ends before the rise that was wanted. */
	isHeldByScale: boolean;
};

export type AdditionMade = {
	unit: Unit;
	/** By how much the mixture holds more than the tank's water, its dilution taken off. */
	added: number;
	addedExpandedUncertainty: number;
	/** What a kit that reads the tank right in proportion should read on the mixture. */
	expectedReading: Known & { expandedUncertainty: number };
	parts: readonly { of: 'stock' | 'dose' | 'tank water' | 'tank reading'; contribution: number }[];
};

/** A reading is to stay below full scale by this share of it. */
const BELOW_FULL_SCALE = 0.93;

/**
 * How much stock to stir into how much of the tank's water, so that a portion of the mixture, tested
 * as always, reads higher by a chosen amount.
 *
 * @throws RangeError naming the field, its range and what was found; also where the stock is too weak
 *   for the rise or the kit's scale leaves no room for one
 */
export function standardAddition(input: AdditionInput): Addition {
	const { stock, tank } = input;
	requireWithin('waterMl', input.waterMl, 10, 2000);
	requireWithin('tank', tank.value, 0, 1e6);
	const wanted = input.rise ?? tank.value;
	const room =
		input.fullScale === undefined
			? Number.POSITIVE_INFINITY
			: BELOW_FULL_SCALE * input.fullScale - tank.value;
	const rise = Math.min(wanted, room);
	if (!(rise > 0))
		throw new RangeError(
			`rise must be above 0 and end below the kit's full scale; found ${wanted}, with room for ${room}`
		);
	if (!(stock.value >= 5 * (tank.value + rise)))
		throw new RangeError(
			`stock must hold at least 5 times what the mixture shall, ${5 * (tank.value + rise)}; found ${stock.value}`
		);
	// Stock S into V of tank water A: the mixture holds (A V + S v)/(V + v).
	const doseMl = (rise * input.waterMl) / (stock.value - tank.value - rise);
	const inG = (measure: Measured['measure'], volumeMl: number, gPerMl: number, stepMl: number) => {
		const amount = measuredIn(measure) === 'mL' ? volumeMl : volumeMl / mlPerWeighedG(gPerMl);
		const step = measure.by === 'scale' ? measure.scale.divisionG : stepMl;
		return {
			measure,
			amount: Number((Math.max(1, Math.round(amount / step)) * step).toPrecision(8))
		};
	};
	const small = input.dose.by === 'syringe' && input.dose.capacityMl > 2.5 ? 0.1 : 0.01;
	return {
		input,
		water: inG(input.water, input.waterMl, input.tankGPerMl ?? 1.0233, 1),
		dose: inG(input.dose, doseMl, stock.gPerMl ?? 1, small),
		isHeldByScale: rise < wanted
	};
}

/**
 * The rise after what was really measured. The dilution of the sample by the stock is in it, and what
 * that makes uncertain: the less is known of the tank, the less of the rise.
 */
export function additionAsMade(
	{ input, ...planned }: Addition,
	found: { water?: number; dose?: number } = {}
): AdditionMade {
	const { stock, tank, unit } = input;
	const water = requireWithin('water', found.water ?? planned.water.amount, 1, 5000);
	const dose = requireWithin('dose', found.dose ?? planned.dose.amount, 1e-3, 1000);
	const mlPer = ({ measure }: Measured, gPerMl: number) =>
		measuredIn(measure) === 'mL' ? 1 : mlPerWeighedG(gPerMl);
	const perWater = mlPer(planned.water, input.tankGPerMl ?? 1.0233);
	const perDose = mlPer(planned.dose, stock.gPerMl ?? 1);
	const v = dose * perDose;
	const total = water * perWater + v;
	const share = v / total;
	const over = stock.value - tank.value;
	const added = over * share;
	const spread = (measured: Measured, amount: number) =>
		Math.hypot(
			...partsOf(measured.measure, amount).map(({ standardUncertainty }) => standardUncertainty)
		);
	const inputs = (tankSensitivity: number): UncertaintyInput[] => [
		{ name: 'stock', standardUncertainty: stock.standardUncertainty, sensitivity: share },
		{
			name: 'dose',
			standardUncertainty: spread(planned.dose, dose) * perDose,
			sensitivity: (over * (1 - share)) / total
		},
		{
			name: 'tank water',
			standardUncertainty: spread(planned.water, water) * perWater,
			sensitivity: (-over * share) / total
		},
		{
			name: 'tank reading',
			standardUncertainty: tank.standardUncertainty,
			sensitivity: tankSensitivity
		}
	];
	const rise = combineUncertainty(inputs(-share));
	const reading = combineUncertainty(inputs(1 - share));
	return {
		unit,
		added,
		addedExpandedUncertainty: 2 * rise.standardUncertainty,
		expectedReading: {
			value: tank.value + added,
			standardUncertainty: reading.standardUncertainty,
			expandedUncertainty: 2 * reading.standardUncertainty
		},
		parts: rise.contributions.map(({ name, contribution }) => ({
			of: name as AdditionMade['parts'][number]['of'],
			contribution
		}))
	};
}

/**
 * The smallest proportional fault that one test before and one after an addition would show, as a
 * share of the value: a recovery that differs from 1 by twice its standard uncertainty. A constant
 * fault, in both readings alike, is never shown.
 *
 * @param repeatabilitySd of one test, in the unit of the addition
 */
export function smallestShareShown(made: AdditionMade, repeatabilitySd: number): number {
	requireWithin('repeatabilitySd', repeatabilitySd, 0, 1e6);
	const u = Math.hypot(Math.SQRT2 * repeatabilitySd, made.addedExpandedUncertainty / 2);
	return (2 * u) / made.added;
}
