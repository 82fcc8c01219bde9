import { houseHardnessKit, houseKitsFor } from '../../../src/lib/kits';
import { methodFiguresFor, methodFiguresOf, type MethodFigures } from '../../../src/lib/metrology';
import type { Evidence } from '../../../src/lib/observation';
import { has, setAt, usualBandOf, type CalibrationCase, type TrueCause } from './case';
import type { DrawnAnalyte } from './prior-believed';
import {
	drawCauses,
	drawFault,
	possibleFaults,
	type DrawnCauses,
	type Present
} from './prior-causes';
import { PriorWorld } from './prior-world';
import { chanceAt, pick } from './seeds';

const causesOf = ({ faults, change, unforeseen }: DrawnCauses): TrueCause[] => [
	...faults.map(({ fault }): TrueCause => ({ ids: [fault.id], classes: [fault.class] })),
	...(change === null ? [] : [{ ids: ['realChange'], classes: ['water'] as const }]),
	...(unforeseen ? [{ ids: ['noneOfThese'], classes: [], isOdd: true }] : [])
];

/** The house's ways of finding it; magnesium is what is left of both metals. */
const methodsFor = (analyte: DrawnAnalyte): MethodFigures[] =>
	analyte === 'magnesium'
		? [methodFiguresFor(houseHardnessKit, analyte)]
		: houseKitsFor(analyte).map((kit) => methodFiguresOf(kit));

/** A case drawn from what the diagnosis believes beforehand, by the measurement equation. */
export function priorCase(
	index: number,
	seed: number,
	analyte: DrawnAnalyte = 'alkalinity'
): CalibrationCase {
	const chance = chanceAt(seed, analyte === 'alkalinity' ? 'prior' : `prior ${analyte}`, index);
	const set = setAt(index);
	const method = pick(chance, methodsFor(analyte));
	const kind = pick(chance, ['kit', 'photometer', 'laboratory'] as const);
	const hasSolution = has(set, 'known solution');
	const hasSecond = has(set, 'second method');
	const hasEarlier = has(set, 'two earlier readings');
	const present: Present = { second: hasSecond ? kind : null, hasSolution, hasEarlier };
	const causes = drawCauses(chance, method, present);
	const world = new PriorWorld(method, causes, kind, chance);
	const days = [7, 14];
	const evidence: Evidence[] = [
		world.test('first'),
		...(has(set, 'two repeats') ? [world.test('repeatFull'), world.test('repeatFull')] : []),
		...(hasSolution ? [world.reference()] : []),
		...(hasSecond ? [world.secondMethod()] : []),
		...(hasEarlier ? days.map((day) => world.earlier(day, days)) : []),
		...(has(set, 'four questions') ? world.answers(4) : [])
	];
	const truth = { trueValue: world.tank, causes: causesOf(causes) };
	const known = new Set<string>();
	/** What is wrong with a thing that is used for the first time is drawn when it is. */
	const use = (scope: 'instrument' | 'solution', isThere: boolean) => {
		if (isThere || known.has(scope)) return;
		known.add(scope);
		for (const fault of possibleFaults(method, { ...present, second: kind, hasSolution: true }))
			if (fault.scope === scope && chance.uniform() < fault.prior)
				causes.faults.push(drawFault(chance, fault, method, hasEarlier));
		truth.causes = causesOf(causes);
	};
	return {
		set,
		evidence,
		method,
		band: usualBandOf(analyte),
		truth,
		ask: (check) => {
			if (check === 'reference') {
				use('solution', hasSolution);
				return world.reference();
			}
			if (check === 'secondMethod') {
				use('instrument', hasSecond);
				return world.secondMethod();
			}
			if (check === 'weighSampleWare' || check === 'weighTitrantWare')
				return world.weighing(check === 'weighSampleWare' ? 'sample' : 'titrant');
			return world.test(check);
		}
	};
}
