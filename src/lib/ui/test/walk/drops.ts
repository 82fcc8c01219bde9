import type { TankTitration } from '$lib/procedure';

/** How far the adding of drops has come, as far as it was said. */
export type Drops = {
	/** 'adding' drops, the colour has 'turned', or it stayed and one is 'holding'. */
	phase: 'adding' | 'turned' | 'holding';
	/** Drops counted so far. */
	counted: number;
	/** Time of the last drop that was noted, ms; null while there is none. */
	lastDropAt: number | null;
	/** From when the colour has to hold: the last drop or flash, whichever came later, ms. */
	holdsFrom: number | null;
	/** Time of the last thing said in this step, or when the step began, ms. */
	lastSaidAt: number;
	/** Anything has been said in this step. */
	isBegun: boolean;
};

const phases = ['turned', 'holding'] as const;

/** Reads the step of the drops off a titration that stands at it. */
export function dropsOf({ walk, events }: TankTitration): Drops {
	let counted = 0;
	let lastDropAt: number | null = null;
	let turnedAt: number | null = null;
	for (const { at, event } of events) {
		if (event.type === 'titrant.fell') {
			counted += event.drops ?? 0;
			lastDropAt = at;
		} else if (event.type === 'drop.touchedOff') lastDropAt = at;
		else if (event.type === 'colour.turned') turnedAt = at;
	}
	const last = events.at(-1);
	const isBegun = last !== undefined && !last.event.type.startsWith('step.');
	const times = [lastDropAt, turnedAt].filter((at) => at !== null);
	return {
		phase: phases.find((phase) => walk.matches({ titrating: phase })) ?? 'adding',
		counted,
		lastDropAt,
		holdsFrom: times.length > 0 ? Math.max(...times) : null,
		lastSaidAt: isBegun ? last.at : walk.context.stepSince,
		isBegun
	};
}
