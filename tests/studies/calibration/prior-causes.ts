import { faultsFor, type Fault, type FaultSize } from '../../../src/lib/judgement';
import type { MethodFigures } from '../../../src/lib/metrology';
import type { Chance } from '../chance';
import { pick, pickWeighted } from './seeds';

/**
 * What is the matter, drawn as the diagnosis believes beforehand. The figures that are no data of the
 * catalogue are written down here once more, so that a change of one side alone shows.
 */
export const believed = {
	pairFactor: 0.4,
	noneOfThese: 0.08,
	slipElsewhere: 0.05,
	unforeseenSdDkh: 1,
	unforeseenTimesScatter: 1.5,
	setInSince: 0.35,
	tank: { mean: 8.2, sd: 2 },
	portionSd: 0.04,
	daySd: 0.12,
	perRootDaySd: 0.08,
	trendPerDaySd: 0.03,
	/** Of bicarbonate at 8 dKH in salt water. */
	matrix: { mean: 0.018, sd: 0.035 }
};

/** A change of the tank out of the ordinary: how likely, and by how much. */
const realChange = {
	prior: 0.12,
	sizes: [
		{ weight: 0.52, mean: -1.2, sd: 0.7, of: 'customaryUnit' },
		{ weight: 0.34, mean: 1.1, sd: 0.7, of: 'customaryUnit' },
		{ weight: 0.07, mean: -3, sd: 1.5, of: 'customaryUnit' },
		{ weight: 0.07, mean: 3.5, sd: 2, of: 'customaryUnit' }
	] satisfies FaultSize[]
};

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
export type DrawnCauses = {
	faults: DrawnFault[];
	changeDkh: number | null;
	/** Something that stands in no list: in which thing, and by how much. */
	unforeseen: { scope: Fault['scope']; dkh: number } | null;
};

const lasting: readonly Fault['scope'][] = ['hands', 'lot', 'sampleWare', 'titrantWare'];

const sizeOf = (chance: Chance, sizes: readonly FaultSize[]) => {
	const { of, mean, sd } = pickWeighted(chance, sizes, ({ weight }) => weight);
	return { of, mean, amount: mean + sd * chance.normal() };
};

/** Whether a kit has what a size is counted in. */
const isSized = (method: MethodFigures) => (size: FaultSize) =>
	!(size.of === 'tips' && method.tipMl === null) &&
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
	return {
		fault,
		...sizeOf(chance, fault.sizes.filter(isSized(method))),
		isSince: hasEarlier && lasting.includes(fault.scope) && chance.uniform() < believed.setInSince
	};
}

/**
 * No cause, one or two: faults by their priors, two of them more rarely than by chance; a change of
 * the water beside one fault or none; or something that stands in no list.
 */
export function drawCauses(chance: Chance, method: MethodFigures, present: Present): DrawnCauses {
	const faults = possibleFaults(method, present);
	const places: Fault['scope'][] = [
		...(['oneTest', 'hands', 'sampleWare', 'titrantWare', 'lot', 'kit', 'sampling'] as const),
		...(present.hasSolution ? (['solution'] as const) : []),
		...(present.second ? (['instrument'] as const) : [])
	];
	for (;;) {
		const found = faults.filter(({ prior }) => chance.uniform() < prior);
		const isChanged = chance.uniform() < realChange.prior;
		const isUnforeseen = chance.uniform() < believed.noneOfThese;
		const count = found.length + Number(isChanged);
		if (count > 2 || (isUnforeseen && count > 0)) continue;
		if (found.length === 2 && chance.uniform() >= believed.pairFactor) continue;
		return {
			faults: found.map((fault) => drawFault(chance, fault, method, present.hasEarlier)),
			changeDkh: isChanged ? sizeOf(chance, realChange.sizes).amount : null,
			unforeseen: isUnforeseen
				? { scope: pick(chance, places), dkh: believed.unforeseenSdDkh * chance.normal() }
				: null
		};
	}
}
