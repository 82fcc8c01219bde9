import type { CheckId, Evidence } from '../../../src/lib/observation';
import type { Chance } from './chance';
import type { Hidden } from './happen';
import { dkhIn } from './kits';
import { cupWater, freshWater, leafletDkh, readingOf, testOnce, type Setting } from './test-once';
import type { Water } from './titrate';

type Asked = (hidden: Hidden, c: Chance, id: string) => Evidence;

function tested(from: CheckId | 'first', label: string, at: Setting): Asked {
	return (hidden, c, id) => {
		const { kit } = hidden.world;
		const { dkh, marks } = testOnce(hidden, at, c);
		const plusMinus = leafletDkh(kit, dkh, at.sampleRatio);
		const reading = readingOf(kit, id, label, dkh, plusMinus);
		// Not everybody notes marks: a value alone says where it came from less well.
		const hasMarks = c.happens(0.4);
		return { kind: 'test', from, reading: hasMarks ? { ...reading, marks } : reading };
	};
}

/** What a second method finds in a water, dKH. */
function found({ world }: Hidden, water: Water, c: Chance): number {
	const { share, offsetDkh, sdDkh, reports } = world.second;
	const borate =
		reports === 'carbonate' && water.matrix === 'seawater' ? world.borateShare * water.dkh : 0;
	return Math.max(0, (water.dkh - borate) * (1 + share) + offsetDkh + c.normal(sdDkh));
}

const bySecond: Asked = (hidden, c, id) => {
	const { kit, second } = hidden.world;
	const isFresh = second.method === 'laboratory' || c.happens(0.3);
	const dkh = found(hidden, isFresh ? freshWater(hidden, c) : cupWater(hidden), c);
	return {
		kind: 'secondMethod',
		reading: readingOf(kit, id, second.name, dkh, second.claimedDkh),
		method: second.method,
		instrument: second.name,
		coverageFactor: second.coverageFactor,
		...(second.saysSo ? { reports: second.reports } : {}),
		...(isFresh ? { sampling: 'Another portion' } : {})
	};
};

/** A titration with a glass electrode at home: acid strength, electrode and fit each add a little. */
const byProbe: Asked = (hidden, c, id) => {
	const { kit } = hidden.world;
	const dkh = cupWater(hidden).dkh * (1 + c.normal(0.01)) + c.normal(0.05);
	const reading = readingOf(kit, id, 'pH titration', Math.max(0, dkh), 0.25);
	return { kind: 'secondMethod', reading, method: 'probe', instrument: 'pH titration' };
};

function ofSolution({ world }: Hidden) {
	const { kit, solution } = world;
	return {
		nominal: Number((solution.nominalDkh / dkhIn[kit.figures.unit]).toFixed(3)),
		nominalExpandedUncertainty: Number((solution.claimedDkh / dkhIn[kit.figures.unit]).toFixed(4)),
		matrix: solution.water.matrix,
		solution: 'Own solution'
	};
}

const reference: Asked = (hidden, c, id) => {
	const { kit, solution } = hidden.world;
	const { dkh } = testOnce(hidden, { water: solution.water }, c);
	const reading = readingOf(kit, id, 'Known solution', dkh, leafletDkh(kit, dkh));
	return { kind: 'reference', reading, ...ofSolution(hidden) };
};

const referenceBySecond: Asked = (hidden, c, id) => {
	const { kit, second, solution } = hidden.world;
	const dkh = found(hidden, solution.water, c);
	const reading = readingOf(kit, id, 'Known solution', dkh, second.claimedDkh);
	return { kind: 'reference', reading, ...ofSolution(hidden), instrument: second.name };
};

const addition: Asked = (hidden, c, id) => {
	const { kit } = hidden.world;
	const cup = cupWater(hidden);
	const added = c.pick([2, 3]);
	const rise = added * (1 + c.normal(0.02));
	const { dkh } = testOnce(hidden, { water: { ...cup, dkh: cup.dkh + rise } }, c);
	return {
		kind: 'addition',
		reading: readingOf(kit, id, 'With the addition', dkh, leafletDkh(kit, dkh)),
		added: added / dkhIn[kit.figures.unit],
		addedExpandedUncertainty: (0.04 * added) / dkhIn[kit.figures.unit]
	};
};

const blank: Asked = (hidden, c, id) => {
	const { kit } = hidden.world;
	const matrix = c.happens(0.6) ? 'purified' : 'sodiumChloride';
	const nothing: Water = { dkh: Math.abs(c.normal(0.02)), matrix, carbonPerAlkalinity: 1 };
	const { dkh } = testOnce(hidden, { water: nothing }, c);
	return { kind: 'blank', reading: readingOf(kit, id, 'Blank', dkh, leafletDkh(kit, dkh)), matrix };
};

/** Weighing sees the scale, and how this person sets to it or lets drops fall. */
function weighed(ware: 'sample' | 'titrant'): Asked {
	return ({ world, happened }, c) => {
		const habits = happened.filter(
			({ mistake, isHabit }) => mistake.bend && mistake.clings === 'slip' && isHabit
		);
		const usual = { ...world.doing };
		for (const { mistake, size } of habits) Object.assign(usual, mistake.bend?.(size, usual));
		const ratio =
			ware === 'sample'
				? world.sampleWare.scale * (1 + world.hands.sampleShare) * usual.sampleFactor
				: world.titrantWare.scale * usual.dropFactor;
		const expandedUncertainty = ware === 'sample' ? 0.01 : 0.014;
		const seen = ratio * (1 + c.normal(expandedUncertainty / 2));
		return {
			kind: 'weighing',
			ware,
			foundOverNominal: Number(seen.toFixed(3)),
			expandedUncertainty
		};
	};
}

/** How the test in question itself comes about. */
export const first = tested('first', 'Test in question', { isFirst: true });

/** What each way of checking would find. */
const asked: Readonly<Partial<Record<CheckId, Asked>>> = {
	repeatFull: tested('repeatFull', 'Repeated with care', { habitShows: 0.7 }),
	repeatQuick: tested('repeatQuick', 'Repeated', { habitShows: 0.95 }),
	secondMethod: bySecond,
	reference,
	largerSample: tested('largerSample', 'Twice the water', { sampleRatio: 2 }),
	freshLot: tested('freshLot', 'Another bottle', { lot: 'fresh' }),
	freshSample: tested('freshSample', 'Another portion', { isFreshCup: true }),
	smallerSample: tested('smallerSample', 'Half the water', { sampleRatio: 0.5 }),
	standardAddition: addition,
	blank,
	weighSampleWare: weighed('sample'),
	weighTitrantWare: weighed('titrant'),
	otherHands: tested('otherHands', 'Somebody else', { hands: 'other' }),
	probeTitration: byProbe,
	referenceBySecondMethod: referenceBySecond
};

/** The ways of checking that a test of alkalinity has. */
export const askedIds = Object.keys(asked) as CheckId[];

/** @throws RangeError when a test of alkalinity has no such check */
export function askedBy(id: CheckId): Asked {
	const found = asked[id];
	if (!found) throw new RangeError(`check must be one of ${askedIds.join(', ')}; found ${id}`);
	return found;
}
