import { numeralAt, type SyringeDelivery } from '../kits';
import { sampleVolumeOf } from './counted-mark';
import { scaleEndsOf } from './end-travel';
import { additionsIn, after, type Of } from './event-queries';
import { useOfFilling } from './expected-use';
import { fillingTrapIn, fullNumeral } from './filling-trap';
import { refillsIn, startFillingOf } from './refills';
import { slipsAtTank } from './tank-slips';
import type { Remark, Remarker, TankSight } from './tank-remark';
import { costOf, otherVolumes } from './tank-sight';
import { USUAL_TIP_ML } from './titration-value';

type Drawn = Of<'titrant.drawn'>;

/** May the filling still be spoken of: from when it was noted until the mark is read. */
const isOpen = ({ isPast, step }: TankSight) => step !== null && !isPast('read');

/** A tip that went on late is full of air, which counts as titrant. */
const tipRemarks: Remarker = (sight) => {
	const { kit, titration, circumstances } = sight;
	const slips = slipsAtTank(titration, circumstances);
	const { delivery } = kit;
	if (delivery.by !== 'syringe') return [];
	const isBefore = additionsIn(sight.events).length === 0 && !sight.isPast('titrate');
	return [
		...(slips.some(({ kind }) => kind === 'tipFittedLate')
			? [
					{
						id: 'fill.tipLate',
						tone: 'warn' as const,
						text: isBefore
							? 'The tip went on after filling: its air would count as titrant. Fill again through it.'
							: 'The tip went on after filling: its air counts as titrant, and it reads high.',
						...costOf(sight, delivery.tipVolumeMl ?? USUAL_TIP_ML),
						offers: [isBefore ? ('refillToSeal' as const) : ('freshSample' as const)]
					}
				]
			: []),
		...(slips.some(({ kind }) => kind === 'tipLoose') && isBefore
			? [
					{
						id: 'fill.tipLoose',
						tone: 'warn' as const,
						text: 'The tip is only set on. Push it home with a twist, then watch it for ten seconds.'
					}
				]
			: [])
	];
};

/** Air in the tip, a drop hanging from it: while nothing has fallen yet. */
const endRemarks: Remarker = ({ kit, events, isPast }) => {
	const start = startFillingOf(events);
	if (!start || additionsIn(events).length > 0 || isPast('titrate')) return [];
	const { tipAirMl, hangingMl } = start.event;
	const isWiped = after(events, start).some(({ event }) => event.type === 'tip.wiped');
	const remarks: Remark[] = [];
	if ((tipAirMl ?? 0) > AIR_ML)
		remarks.push({
			id: 'fill.air',
			tone: 'warn',
			text:
				kit.delivery.by === 'burette'
					? 'Air in the tip leaves later and counts as titrant. Run some out until it is gone.'
					: 'Air in the tip leaves first and counts as titrant. Push it out, and fill again.',
			offers: kit.delivery.by === 'syringe' ? ['refillToSeal'] : undefined
		});
	if ((hangingMl ?? 0) > 0 && !isWiped)
		remarks.push({
			id: 'fill.hanging',
			tone: 'say',
			text: 'A drop hangs at the tip. Wipe it off, or it falls in uncounted.'
		});
	return remarks;
};
/** Below, air is a trace, mL. */
const AIR_ML = 0.004;

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
	const ends = scaleEndsOf(kit);
	const off = [event.sealMl, event.lineMl, event.levelMl].find(
		(each) => ends && each !== undefined && (each < ends[0] - 1e-9 || each > ends[1] + 1e-9)
	);
	if (off === undefined || !ends) return null;
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
				text:
					step?.kind === 'fill'
						? 'The liquid stands at full, the seal beyond it. Looked up by the seal it reads low.'
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
			},
			...lineOutOfReach(sight, delivery)
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

/** A barrel too short for the liquid to reach full: the seal would stand beyond its end. */
function lineOutOfReach({ kit, events, step }: TankSight, delivery: SyringeDelivery): Remark[] {
	const { sealMl, lineMl } = startFillingOf(events)?.event ?? {};
	const cushionMl =
		sealMl !== undefined && lineMl !== undefined
			? Math.abs(sealMl - lineMl)
			: (kit.delivery.by === 'syringe' && delivery.tipVolumeMl) || 0;
	if (step?.kind !== 'fill' || delivery.capacityMl + cushionMl <= delivery.barrelEndMl) return [];
	return [
		{
			id: 'fill.outOfReach',
			tone: 'say',
			text: `The liquid cannot reach ${fullNumeral(delivery).toFixed(2)} here: the barrel ends first. Fill by the seal.`
		}
	];
}

/** Said before anybody tries it, too. */
const reachRemarks: Remarker = (sight) => {
	const { kit, events } = sight;
	if (kit.delivery.by !== 'syringe') return [];
	const start = startFillingOf(events)?.event;
	// Where only the line is noted it was said beside that.
	if (start && start.sealMl === undefined && start.lineMl !== undefined) return [];
	const isFull = start?.sealMl !== undefined && start.lineMl === undefined;
	return isFull ? [] : lineOutOfReach(sight, kit.delivery);
};

/** Titrant enough for what is expected: said while it can still be filled up. */
const enoughRemarks: Remarker = (sight) => {
	const { kit, events, expected, step } = sight;
	if (expected === null || !step || kit.delivery.by === 'dropper') return [];
	if (!['choose', 'rinse', 'measure', 'fill'].includes(step.kind)) return [];
	const sampleVolumeMl = sampleVolumeOf(kit, events);
	const start = startFillingOf(events)?.event;
	const stood = start?.sealMl ?? start?.levelMl;
	const use = useOfFilling(kit, expected, sampleVolumeMl, stood);
	if (!use || use.isEnough) return [];
	const { smallerMl } = otherVolumes(kit, sampleVolumeMl);
	const isMeasured = sight.isPast('measure');
	if (!use.isFullEnough && smallerMl !== null && !isMeasured)
		return [
			{
				id: 'fill.tooLittle',
				tone: 'say',
				text: `By the last test one filling may not do. ${smallerMl} mL of water needs less.`,
				offers: ['useSmallerSample']
			}
		];
	if (step.kind !== 'fill') return [];
	return [
		use.isFullEnough
			? {
					id: 'fill.tooLittle',
					tone: 'say',
					text: 'By the last test this may not be enough. Fill it up before the first drop.',
					offers: ['refillToSeal']
				}
			: {
					id: 'fill.tooLittle',
					tone: 'say',
					text: 'By the last test one filling may not do. Note the marks when you refill.'
				}
	];
};

/** Refills on the way: the same mark before and after. */
const refillRemarks: Remarker = (sight) => {
	const { kit, events, step } = sight;
	if (step?.kind !== 'titrate' && step?.kind !== 'read') return [];
	return refillsIn(kit, events).flatMap(({ refilledMl, isMixed, isBackwards }, i): Remark[] => {
		const id = `refill:${i}`;
		const tipMl = (kit.delivery.by === 'syringe' && kit.delivery.tipVolumeMl) || USUAL_TIP_ML;
		if (isMixed)
			return [
				{
					id,
					tone: 'warn',
					text: 'The refill has the seal once and the line once. Give the same mark both times.',
					...costOf(sight, tipMl)
				}
			];
		if (isBackwards)
			return [
				{
					id,
					tone: 'warn',
					text: 'By its marks the refill left it emptier. Are the two the wrong way round?'
				}
			];
		return refilledMl === null
			? [
					{
						id,
						tone: 'warn',
						text: 'Where did it stand before the refill, and where after? Without both, no value.'
					}
				]
			: [];
	});
};

export const fillingRemarks: Remarker = (sight) => [
	...refillRemarks(sight),
	...tipRemarks(sight),
	...endRemarks(sight),
	...markRemarks(sight),
	...reachRemarks(sight),
	...enoughRemarks(sight)
];
