import { diagnose, type DiagnoseOptions, type Diagnosis } from '../../../src/lib/judgement';
import { convertValue } from '../../../src/lib/kits';
import { actAdvised, actByBelief, actOnReading, regretOf } from './advice';
import { usualBandOf, type CalibrationCase } from './case';
import {
	catalogueClassOf,
	isNamed,
	likeliest,
	likeliestCause,
	rightVerdicts,
	verdictsOf
} from './verdicts';

/** How one case was judged: plain numbers, to be sent and summed. */
export type Judged = {
	set: string;
	/** Verdicts that were right, the first for base rates. */
	right: readonly string[];
	/** Probability that they had together. */
	pRight: number;
	brier: number;
	/** Probability of the likeliest verdict, and whether it was right. */
	pTop: number;
	isClass: boolean;
	isCause: boolean;
	isGroup: boolean;
	/** Of the likeliest cause, where exactly one cause of the catalogue is there. */
	one: ReturnType<typeof likeliestCause>;
	/** What the tank holds, as the diagnosis has it and as the number by itself has it. */
	isHeld: boolean;
	width: number;
	error: number;
	isRawHeld: boolean;
	rawWidth: number;
	rawError: number;
	/** Minutes of regret. */
	regret: { advised: number; belief: number; raw: number; leave: number };
	/** Milliseconds that the diagnosis took. */
	ms: number;
};

/** In which values of a case stand. */
const unitOf = ({ method }: CalibrationCase) => usualBandOf(method.analyte).unit;

/** The catalogue's answers in the customary unit, for this case's kit. */
export const optionsFor = (each: CalibrationCase, more: DiagnoseOptions = {}): DiagnoseOptions => ({
	method: each.method,
	unit: unitOf(each),
	...more
});

/** The number in question by itself: its value and half the width of its ±. */
export function rawOf(each: CalibrationCase): { value: number; plusMinus: number } {
	const { evidence, method } = each;
	const first = evidence.find((piece) => piece.kind === 'test' && piece.from === 'first');
	if (!first || !('reading' in first))
		throw new RangeError('evidence must hold a test from first; found none');
	const { reading } = first;
	const inUnit = (value: number) => convertValue(value, reading.unit, unitOf(each), method.analyte);
	return { value: inUnit(reading.value), plusMinus: inUnit(reading.expandedUncertainty) };
}

/** A case judged. */
export function judge(each: CalibrationCase, more: DiagnoseOptions = {}): Judged {
	const started = performance.now();
	const diagnosis = diagnose(each.evidence, optionsFor(each, more));
	return { ...judgedBy(diagnosis, each, more), ms: performance.now() - started };
}

function judgedBy(
	diagnosis: Diagnosis,
	each: CalibrationCase,
	more: DiagnoseOptions
): Omit<Judged, 'ms'> {
	const { truth, band, set } = each;
	const classOf = catalogueClassOf(more.faults);
	const verdicts = verdictsOf(diagnosis, classOf);
	const right = rightVerdicts(truth.causes);
	const top = likeliest(verdicts);
	let pRight = 0;
	let brier = 0;
	for (const [verdict, p] of verdicts)
		if (right.includes(verdict)) pRight += p;
		else brier += p ** 2;
	brier += (1 - pRight) ** 2;
	const raw = rawOf(each);
	const value = truth.trueValue;
	const [low, high] = diagnosis.trueValue.interval95;
	const named = isNamed(diagnosis, each);
	const { analyte } = each.method;
	const regret = (act: Parameters<typeof regretOf>[0]) => regretOf(act, value, band, analyte);
	return {
		set,
		right,
		pRight,
		brier,
		pTop: top.probability,
		isClass: right.includes(top.verdict),
		isCause: named.cause,
		isGroup: named.group,
		one: likeliestCause(diagnosis, each, classOf),
		isHeld: value >= low && value <= high,
		width: high - low,
		error: diagnosis.trueValue.mean - value,
		isRawHeld: Math.abs(raw.value - value) <= raw.plusMinus,
		rawWidth: 2 * raw.plusMinus,
		rawError: raw.value - value,
		regret: {
			advised: regret(actAdvised(diagnosis, band, analyte)),
			belief: regret(actByBelief(diagnosis, band, analyte)),
			raw: regret(actOnReading(raw.value, band)),
			leave: regret('leave')
		}
	};
}
