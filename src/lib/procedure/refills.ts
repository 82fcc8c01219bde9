import { numeralAt, type Kit } from '../kits';
import type { Marks } from '../observation';
import { additionsIn, eventsOf, isRefill, type Of } from './event-queries';
import type { TimedEvent } from './walk-log';

/** A filling on the way. */
export type Refill = {
	drawn: Of<'titrant.drawn'>;
	/** What it drew in; null when nobody noted enough to tell. */
	refilledMl: number | null;
	/** Seal before and line after, or the other way round: the tip's air lies between them. */
	isMixed: boolean;
	/** The marks say that it was emptier afterwards. */
	isBackwards: boolean;
};

/** The filling that the drops began from: the last that was no refill. */
export function startFillingOf(events: readonly TimedEvent[]): Of<'titrant.drawn'> | null {
	return eventsOf(events, 'titrant.drawn').findLast((drawn) => !isRefill(events, drawn)) ?? null;
}

/** A filling as it was noted, with other marks; what else was noted of it stays. */
export function withMarks(
	drawn: Of<'titrant.drawn'>['event'],
	marks: Omit<Marks, 'drops'>
): Of<'titrant.drawn'>['event'] {
	const { sealMl: _seal, lineMl: _line, levelMl: _level, ...rest } = drawn;
	return { ...rest, ...marks };
}

/**
 * Titrant taken in between two numerals of a scale, mL: positive when it is fuller at the second.
 */
function takenInMl({ delivery }: Kit, fromMl: number, toMl: number): number {
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	return isDown ? toMl - fromMl : fromMl - toMl;
}

function refillOf(kit: Kit, events: readonly TimedEvent[], drawn: Of<'titrant.drawn'>): Refill {
	const { before, drawnAgainMl, ...after } = drawn.event;
	const none = { drawn, refilledMl: null, isMixed: false, isBackwards: false };
	if (drawnAgainMl !== undefined) return { ...none, refilledMl: drawnAgainMl };
	const home = wasPushedHome(kit, events, drawn) ? { sealMl: numeralAt0(kit) } : {};
	const stood = { ...home, ...before };
	for (const by of ['sealMl', 'lineMl', 'levelMl'] as const) {
		const [from, to] = [stood[by], after[by]];
		if (from === undefined || to === undefined) continue;
		const refilledMl = takenInMl(kit, from, to);
		// A hair backwards is a reading of the same place.
		return refilledMl < -0.01
			? { ...none, isBackwards: true }
			: { ...none, refilledMl: Math.max(0, refilledMl) };
	}
	const crosses = (a: 'sealMl' | 'lineMl', b: 'sealMl' | 'lineMl') =>
		stood[a] !== undefined && after[b] !== undefined;
	return { ...none, isMixed: crosses('sealMl', 'lineMl') || crosses('lineMl', 'sealMl') };
}

const numeralAt0 = ({ delivery }: Kit): number | undefined =>
	delivery.by === 'syringe' ? numeralAt(delivery, 0) : undefined;

/** Nothing more came just before: the seal stood at the nozzle end. */
function wasPushedHome(
	kit: Kit,
	events: readonly TimedEvent[],
	drawn: Of<'titrant.drawn'>
): boolean {
	if (kit.delivery.by !== 'syringe') return false;
	const place = events.findIndex(({ id }) => id === drawn.id);
	const last = events
		.slice(0, place)
		.findLast(({ event }) =>
			['titrant.spent', 'titrant.fell', 'drop.touchedOff', 'titrant.drawn'].includes(event.type)
		);
	return last?.event.type === 'titrant.spent';
}

/** The refills of a titration, in order. A bottle of drops has none: its drops are all there is. */
export function refillsIn(kit: Kit, events: readonly TimedEvent[]): Refill[] {
	if (kit.delivery.by === 'dropper') return [];
	return eventsOf(events, 'titrant.drawn')
		.filter((drawn) => isRefill(events, drawn))
		.map((drawn) => refillOf(kit, events, drawn));
}

/** Fillings on the way that followed each other without a drop between them, as one. */
export function refillsAsOne(kit: Kit, events: readonly TimedEvent[]): Refill[] {
	return refillsIn(kit, events).reduce<Refill[]>((all, refill) => {
		const last = all.at(-1);
		const place = (each: Refill) => events.findIndex(({ id }) => id === each.drawn.id);
		const isSame = last && additionsIn(events.slice(place(last) + 1, place(refill))).length === 0;
		if (!isSame) return [...all, refill];
		const refilledMl =
			last.refilledMl === null || refill.refilledMl === null
				? null
				: last.refilledMl + refill.refilledMl;
		return [...all.slice(0, -1), { ...refill, refilledMl }];
	}, []);
}

/**
 * What a filling on the way is reckoned to have drawn in by whoever takes it to end at the full mark (0 on
 * a burette), as leaflets have it: from where the mark stood, mL. Null when that mark was not noted.
 */
export function reckonedToFullMl(
	{ delivery }: Kit,
	{ drawn, refilledMl }: Refill,
	by: 'seal' | 'line' | 'level'
): number | null {
	const numeral = drawn.event[`${by}Ml`];
	if (delivery.by === 'dropper' || numeral === undefined || refilledMl === null) return null;
	if (delivery.by === 'burette') return numeral + refilledMl;
	const fromNozzleMl = delivery.scale === 'down' ? numeral : delivery.capacityMl - numeral;
	// A line that has run into the tip is read as standing at the nozzle.
	return delivery.capacityMl - Math.max(0, fromNozzleMl - refilledMl);
}

/** Titrant drawn in again on the way, mL in all; null when that happened and nobody noted how much. */
export function refilledMlIn(kit: Kit, events: readonly TimedEvent[]): number | null {
	return refillsIn(kit, events).reduce<number | null>(
		(sum, { refilledMl }) => (sum === null || refilledMl === null ? null : sum + refilledMl),
		0
	);
}
