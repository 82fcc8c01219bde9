import { sampleVolumeOf } from './counted-mark';
import { after, lastOf } from './event-queries';
import { interruptionIn } from './interruption';
import { stoodSeconds } from './slips-titrating';
import type { Remark, Remarker, RemarkOffer, TankSight } from './tank-remark';
import { costOf, otherVolumes } from './tank-sight';
import { titrantWordsOf } from './tank-titrant-words';

const isTitrating = ({ step }: TankSight) => step?.kind === 'titrate';

/** Emptied before the end: what can be done, with the leaflet's smaller sample where it has one. */
const spentRemarks: Remarker = (sight) => {
	const { kit, events } = sight;
	// A bottle of drops has no mark; the next one goes on where it ended.
	if (kit.delivery.by === 'dropper') return [];
	if (!isTitrating(sight) || sight.titration.walk.matches({ titrating: 'holding' })) return [];
	const last = lastOf(events, 'titrant.spent', 'titrant.drawn');
	if (last?.event.type !== 'titrant.spent') return [];
	const { smallerMl } = otherVolumes(kit, sampleVolumeOf(kit, events));
	if (kit.delivery.refilled)
		return [
			{
				id: 'titrate.spent',
				tone: 'warn',
				text: 'Empty, as the leaflet has it. Note the mark, fill again, note the same mark again, and go on.',
				offers: ['refill']
			}
		];
	const offers: RemarkOffer[] = ['refill'];
	offers.push(smallerMl === null ? 'dilute' : 'useSmallerSample');
	const instead =
		smallerMl === null
			? 'or begin again with half sample, half purified water: value and ± then double.'
			: `or begin again with ${smallerMl} mL of water.`;
	return [
		{
			id: 'titrate.spent',
			tone: 'warn',
			text: `Empty. Note the mark, fill again, note it again, and go on; ${instead}`,
			offers
		}
	];
};

const pauseRemarks: Remarker = ({ titration, at }) => {
	const pause = interruptionIn(titration, at);
	if (!pause) return [];
	const since = pause.since === 'drop' ? 'the last drop' : 'the sample was measured';
	return [
		{
			id: 'titrate.pause',
			tone: pause.since === 'drop' ? 'warn' : 'say',
			text: `${pause.minutes} min since ${since}. ${pause.advice}`,
			offers: ['freshSample']
		}
	];
};

/** What the person has said of the colour, and what the rule is then. */
const colourRemarks: Remarker = (sight) => {
	const { titration, kit, events } = sight;
	if (!isTitrating(sight)) return [];
	const { holdsSeconds } = kit.endPoint;
	const remark = (id: string, text: string): Remark[] => [{ id, tone: 'say', text }];
	if (titration.walk.matches({ titrating: 'holding' })) return holdingRemarks(sight);
	if (titration.walk.matches({ titrating: 'turned' }))
		return remark(
			'titrate.flash',
			`Swirl and watch. If it goes, it was a flash: add one more drop. It counts from ${holdsSeconds} s on.`
		);
	const faded = events.at(-1);
	const stayed = lastOf(events, 'colour.stayed');
	if (faded?.event.type !== 'colour.faded' || !stayed) return [];
	const stood = stoodSeconds({ ...sight, tank: tankOf() }, stayed);
	return stood !== undefined && stood >= holdsSeconds
		? remark('titrate.cameBack', titrantWordsOf(kit).cameBack(kit.endPoint.endColour))
		: remark('titrate.wasFlash', 'Then it was a flash. One more drop, and swirl.');
};

/** Times of the log count as hands gave them; the value plays no part in that. */
const tankOf = () => ({ valued: { titration: 0, value: null, why: '' } as const });

/** The colour was said to stay: has it stood its time, by what is known of the last drop? */
function holdingRemarks(sight: TankSight): Remark[] {
	const { kit, events, at } = sight;
	const { holdsSeconds } = kit.endPoint;
	const stayed = lastOf(events, 'colour.stayed');
	if (!stayed) return [];
	const stood = stoodSeconds({ ...sight, tank: tankOf() }, stayed);
	// Where the last drop is not known, it has stood at least since it was said to stay.
	const known = (stood ?? 0) + Math.max(0, at - stayed.at) / 1000;
	const said: Remark[] = [];
	const { hangingMl, swirledSince } = stayed.event;
	const isIn = after(events, stayed).some(({ event }) => event.type === 'drop.touchedOff');
	if (!isIn && (hangingMl ?? 0) > 0.15 * kit.delivery.dropMl)
		said.push({
			id: 'titrate.hanging',
			tone: 'warn',
			text: 'A drop hangs at the tip: it counts as used. Touch it to the glass, and swirl.',
			...costOf(sight, hangingMl ?? 0)
		});
	if (swirledSince === false)
		said.push({ id: 'titrate.swirl', tone: 'warn', text: 'Swirl first, then see if it stays.' });
	if (known < holdsSeconds)
		said.push({
			id: 'titrate.hold',
			tone: 'say',
			text: `It counts once it has stood ${holdsSeconds} s after the last drop. Watch it so long.`
		});
	else
		said.push({
			id: 'titrate.after',
			tone: 'say',
			text: titrantWordsOf(kit).afterwards(kit.endPoint.endColour)
		});
	return said;
}

export const titratingRemarks: Remarker = (sight) => [
	...spentRemarks(sight),
	...pauseRemarks(sight),
	...colourRemarks(sight)
];
