import { convertValue } from '../../kits';
import type { Evidence } from '../../observation';
import { analyse, type Analysis } from './analysis';
import {
	beliefsOf,
	explanationBetween,
	idOf,
	notCertain,
	tankMixture,
	type Belief
} from './beliefs';
import { isBeyondAnyTank } from './beyond-any-tank';
import { contradictionsOf } from './contradictions';
import type { DiagnoseOptions, Diagnosis, Explanation } from './diagnosis';
import { faultClasses, type FaultClass } from '../catalogue/fault';
import { groupsOf } from './groups';
import { inQuestionOf } from './in-question';
import { witnessesOf } from './independent';
import { cumulativeOf, type Normal } from './mixture';
import { foreseenChecks } from './possible-tests';
import { isTankUnread } from './tank-unread';
import { trueValueOf } from './true-value';

/** An explanation that carries less stands in no list; what it carries is shared out over the others. */
const LEAST_LISTED = 1e-4;

/**
 * What the evidence says of a reading: how likely each cause is, and what the tank's true value may
 * be. The order of the evidence does not matter, nor do units; what cannot be used is named.
 *
 * Model: y = e^γ a + s b + d + m + ε (metrology), every cause a shift or factor on the readings that
 * share it; no fault, one, or two, a real change of the water, and what is in no list. All that is
 * normal is integrated out exactly, factors on a grid. Bayes' theorem for the rest.
 *
 * @throws RangeError naming the piece and field of evidence that has not its form or that nobody can have
 *   read (`possibleReading`), the field of an option that is out of range, a prior of no fault in the
 *   catalogue, or a unit that the analyte is not measured in
 */
export function diagnose(evidence: readonly Evidence[], options: DiagnoseOptions = {}): Diagnosis {
	return diagnosisOf(analyse(evidence, options, foreseenChecks(evidence)));
}

/** Probabilities of faults, of classes and of what stands out among them, summed over explanations. */
function sumsOf(beliefs: readonly Belief[], { places, faults }: Analysis) {
	const byFault = new Float64Array(faults.length);
	const byClass = new Map<FaultClass, number>(faultClasses.map((each) => [each, 0]));
	let nothingWrong = 0;
	let waterChanged = 0;
	for (const { place, probability } of beliefs) {
		if (place === places.noneOfThese) continue;
		const present = places.faultsAt(place);
		if (present.length === 0) nothingWrong += probability;
		for (const fault of present) byFault[fault]! += probability;
		const those = present.map((fault) => faults[fault]!);
		if (those.some(({ scope }) => scope === 'tank')) waterChanged += probability;
		for (const each of new Set(those.map((fault) => fault.class)))
			byClass.set(each, byClass.get(each)! + probability);
	}
	return {
		faults: Object.fromEntries(faults.map(({ id }, i) => [id, notCertain(byFault[i]!)])),
		classes: Object.fromEntries(
			[...byClass].map(([each, sum]) => [each, notCertain(sum)])
		) as Record<FaultClass, number>,
		nothingWrong: notCertain(nothingWrong),
		waterChanged: notCertain(waterChanged)
	};
}

function explanationsOf(
	analysis: Analysis,
	beliefs: readonly Belief[],
	noneOfThese: number,
	inUnit: (value: number) => number
): Explanation[] {
	const { places, faults } = analysis;
	const listed = beliefs.filter(
		({ place, probability }) => place !== places.noneOfThese && probability >= LEAST_LISTED
	);
	const whole = listed.reduce((sum, { probability }) => sum + probability, 0);
	return listed.map(({ place, probability, mean, variance }) => ({
		id: idOf(analysis, place),
		faults: places
			.faultsAt(place)
			.map((fault) => faults[fault]!.id)
			.sort(),
		probability: notCertain((probability / whole) * (1 - noneOfThese)),
		trueValue: { mean: inUnit(mean), standardUncertainty: inUnit(Math.sqrt(variance)) }
	}));
}

/** An analysis put into the words of a diagnosis. */
export function diagnosisOf(analysis: Analysis): Diagnosis {
	const { places, unit, method, water } = analysis;
	const inUnit = (value: number) => convertValue(value, water.unit, unit, method.analyte);
	const beliefs = beliefsOf(analysis);
	const noneOfThese = notCertain(
		beliefs.find(({ place }) => place === places.noneOfThese)?.probability ?? 0
	);
	const witnesses = witnessesOf(analysis, beliefs);
	const mixture = inUnitOf(tankMixture(analysis), inUnit);
	const fromUnit = (value: number) => convertValue(value, unit, water.unit, method.analyte);
	return {
		unit,
		explanations: explanationsOf(analysis, beliefs, noneOfThese, inUnit),
		...sumsOf(beliefs, analysis),
		noneOfThese,
		groups: groupsOf(analysis, beliefs),
		trueValue: trueValueOf(mixture, (low, high) =>
			explanationBetween(analysis, beliefs, fromUnit(low), fromUnit(high))
		),
		mixture,
		cumulative: (value) => cumulativeOf(mixture, value),
		isIndependent: witnesses.isHeld,
		isKitVouched: witnesses.isKitVouched,
		silentWitnesses: witnesses.silent,
		contradictions: contradictionsOf(analysis, inUnit),
		isBeyondAnyTank: isBeyondAnyTank(analysis),
		isTankUnread: isTankUnread(analysis),
		inQuestion: inQuestionOf(analysis),
		hasSetAside: analysis.hasSetAside,
		unused: analysis.unused
	};
}

const inUnitOf = (mixture: readonly Normal[], inUnit: (value: number) => number): Normal[] =>
	mixture.map(({ weight, mean, standardDeviation }) => ({
		weight,
		mean: inUnit(mean),
		standardDeviation: inUnit(standardDeviation)
	}));

/**
 * A diagnosis that was sent from a worker or stored, with `cumulative` again.
 *
 * @throws RangeError when its mixture did not come along
 */
export function withCumulative(sent: Omit<Diagnosis, 'cumulative'>): Diagnosis {
	const { mixture } = sent;
	if (!mixture)
		throw new RangeError('mixture must come with a diagnosis that was sent; found none');
	return { ...sent, cumulative: (value) => cumulativeOf(mixture, value) };
}
