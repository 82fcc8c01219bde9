import { numeralAt, valueFromMark, type EndMark, type Kit, type Unit } from '../kits';
import type { Marks, WalkEvent } from '../observation';
import { sampleVolumeOf } from './counted-mark';
import { lastOf } from './event-queries';
import { refilledMlIn, refillsIn, startFillingOf } from './refills';
import type { TankTitration } from './tank-test';
import type { TimedEvent } from './walk-log';

/** The mark that a value rests on. */
export type CountedBy = 'seal' | 'line' | 'level' | 'drops';

/** What a titration beside the tank comes to, from the marks as they were read and the leaflet. */
export type ValuedTitration = {
	titration: number;
	/** In the leaflet's unit. */
	value: number;
	unit: Unit;
	usedMl: number;
	/** Value that 1 mL of titrant stands for with this sample. */
	valuePerMl: number;
	sampleVolumeMl: number;
	by: CountedBy;
	/**
	 * Where the count begins: at the mark read at the 'start'; at the 'full' mark (or 0), where nobody
	 * noted a start; or at one mark and ends at the other, with the volume of the tip between them.
	 */
	from: 'start' | 'full' | 'throughTip';
	/** Numerals of the mark that counts. */
	startMl?: number;
	endMl?: number;
	refills: number;
	/** The mark lies beyond the leaflet's table, which was carried on as straight as it is. */
	isBeyondTable: boolean;
	/** What other marks of the same titration would make of it. */
	otherwise: { by: CountedBy; value: number }[];
};
/** A titration that has no value, and why, in a sentence. */
export type Unvalued = { titration: number; value: null; why: string };

type ByMark = 'seal' | 'line' | 'level';
type Drawn = Extract<WalkEvent, { type: 'titrant.drawn' }>;

/**
 * Tip and nozzle of a small syringe where its leaflet is silent, mL, between 0.15 and 0.20
 * (common practice, no source).
 */
export const USUAL_TIP_ML = 0.175;

/** The filling that the drops began from: the last that was no refill. */
export function startOf(events: readonly TimedEvent[]): Drawn | null {
	return startFillingOf(events)?.event ?? null;
}

type Count = { by: CountedBy; from: ValuedTitration['from']; end: EndMark };

/** Numeral of the full mark of a syringe, or 0 of a burette. */
function fullMark({ delivery }: Kit): number {
	return delivery.by === 'syringe' ? numeralAt(delivery, delivery.capacityMl) : 0;
}

/** Numeral at the other mark, across the air cushion: the line stands nearer the nozzle than the seal. */
function acrossTip(kit: Kit, numeralMl: number, to: 'seal' | 'line'): number {
	const { delivery } = kit;
	if (delivery.by !== 'syringe') return numeralMl;
	const outward = delivery.scale === 'down' ? 1 : -1;
	const tipMl = delivery.tipVolumeMl ?? USUAL_TIP_ML;
	return numeralMl + (to === 'seal' ? outward : -outward) * tipMl;
}

/** The ways in which these marks can be counted, the soundest first. */
function waysToCount(kit: Kit, start: Drawn | null, marks: Marks): Count[] {
	if (kit.delivery.by === 'dropper')
		return marks.drops === undefined
			? []
			: [{ by: 'drops', from: 'full', end: { drops: marks.drops } }];
	const read = (['seal', 'line', 'level'] as const).filter((by) => marks[`${by}Ml`] !== undefined);
	const same = read.flatMap((by): Count[] => {
		const startMarkMl = start?.[`${by}Ml`];
		if (startMarkMl === undefined) return [];
		return [{ by, from: 'start', end: { markMl: marks[`${by}Ml`], startMarkMl } }];
	});
	const across = read.flatMap((by) => countAcross(kit, start, marks, by));
	return [...same, ...across];
}

/** Counted from a start that was noted by the other mark, or by none. */
function countAcross(kit: Kit, start: Drawn | null, marks: Marks, by: ByMark): Count[] {
	if (start?.[`${by}Ml`] !== undefined) return [];
	const markMl = marks[`${by}Ml`];
	const full = fullMark(kit);
	if (by === 'level') return [{ by, from: 'full', end: { markMl, startMarkMl: full } }];
	const otherMl = by === 'seal' ? start?.lineMl : start?.sealMl;
	if (by === 'seal' && otherMl === undefined)
		return [{ by, from: 'full', end: { markMl, startMarkMl: full } }];
	// A leaflet's full mark is the seal's; the line began below it by the volume of the tip.
	const startMarkMl = acrossTip(kit, otherMl ?? full, by);
	return [{ by, from: 'throughTip', end: { markMl, startMarkMl } }];
}

/**
 * Value of one titration beside the tank. The same mark at both ends is counted wherever it was
 * noted; else from the full mark, or through the volume of the tip. Nothing is guessed that the
 * person could have seen.
 *
 * @param kit the leaflet to value it by: the one of that day, or a corrected one
 */
export function valueOfTitration(titration: TankTitration, kit: Kit): ValuedTitration | Unvalued {
	const { number, events, walk } = titration;
	const unvalued = (why: string): Unvalued => ({ titration: number, value: null, why });
	if (walk.status === 'done' && walk.value === 'abandoned') return unvalued('It was given up.');
	const read = lastOf(events, 'marks.read');
	if (!read) return unvalued('No mark was read at the end.');
	const refills = refillsIn(kit, events);
	const refilledMl = refilledMlIn(kit, events);
	if (refilledMl === null) return unvalued('Nobody noted how much the refill drew in.');
	const sampleVolumeMl = sampleVolumeOf(kit, events);
	const problems: string[] = [];
	const valued = waysToCount(kit, startOf(events), read.event.marks).flatMap((way) => {
		try {
			const end = { ...way.end, refilledMl, sampleVolumeMl };
			return [{ ...way, ...valueFromMark(kit, end) }];
		} catch (error) {
			if (!(error instanceof RangeError)) throw error;
			problems.push(error.message);
			return [];
		}
	});
	const [best, ...others] = valued;
	if (!best) return unvalued(problems[0] ?? 'The marks do not fit this kit.');
	const { delivery } = kit;
	const { drops } = read.event.marks;
	const byDrops =
		drops !== undefined && delivery.by !== 'dropper'
			? [
					{
						by: 'drops' as const,
						value: best.value + (drops * delivery.dropMl - best.usedMl) * best.valuePerMl
					}
				]
			: [];
	return {
		titration: number,
		value: best.value,
		unit: kit.unit,
		usedMl: best.usedMl,
		valuePerMl: best.valuePerMl,
		sampleVolumeMl,
		by: best.by,
		from: best.from,
		startMl: best.end.startMarkMl,
		endMl: best.end.markMl,
		refills: refills.length,
		isBeyondTable: best.isBeyondTable,
		otherwise: [...others.map(({ by, value }) => ({ by, value })), ...byDrops]
	};
}
