import type { Unit } from '../../kits';
import type { MethodFigures } from '../../metrology';
import type { CheckId, Evidence } from '../../observation';
import { contextOf, realChangeOf, togetherOf } from './analysis-context';
import { cues as allCues, faults as allFaults } from '../catalogue/catalogue';
import type { Components } from './components';
import { answeredCues, CueEvidence, type Answered } from './cue-likelihood';
import type { DiagnoseOptions } from './diagnosis';
import { Directions } from './directions';
import { enumerate } from './enumerate';
import { Families } from './families';
import type { Cue, Fault } from '../catalogue/fault';
import { Accounts } from './gaussian';
import { considered } from './instances';
import { modelOf, type Model } from './model';
import { ExplanationPlaces, type Part } from './parts';
import { requirePossible } from './possible-readings';
import type { PossibleCheck } from './possible-tests';
import type { Row, RowContext } from './row';
import { firstOf, possibleRows, rowsOf } from './rows';
import { SecondMethods } from './second-methods';
import { requireSound } from './sound-evidence';
import { slippedWorld, slipsElsewhere, unforeseenParts, unforeseenWorld } from './unforeseen';
import type { WaterFigures } from './water-figures';
import { REAL_CHANGE } from '../catalogue/water-causes';

/** Two faults at once are this much rarer than chance would have it: people doubt one thing at a time. */
export const PAIR_FACTOR = 0.4;
/**
 * How likely it is, beforehand, that what is wrong stands in no list: so that it is named falsely in no
 * more than 1 of 100 cases (tests/studies/none-of-these).
 */
export const NONE_OF_THESE_PRIOR = 0.08;

/** Everything worked out from evidence, before it is put into words. In the customary unit. */
export type Analysis = {
	unit: Unit;
	method: MethodFigures;
	water: WaterFigures;
	model: Model;
	/** The checks that the rows behind those read stand for, in their order. */
	checks: readonly CheckId[];
	/** Place of the test in question among the rows, or −1. */
	first: number;
	/** The faults that this evidence can have, and ln of the odds of each beforehand. */
	faults: readonly Fault[];
	lnOdds: readonly number[];
	cues: readonly Cue[];
	answered: Answered;
	seconds: SecondMethods;
	parts: readonly Part[];
	places: ExplanationPlaces;
	directions: Directions;
	families: Families;
	accounts: Accounts;
	components: Components;
	/** Of the components, summing to 1. */
	weights: Float64Array;
	unused: readonly { at: number; why: string }[];
	hasSetAside: boolean;
};

function requireShare(field: string, value: number): number {
	if (!(value >= 0 && value <= 1))
		throw new RangeError(`${field} must be between 0 and 1; found ${value}`);
	return value;
}

/**
 * All accounts of the evidence, with their weights.
 *
 * @param possible tests that could be had, to be foreseen; they change nothing
 * @throws RangeError naming the piece and field that is no evidence or that nobody can have read, the option
 *   that is out of range, or a prior of no fault in the catalogue
 */
export function analyse(
	evidence: readonly Evidence[],
	options: DiagnoseOptions = {},
	possible: (rows: readonly Row[], context: RowContext) => readonly PossibleCheck[] = () => []
): Analysis {
	requireSound(evidence);
	const context = contextOf(evidence, options);
	const { method, water, prior } = context;
	requirePossible(evidence, method.analyte);
	const { rows, unused, hasSetAside } = rowsOf(evidence, context);
	const whole: RowContext = { ...context, firstAt: firstOf(evidence) };
	const checks = possible(rows, whole);
	const possibleOnes = checks.map(({ evidence: made }) => made);
	const model = modelOf(rows, possibleRows(possibleOnes, whole), prior);
	const directions = new Directions();
	const families = new Families(model);
	const seconds = new SecondMethods(evidence);
	const cues = options.cues ?? allCues;
	const answered = answeredCues(evidence, cues);
	const catalogue = [...(options.faults ?? allFaults)];
	if (!catalogue.some(({ id }) => id === REAL_CHANGE))
		catalogue.push(realChangeOf(water, method.analyte));
	const priors = {
		[REAL_CHANGE]: options.realChangePrior ?? water.realChange.prior,
		...options.priors
	};
	const pieceContext = { model, method, water, directions, families };
	const { faults, lnOdds, instances } = considered(catalogue, priors, pieceContext, seconds);
	const nonePrior = requireShare(
		'noneOfThesePrior',
		options.noneOfThesePrior ?? NONE_OF_THESE_PRIOR
	);
	const parts: Part[] = [
		...instances.flatMap(({ fault, lnOdds: own, pieces }) =>
			pieces.map((piece) => ({ fault, lnOdds: own, piece }))
		),
		...slipsElsewhere(model, directions, water),
		...(nonePrior > 0 ? unforeseenParts(model, directions, water, nonePrior) : [])
	];
	const places = new ExplanationPlaces(faults.length);
	const accounts = new Accounts(model);
	const pairFactor = requireShare('pairFactor', options.pairFactor ?? PAIR_FACTOR);
	const components = enumerate({
		parts,
		lnTogether: togetherOf(faults, pairFactor),
		accounts,
		directions,
		families,
		cues: new CueEvidence(answered.cues, faults),
		places,
		unforeseen: unforeseenWorld(model),
		besides: (part) => slippedWorld(model, directions, water, part)
	});
	return {
		unit: options.unit ?? unitOfQuestion(evidence) ?? water.unit,
		method,
		water,
		model,
		checks: checks.map(({ check }) => check),
		first: rows.findIndex(({ isInQuestion }) => isInQuestion),
		faults,
		lnOdds,
		cues,
		answered,
		seconds,
		parts,
		places,
		directions,
		families,
		accounts,
		components,
		weights: components.weights(),
		unused: [...unused, ...answered.unused].sort((a, b) => a.at - b.at),
		hasSetAside
	};
}

function unitOfQuestion(evidence: readonly Evidence[]): Unit | null {
	const first = evidence[firstOf(evidence)];
	return first && 'reading' in first ? first.reading.unit : null;
}
