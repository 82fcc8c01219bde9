import type { Fault, FaultSize } from '../../src/lib/judgement';
import { usualMethodFigures } from '../../src/lib/metrology';
import type { Differs } from '../../src/lib/observation';
import type { Chance } from './chance';

/** What is wrong in a drawn case, and what it does to each test: written down here once more. */
/** A test as planned. */
export type Made = {
	kind: 'test' | 'reference' | 'earlier' | 'second';
	from: 'first' | 'repeatFull' | 'freshLot' | 'freshSample' | 'largerSample' | 'otherHands';
	differs: Differs;
	daysAgo: number;
};
export type CaseWorld = {
	faults: readonly Fault[];
	/** What must be the matter; drawn by the priors when left out. */
	cause?: Fault;
	pairFactor: number;
	realChangePrior: number;
};

const method = usualMethodFigures;
/** One of a fault's sizes. */
export const draw = (chance: Chance, sizes: readonly FaultSize[]) => {
	let left = chance.uniform();
	const size = sizes.find(({ weight }) => (left -= weight) < 0) ?? sizes[sizes.length - 1]!;
	return { of: size.of, amount: size.mean + size.sd * chance.normal() };
};
export type Drawn = { fault: Fault; of: FaultSize['of']; amount: number; isSince: boolean };

/** Whether a test shares a fault of the test in question. */
export function shares({ scope }: Fault, made: Made, isSince: boolean): boolean {
	const { kind, differs } = made;
	if (scope === 'instrument') return kind === 'second';
	if (scope === 'solution') return kind === 'reference';
	if (scope === 'tank') return kind === 'earlier';
	if (scope === 'sampling')
		return (kind === 'test' || kind === 'second') && differs.sampling === undefined;
	if (kind === 'second') return false;
	if (scope === 'oneTest') return kind === 'test' && made.from === 'first';
	if (isSince && kind === 'earlier') return false;
	if (scope === 'lot') return differs.lot === undefined;
	if (scope === 'hands') return differs.hands === undefined;
	return true;
}

const mlOf = (of: FaultSize['of']) =>
	({ mL: 1, drops: method.dropMl, tips: method.tipMl ?? 0, divisions: method.graduationMl ?? 0 })[
		of as string
	];

/** A fault as effects on one test; the true reading goes in where arithmetic needs it. */
export function effectsOf(drawn: readonly Drawn[], ratio: number) {
	const found = { factor: 1, added: 0, inVial: 0, constantMl: 0, times: 1, misread: [] as Drawn[] };
	for (const each of drawn) {
		const { fault, of, amount } = each;
		const ml = mlOf(of);
		if (fault.target === 'scatter') found.times *= amount;
		else if (fault.target === 'arithmetic' && (of === 'share' || of === 'fullScaleLess'))
			found.misread.push(each);
		else if (of === 'share') found.factor *= Math.max(0, 1 + amount);
		else if (fault.target === 'water' || fault.target === 'reference') found.inVial += amount;
		else if (ml !== undefined && fault.target === 'endPoint')
			found.added += amount * ml * method.valuePerMl;
		else if (ml !== undefined) found.constantMl += amount * ml;
		else found.added += fault.target === 'constant' ? amount / ratio : amount;
	}
	return found;
}

/** What is wrong: none, one or two of what there is; two faults more rarely than by chance. */
export function drawCauses(
	chance: Chance,
	{ faults, cause, pairFactor, realChangePrior }: CaseWorld,
	isThere: (fault: Fault) => boolean
): { faults: Fault[]; isChanged: boolean } {
	if (cause) return { faults: [cause], isChanged: false };
	const there = faults.filter(isThere);
	for (;;) {
		const found = there.filter(({ prior }) => chance.uniform() < prior);
		const isChanged = chance.uniform() < realChangePrior;
		const count = found.length + (isChanged ? 1 : 0);
		if (count > 2) continue;
		if (found.length === 2 && chance.uniform() >= pairFactor) continue;
		return { faults: found, isChanged };
	}
}
