import type { TitrationFit } from './fit-options';
import { flag, LIMITS, type ProbeFlag } from './probe-flag';
import { lastDigitOfPh, type ProbePoint } from './probe-titration';

/** How alike neighbouring residuals are: 1 all alike, 0 by chance, −1 by turns. */
function likenessOfNeighbours(residuals: readonly number[]): number {
	const square = residuals.reduce((sum, each) => sum + each * each, 0);
	const products = residuals.slice(1).reduce((sum, each, i) => sum + each * (residuals[i] ?? 0), 0);
	return square > 0 ? products / square : 0;
}

/** A value whose standard uncertainty is this share of it says nothing of the water; judgement. */
const TOO_LOOSE = 0.15;

/** Whether the readings hold the value of a fit so loosely that nothing may be taken from it. */
const isTooLoose = (fit: TitrationFit): boolean =>
	!(fit.alkalinityStandardUncertaintyMolPerKg <= TOO_LOOSE * Math.abs(fit.alkalinityMolPerKg));

/** What the fit says about the readings. */
export function flagsOfFit(points: readonly ProbePoint[], fit: TitrationFit): ProbeFlag[] {
	const flags: ProbeFlag[] = [];
	if (!fit.isConverged)
		flags.push(
			flag(
				'notSolved',
				'unusable',
				'No curve was found that goes through these readings. Look at the volumes, the sample and the strength of the acid that were typed.'
			)
		);
	else if (isTooLoose(fit))
		flags.push(
			flag(
				'notSolved',
				'unusable',
				'Curves of very different waters go through these readings: they are too few, or lie too close together. Read more, from before the first acid down to pH 3.',
				{
					shareOfValue: fit.alkalinityStandardUncertaintyMolPerKg / fit.alkalinityMolPerKg
				}
			)
		);
	const tested = fit.points.filter(({ studentizedResidual }) => studentizedResidual !== null);
	const residuals = tested.map(({ studentizedResidual }) => studentizedResidual ?? 0);
	// With few readings to spare, chance alone makes larger ones; seen on simulated curves without a fault.
	const limit = 5 + 12 / Math.max(1, fit.degreesOfFreedom);
	const outlying = tested.filter(
		({ residualPh }, i) => Math.abs(residuals[i]!) > limit && Math.abs(residualPh) > LIMITS.strayPh
	);
	if (outlying.length > 0)
		flags.push(
			flag(
				'outlier',
				'doubt',
				`${outlying.length === 1 ? 'One reading lies' : `${outlying.length} readings lie`} off the curve that the others make, at ${outlying.map(({ addedMl }) => `${Number(addedMl.toPrecision(4))} mL`).join(', ')}. Look whether a number was written down wrong.`,
				{ largestStudentizedResidual: Math.max(...residuals.map(Math.abs)) },
				outlying.map(({ index }) => index)
			)
		);
	const likeness = likenessOfNeighbours(residuals);
	const { least, byChance } = LIMITS.likeness;
	const isAlike = likeness > Math.max(least, byChance / Math.sqrt(Math.max(1, residuals.length)));
	const seen = fit.residualSdPh > Math.max(LIMITS.wanderPh, lastDigitOfPh(points) / 2);
	if (residuals.length >= LIMITS.fewestForDrift && isAlike && seen)
		flags.push(
			flag(
				'drift',
				'doubt',
				fit.vessel === 'closed'
					? 'The readings do not scatter about the curve, they wander along it. The electrode drifted or had not settled, or CO2 left the sample: a beaker that is stirred in the open is not closed.'
					: 'The readings do not scatter about the curve, they wander along it. The electrode drifted or had not settled before the next addition.',
				{ likenessOfNeighbours: likeness, scatterPh: fit.residualSdPh }
			)
		);
	return flags;
}
