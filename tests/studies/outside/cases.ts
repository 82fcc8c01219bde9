import { type CheckId, type Evidence } from '../../../src/lib/observation';
import type { MethodFigures } from '../../../src/lib/metrology';
import { answersIn, type Answer } from './answers';
import { askedBy, askedIds, first } from './ask';
import { chanceAt, type Chance } from './chance';
import { drawHidden, type CaseKind, type Hidden } from './happen';
import type { Mistake, OutsideClass } from './mistake';
import { leafletDkh, readingOf, testOnce, written } from './test-once';

export type OutsideFault = {
	id: string;
	class: OutsideClass;
	/** Classes that a fair judge would accept as well. */
	alsoFair: readonly OutsideClass[];
	size: number;
	unit: Mistake['unit'];
	isOdd: boolean;
};
/** A case: what is known, what could still be asked, and the truth to judge by. */
export type OutsideCase = {
	number: number;
	seed: number;
	truth: {
		kind: CaseKind;
		trueValueDkh: number;
		/** The tank changed by something the keeper did not know of. */
		realChange: boolean;
		changeDkh: number;
		faults: readonly OutsideFault[];
	};
	method: MethodFigures;
	/** Band the keeper wants to be in, dKH. */
	band: { lowDkh: number; highDkh: number };
	evidence: readonly Evidence[];
	answers: readonly Answer[];
	/** What a check finds; asked again (`round` 1, 2, …) it is done again. */
	ask: (id: CheckId, round?: number) => Evidence;
};

/** Readings from before, by the same kit: none to five, about a week apart. */
function earlierReadings(hidden: Hidden, c: Chance): Evidence[] {
	const { world } = hidden;
	const count = c.weighted([0, 1, 2, 3, 5], (number) => (number === 0 ? 25 : 19));
	const lotDays = world.lotAgeMonths * 30;
	return Array.from({ length: count }, (_, at): Evidence => {
		const daysAgo = Math.max(7, Math.round(7 * (at + 1) + c.normal(0.7)));
		const then = world.tank.dkh - world.eventDkh - world.driftDkhPerDay * daysAgo + c.normal(0.1);
		const water = { ...world.tank, dkh: Math.max(2, then) };
		const isOwnLot = daysAgo < lotDays;
		const { dkh } = testOnce(hidden, { water, daysAgo, lot: isOwnLot ? 'own' : 'earlier' }, c);
		const expected = world.believedDriftDkhPerDay * daysAgo;
		const label = `${daysAgo} days ago`;
		const change = written(world.kit, expected);
		return {
			kind: 'earlier',
			reading: readingOf(world.kit, `earlier-${at}`, label, dkh, leafletDkh(world.kit, dkh)),
			daysAgo,
			...(c.happens(0.7) ? { expectedChange: change === 0 ? 0 : change } : {}),
			...(isOwnLot ? {} : { differs: { lot: 'Bottle before' } })
		};
	});
}

/** Case `number` of a seed: the same for ever. */
export function caseFromOutside(number: number, seed: number): OutsideCase {
	const chance = (...where: (string | number)[]) => chanceAt(seed, number, ...where);
	const hidden = drawHidden(chance('hidden'));
	const { world, happened, kind } = hidden;
	const ask = (id: CheckId, round = 0) =>
		askedBy(id)(hidden, chance('ask', id, round), `${id}-${round}`);
	const c = chance('known');
	const has = (name: OutsideClass) => happened.some(({ mistake }) => mistake.class === name);
	const isAskedOfSecond = c.happens(0.3) || has('secondMethod');
	const isAskedOfSolution = c.happens(0.12) || has('reference');
	const lowDkh = c.pick([7, 7, 7.5]);
	return {
		number,
		seed,
		truth: {
			kind,
			trueValueDkh: Number(world.tank.dkh.toFixed(4)),
			realChange: world.eventDkh !== 0,
			changeDkh: Number(world.eventDkh.toFixed(4)),
			faults: happened.map(({ mistake, size }) => ({
				id: mistake.id,
				class: mistake.class,
				alsoFair: mistake.alsoFair ?? [],
				size: Number(size.toFixed(4)),
				unit: mistake.unit,
				isOdd: mistake.isOdd ?? false
			}))
		},
		method: world.kit.figures,
		band: { lowDkh, highDkh: lowDkh + c.pick([1.5, 2, 2.5]) },
		evidence: [
			first(hidden, chance('first'), 'first'),
			...earlierReadings(hidden, chance('earlier')),
			...(isAskedOfSecond ? [ask('secondMethod')] : []),
			...(isAskedOfSolution ? [ask('reference')] : [])
		],
		answers: answersIn(world, chance('answers')),
		ask
	};
}

/**
 * Cases made by a bench of its own, from volumes, marks, drops, bottles and waters, to judge a
 * diagnosis with: it shares neither equation nor list of causes with what it judges.
 *
 * @throws RangeError when `count` is no whole number from 0 up, or `seed` no whole number
 */
export function casesFromOutside(count: number, seed: number): OutsideCase[] {
	if (!(Number.isInteger(count) && count >= 0))
		throw new RangeError(`count must be a whole number from 0 up; found ${count}`);
	if (!Number.isInteger(seed)) throw new RangeError(`seed must be a whole number; found ${seed}`);
	return Array.from({ length: count }, (_, number) => caseFromOutside(number, seed));
}

/** A case as plain data: the table of checks holds what each finds when first asked. */
export function writtenCase({ ask, answers, ...plain }: OutsideCase) {
	return {
		...plain,
		answers: answers.map(({ question, wasSo, said }) => ({ question, wasSo, said })),
		checks: Object.fromEntries(askedIds.map((id) => [id, ask(id)]))
	};
}
