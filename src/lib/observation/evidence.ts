import type { Unit } from '../kits';
import type { Marks } from './marks';

/** A value somebody stands behind, with its expanded uncertainty (about 95 %), in the unit named. */
export type Reading = {
	id: string;
	/** A neutral name for lists: 'Your first test', 'Photometer'. */
	label: string;
	value: number;
	expandedUncertainty: number;
	/**
	 * Standard deviation between repeats of the same hands with the same ware and bottles: the part of
	 * the uncertainty that falls anew each time. Absent where nobody knows it.
	 */
	repeatabilitySd?: number;
	unit: Unit;
	marks?: Marks;
};

/** The ways of checking a reading that the practice bench knows. */
export const checkIds = [
	'repeatFull',
	'repeatQuick',
	'secondMethod',
	'reference',
	'largerSample',
	'freshLot',
	'freshSample'
] as const;
export type CheckId = (typeof checkIds)[number];

/** One thing learned while checking. */
export type Evidence =
	| { kind: 'test'; reading: Reading; from: 'first' | CheckId }
	| {
			kind: 'secondMethod';
			reading: Reading;
	  }
	| {
			kind: 'reference';
			reading: Reading;
			/** What the solution is said to hold, with its expanded uncertainty. */
			nominal: number;
			nominalExpandedUncertainty: number;
			matrix: 'seawater' | 'purified' | 'sodiumChloride';
	  }
	| { kind: 'earlier'; reading: Reading; daysAgo: number };

export const conclusions = [
	'stands',
	'technique',
	'reagent',
	'secondMethod',
	'waterChanged',
	'cantTellYet'
] as const;
/** What somebody may conclude about the reading in question. The order is fixed on every screen. */
export type Conclusion = (typeof conclusions)[number];
