import type { FitOptions, TitrationFit } from './fit-options';
import {
	movedFromSetting,
	type FitOfMeter,
	type MeterSetOn,
	type Moved
} from './probe-meter-moved';
import { flag, LIMITS, percent, two, type ProbeFlag } from './probe-flag';

type Fit = FitOfMeter &
	Pick<TitrationFit, 'isConverged' | 'degreesOfFreedom'> & {
		vessel: NonNullable<FitOptions['vessel']>;
	};

/** What is known beside the curve. */
type About = {
	/** On what the meter was set, the same day; undefined where it was not, or nobody knows. */
	meterSetOn: MeterSetOn | undefined;
	/** A known solution came out as what it is: the acid is as strong as was typed. */
	isAcidKnown: boolean;
};

const figuresOf = (fit: Fit) => ({
	offsetPh: fit.offsetPh,
	offsetStandardUncertaintyPh: fit.offsetStandardUncertaintyPh,
	slope: fit.slope,
	slopeStandardUncertainty: fit.slopeStandardUncertainty
});

function badSlope(fit: Fit, { isAcidKnown }: About): ProbeFlag {
	const { low, high } = LIMITS.slope;
	const others = fit.slope > 1 ? 'a drift, or CO2 that leaves, looks' : 'a drift looks';
	const acid = isAcidKnown
		? ''
		: ', and so does an acid that is not as strong as was typed, which moves it as much';
	return flag(
		'badSlope',
		'doubt',
		`The electrode’s slope is off: it seems to give ${percent(fit.slope)} of what it should from one pH to the next; ${percent(low)} to ${percent(high)} is usual. That alone hardly moves the value, but ${others} much alike${acid}. Set the meter on two fresh buffers and titrate again${isAcidKnown ? '' : '; if it stays so, titrate a known solution with this acid'}.`,
		figuresOf(fit)
	);
}

function neverCalibrated(fit: Fit): ProbeFlag {
	const off = fit.offsetPh - LIMITS.offsetPh.usual;
	return flag(
		'neverCalibrated',
		'doubt',
		`The meter shows about ${two(Math.abs(off))} pH too ${off > 0 ? 'much' : 'little'}. The fit allows for that, but a meter so far off was likely never set, or it drifted, or volumes or acid are wrong. Set it on two buffers and titrate again.`,
		figuresOf(fit)
	);
}

const likely = {
	driftPh: ' What the readings leave over looks most like the drift.',
	acidLog: ' What the readings leave over looks most like the acid.'
} as const;
/** Smaller sizes are below what a curve tells of them, pH and share (judgement). */
const LEAST = { driftPh: 0.05, acid: 0.04 };
/** An acid is no more than so many times stronger or weaker than was typed, as a natural logarithm; judgement. */
const MOST_ACID_LOG = Math.log(2);
/** Readings beyond those that the fit needs, for the meter to be spoken of; judgement. */
const FEWEST_TO_SPARE = 4;
/** To so many per cent an acid is told at best. */
const ACID_STEP_PERCENT = 5;

/** An acid that is so many times as strong as was typed, and what that makes of the value. */
function acidWords(times: number): string {
	const by = `about ${Math.max(1, Math.round((100 * Math.abs(times - 1)) / ACID_STEP_PERCENT)) * ACID_STEP_PERCENT} %`;
	return times < 1
		? `the acid is ${by} weaker than was typed, and the water holds ${by} less than is said here`
		: `the acid is ${by} stronger than was typed, and the water holds ${by} more than is said here`;
}

function notAsSet(fit: Fit, moved: Moved, { isAcidKnown }: About): ProbeFlag {
	const { offPh, sizes, likeliest } = moved;
	const slope = fit.isSlopeFitted
		? `, its slope ${percent(fit.slope)}`
		: `, or its slope about ${percent(1 + sizes.slope)}`;
	const times = Math.exp(sizes.acidLog);
	const isAcidNamed =
		!isAcidKnown && Math.abs(times - 1) >= LEAST.acid && Math.abs(sizes.acidLog) <= MOST_ACID_LOG;
	const drift = Math.abs(sizes.driftPh);
	const causes = [
		`the meter is off (its zero by ${two(Math.abs(offPh))} pH${slope})`,
		...(drift >= LEAST.driftPh ? [`it drifted by about ${drift.toFixed(1)} pH`] : []),
		...(isAcidNamed ? [acidWords(times)] : []),
		...(fit.vessel === 'closed' && fit.slope > 1 ? ['CO2 left the sample'] : [])
	];
	const isNamed = likeliest === 'driftPh' || (likeliest === 'acidLog' && isAcidNamed);
	return flag(
		'notAsSet',
		'doubt',
		`The curve does not suit a meter that was set today. ${causes.length > 1 ? 'Either t' : 'T'}${causes.join('; or ').slice(1)}.${likeliest && isNamed ? likely[likeliest] : ''} Read both buffers again${isAcidKnown ? '' : ', and titrate a known solution with this acid'}.`,
		{ ...figuresOf(fit), chiSquare: moved.chiSquare, driftPh: sizes.driftPh, acidOverTyped: times }
	);
}

/** What the fitted offset and slope of the meter say of it, and of the acid. */
export function flagsOfMeter(fit: Fit, about: About): ProbeFlag[] {
	// With hardly a reading to spare the meter takes up whatever they scatter.
	if (!fit.isConverged || fit.degreesOfFreedom < FEWEST_TO_SPARE) return [];
	if (about.meterSetOn) {
		const moved = movedFromSetting(fit, about.meterSetOn);
		if (!moved) return [];
		return [moved.isSlopeAlone ? badSlope(fit, about) : notAsSet(fit, moved, about)];
	}
	const { low, high } = LIMITS.slope;
	const { usual, within } = LIMITS.offsetPh;
	return [
		...(fit.isSlopeFitted && (fit.slope < low || fit.slope > high) ? [badSlope(fit, about)] : []),
		...(Math.abs(fit.offsetPh - usual) > within ? [neverCalibrated(fit)] : [])
	];
}
