import type { Fault } from '../../../src/lib/judgement';
import { usualMethodFigures } from '../../../src/lib/metrology';
import type { CheckId, Evidence } from '../../../src/lib/observation';
import type { Chance } from '../chance';
import { drawCauses, drawFault, type Present } from './prior-causes';
import { PriorWorld } from './prior-world';

/** A case about the invented syringe kit, with about half of all there is to be known besides the reading. */
export type HalfOfAllCase = {
	evidence: Evidence[];
	/** By how much the reading in question is off, dKH. */
	offDkh: number;
};

const method = usualMethodFigures;
const tests: readonly CheckId[] = [
	'repeatFull',
	'repeatFull',
	'freshLot',
	'largerSample',
	'otherHands',
	'freshSample'
];
const days = [7, 14];

/**
 * Drawn from what the diagnosis believes beforehand.
 *
 * @param cause what must be the matter, and nothing else; drawn by the priors, and from what the
 *   catalogue has, when left out
 */
export function halfOfAllCase(chance: Chance, cause?: Fault): HalfOfAllCase {
	const happens = () => chance.uniform() < 0.5;
	const made = tests.filter(happens);
	const told = days.filter(happens);
	const present: Present = {
		second: happens() ? 'kit' : null,
		hasSolution: happens(),
		hasEarlier: told.length > 0
	};
	const drawn = () => {
		for (;;) {
			const causes = drawCauses(chance, method, present);
			if (!causes.unforeseen) return causes;
		}
	};
	const causes = cause
		? {
				faults: [drawFault(chance, cause, method, present.hasEarlier)],
				change: null,
				unforeseen: null
			}
		: drawn();
	const world = new PriorWorld(method, causes, 'kit', chance);
	const first = world.test('first');
	const evidence = [
		first,
		...made.map((check) => world.test(check)),
		...(present.hasSolution ? [world.reference()] : []),
		...(present.second ? [world.secondMethod()] : []),
		...told.map((day) => world.earlier(day, days))
	];
	const offDkh = 'reading' in first ? first.reading.value - world.tank : Number.NaN;
	return { evidence, offDkh };
}
