import type { Chance } from './chance';
import type { Doing } from './titrate';
import type { Facts, World } from './world';

/** Where a cause belongs: the names that a diagnosis uses for its classes. */
export const outsideClasses = [
	'technique',
	'reagent',
	'ware',
	'method',
	'secondMethod',
	'reference',
	'sampling',
	'water'
] as const;
export type OutsideClass = (typeof outsideClasses)[number];

/** What keeps a mistake alive from one test to the next; 'slip' may be one test or a habit. */
export type Clings =
	'slip' | 'hands' | 'lot' | 'sampleWare' | 'titrantWare' | 'vial' | 'cup' | 'kit';

/** Something that can go wrong. `size` is in the words of `unit`; `bend` makes it happen. */
export type Mistake = {
	id: string;
	class: OutsideClass;
	/** Classes that a fair judge would accept as well. */
	alsoFair?: readonly OutsideClass[];
	/** How common it is beside the others. */
	weight: number;
	unit: 'mL' | 'share' | 'dKH' | 'drops' | 'pH' | 'factor';
	/** Not on anybody's list of causes: a diagnosis may say 'none of these'. */
	isOdd?: boolean;
	fits?: (world: World) => boolean;
	size: (c: Chance, world: World) => number;
	/** Of a test done with what it clings to. */
	bend?: (size: number, doing: Doing) => Partial<Doing>;
	clings?: Clings;
	/** Of the things themselves, where it is no matter of how a test was done. */
	change?: (size: number, world: World) => Partial<World>;
	facts?: (size: number) => Facts;
};
