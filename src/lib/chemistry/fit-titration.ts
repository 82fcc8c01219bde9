import type { FitOptions, TitrationFit } from './fit-options';
import { describeFit } from './fit-result';
import { startOf } from './fit-start';
import { leastSquares, quadraticForm, type LeastSquares } from './least-squares';
import { mixer } from './probe-mixture';
import { modelOf, type MixedPoint, type ProbeParameters } from './probe-model';
import {
	lastDigitOfPh,
	requirePoints,
	requireTitration,
	sampleKg,
	USUAL_ADDED_SHARE,
	USUAL_READING_SD,
	type ProbePoint
} from './probe-titration';
import { requireWithin } from './require-within';

const OPEN_BELOW_PH = 4.0;
const SLOPE_NEEDS = { points: 15, from: 6.5, to: 3.5 };
/** What is thought of a slope before the readings, where they are to tell it. */
const UNKNOWN_SLOPE_SD = 0.1;
/**
 * Carbon over alkalinity before the readings: seawater has 0.85 to 0.95, dissolved carbonate 0.5; of
 * an open vessel anything from all to nothing (judgement). It settles carbon only where no reading does.
 */
const CARBON = { closed: { share: 0.8, sd: 0.25 }, open: { share: 0.55, sd: 0.45 } };
/** mmol/kg, mmol/kg, pH, 1: wider than anything that can be titrated. */
const LOWEST: ProbeParameters = [-50, -50, -5, 0.5];
const HIGHEST: ProbeParameters = [600, 600, 5, 1.5];
/** Volumes that differ by less, mL a kg of sample, are one volume. */
const LEAST_SPAN = 1e-3;
/** Weights follow the curve and the scatter, and the curve the weights; it settles in two or three. */
const PASSES = 4;

/** Where readings stand before any fit; the parts of `fitAlkalinityTitration` share it. */
function arrange(points: readonly ProbePoint[], options: FitOptions) {
	const { vessel = 'closed', openBelowPh = OPEN_BELOW_PH, slope = 'auto' } = options;
	requireWithin('openBelowPh', openBelowPh, 0, 14);
	if (vessel !== 'closed' && vessel !== 'open')
		throw new RangeError(`vessel must be closed or open; found ${String(vessel)}`);
	const sorted = points
		.map(({ addedMl, ph }, index) => ({ addedMl, ph, index }))
		.sort((a, b) => a.addedMl - b.addedMl || b.ph - a.ph);
	const isUsed = ({ ph }: ProbePoint) => vessel === 'closed' || ph <= openBelowPh;
	const usable = sorted.filter(isUsed);
	const reaches =
		usable.length >= SLOPE_NEEDS.points &&
		usable.some(({ ph }) => ph >= SLOPE_NEEDS.from) &&
		usable.some(({ ph }) => ph <= SLOPE_NEEDS.to);
	if (slope === 'fit' && !reaches)
		throw new RangeError(
			`slope can be found only from at least ${SLOPE_NEEDS.points} readings that reach from pH ${SLOPE_NEEDS.from} to ${SLOPE_NEEDS.to}${vessel === 'open' ? ', and of an open vessel not at all' : ''}; found ${usable.length}`
		);
	const isSlopeFitted = reaches && slope !== 'ideal';
	const least = isSlopeFitted ? 5 : 4;
	if (usable.length < least)
		throw new RangeError(
			`points must be at least ${least}${vessel === 'open' ? ` with pH up to ${openBelowPh}` : ''}; found ${usable.length}`
		);
	if (!(usable.at(-1)!.addedMl - usable[0]!.addedMl > LEAST_SPAN * sampleKg(options)))
		throw new RangeError('points must lie apart in volume; found all at one');
	const [start, end] = [usable[0]!, usable.at(-1)!];
	if (!(end.ph < start.ph))
		throw new RangeError(
			`points must fall in pH as acid is added; found ${start.ph} at ${start.addedMl} mL and ${end.ph} at ${end.addedMl} mL`
		);
	const mmolPerMl = options.acidMolPerL / sampleKg(options);
	const largestMl = sorted.at(-1)!.addedMl;
	// Only the ions of purified water go by it.
	const mix = mixer(options, Math.min(0.5, Math.max(1e-5, (mmolPerMl * largestMl) / 1500)));
	const all: MixedPoint[] = sorted.map((point) => ({ ...point, mixture: mix(point.addedMl) }));
	return { vessel, isUsed, isSlopeFitted, mmolPerMl, mix, all, largestMl };
}

/**
 * Alkalinity from a titration with strong acid by least squares with the full chemistry: alkalinity,
 * inorganic carbon, the meter's offset and, where the readings can tell it, the electrode's slope.
 *
 * Readings are compared in pH, each by its own weight: an error of the meter, and an error of the
 * added volume, which counts for much where the curve is steep. The scatter found scales both, but
 * never below what the meter's last digit makes. What the readings leave open (a slope, the carbon of
 * an open vessel) is bounded by what is known of such things, and widens the uncertainty.
 *
 * Not in the uncertainty: the constants themselves, a wrong salinity or temperature, drift.
 *
 * @param points readings in any order, volumes from 0 and pH from −1 to 15
 * @throws RangeError naming the field that lies outside its range, `points` when there are too few to
 *   fit, or `slope` when it is asked for and they cannot tell it
 */
export function fitAlkalinityTitration(
	points: readonly ProbePoint[],
	options: FitOptions
): TitrationFit {
	requireTitration(options);
	requirePoints(points);
	const arranged = arrange(points, options);
	const { vessel, isUsed, isSlopeFitted, mmolPerMl, all, largestMl } = arranged;
	const addedSd = requireWithin(
		'addedStandardUncertaintyMl',
		options.addedStandardUncertaintyMl ?? USUAL_ADDED_SHARE * largestMl,
		0,
		1e4
	);
	const slopeSd = isSlopeFitted
		? UNKNOWN_SLOPE_SD
		: requireWithin(
				'slopeStandardUncertainty',
				options.slopeStandardUncertainty ?? 0.01,
				1e-6,
				0.5
			);
	const carbon = CARBON[vessel];
	const used = all.filter(isUsed);
	const model = modelOf(used);
	const digitSd = lastDigitOfPh(points) / Math.sqrt(12);
	const readingSd = Math.max(USUAL_READING_SD, digitSd);

	/** Standard deviations from the curve: the meter's, and the volume's times the steepness. */
	const deviationsAt = (parameters: ProbeParameters) =>
		model(parameters).map(({ byAcid }, i) =>
			Math.hypot(
				readingSd,
				((byAcid * options.acidMolPerL) / 1000 / used[i]!.mixture.massKg) * addedSd
			)
		);
	const fitWith = (start: ProbeParameters, deviations: readonly number[]): LeastSquares => {
		const carbonSd = carbon.sd * Math.max(0.05, Math.abs(start[0]));
		return leastSquares(
			{
				observed: [...used.map(({ ph }, i) => ph / deviations[i]!), 0, 1 / slopeSd],
				at: (p) => {
					const modelled = model(p as unknown as ProbeParameters);
					return {
						values: [
							...modelled.map(({ ph }, i) => ph / deviations[i]!),
							(p[1]! - carbon.share * p[0]!) / carbonSd,
							p[3]! / slopeSd
						],
						jacobian: [
							...modelled.map(({ byParameter }, i) =>
								byParameter.map((each) => each / deviations[i]!)
							),
							[-carbon.share / carbonSd, 1 / carbonSd, 0, 0],
							[0, 0, 0, 1 / slopeSd]
						]
					};
				},
				lowest: LOWEST,
				highest: HIGHEST
			},
			start
		);
	};

	const volumesMl = all.map(({ addedMl }) => addedMl);
	const shares = vessel === 'open' ? [0.1, 0.9] : [0.9];
	let parameters = startOf(used, volumesMl, mmolPerMl, shares);
	let scale = 1;
	for (let pass = 1; ; pass++) {
		const unscaled = deviationsAt(parameters);
		const deviations = unscaled.map((each) => each * scale);
		const fit = fitWith(parameters, deviations);
		if (!fit.covariance.every((row) => row.every((each) => Number.isFinite(each))))
			throw new RangeError(
				'points must tell alkalinity from the offset of the meter; these do not'
			);
		parameters = fit.parameters as unknown as ProbeParameters;
		const readingRows = fit.jacobian.slice(0, used.length);
		// Where something was known before, the readings have to settle less than a whole parameter.
		const settled = readingRows.reduce((sum, row) => sum + quadraticForm(row, fit.covariance), 0);
		const degreesOfFreedom = used.length - settled;
		const squares = model(parameters).reduce(
			(sum, { ph }, i) => sum + ((used[i]!.ph - ph) / unscaled[i]!) ** 2,
			0
		);
		const found = Math.sqrt(squares / degreesOfFreedom);
		if (pass === PASSES)
			return describeFit({
				...arranged,
				options,
				fit,
				parameters,
				deviations,
				degreesOfFreedom,
				residualSdPh: readingSd * found
			});
		scale = Math.max(found, digitSd / readingSd);
	}
}
