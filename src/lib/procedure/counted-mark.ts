import { valueFromMark, type EndMark, type Kit } from '../kits';
import { lastOf, startsIn, type Of } from './event-queries';
import { reckonedToFullMl, refilledMlIn, refillsAsOne, type Refill } from './refills';
import type { TimedEvent } from './walk-log';

/** Which mark a value rests on, and from where it was counted. */
export type CountedMark = {
	read: Of<'marks.read'>;
	by: 'seal' | 'line' | 'level' | 'drops';
	/** From the full mark (or 0), as leaflets have it, or from where the mark really stood. */
	from: 'full' | 'start';
	/**
	 * What was drawn in again on the way: as much as came in, as much as would have come in had the filling
	 * ended at the full mark, or not all of it.
	 */
	refills: 'drawn' | 'toFull' | 'forgotten';
	/** Of it, what the count leaves out, mL. */
	uncountedMl: number;
	/** Titrant used by this count, mL. */
	usedMl: number;
	/** What the leaflet makes of it, in the kit's unit, and what 1 mL is worth there. */
	value: number;
	valuePerMl: number;
};

/** Volume of the sample that the walk uses, mL. */
export function sampleVolumeOf(kit: Kit, events: readonly TimedEvent[]): number {
	const chosen = lastOf(events, 'sample.chosen')?.event.volumeId;
	const volume = kit.sample.volumes.find((each) => each.id === chosen) ?? kit.sample.volumes[0];
	return volume?.volumeMl ?? Number.NaN;
}

type Reckoned = Pick<CountedMark, 'refills' | 'uncountedMl'>;

/** How the fillings on the way may have been reckoned by who reads this mark, the right way first. */
function reckonings(
	kit: Kit,
	events: readonly TimedEvent[],
	by: 'seal' | 'line' | 'level'
): Reckoned[] {
	const refills = refillsAsOne(kit, events).filter(({ refilledMl }) => (refilledMl ?? 0) > 0);
	const sum = (some: readonly Refill[]) =>
		some.reduce((all, { refilledMl }) => all + (refilledMl ?? 0), 0);
	const toFull = refills.map(
		(refill) => reckonedToFullMl(kit, refill, by) ?? refill.refilledMl ?? 0
	);
	const beyondMl = sum(refills) - toFull.reduce((all, each) => all + each, 0);
	const ways: Reckoned[] = [{ refills: 'drawn', uncountedMl: 0 }];
	if (refills.length === 0) return ways;
	ways.push({ refills: 'toFull', uncountedMl: beyondMl });
	ways.push({ refills: 'forgotten', uncountedMl: sum(refills) });
	if (refills.length > 1) ways.push({ refills: 'forgotten', uncountedMl: sum(refills.slice(-1)) });
	return ways;
}

/** Every way in which the marks read could have been turned into a value. */
function waysToCount(kit: Kit, events: readonly TimedEvent[]): CountedMark[] {
	const read = lastOf(events, 'marks.read');
	const refilledMl = refilledMlIn(kit, events);
	if (!read || refilledMl === null) return [];
	const { marks } = read.event;
	const sampleVolumeMl = sampleVolumeOf(kit, events);
	const start = startsIn(events)[0]?.drawn.event;
	const ways: Omit<CountedMark, 'read' | 'usedMl' | 'value' | 'valuePerMl'>[] = [];
	const ends: EndMark[] = [];
	for (const by of ['seal', 'line', 'level'] as const) {
		const markMl = marks[`${by}Ml`];
		const startMarkMl = start?.[`${by}Ml`];
		if (markMl === undefined) continue;
		for (const reckoned of reckonings(kit, events, by)) {
			const end = { markMl, refilledMl: refilledMl - reckoned.uncountedMl, sampleVolumeMl };
			ways.push({ by, from: 'full', ...reckoned });
			ends.push(end);
			if (startMarkMl === undefined) continue;
			ways.push({ by, from: 'start', ...reckoned });
			ends.push({ ...end, startMarkMl });
		}
	}
	if (kit.delivery.by === 'dropper' && marks.drops !== undefined) {
		ways.push({ by: 'drops', from: 'full', refills: 'drawn', uncountedMl: 0 });
		ends.push({ drops: marks.drops, sampleVolumeMl });
	}
	return ways.flatMap((way, i): CountedMark[] => {
		try {
			return [{ ...way, read, ...valueFromMark(kit, ends[i] ?? {}) }];
		} catch {
			// Off the scale or its table: nobody can have counted so.
			return [];
		}
	});
}

/** A reported value belongs to a way of counting when it is this near, in the kit's unit. */
export function rowTolerance(kit: Kit, { valuePerMl }: Pick<CountedMark, 'valuePerMl'>): number {
	// A tenth of a degree of rounding; between two rows, a quarter of a division by eye.
	const stepMl = kit.delivery.by === 'dropper' ? 0 : kit.delivery.graduationMl / 4;
	return Math.max(0.11, stepMl * valuePerMl);
}

/**
 * Which mark was made into the value: of all ways to count, the one that comes nearest to what was
 * reported. Before a value is reported only a single mark says it; with two read it is open, and
 * null. A value that no way explains was looked up wrong, from the full mark as leaflets have it.
 */
export function countedMark(kit: Kit, events: readonly TimedEvent[]): CountedMark | null {
	const ways = waysToCount(kit, events);
	const plain = ways.filter(({ from, refills }) => from === 'full' && refills === 'drawn');
	const reported = lastOf(events, 'value.reported')?.event.value;
	if (reported === undefined) return plain.length === 1 ? (plain[0] ?? null) : null;
	const off = ({ value }: CountedMark) => Math.abs(value - reported);
	const nearestOf = (some: readonly CountedMark[]) =>
		some.reduce<CountedMark | null>(
			(best, way) => (best === null || off(way) < off(best) - 1e-9 ? way : best),
			null
		);
	const nearest = nearestOf(ways);
	return nearest && off(nearest) <= rowTolerance(kit, nearest) ? nearest : nearestOf(plain);
}
