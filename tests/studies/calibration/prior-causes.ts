import { faultsFor, type Fault, type FaultSize } from '../../../src/lib/judgement';
import type { MethodFigures } from '../../../src/lib/metrology';
import type { Chance } from '../chance';
import { believed, believedOf } from './prior-believed';
import { pick, pickWeighted } from './seeds';

/** A fault that is there, and how large. */
export type DrawnFault = {
	fault: Fault;
	of: FaultSize['of'];
	amount: number;
	/** The middle of the way in which it came out. */
	mean: number;
	/** It set in after the readings from before. */
	isSince: boolean;
};
/** What is the matter, drawn as the diagnosis believes beforehand; sizes in the customary unit. */
export type DrawnCauses = {
	faults: DrawnFault[];
	change: number | null;
	/** Something that stands in no list: in which thing, and by how much. */
	unforeseen: { scope: Fault['scope']; size: number } | null;
};

const lasting: readonly Fault['scope'][] = [
	'hands',
	'lot',
	'sampleWare',
	'titrantWare',
	'takenOff'
];

const sizeOf = (chance: Chance, sizes: readonly FaultSize[]) => {
	const { of, mean, sd } = pickWeighted(chance, sizes, ({ weight }) => weight);
	return { of, mean, amount: mean + sd * chance.normal() };
};

/** Whether a kit has what a size is counted in. */
const isSized = (method: MethodFigures) => (size: FaultSize) =>
	!(size.of.startsWith('tips') && method.tipMl === null) &&
	!(size.of === 'fillings' && !method.filling?.isAgain) &&
	!(size.of === 'divisions' && method.graduationMl === null) &&
	!(size.of === 'fullScaleLess' && method.fullScale === null);

export type Present = {
	/** Kind of the second method, if there is one; and whether there are a known solution and earlier readings. */
	second: 'kit' | 'photometer' | 'laboratory' | null;
	hasSolution: boolean;
	hasEarlier: boolean;
};

/** The faults that such evidence can have. */
export function possibleFaults(method: MethodFigures, { second, hasSolution }: Present): Fault[] {
	return faultsFor(method).filter(
		({ scope, methods, sizes, prior }) =>
			prior > 0 &&
			sizes.some(isSized(method)) &&
			(scope !== 'instrument' ||
				(second !== null && (methods === undefined || methods.includes(second)))) &&
			(scope !== 'solution' || hasSolution)
	);
}

export function drawFault(
	chance: Chance,
	fault: Fault,
	method: MethodFigures,
	hasEarlier: boolean
): DrawnFault {
	const drawn = sizeOf(chance, fault.sizes.filter(isSized(method)));
	// A share of all that is titrated is a larger one of what is left.
	const isOfWhole =
		fault.target === 'gain' || (fault.target === 'arithmetic' && !fault.isOfTheNumber);
	const times = drawn.of === 'share' && isOfWhole ? (method.wholeOverValue ?? 1) : 1;
	return {
		fault,
		of: drawn.of,
		mean: drawn.mean * times,
		amount: drawn.amount * times,
		isSince: hasEarlier && lasting.includes(fault.scope) && chance.uniform() < believed.setInSince
	};
}

/**
 * No cause, one or two: faults by their priors, two of them more rarely than by chance; a change of
 * the water beside one fault or none; or something that stands in no list.
 */
export function drawCauses(chance: Chance, method: MethodFigures, present: Present): DrawnCauses {
	const faults = possibleFaults(method, present);
	const { changes, unforeseenSd } = believedOf(method.analyte);
	const places: Fault['scope'][] = [
		...(['oneTest', 'hands', 'sampleWare', 'titrantWare', 'lot', 'kit', 'sampling'] as const),
		...(present.hasSolution ? (['solution'] as const) : []),
		...(present.second ? (['instrument'] as const) : [])
	];
	for (;;) {
		const found = faults.filter(({ prior }) => chance.uniform() < prior);
		const isChanged = chance.uniform() < believed.realChange;
		const isUnforeseen = chance.uniform() < believed.noneOfThese;
		const count = found.length + Number(isChanged);
		if (count > 2 || (isUnforeseen && count > 0)) continue;
		if (found.length === 2 && chance.uniform() >= believed.pairFactor) continue;
		return {
			faults: found.map((fault) => drawFault(chance, fault, method, present.hasEarlier)),
			change: isChanged ? sizeOf(chance, changes).amount : null,
			unforeseen: isUnforeseen
				? { scope: pick(chance, places), size: unforeseenSd * chance.normal() }
				: null
		};
	}
}
