import type { Plan, Truth } from '../../../src/lib/bench';
import type { FaultClass } from '../../../src/lib/judgement';
import type { Kit } from '../../../src/lib/kits';
import type { Chance } from '../chance';
import type { Household } from '../hands';
import { endFaults } from './bench-faults-end';
import { fillingFaults } from './bench-faults-filling';
import { thingFaults } from './bench-faults-things';

/** In what a test that has the fault differs from one without. */
export type Played = {
	plan?: Partial<Plan>;
	household?: Partial<Household>;
	/** Factors on the household's own. */
	strength?: number;
	sample?: number;
	drop?: number;
	ware?: Partial<NonNullable<Truth['ware']>>;
	indicator?: number;
	water?: (water: Truth['water']) => Truth['water'];
	/** What becomes of the value when it is worked out. */
	value?: (value: number) => number;
	/** Added to what a second method reads, and to what the known solution holds, dKH and shares. */
	secondDkh?: number;
	solutionShare?: number;
	solutionDkh?: number;
};

/** What keeps a fault from one test to the next. */
export type Keeps =
	| 'once'
	| 'hands'
	| 'lot'
	| 'sampleWare'
	| 'titrantWare'
	| 'kit'
	| 'portion'
	| 'second'
	| 'solution';

/** A fault by its physical cause: what hands do, or what things are, on the practice bench. */
export type BenchFault = {
	/** What the catalogue calls it; null where it has no name there. */
	id: string | null;
	name?: string;
	class: FaultClass;
	alsoFair?: readonly FaultClass[];
	keeps: Keeps;
	deliveries?: readonly Kit['delivery']['by'][];
	draw: (chance: Chance, kit: Kit) => Played;
};

/** All that the bench can play of the catalogue; sizes are drawn here and not taken from there. */
export const benchFaults: readonly BenchFault[] = [...fillingFaults, ...endFaults, ...thingFaults];

export const fits = (kit: Kit) => (fault: BenchFault) =>
	fault.deliveries?.includes(kit.delivery.by) ?? true;
