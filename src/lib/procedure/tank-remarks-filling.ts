import { numeralAt, scaleEndsOf, type SyringeDelivery } from '../kits';
import { sampleVolumeOf } from './counted-mark';
import type { Of } from './event-queries';
import { fillingTrapIn, fullNumeral, isLineBeyondSeal } from './filling-trap';
import { startFillingOf } from './refills';
import type { Remark, Remarker, TankSight } from './tank-remark';

type Drawn = Of<'titrant.drawn'>;

/** Said of marks that stand the wrong way round, at either end. */
export const SWAPPED =
	'The line cannot stand farther from the tip than the seal. Are the two the wrong way round?';

/** May the filling still be spoken of: from when it was noted until the mark is read. */
const isOpen = ({ isPast, step }: TankSight) => step !== null && !isPast('read');

/** Where seal, line or level stand after filling, and what that means for the end. */
const markRemarks: Remarker = (sight) => {
	const { kit, events } = sight;
	const start = startFillingOf(events);
	if (!start || !isOpen(sight) || kit.delivery.by === 'dropper') return [];
	const off = offScale(sight, start);
	if (off) return [off];
	if (kit.delivery.by === 'burette') return besideFull(sight, start.event.levelMl, 0);
	return syringeMarks(sight, start, kit.delivery);
};

/** A start that this scale does not have: no value can come of it. */
function offScale({ kit }: TankSight, { event }: Drawn): Remark | null {
	if (kit.delivery.by === 'dropper') return null;
	const ends = scaleEndsOf(kit.delivery);
	const off = [event.sealMl, event.lineMl, event.levelMl].find(
		(each) => each !== undefined && (each < ends[0] - 1e-9 || each > ends[1] + 1e-9)
	);
	if (off === undefined) return null;
	return {
		id: 'fill.offScale',
		tone: 'warn',
		text: `${off.toFixed(2)} is not on this scale: it runs from ${ends[0].toFixed(2)} to ${ends[1].toFixed(2)}.`,
		offers: ['countAgain']
	};
}

function syringeMarks(sight: TankSight, { event }: Drawn, delivery: SyringeDelivery): Remark[] {
	const { kit, events, step } = sight;
	const { sealMl, lineMl } = event;
	const full = fullNumeral(delivery);
	const trap = fillingTrapIn(kit, event, sampleVolumeOf(kit, events));
	const isReading = step?.kind === 'read';
	const wrongEnd = emptyAtStart(delivery, sealMl);
	if (wrongEnd) return [wrongEnd];
	if (isLineBeyondSeal(delivery, event))
		return [{ id: 'fill.swapped', tone: 'warn', text: SWAPPED, offers: ['countAgain'] }];
	// With the end mark read, what the value rests on is said there.
	if (isReading && sight.titration.walk.matches({ reading: 'read' })) return [];
	if (trap)
		return [
			{
				id: 'fill.byLine',
				tone: 'warn',
				trap,
				costValue: trap.costValue,
				unit: kit.unit,
				analyte: kit.analyte,
				text:
					step?.kind === 'fill'
						? 'The liquid stands at full, the seal beyond it. Read by the seal and the leaflet’s table, it comes out low.'
						: 'Filled by the liquid: read the line at the end as well as the seal.',
				offers: step?.kind === 'fill' ? ['refillToSeal', 'readLineToo'] : ['readLineToo']
			}
		];
	if (sealMl === undefined && lineMl !== undefined)
		return [
			{
				id: 'fill.onlyLine',
				tone: 'say',
				text: 'Only the liquid line is noted. Read the line at the end as well.',
				offers: ['readLineToo']
			}
		];
	return besideFull(sight, sealMl, full);
}

/** A full syringe that is said to stand where it would be empty. */
function emptyAtStart(delivery: SyringeDelivery, sealMl: number | undefined): Remark | null {
	if (sealMl === undefined) return null;
	const filledMl = numeralAt(delivery, sealMl);
	if (filledMl > 0.1 * delivery.capacityMl) return null;
	return {
		id: 'fill.whichEnd',
		tone: 'warn',
		text: `At ${sealMl.toFixed(2)} this syringe is empty: its full mark is ${fullNumeral(delivery).toFixed(2)}. Which end is 0?`,
		offers: ['readOtherEnd']
	};
}

/** Filled beside the full mark: no slip where the count begins there. */
function besideFull({ kit, step }: TankSight, stoodMl: number | undefined, full: number): Remark[] {
	const { delivery } = kit;
	if (stoodMl === undefined || delivery.by === 'dropper' || step?.kind === 'read') return [];
	if (Math.abs(stoodMl - full) <= 0.75 * delivery.graduationMl) return [];
	return [
		{
			id: 'fill.besideFull',
			tone: 'say',
			text: `It starts at ${stoodMl.toFixed(2)}, not ${full.toFixed(2)}: counted from there.`
		}
	];
}

/**
 * A barrel too short for the liquid to reach full, since the seal would stand beyond its end: said
 * before anybody tries, and as long as no seal was noted.
 */
const reachRemarks: Remarker = ({ kit: { delivery }, events, step }) => {
	if (delivery.by !== 'syringe' || step?.kind !== 'fill') return [];
	const isSealNoted = startFillingOf(events)?.event.sealMl !== undefined;
	const neededMl = delivery.capacityMl + (delivery.tipVolumeMl ?? 0);
	if (isSealNoted || neededMl <= delivery.barrelEndMl) return [];
	const full = fullNumeral(delivery).toFixed(2);
	return [
		{
			id: 'fill.outOfReach',
			tone: 'say',
			text: `The liquid cannot reach ${full} here: the barrel ends first. Fill by the seal.`
		}
	];
};

/** Where seal, line or level stand after filling. */
export const fillingRemarks: Remarker = (sight) => [...markRemarks(sight), ...reachRemarks(sight)];
