import type { FitOptions, FittedPoint, TitrationFit } from './fit-options';
import { causeLeftOver } from './fit-left-over';
import { quadraticForm, type LeastSquares } from './least-squares';
import type { Mixture } from './probe-mixture';
import { modelOf, modelReading, type MixedPoint, type ProbeParameters } from './probe-model';
import { proportionalUncertainty, sampleDensity, type ProbePoint } from './probe-titration';
import { dkhFromMolPerKg } from './units';

const CURVE_POINTS = 101;

/** What a fit has come to. */
export type Fitted = {
	options: FitOptions;
	vessel: 'closed' | 'open';
	isSlopeFitted: boolean;
	mmolPerMl: number;
	mix: (addedMl: number) => Mixture;
	all: readonly MixedPoint[];
	isUsed: (point: ProbePoint) => boolean;
	largestMl: number;
	fit: LeastSquares;
	parameters: ProbeParameters;
	/** Standard deviations of the points used, as the fit took them. */
	deviations: readonly number[];
	degreesOfFreedom: number;
	residualSdPh: number;
};

/** Externally studentised residual: its size over what the other points make one expect. */
function studentized(
	residual: number,
	leverage: number,
	chiSquare: number,
	degreesOfFreedom: number
): number {
	const kept = Math.max(1e-9, 1 - leverage);
	const withoutIt = (chiSquare - residual ** 2 / kept) / Math.max(1, degreesOfFreedom - 1);
	return withoutIt > 0 ? residual / Math.sqrt(withoutIt * kept) : 0;
}

function pointsOf({ all, isUsed, parameters, deviations, degreesOfFreedom, fit }: Fitted) {
	const modelled = modelOf(all)(parameters);
	const residuals = all.map(({ ph }, i) => ph - modelled[i]!.ph);
	const placeOf = new Map(all.filter(isUsed).map(({ index }, place) => [index, place]));
	const weighed = (i: number, place: number) => residuals[i]! / deviations[place]!;
	const chiSquare = all.reduce((sum, { index }, i) => {
		const place = placeOf.get(index);
		return place === undefined ? sum : sum + weighed(i, place) ** 2;
	}, 0);
	return all.map(({ addedMl, ph, index }, i): FittedPoint => {
		const place = placeOf.get(index);
		return {
			addedMl,
			ph,
			index,
			fittedPh: modelled[i]!.ph,
			residualPh: residuals[i]!,
			isUsed: place !== undefined,
			studentizedResidual:
				place === undefined
					? null
					: studentized(
							weighed(i, place),
							quadraticForm(fit.jacobian[place]!, fit.covariance),
							chiSquare,
							degreesOfFreedom
						)
		};
	});
}

/**
 * What a meter that drifts evenly, or an acid of another strength, or a slope, would have to be for the
 * residuals. A drift goes by the order in which readings were handed in, which is that of time.
 */
function leftOverOf({ all, isUsed, parameters, deviations, degreesOfFreedom, fit }: Fitted) {
	const modelled = modelOf(all)(parameters);
	const used = all
		.map((point, i) => ({ ...point, model: modelled[i]! }))
		.filter((point) => isUsed(point));
	const weighed = (of: (point: (typeof used)[number]) => number) =>
		used.map((point, i) => of(point) / deviations[i]!);
	const byCause = (of: (point: (typeof used)[number]) => number) =>
		causeLeftOver(
			fit.jacobian.slice(0, used.length),
			fit.covariance,
			weighed(({ ph, model }) => ph - model.ph),
			weighed(of),
			degreesOfFreedom
		);
	return {
		driftPh: byCause(({ index }) => index / Math.max(1, all.length - 1)),
		acidLog: byCause(({ model, mixture }) => model.byAcid * mixture.acidMolPerKg),
		slope: byCause(({ model }) => model.byParameter[3])
	};
}

/** The answer of a fit, with everything that is uncertain about it. */
export function describeFit(fitted: Fitted): TitrationFit {
	const { options, vessel, isSlopeFitted, fit, parameters, degreesOfFreedom, mix } = fitted;
	const { covariance } = fit;
	const [alkalinity, dic, offsetPh, slope] = parameters;
	const sdOf = (k: number) => Math.sqrt(covariance[k]![k]!);
	const proportional = proportionalUncertainty(options);
	const rows = fit.jacobian.slice(0, fitted.deviations.length);
	// Each reading moves the parameters by covariance · Jᵀ; what it adds to alkalinity's variance.
	const scatterPart = Math.sqrt(
		rows.reduce(
			(sum, row) => sum + row.reduce((inner, each, a) => inner + each * covariance[0]![a]!, 0) ** 2,
			0
		)
	);
	const whole = Math.hypot(sdOf(0), alkalinity * proportional);
	const density = sampleDensity(options);
	return {
		vessel,
		alkalinityMolPerKg: alkalinity / 1000,
		alkalinityDkh: dkhFromMolPerKg(alkalinity / 1000, density),
		alkalinityStandardUncertaintyMolPerKg: whole / 1000,
		alkalinityStandardUncertaintyDkh: dkhFromMolPerKg(whole / 1000, density),
		alkalinityScatterMolPerKg: scatterPart / 1000,
		dicMolPerKg: dic / 1000,
		dicStandardUncertaintyMolPerKg: Math.hypot(sdOf(1), dic * proportional) / 1000,
		offsetPh,
		offsetStandardUncertaintyPh: sdOf(2),
		offsetTotalPh: offsetPh + mix(0).freeShift,
		slope,
		slopeStandardUncertainty: sdOf(3),
		isSlopeFitted,
		correlation: covariance.map((row, a) => row.map((value, b) => value / (sdOf(a) * sdOf(b)))),
		degreesOfFreedom,
		effectiveDegreesOfFreedom:
			scatterPart > 0 ? degreesOfFreedom * (whole / scatterPart) ** 4 : Infinity,
		residualSdPh: fitted.residualSdPh,
		endVolumeMl: alkalinity / fitted.mmolPerMl,
		leftOver: leftOverOf(fitted),
		points: pointsOf(fitted),
		pointsUsed: fitted.deviations.length,
		curve: Array.from({ length: CURVE_POINTS }, (_, i) => {
			const addedMl = (fitted.largestMl * i) / (CURVE_POINTS - 1);
			return { addedMl, ph: modelReading(mix(addedMl), parameters, 7).ph };
		}),
		isConverged: fit.isConverged
	};
}
