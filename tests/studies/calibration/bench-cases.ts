import { faultById } from '../../../src/lib/judgement';
import type { Evidence } from '../../../src/lib/observation';
import { benchFaults, fits, type BenchFault } from './bench-faults';
import { BenchWorld } from './bench-world';
import { has, setAt, usualBand, type CalibrationCase, type TrueCause } from './case';
import { oddBenchFaults } from './odd-faults';
import { chanceAt } from './seeds';

/** How often the catalogue thinks that it is there. */
const priorOf = ({ id }: BenchFault): number => (id === null ? 0 : (faultById(id)?.prior ?? 0));

const causesOf = ({ happened, changeDkh }: BenchWorld): TrueCause[] => [
	...happened.map(({ fault }): TrueCause => ({
		ids: fault.id === null ? [] : [fault.id],
		classes: [fault.class, ...(fault.alsoFair ?? [])],
		...(fault.id === null ? { isOdd: true } : {})
	})),
	...(changeDkh === 0 ? [] : [{ ids: ['realChange'], classes: ['water'] as const }])
];

/** What evidence of a set a world gives, and what can still be asked of it. */
function caseOf(world: BenchWorld, index: number, label: string, wrongShare = 0): CalibrationCase {
	const set = setAt(index);
	const evidence: Evidence[] = [
		world.test('first'),
		...(has(set, 'two repeats') ? [world.test('repeatFull'), world.test('repeatFull')] : []),
		...(has(set, 'known solution') ? [world.reference()] : []),
		...(has(set, 'second method') ? [world.secondMethod()] : []),
		...(has(set, 'two earlier readings') ? [world.earlier(7), world.earlier(14)] : []),
		...(has(set, 'four questions') || wrongShare > 0 ? world.answers(4, wrongShare) : [])
	];
	return {
		set: label || set,
		evidence,
		method: world.method,
		band: usualBand,
		truth: { trueValue: world.trueValueDkh, causes: causesOf(world) },
		ask: (check) => {
			switch (check) {
				case 'reference':
					return world.reference();
				case 'secondMethod':
					return world.secondMethod();
				case 'weighSampleWare':
					return world.weighing('sample');
				case 'weighTitrantWare':
					return world.weighing('titrant');
				default:
					return world.test(check);
			}
		}
	};
}

const touches = (index: number) => {
	const set = setAt(index);
	return ({ keeps }: BenchFault) =>
		keeps === 'second'
			? has(set, 'second method')
			: keeps === 'solution'
				? has(set, 'known solution')
				: true;
};

/** No fault, one or two, each as often as the catalogue thinks; what each does, the bench decides. */
export function benchCase(index: number, seed: number): CalibrationCase {
	const chance = chanceAt(seed, 'bench', index);
	const world = new BenchWorld(chance);
	const there = benchFaults.filter(fits(world.kit)).filter(touches(index));
	for (;;) {
		const found = there.filter((fault) => chance.uniform() < priorOf(fault));
		const isChanged = chance.uniform() < 0.12;
		if (found.length + Number(isChanged) > 2) continue;
		if (found.length === 2 && chance.uniform() > 0.4) continue;
		found.forEach((fault) => world.let(fault));
		if (isChanged) world.change();
		break;
	}
	world.slipElsewhere = 0.05;
	return caseOf(world, index, '');
}

/** Ways in which the model is wrong about the world, in turn. */
export const waysAstray = [
	'fault of no list',
	'other priors',
	'slips in any test',
	'always two faults',
	'wrong answers'
] as const;

/** Cases in which something that the model takes for granted is not so. */
export function astrayCase(index: number, seed: number): CalibrationCase {
	const chance = chanceAt(seed, 'astray', index);
	const world = new BenchWorld(chance);
	const way = waysAstray[index % waysAstray.length] ?? 'other priors';
	// Kinds of evidence go round within each way.
	const place = Math.floor(index / waysAstray.length);
	const there = benchFaults.filter(touches(place));
	world.slipElsewhere = way === 'slips in any test' ? 0.2 : 0.05;
	const one = (weightOf: (fault: BenchFault) => number) =>
		world.let(world.drawFault(there, weightOf));
	if (way === 'fault of no list') world.let(world.drawFault(oddBenchFaults, () => 1));
	// What is rare is common: every fault alike, in three of four cases, and the tank changes often.
	else if (way === 'other priors') {
		if (chance.uniform() < 0.75) one(() => 1);
		if (chance.uniform() < 0.3) world.change();
	} else if (way === 'always two faults') {
		one(priorOf);
		const [first] = world.happened;
		const others = there.filter(({ id }) => id !== first?.fault.id);
		world.let(world.drawFault(others, priorOf));
	} else {
		if (chance.uniform() < 0.6) one(priorOf);
		if (chance.uniform() < 0.12) world.change();
	}
	return caseOf(world, place, way, way === 'wrong answers' ? 0.35 : 0);
}
