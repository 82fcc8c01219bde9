import { addAcid, phOf, type Rgb } from '../chemistry';
import { endVolumeMl } from './end-point';
import { shownColour } from './observe';
import { titrantMolPerL, type BenchState } from './state';

export type CurvePoint = { addedMl: number; ph: number; rgb: Rgb };

/** The titration as it would be seen whole: pH and colour against titrant, the end, and the stop. */
export type Curve = { points: CurvePoint[]; endMl: number | null; stoppedMl: number };

const POINTS = 121;

/**
 * Curve of a finished titration. The CO2 that had left by the stop is taken to have left in
 * proportion to the titrant, so that the curve passes through the state in which the vial was left.
 */
export function curveOf(state: BenchState): Curve {
	const { sampleVessel, vessel, inVialMl } = state;
	if (!sampleVessel || !vessel) return { points: [], endMl: null, stoppedMl: inVialMl };
	const molPerL = titrantMolPerL(state);
	const kept = sampleVessel.dicMol > 0 ? Math.min(1, vessel.dicMol / sampleVessel.dicMol) : 1;
	const endMl = endVolumeMl(sampleVessel, kept, molPerL, state.kit.endPoint.hueDegrees ?? 340);
	const lastMl = Math.max(inVialMl, endMl ?? 0) * 1.25 || 0.1;
	const points = Array.from({ length: POINTS }, (_, i): CurvePoint => {
		const addedMl = (lastMl * i) / (POINTS - 1);
		const share = inVialMl > 0 ? Math.min(1, addedMl / inVialMl) : 0;
		const mixed = addAcid(sampleVessel, { volumeMl: addedMl, molPerL });
		const aired = { ...mixed, dicMol: mixed.dicMol * (1 - (1 - kept) * share) };
		return { addedMl, ph: phOf(aired), rgb: shownColour(aired, 'white') };
	});
	return { points, endMl, stoppedMl: inVialMl };
}
