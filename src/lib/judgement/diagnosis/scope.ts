import type { Fault, FaultScope } from '../catalogue/fault';
import type { Row } from './row';
import { OWN, type Things } from './things';

const thingOf: Partial<Record<FaultScope, keyof Things>> = {
	hands: 'hands',
	sampleWare: 'sampleWare',
	titrantWare: 'titrantWare',
	lot: 'lot',
	kit: 'kit',
	sampling: 'sampling',
	solution: 'solution',
	instrument: 'instrument',
	takenOff: 'takenOff'
};

/**
 * A thing that a fault of this scope may sit in. For those of the test in question it is that test's
 * own; solutions and instruments are as many as the evidence names.
 */
export function seatsOf(scope: FaultScope, rows: readonly Row[]): string[] {
	if (scope !== 'solution' && scope !== 'instrument') return [OWN];
	const names = rows.flatMap(({ things }) => things[scope] ?? []);
	return [...new Set(names)].sort();
}

type Masked = Pick<Fault, 'scope' | 'target' | 'shownBy' | 'undoneBy'>;

/** Whether a reading shares a fault that sits in a thing. A weighing knows nothing but its ware. */
export function isInScope(fault: Masked, row: Row, seat: string): boolean {
	const { scope } = fault;
	if (row.weighed) {
		const ware = row.weighed === 'sample' ? 'sampleWare' : 'titrantWare';
		const check = row.weighed === 'sample' ? 'weighSampleWare' : 'weighTitrantWare';
		// A habit in handling the ware is weighed along with it, if weighing is said to show it.
		return (
			fault.target === 'gain' &&
			(scope === ware || (scope === 'hands' && fault.shownBy.includes(check)))
		);
	}
	if (row.from && fault.undoneBy?.includes(row.from)) return false;
	if (scope === 'oneTest') return row.isInQuestion;
	// What changed in the tank is not in readings from before.
	if (scope === 'tank') return row.isEarlier;
	const thing = thingOf[scope];
	return thing !== undefined && row.things[thing] === seat;
}

/** Readings that a fault is in, row by row. */
export const maskOf = (fault: Masked, rows: readonly Row[], seat: string): Uint8Array =>
	Uint8Array.from(rows, (row) => (isInScope(fault, row, seat) ? 1 : 0));
