import type { Rgb } from '../chemistry';
import { shownColour } from './observe';
import { endMlOf } from './past-end';
import { titrantMolPerL, type BenchState } from './state';
import { titrantPortion } from './titrant-portion';
import { kindOf } from './titration-kind';

/** `readout`: what a probe in the vial would show. */
export type CurvePoint = { addedMl: number; readout: number; rgb: Rgb };

/** The titration as it would be seen whole: readout and colour against titrant, the end, and the stop. */
export type Curve = {
	/** What the probe shows: pH, or pM of the metals. */
	readoutName: string;
	points: CurvePoint[];
	endMl: number | null;
	stoppedMl: number;
};

const POINTS = 121;

/**
 * Curve of a finished titration. What had passed by the stop (CO2 that left, a precipitate) is taken to
 * have come as the titration's kind says, so that the curve passes through the state in which the vial
 * was left.
 */
export function curveOf(state: BenchState): Curve {
	const { kit, sampleContents, contents, inVialMl } = state;
	const kind = kindOf(kit);
	const { name: readoutName } = kind.readout;
	if (!sampleContents || !contents)
		return { readoutName, points: [], endMl: null, stoppedMl: inVialMl };
	const molPerL = titrantMolPerL(state);
	const passed = kind.passedBetween(sampleContents, contents);
	const endMl = endMlOf(state);
	const lastMl = Math.max(inVialMl, endMl ?? 0) * 1.25 || 0.1;
	const evenly = Array.from({ length: POINTS }, (_, i) => (lastMl * i) / (POINTS - 1));
	// Where it matters the colour turns within less than a step.
	const places = [...new Set([...evenly, inVialMl, ...(endMl === null ? [] : [endMl])])];
	places.sort((a, b) => a - b);
	const points = places.map((addedMl): CurvePoint => {
		const share = inVialMl > 0 ? Math.min(1, addedMl / inVialMl) : 0;
		const there = kind.titratedTo(
			kind.onTheWay(sampleContents, passed, share),
			titrantPortion(kit, addedMl, molPerL)
		);
		return {
			addedMl,
			readout: kind.readout.of(there),
			rgb: shownColour(kit, there, 'white')
		};
	});
	return { readoutName, points, endMl, stoppedMl: inVialMl };
}
