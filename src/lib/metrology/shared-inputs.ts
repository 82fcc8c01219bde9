import type { Kit } from '../kits';
import { usedMlIn, type BudgetInput, type BudgetLineId, type BudgetReading } from './budget-input';
import { degreesOfDoubt, DOUBT, even, step, triangular } from './judged';
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
export const COLOUR_DROPS = 0.25;
/** Tip and nozzle of a 1 mL syringe hold 0.15 to 0.20 mL; common practice, no source. */
const TIP_HALF_WIDTH_ML = 0.025;
/** Volume of water grows by this per K. Source: EURACHEM/CITAC CG4, QUAM:2012, appendix A3. */
const WATER_PER_K = 2.1e-4;
/** Polypropylene, three times its linear expansion of 1.3e-4 per K (handbook value, from memory). */
const PLASTIC_PER_K = 4e-4;

type Figure = { share: number; doubt: number; origin: string };

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

function sampleFigure({ assumed, sample }: Kit, reading: BudgetReading): Figure {
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

/** Scale of the syringe or burette, as a share of the titrant used, or mL where that is the limit. */
function scaleInput(kit: Kit, reading: BudgetReading): Omit<BudgetInput, 'id' | 'kind'> {
	const { delivery, assumed } = kit;
	const usedMl = usedMlIn(reading);
	const owner = assumed?.deliveryHalfWidth;
	const isSyringe = delivery.by === 'syringe';
	const limitMl = isSyringe
		? syringeLimitMl(delivery.capacityMl, usedMl)
		: buretteLimitMl(delivery.by === 'burette' ? delivery.capacityMl : 10);
	return {
		name: isSyringe ? 'syringe scale' : 'burette scale',
		standardUncertainty: owner === undefined ? triangular(limitMl) : even(owner) * usedMl,
		sensitivity: reading.valuePerMl,
		degreesOfFreedom: degreesOfDoubt(DOUBT.sourced),
		origin:
			owner !== undefined
				? "the owner's own figure"
				: isSyringe
					? 'limits of ISO 7886-1 for the volume expelled'
					: 'limits of ISO 385, class B'
	};
}

/** Decimals to which a leaflet's table is printed. */
function printedStep(rows: readonly { value: number }[]): number {
	const decimals = rows.map(({ value }) => {
		for (let places = 0; places < 6; places++)
			if (Math.abs(value - Number(value.toFixed(places))) < 1e-9) return places;
		return 6;
	});
	return 10 ** -Math.max(...decimals);
}

/**
 * Water warmer or colder than 20 °C. Sample and titrant warmed alike, in ware of the same plastic,
 * cancel; what is left is that one of them may have cooled meanwhile.
 */
function temperatureShare({ sample, delivery }: Kit, temperatureC: number): number {
	const isSameWare = sample.measuredIn === 'syringe' && delivery.by === 'syringe';
	return even((WATER_PER_K + (isSameWare ? 0 : PLASTIC_PER_K)) * Math.abs(temperatureC - 20));
}

/** Standard uncertainty of the volume of a kit's tip and nozzle, mL: the owner's figure, or the common one. */
export function tipSdMlOf(kit: Kit): number {
	return kit.assumed?.tipSdMl ?? even(TIP_HALF_WIDTH_ML);
}

/** What ware, bottles, leaflet and habit do alike to every test. */
export function sharedInputs(kit: Kit, reading: BudgetReading): BudgetInput[] {
	const { delivery, assumed, conversion, sample } = kit;
	const size = Math.abs(reading.value);
	const inputs: BudgetInput[] = [];
	const add = (
		id: BudgetLineId,
		name: string,
		{ share, doubt, origin }: Figure,
		sensitivity = size
	) =>
		inputs.push({
			id,
			name,
			kind: 'shared',
			standardUncertainty: share,
			sensitivity,
			degreesOfFreedom: degreesOfDoubt(doubt),
			origin
		});
	add(
		'sampleVolume',
		sample.measuredIn === 'syringe' ? 'sample volume' : 'filling to the line',
		sampleFigure(kit, reading)
	);
	add(
		'titrantStrength',
		'titrant strength',
		figureOf(assumed?.titrantSd, asIs, {
			share: TITRANT,
			doubt: DOUBT.unsourced,
			origin: '1 % within its date; common practice, no source'
		})
	);
	if (delivery.by === 'dropper')
		add(
			'dropSize',
			'size of a drop',
			figureOf(assumed?.dropSd, asIs, {
				share: triangular(DROP_LIMIT),
				doubt: DOUBT.sourced,
				origin: 'limit of USP <1101> for a dropper, 10 %'
			})
		);
	else inputs.push({ id: 'deliveryScale', kind: 'shared', ...scaleInput(kit, reading) });
	const dropValue = delivery.dropMl * reading.valuePerMl;
	add(
		'endColour',
		'which colour is the end',
		figureOf(assumed?.colourDrops, asIs, {
			share: COLOUR_DROPS,
			doubt: DOUBT.unsourced,
			origin: 'a quarter of a drop; common practice, no source'
		}),
		dropValue
	);
	const endStep = reading.endStepDrops ?? 1;
	// A leaflet's mean half-drop is that of whole drops, if it reckons with one at all.
	if (endStep < 1)
		add(
			'leafletHalfDrop',
			"the leaflet's half-drop",
			{
				share: even((1 - endStep) / 2),
				doubt: DOUBT.sourced,
				origin: 'the leaflet may or may not reckon with whole drops'
			},
			dropValue
		);
	if (reading.tipSdMl)
		add(
			'tipVolume',
			'volume of the tip',
			{ share: reading.tipSdMl, doubt: DOUBT.unsourced, origin: 'the count goes through the tip' },
			reading.valuePerMl
		);
	if (conversion.kind === 'rows') {
		const nominalMl = sample.volumes[0]?.volumeMl ?? Number.NaN;
		add(
			'tableRounding',
			"rounding of the leaflet's table",
			{ share: step(printedStep(conversion.rows)), doubt: 0.1, origin: 'last digit printed' },
			nominalMl / (reading.sampleVolumeMl ?? nominalMl)
		);
	}
	if (reading.temperatureC !== undefined && reading.temperatureC !== 20)
		add('temperature', 'temperature', {
			share: temperatureShare(kit, reading.temperatureC),
			doubt: DOUBT.sourced,
			origin: 'water 2.1e-4 per K (EURACHEM/CITAC CG4), plastic 4e-4 (handbook, from memory)'
		});
	return inputs;
}
