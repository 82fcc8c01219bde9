import { numeralAt, reachMl, type BuretteDelivery, type SyringeDelivery } from '$lib/kits';
import { ticksOf, type Tick } from '$lib/ui/bench/drawing/printed-scale';

/** Room above the barrel for the plunger, and below it for the tip, px. */
const TOP = { syringe: 30, burette: 12 };
const BOTTOM = 58;
/** Printed lines nearer than this run into each other, px. */
const LEAST_GAP = 2;

export type BarrelScale = {
	pxPerMl: number;
	/** Where the barrel begins at the tip, and where it ends, px from the top of the drawing. */
	nozzleY: number;
	endY: number;
	/** 1 when numerals grow upward on the drawing, -1 when they grow downward. */
	upward: 1 | -1;
	yOf(numeralMl: number): number;
	/** The numeral at a height, held on the barrel. */
	numeralOf(y: number): number;
	ticks: readonly (Tick & { y: number })[];
};

/**
 * The barrel of a kit as it is drawn, tip down: where its numerals stand, whichever way they run.
 *
 * @param height of the whole drawing, px
 */
export function barrelScale(
	delivery: SyringeDelivery | BuretteDelivery,
	height: number
): BarrelScale {
	const { capacityMl } = delivery;
	const isSyringe = delivery.by === 'syringe';
	const endMl = isSyringe ? reachMl(delivery) : capacityMl;
	/** Height above the nozzle from a numeral, and back: the same sum both ways. */
	const turned = (ml: number) => (isSyringe ? numeralAt(delivery, ml) : capacityMl - ml);
	const nozzleY = height - BOTTOM;
	const endY = TOP[delivery.by];
	const pxPerMl = Math.max(1, nozzleY - endY) / endMl;
	const yOf = (numeralMl: number) => nozzleY - turned(numeralMl) * pxPerMl;
	return {
		pxPerMl,
		nozzleY,
		endY,
		upward: isSyringe && delivery.scale === 'down' ? 1 : -1,
		yOf,
		numeralOf: (y) => turned(Math.min(endMl, Math.max(0, (nozzleY - y) / pxPerMl))),
		ticks: legible(ticksOf({ ...delivery, highestMl: capacityMl }), {
			gap: delivery.graduationMl * pxPerMl,
			perNumeral: Math.round(delivery.numeralEveryMl / delivery.graduationMl)
		}).map((tick) => ({ ...tick, y: yOf(tick.numeralMl) }))
	};
}

/** Leaves out short lines, evenly between the numerals, until the rest can be told apart. */
function legible(ticks: Tick[], { gap, perNumeral }: { gap: number; perNumeral: number }): Tick[] {
	const every = [1, 2, 5, 10].find((n) => perNumeral % n === 0 && n * gap >= LEAST_GAP);
	return ticks.filter((tick, i) => tick.isLong || (every !== undefined && i % every === 0));
}
