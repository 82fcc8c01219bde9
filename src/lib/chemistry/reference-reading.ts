import { densityKgPerL } from './density';
import { acidToEndMl, type DyeShifts, type End } from './end-hue';
import { mediumOf, type Matrix } from './matrix';
import { requireWithin } from './require-within';
import { dicAtAlkalinityAndPh } from './speciation';
import { dkhFromMeqPerL, molPerKgFromDkh } from './units';
import { addIndicator, fillVessel, type Vessel } from './vessel';

/** A solution whose alkalinity is known. */
export type ReferenceSolution = {
	/** Its alkalinity, dKH, 0.5 to 40. */
	alkalinityDkh: number;
	/** In what it was made: purified water, a solution of NaCl, or water with sea salt. */
	matrix: Matrix;
	/** g of NaCl per kg or practical salinity, 0 to 45; 35 when left out; nothing in purified water. */
	salinity?: number;
	/**
	 * What brings the alkalinity: 'bicarbonate' as much carbon as alkalinity, 'carbonate' half as much;
	 * 'seawater' (when left out, in a matrix of seawater) as much as water of pH 8.1 holds.
	 */
	madeWith?: 'bicarbonate' | 'carbonate' | 'seawater';
	/** 0 to 40; 25 when left out. */
	temperatureC?: number;
};

/** The drop test that reads it. What is left out is that of an ordinary kit with a mixed indicator. */
export type DropTest = {
	/** 0.5 to 100 mL; 5 when left out. */
	sampleVolumeMl?: number;
	/** 0.001 to 1 mol/L; 0.1 when left out. */
	acidMolPerL?: number;
	indicator?: {
		volumeMl: number;
		dyes: readonly { dyeId: string; molPerL: number; addedAs: 'acid' | 'salt' }[];
	};
	/**
	 * Where it ends: middle and half-width of the hues that people stop at; 335 ± 15, violet to rose,
	 * when left out. Or the reading of a pH meter that was set on buffers.
	 */
	end?: { hueDegrees: number; halfWidthDegrees: number } | { meterPh: number };
	/** Share of the sample's carbon that leaves by the end: lowest and highest; 0 to 0.6 when left out. */
	carbonLost?: { low: number; high: number };
};

export type ReferenceReading = {
	/** What the test shows less what is there, dKH: to be expected of a kit that is right in seawater. */
	differenceDkh: number;
	/** From CO2 lost, the colour chosen and the constants of the dyes. */
	standardUncertaintyDkh: number;
	/** The same for each cause, dKH. */
	causes: { carbonDioxide: number; endPoint: number; dyes: number };
	/** What the test is expected to show, dKH. */
	expectedDkh: number;
	/** At the corners of what was looked at. */
	cases: readonly { carbonLost: number; hueDegrees: number | null; differenceDkh: number }[];
};

/** Bromocresol green and methyl red, 5 to 1 by weight: the usual mixture (common practice, no source). */
const MIXED_INDICATOR = {
	volumeMl: 0.05,
	dyes: [
		{ dyeId: 'bromocresolGreen', molPerL: 1.433e-3, addedAs: 'salt' as const },
		{ dyeId: 'methylRed', molPerL: 0.743e-3, addedAs: 'salt' as const }
	]
};
const USUAL_END = { hueDegrees: 335, halfWidthDegrees: 15 };
const USUAL_LOSS = { low: 0, high: 0.6 };
/** Ordinary seawater, for which a kit's leaflet is written. */
const ORDINARY = { salinity: 35, temperatureC: 25, ph: 8.1 };
/** pH of a meter set on buffers less pH on the total scale in seawater, and how sure (from memory). */
const METER_OVER_TOTAL = { ph: 0.13, sd: 0.03 };
/** Standard uncertainty of a dye's pK in plain water against that in seawater, from their records. */
const PK_SD: DyeShifts = {
	bromocresolGreen: 0.05,
	methylRed: 0.1,
	bromophenolBlue: 0.05,
	methylOrange: 0.1
};

type Range = { middle: number; sd: number };
/** Middle and standard deviation of what may lie anywhere between. */
const even = (low: number, high: number): Range => ({
	middle: (low + high) / 2,
	sd: (high - low) / Math.sqrt(12)
});

function sampleOf(solution: Required<ReferenceSolution>, volumeMl: number): Vessel {
	const { matrix, salinity, temperatureC, alkalinityDkh, madeWith } = solution;
	const salt = matrix === 'purified' ? 0 : salinity;
	const alkalinityMolPerKg = molPerKgFromDkh(alkalinityDkh, densityKgPerL(salt, temperatureC));
	const perCarbon = { bicarbonate: 1, carbonate: 2 };
	const dicMolPerKg =
		madeWith === 'seawater'
			? dicAtAlkalinityAndPh(alkalinityMolPerKg, ORDINARY.ph, {
					medium: mediumOf(matrix, salt, temperatureC, alkalinityMolPerKg),
					dyes: []
				})
			: alkalinityMolPerKg / perCarbon[madeWith];
	return fillVessel({
		matrix,
		salinity: salt,
		temperatureC,
		alkalinityMolPerKg,
		dicMolPerKg: Math.max(0, dicMolPerKg),
		volumeMl
	});
}

/**
 * What a drop test that is right for ordinary seawater (salinity 35, 25 °C, pH 8.1) reads on a known
 * solution of other water. The same hue stands for another pH there, and another share of carbon is
 * bicarbonate at it; so a sound kit reads a little off, and must not be corrected for it.
 *
 * The difference is that between the acid which brings the solution to the end and that which brings
 * seawater of the same alkalinity there, in the same vial, with the same share of CO2 lost. It is worked
 * out about the middle of what people do; its uncertainty holds CO2 lost, the colour chosen and the
 * dyes' constants, which are known to 0.05 to 0.1 in pK.
 *
 * @throws RangeError naming the field that lies outside its range, or `end` when the indicator never
 *   shows that colour
 */
export function referenceReading(
	solution: ReferenceSolution,
	test: DropTest = {}
): ReferenceReading {
	const { matrix } = solution;
	const reference: Required<ReferenceSolution> = {
		salinity: ORDINARY.salinity,
		temperatureC: ORDINARY.temperatureC,
		madeWith: matrix === 'seawater' ? 'seawater' : 'bicarbonate',
		...solution
	};
	requireWithin('alkalinityDkh', reference.alkalinityDkh, 0.5, 40);
	requireWithin('salinity', reference.salinity, 0, 45);
	requireWithin('temperatureC', reference.temperatureC, 0, 40);
	const volumeMl = requireWithin('sampleVolumeMl', test.sampleVolumeMl ?? 5, 0.5, 100);
	const acidMolPerL = requireWithin('acidMolPerL', test.acidMolPerL ?? 0.1, 0.001, 1);
	const { indicator = MIXED_INDICATOR, end = USUAL_END, carbonLost = USUAL_LOSS } = test;
	requireWithin('carbonLost.low', carbonLost.low, 0, 1);
	requireWithin('carbonLost.high', carbonLost.high, carbonLost.low, 1);

	const seawater: Required<ReferenceSolution> = {
		...reference,
		matrix: 'seawater',
		madeWith: 'seawater',
		salinity: ORDINARY.salinity,
		temperatureC: ORDINARY.temperatureC
	};
	const vials = [reference, seawater].map((water) =>
		addIndicator(sampleOf(water, volumeMl), indicator)
	) as [Vessel, Vessel];
	const { dyePhShift } = mediumOf(
		matrix,
		matrix === 'purified' ? 0 : reference.salinity,
		reference.temperatureC,
		0.003
	);
	/** End of the solution and of seawater; a meter shows activity in both. */
	const endsAt = (place: number, meterOff: number): [End, End] => {
		if (!('meterPh' in end)) return [{ hueDegrees: place }, { hueDegrees: place }];
		const inSeawater = { ph: place - METER_OVER_TOTAL.ph - meterOff };
		return [matrix === 'seawater' ? inSeawater : { ph: place - dyePhShift }, inSeawater];
	};
	const difference = (lost: number, place: number, shifts: DyeShifts = {}, meterOff = 0) => {
		const ends = endsAt(place, meterOff);
		// A dye's constant is uncertain in one water against the other: moved in the solution alone.
		const [found, own] = vials.map((vial, i) =>
			acidToEndMl(vial, 1 - lost, acidMolPerL, ends[i]!, i === 0 ? shifts : {})
		);
		if (found === null || found === undefined || own === null || own === undefined)
			throw new RangeError(
				`end must be one that the test comes to; found ${JSON.stringify(end)}, which it never shows`
			);
		return dkhFromMeqPerL((1000 * acidMolPerL * (found - own)) / volumeMl);
	};

	const lost = even(carbonLost.low, carbonLost.high);
	const place: Range =
		'meterPh' in end
			? { middle: requireWithin('end.meterPh', end.meterPh, 3, 7), sd: 0 }
			: even(
					requireWithin('end.hueDegrees', end.hueDegrees, 120, 480) - end.halfWidthDegrees,
					end.hueDegrees + requireWithin('end.halfWidthDegrees', end.halfWidthDegrees, 0, 90)
				);
	// Two places a standard deviation off the middle stand for the whole of an even spread.
	const corners = [-1, 1].flatMap((a) =>
		[-1, 1].map((b) => {
			const at = { carbonLost: lost.middle + a * lost.sd, place: place.middle + b * place.sd };
			return { ...at, a, b, differenceDkh: difference(at.carbonLost, at.place) };
		})
	);
	const differenceDkh = corners.reduce((sum, each) => sum + each.differenceDkh, 0) / 4;
	const halfStep = (sign: (corner: { a: number; b: number }) => number) =>
		Math.abs(corners.reduce((sum, each) => sum + sign(each) * each.differenceDkh, 0)) / 4;
	const carbonDioxide = halfStep(({ a }) => a);
	const isMeter = 'meterPh' in end;
	const middle = difference(lost.middle, place.middle);
	const endPoint = isMeter
		? Math.abs(difference(lost.middle, place.middle, {}, METER_OVER_TOTAL.sd) - middle)
		: halfStep(({ b }) => b);
	const isOtherWater = matrix !== 'seawater';
	const dyes =
		isMeter || !isOtherWater
			? 0
			: Math.hypot(
					...indicator.dyes.map(
						({ dyeId }) =>
							difference(lost.middle, place.middle, { [dyeId]: PK_SD[dyeId] ?? 0.1 }) - middle
					)
				);
	return {
		differenceDkh,
		standardUncertaintyDkh: Math.hypot(carbonDioxide, endPoint, dyes),
		causes: { carbonDioxide, endPoint, dyes },
		expectedDkh: reference.alkalinityDkh + differenceDkh,
		cases: corners.map((corner) => ({
			carbonLost: corner.carbonLost,
			hueDegrees: isMeter ? null : corner.place,
			differenceDkh: corner.differenceDkh
		}))
	};
}
