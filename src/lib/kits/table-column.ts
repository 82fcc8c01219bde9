import type { Conversion, Delivery } from './kit';

/** What the first column of a leaflet's table counts. */
export type Column = Extract<Conversion, { kind: 'rows' }>['column'];

/** Whether the numbers of this column grow as titrant is used, or fall. */
export function growsWithUse(delivery: Delivery, column: Column): boolean {
	if (delivery.by === 'dropper') return true;
	return !(
		column === 'leftMl' ||
		(column === 'mark' && delivery.by === 'syringe' && delivery.scale === 'down')
	);
}

/** Where the numerals of this column stand when nothing has been used, and how they go on from there. */
function lineOf(delivery: Delivery, column: Column): { atStart: number; perMl: number } {
	if (column === 'drops') return { atStart: 0, perMl: 1 / delivery.dropMl };
	return delivery.by === 'dropper' || growsWithUse(delivery, column)
		? { atStart: 0, perMl: 1 }
		: { atStart: delivery.capacityMl, perMl: -1 };
}

/** Number in the first column of the table for so much titrant used out of a full measure. */
export function columnFromUsed(delivery: Delivery, column: Column, usedMl: number): number {
	const { atStart, perMl } = lineOf(delivery, column);
	return atStart + usedMl * perMl;
}

/** Titrant used, mL, for a number in the first column; the other way round of `columnFromUsed`. */
export function usedFromColumn(delivery: Delivery, column: Column, at: number): number {
	const { atStart, perMl } = lineOf(delivery, column);
	return (at - atStart) / perMl;
}
