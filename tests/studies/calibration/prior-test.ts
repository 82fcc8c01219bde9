import type { CheckId } from '../../../src/lib/observation';
import type { Fault } from '../../../src/lib/judgement';
import {
	constantSensitivity,
	expectedReading,
	readingScatter,
	type MethodFigures
} from '../../../src/lib/metrology';
import type { Chance } from '../chance';
import { believed, believedOf } from './prior-believed';
import type { DrawnCauses, DrawnFault } from './prior-causes';

/** By which things a reading came about; null where it had none of them. */
export type MadeBy = {
	isFirst: boolean;
	/** By which check; null for the test in question and those from before. */
	check: CheckId | null;
	isEarlier: boolean;
	kit: boolean;
	hands: string;
	lot: string;
	sampling: string | null;
	solution: boolean;
	instrument: boolean;
	ratio: number;
};

/** Whether what is wrong with a thing of the test in question is in a reading as well. */
export function shares(scope: Fault['scope'], by: MadeBy): boolean {
	switch (scope) {
		case 'takenOff':
			return by.kit && by.sampling !== null && by.check !== 'takenOffAnew';
		case 'oneTest':
			return by.isFirst;
		case 'hands':
			return by.kit && by.hands === 'own';
		case 'lot':
			return by.kit && by.lot === 'own';
		case 'sampling':
			return by.sampling === 'own';
		case 'solution':
			return by.solution;
		case 'instrument':
			return by.instrument;
		case 'tank':
			return by.isEarlier;
		default:
			return by.kit;
	}
}

export const presentIn = ({ faults }: DrawnCauses, by: MadeBy): DrawnFault[] =>
	faults.filter(
		({ fault, isSince }) =>
			shares(fault.scope, by) &&
			!(isSince && by.isEarlier) &&
			!(by.check && fault.undoneBy?.includes(by.check))
	);

/** What the faults of a reading do to it, by kind. */
export function effectsOf(drawn: readonly DrawnFault[], method: MethodFigures, ratio: number) {
	const perMl = constantSensitivity(method, ratio);
	const tipMl = method.tipMl ?? 0;
	const fillings = method.filling?.count ?? 1;
	const ml: Partial<Record<DrawnFault['of'], number>> = {
		mL: 1,
		drops: method.dropMl,
		tips: tipMl,
		tipsEach: tipMl * fillings,
		tipsAgain: tipMl * (fillings - 1),
		fillings: method.filling?.ml ?? 0,
		divisions: method.graduationMl ?? 0
	};
	const mlOf = (of: DrawnFault['of']) => ml[of] ?? null;
	const found = {
		factor: 1,
		/** What other water in the vial holds; null where it is the one it is meant to be. */
		otherWater: null as number | null,
		inVial: 0,
		referenceFactor: 1,
		added: 0,
		times: 1,
		misread: [] as DrawnFault[]
	};
	for (const each of drawn) {
		const { fault, of, amount } = each;
		const inMl = mlOf(of);
		if (of === 'timesScatter') found.times *= amount;
		else if (fault.target === 'arithmetic' && (of === 'share' || of === 'fullScaleLess'))
			found.misread.push(each);
		else if (of === 'share' && fault.target === 'reference') found.referenceFactor += amount;
		else if (of === 'otherWater') {
			found.otherWater = amount * believedOf(method.analyte).tank.mean;
		} else if (of === 'share') found.factor *= Math.max(0, 1 + amount);
		else if (fault.target === 'water' || fault.target === 'reference') found.inVial += amount;
		else if (inMl !== null)
			found.added += amount * inMl * (fault.target === 'endPoint' ? method.valuePerMl : perMl);
		else found.added += fault.target === 'constant' ? amount / ratio : amount;
	}
	return found;
}

/** What is in the vial, of so much in the water that it is meant to be. */
export const inVialOf = (
	amount: number,
	{ otherWater, referenceFactor, inVial }: ReturnType<typeof effectsOf>
): number => otherWater ?? amount * referenceFactor + inVial;

/** Standard normal numbers that all who name them share. */
export function sharedNormals(chance: Chance): (name: string) => number {
	const known = new Map<string, number>();
	return (name) => {
		const found = known.get(name) ?? chance.normal();
		known.set(name, found);
		return found;
	};
}

/** What something of no list adds to a reading, and how much wider everything falls then. */
export function unforeseenIn({ unforeseen }: DrawnCauses, by: MadeBy) {
	return {
		size: unforeseen && shares(unforeseen.scope, by) ? unforeseen.size : 0,
		times: unforeseen ? believed.unforeseenTimesScatter : 1
	};
}

/** A reading of the kit: what is in the vial, through ordinary spreads, faults, drops and the scale. */
export function readByKit(
	amount: number,
	by: MadeBy,
	method: MethodFigures,
	causes: DrawnCauses,
	shared: (name: string) => number,
	chance: Chance
): number {
	const effects = effectsOf(presentIn(causes, by), method, by.ratio);
	const odd = unforeseenIn(causes, by);
	const ordinary =
		1 +
		method.sampleWareSd * shared('sampleWare') +
		method.titrantWareSd * shared('titrantWare') +
		method.lotSd * shared(`lot ${by.lot}`);
	const { takenOffSd } = believedOf(method.analyte);
	const takenOff =
		by.sampling === null
			? 0
			: takenOffSd * shared(`taken ${by.check === 'takenOffAnew' ? 'anew' : 'own'}`);
	const expected = expectedReading(
		method,
		{
			logFactor: Math.log(Math.max(1e-6, ordinary * effects.factor)),
			amount: inVialOf(amount, effects),
			constantMl: 0,
			endPoint: effects.added + takenOff + method.endPointSd * shared(`hands ${by.hands}`),
			method: 0
		},
		by.ratio
	);
	const step = constantSensitivity(method, by.ratio) * method.dropMl * method.endStepDrops;
	const { variance } = readingScatter(method, { value: expected, sampleRatio: by.ratio });
	const rest = Math.sqrt(Math.max(0, variance - step ** 2 / 12));
	const times = effects.times * odd.times;
	const phase = step * shared(`phase ${by.sampling} ${by.hands} ${by.lot} ${by.ratio}`);
	const meant = expected + times * rest * chance.normal() + odd.size;
	// The end falls on a step; a wider scatter is that of the whole.
	const onStep = Math.round((meant - phase) / step) * step + phase;
	const value = meant + times * (onStep - meant);
	return effects.misread.reduce(
		(read, { of, amount: size, mean }) =>
			of === 'share'
				? read * (1 + mean) + (size - mean) * read
				: (method.fullScale ?? 0) / by.ratio - read + size,
		value
	);
}
