import { flag, LIMITS, two, type ProbeFlag } from './probe-flag';
import type { ProbePoint } from './probe-titration';

/**
 * What the readings show before anything is worked out from them.
 *
 * @param hasFit the value comes from a curve through all readings; the straight line stands beside it
 */
export function flagsOfReadings(
	points: readonly ProbePoint[],
	windowPh: { low: number; high: number },
	hasFit: boolean
): ProbeFlag[] {
	const flags: ProbeFlag[] = [];
	const count = points.length;
	if (count < LIMITS.fewestPoints)
		flags.push(
			flag(
				'tooFewPoints',
				count < 5 ? 'unusable' : 'doubt',
				`There are ${count} readings. Take at least ${LIMITS.fewestPoints}, better 20, closer together near the end and after it.`,
				{ readings: count }
			)
		);
	const lowestPh = Math.min(...points.map(({ ph }) => ph));
	if (count > 0 && lowestPh > LIMITS.farEnoughPh)
		flags.push(
			flag(
				'notFarEnough',
				lowestPh > 4.2 ? 'unusable' : 'doubt',
				`The readings stop at pH ${two(lowestPh)}. Add acid down to pH 3: where the end was is told by what comes after it.`,
				{ lowestPh }
			)
		);
	const inWindow = points.filter(({ ph }) => ph >= windowPh.low && ph <= windowPh.high).length;
	const { alone, besideFit } = LIMITS.fewestInWindow;
	if (inWindow < (hasFit ? besideFit : alone))
		flags.push(
			flag(
				'tooFewInWindow',
				'doubt',
				`Only ${inWindow} readings lie between pH ${windowPh.low} and ${windowPh.high}. The straight line needs ${alone} or more there.`,
				{ readings: inWindow }
			)
		);
	const sorted = points
		.map((point, index) => ({ ...point, index }))
		.sort((a, b) => a.addedMl - b.addedMl);
	const rises = sorted.filter((point, i) => {
		const before = sorted[i - 1];
		return before && point.addedMl > before.addedMl && point.ph - before.ph > LIMITS.risePh;
	});
	if (rises.length > 0)
		flags.push(
			flag(
				'notFalling',
				'doubt',
				`The pH rises after more acid at ${rises.map(({ addedMl }) => `${Number(addedMl.toPrecision(4))} mL`).join(', ')}. Look whether a number was written down wrong, and wait for the meter to settle.`,
				{ rises: rises.length },
				rises.map(({ index }) => index)
			)
		);
	return flags;
}
