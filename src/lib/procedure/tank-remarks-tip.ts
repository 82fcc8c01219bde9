import { additionsIn, after } from './event-queries';
import { startFillingOf } from './refills';
import { slipsAtTank } from './tank-slips';
import type { Remark, Remarker } from './tank-remark';
import { costOf } from './tank-sight';
import { USUAL_TIP_ML } from './titration-value';

/** Below, air is a trace, mL. */
const AIR_ML = 0.004;

/** A tip that went on late is full of air, which counts as titrant. */
const fittedRemarks: Remarker = (sight) => {
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

/** What is wrong at the end that the titrant leaves by. */
export const tipRemarks: Remarker = (sight) => [...fittedRemarks(sight), ...endRemarks(sight)];
