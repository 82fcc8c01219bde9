import { mixer, type Mixture } from './probe-mixture';
import {
	lastDigitOfPh,
	proportionalUncertainty,
	requirePoints,
	requireTitration,
	sampleDensity,
	sampleKg,
	USUAL_ADDED_SHARE,
	USUAL_READING_SD,
	type ProbePoint,
	type ProbeTitration
} from './probe-titration';
import { requireWithin } from './require-within';
import { alkalinityAt } from './speciation';
import { straightLine, type StraightLine } from './straight-line';
import { dkhFromMolPerKg } from './units';

/**
 * Which function of the readings is drawn as a line against the acid added:
 * - gran1952: (V0 + v) · 10^−pH, in mL. Gran 1952 (Analyst 77:661). It takes all acid past the end to
 *   stay free in the same proportion, and carbon to be gone: in closed seawater it reads low, by
 *   0.3 % in the window 3.0 to 3.5 and more above.
 * - hanssonJagner1973: mass · (free hydrogen ion + hydrogen sulfate + hydrogen fluoride − bicarbonate
 *   and the rest of alkalinity), in mmol; the meter's offset is found from the line's own slope, again
 *   and again until it stays. Hansson & Jagner 1973 (Anal. Chim. Acta 65:363), from memory.
 */
export type GranFunction = 'gran1952' | 'hanssonJagner1973';

export type GranOptions = ProbeTitration & {
	/** 'gran1952' when left out. */
	granFunction?: GranFunction;
	/** Readings that the line is laid through, as the meter shows them; 3.0 to 3.5 when left out. */
	windowPh?: { low: number; high: number };
	/**
	 * Inorganic carbon still in the sample, mol/kg, for hanssonJagner1973: 0 when it was driven off.
	 * When left out nine tenths of the alkalinity, as in closed seawater of pH about 8.2; a tenth more
	 * or less moves the end by less than 0.05 % in the window 3.0 to 3.5.
	 */
	dicMolPerKg?: number;
	/** Random standard uncertainty of each added volume, mL; 0.2 % of the largest when left out (judgement). */
	addedStandardUncertaintyMl?: number;
};

export type GranPoint = ProbePoint & {
	/** Value of the Gran function, and that of the line there. */
	value: number;
	lineValue: number;
	residual: number;
	/** Whether its pH lies in the window. */
	isUsed: boolean;
};

export type GranEndPoint = {
	granFunction: GranFunction;
	windowPh: { low: number; high: number };
	/** Acid at which alkalinity has become nothing, mL. */
	endVolumeMl: number;
	/** From the scatter about the line alone. */
	endVolumeStandardUncertaintyMl: number;
	/** Points used less 2: so few stand behind that uncertainty. */
	degreesOfFreedom: number;
	/** In the unit of the function per mL, and in that unit. */
	line: { slope: number; intercept: number };
	/** All readings by rising volume; of those outside the window the residual is no test of anything. */
	points: readonly GranPoint[];
	pointsUsed: number;
	alkalinityMolPerKg: number;
	alkalinityDkh: number;
	/** Scatter, acid, sample and delivery together. What the function itself leaves out is not in it. */
	alkalinityStandardUncertaintyMolPerKg: number;
	alkalinityStandardUncertaintyDkh: number;
	/** Meter's reading less pH on the free scale, from the line's slope. */
	offsetPh: number;
};

/** Window where nothing else is asked for: low enough for bicarbonate to be all but gone. */
export const GRAN_WINDOW_PH = { low: 3.0, high: 3.5 };
/** Carbon over alkalinity in seawater of pH 8.2. */
const USUAL_CARBON_SHARE = 0.9;

/** Value of a Gran function and its derivative with respect to pH, at a reading. */
type Valued = { value: number; perPh: number };

const plain =
	(sampleMl: number) =>
	({ addedMl, ph }: ProbePoint): Valued => {
		const value = (sampleMl + addedMl) * 10 ** -ph;
		return { value, perPh: -Math.LN10 * value };
	};

/** In mmol. */
const withSideReactions =
	(mixtures: ReadonlyMap<number, Mixture>, dicMolPerKg: number, offsetPh: number) =>
	({ addedMl, ph }: ProbePoint): Valued => {
		const { massKg, medium, sampleShare, freeShift } = mixtures.get(addedMl)!;
		const out = { value: 0, slope: 0 };
		const h = 10 ** -(ph - offsetPh - freeShift);
		alkalinityAt(h, { medium, dicMolPerKg: dicMolPerKg * sampleShare, dyes: [] }, out);
		return { value: -1000 * massKg * out.value, perPh: -1000 * massKg * out.slope };
	};

/** With acid added the pH falls; one that stands still or rises has no end. */
function requireFalling(used: readonly ProbePoint[]): void {
	const [first, last] = [used[0]!, used.at(-1)!];
	if (!(last.ph < first.ph && last.addedMl > first.addedMl))
		throw new RangeError(
			`points must fall in pH as acid is added; found ${first.ph} at ${first.addedMl} mL and ${last.ph} at ${last.addedMl} mL`
		);
}

/** Acid that is used up before any was added is no end. */
function requireEnd({ slope, zeroAt }: StraightLine): void {
	if (!(slope > 0 && zeroAt >= 0))
		throw new RangeError(
			`points must lie on a rising line that meets nothing at 0 mL of acid or more; found a slope of ${slope} and ${zeroAt} mL`
		);
}

/**
 * End point of a titration with strong acid by a Gran function: a straight line through the points
 * past the end, carried back to nothing. Points count by how well they are known, with the same error
 * in pH at each, so that a constant offset of the meter cancels.
 *
 * @param points readings in any order, volumes from 0 and pH from −1 to 15
 * @throws RangeError naming the field that lies outside its range, or `points` when fewer than three
 *   lie in the window, their pH does not fall as acid is added, or their line has no end
 */
export function granEndPoint(points: readonly ProbePoint[], options: GranOptions): GranEndPoint {
	requireTitration(options);
	requirePoints(points);
	const { granFunction = 'gran1952', windowPh = GRAN_WINDOW_PH, acidMolPerL } = options;
	requireWithin('windowPh.low', windowPh.low, 0, 7);
	requireWithin('windowPh.high', windowPh.high, windowPh.low, 7);
	requireWithin('dicMolPerKg', options.dicMolPerKg ?? 0, 0, 0.5);
	const sorted = [...points].sort((a, b) => a.addedMl - b.addedMl);
	const isUsed = ({ ph }: ProbePoint) => ph >= windowPh.low && ph <= windowPh.high;
	const used = sorted.filter(isUsed);
	if (used.length < 3)
		throw new RangeError(
			`points must hold at least 3 with pH from ${windowPh.low} to ${windowPh.high}; found ${used.length}`
		);
	requireFalling(used);
	const largestMl = sorted.at(-1)!.addedMl;
	const addedSd = requireWithin(
		'addedStandardUncertaintyMl',
		options.addedStandardUncertaintyMl ?? USUAL_ADDED_SHARE * largestMl,
		0,
		1e4
	);
	const leastChiSquare = lastDigitOfPh(points) ** 2 / 12 / USUAL_READING_SD ** 2;

	const lineOf = (valueAt: (point: ProbePoint) => Valued): StraightLine => {
		const values = used.map(valueAt);
		const lay = (slope: number) =>
			straightLine(
				used.map(({ addedMl }) => addedMl),
				values.map(({ value }) => value),
				values.map(({ perPh }) => (perPh * USUAL_READING_SD) ** 2 + (slope * addedSd) ** 2),
				leastChiSquare
			);
		return lay(lay(0).slope);
	};

	const startKg = sampleKg(options);
	const sampleMl = (1000 * startKg) / sampleDensity(options);
	// In mL of mixture times mol/kg of hydrogen ion, a millilitre of acid brings so much.
	const offsetOf = (slope: number, mixture: Mixture) => {
		const { constants, totals } = mixture.medium;
		const bound =
			1 + totals.sulfateMolPerKg / constants.kS + totals.fluorideMolPerKg / constants.kF;
		return -Math.log10((slope / acidMolPerL) * bound * sampleDensity(options));
	};
	let valueAt: (point: ProbePoint) => Valued = plain(sampleMl);
	let line = lineOf(valueAt);
	requireEnd(line);
	const aboutMolPerKg = (acidMolPerL * line.zeroAt) / 1000 / startKg;
	const mix = mixer(options, Math.min(0.5, Math.max(Math.abs(aboutMolPerKg), 1e-5)));
	let offsetPh = offsetOf(line.slope, mix(used[0]!.addedMl));
	if (granFunction === 'hanssonJagner1973') {
		const mixtures = new Map(sorted.map(({ addedMl }) => [addedMl, mix(addedMl)]));
		for (let i = 0, change = 1; i < 50 && Math.abs(change) > 1e-9; i++) {
			const alkalinity = (acidMolPerL * line.zeroAt) / 1000 / startKg;
			const dic = options.dicMolPerKg ?? Math.max(0, USUAL_CARBON_SHARE * alkalinity);
			valueAt = withSideReactions(mixtures, dic, offsetPh);
			line = lineOf(valueAt);
			requireEnd(line);
			// A line of slope c has found all the acid: mmol per mL is mol per litre.
			change = -Math.log10(line.slope / acidMolPerL);
			offsetPh += change;
		}
	}

	const alkalinityMolPerKg = (acidMolPerL * line.zeroAt) / 1000 / startKg;
	const alkalinityStandardUncertaintyMolPerKg =
		Math.abs(alkalinityMolPerKg) *
		Math.hypot(line.zeroStandardUncertainty / line.zeroAt, proportionalUncertainty(options));
	const density = sampleDensity(options);
	return {
		granFunction,
		windowPh,
		endVolumeMl: line.zeroAt,
		endVolumeStandardUncertaintyMl: line.zeroStandardUncertainty,
		degreesOfFreedom: line.degreesOfFreedom,
		line: { slope: line.slope, intercept: line.intercept },
		points: sorted.map((point) => {
			const { value } = valueAt(point);
			const lineValue = line.intercept + line.slope * point.addedMl;
			return { ...point, value, lineValue, residual: value - lineValue, isUsed: isUsed(point) };
		}),
		pointsUsed: used.length,
		alkalinityMolPerKg,
		alkalinityDkh: dkhFromMolPerKg(alkalinityMolPerKg, density),
		alkalinityStandardUncertaintyMolPerKg,
		alkalinityStandardUncertaintyDkh: dkhFromMolPerKg(
			alkalinityStandardUncertaintyMolPerKg,
			density
		),
		offsetPh
	};
}
