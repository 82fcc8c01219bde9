import type { Kit } from '../kits';
import { usedMlIn, type BudgetReading } from './budget-input';
import { DOUBT, even, step, triangular } from './judged';
import { buretteLimitMl, syringeLimitMl } from './ware-limits';

/** Half-width of a vial's line, as a share of its volume; common practice, no source. */
const VIAL_LINE = 0.02;
/** Strength of a lot of titrant within its date, standard uncertainty; common practice, no source. */
const TITRANT = 0.01;
/** A dropper's drop against its nominal one: at most so much either way. Source: USP <1101>, 20 drops per mL ± 10 %. */
const DROP_LIMIT = 0.1;
/**
 * How finely a colour is judged, in drops: so much anew at each test, and as much again by which one
 * person's notion of the end colour differs from the leaflet's. With whole drops that puts two people
 * about two thirds of a drop apart; half a drop to a whole one is common practice, no source.
 */
const COLOUR_DROPS = 0.25;
/** Tip and nozzle of a 1 mL syringe hold 0.15 to 0.20 mL; common practice, no source. */
const TIP_HALF_WIDTH_ML = 0.025;
/** Volume of water grows by this per K. Source: EURACHEM/CITAC CG4, QUAM:2012, appendix A3. */
const WATER_PER_K = 2.1e-4;
/** Polypropylene, three times its linear expansion of 1.3e-4 per K (handbook value, from memory). */
const PLASTIC_PER_K = 4e-4;

/** A standard uncertainty, as a share or in the unit of what it belongs to, and how far to trust it. */
export type Figure = { share: number; doubt: number; origin: string };

/** The owner's figure where there is one, else the project's. */
function figureOf(
	owner: number | undefined,
	distribution: (a: number) => number,
	other: Figure
): Figure {
	return owner === undefined
		? other
		: { share: distribution(owner), doubt: DOUBT.sourced, origin: "the owner's own figure" };
}
const asIs = (sd: number) => sd;

/** Volume that the sample's ware gives over what its mark says, as a share. */
export function sampleFigure({ assumed, sample }: Kit, reading: BudgetReading): Figure {
	const nominalMl = sample.volumes[0]?.volumeMl ?? Number.NaN;
	const volumeMl = reading.sampleVolumeMl ?? nominalMl;
	// The kit's largest sample is taken for the capacity of the syringe that measures all of them.
	const capacityMl = Math.max(volumeMl, ...sample.volumes.map((each) => each.volumeMl));
	const other =
		sample.measuredIn === 'syringe'
			? {
					share: triangular(syringeLimitMl(capacityMl, volumeMl) / volumeMl),
					doubt: DOUBT.sourced,
					origin: 'limits of ISO 7886-1 for a syringe that holds the largest sample'
				}
			: {
					share: even(VIAL_LINE),
					doubt: DOUBT.unsourced,
					origin: 'line of a vial to 2 %; common practice, no source'
				};
	return figureOf(assumed?.sampleHalfWidth, even, other);
}

/**
 * Scale of the syringe or burette, mL. For a syringe the limits of its standard hold as they stand: a
 * part of what is expelled from half its capacity up, and from there down a part of the capacity too,
 * so that little titrant from a large barrel is the less sure. Single pieces are mostly nearer, and a
 * leaflet takes up what its make has in common; how much nearer nobody has published, so it is left to
 * the triangle, and to whoever weighs.
 */
export function scaleFigure({ delivery, assumed }: Kit, reading: BudgetReading): Figure {
	const usedMl = usedMlIn(reading);
	const owner = assumed?.deliveryHalfWidth;
	const isSyringe = delivery.by === 'syringe';
	const limitMl = isSyringe
		? syringeLimitMl(delivery.capacityMl, usedMl)
		: buretteLimitMl(delivery.by === 'burette' ? delivery.capacityMl : 10);
	return figureOf(owner, (halfWidth) => even(halfWidth) * usedMl, {
		share: triangular(limitMl),
		doubt: DOUBT.sourced,
		origin: isSyringe
			? 'limits of ISO 7886-1 for the volume expelled'
			: 'limits of ISO 385, class B'
	});
}

type Table = Extract<Kit['conversion'], { kind: 'rows' }>;

/** Last digit to which a leaflet's table is printed. */
function printedStep({ rows, valueDecimals = 0 }: Table): number {
	const decimals = rows.map(({ value }) => {
		for (let places = 0; places < 6; places++)
			if (Math.abs(value - Number(value.toFixed(places))) < 1e-9) return places;
		return 6;
	});
	return 10 ** -Math.max(valueDecimals, ...decimals);
}

/**
 * Water warmer or colder than 20 °C. Sample and titrant warmed alike, in ware of the same plastic,
 * cancel; what is left is that one of them may have cooled meanwhile.
 */
export function temperatureFigure({ sample, delivery }: Kit, temperatureC: number): Figure {
	const isSameWare = sample.measuredIn === 'syringe' && delivery.by === 'syringe';
	const perK = WATER_PER_K + (isSameWare ? 0 : PLASTIC_PER_K);
	return {
		share: even(perK * Math.abs(temperatureC - 20)),
		doubt: DOUBT.sourced,
		origin: 'water 2.1e-4 per K (EURACHEM/CITAC CG4), plastic 4e-4 (handbook, from memory)'
	};
}

/** Standard uncertainty of the volume of a kit's tip and nozzle, mL: the owner's figure, or the common one. */
export function tipSdMlOf(kit: Kit): number {
	return kit.assumed?.tipSdMl ?? even(TIP_HALF_WIDTH_ML);
}

/** Strength of the titrant, as a share. */
export const strengthFigure = ({ assumed }: Kit): Figure =>
	figureOf(assumed?.titrantSd, asIs, {
		share: TITRANT,
		doubt: DOUBT.unsourced,
		origin: '1 % within its date; common practice, no source'
	});

/** Size of a dropper's drop, as a share. */
export const dropFigure = ({ assumed }: Kit): Figure =>
	figureOf(assumed?.dropSd, asIs, {
		share: triangular(DROP_LIMIT),
		doubt: DOUBT.sourced,
		origin: 'limit of USP <1101> for a dropper, 10 %'
	});

/** How finely the colour is judged, in drops. */
export const colourFigure = ({ assumed }: Kit): Figure =>
	figureOf(assumed?.colourDrops, asIs, {
		share: COLOUR_DROPS,
		doubt: DOUBT.unsourced,
		origin: 'a quarter of a drop; common practice, no source'
	});

/** The last printed digit of a table, in the kit's unit. */
export const tableFigure = (table: Table): Figure => ({
	share: step(printedStep(table)),
	doubt: 0.1,
	origin: 'last digit printed'
});
