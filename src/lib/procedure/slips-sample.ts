import type { Kit, Step } from '../kits';
import type { Detector } from './slip-detector';
import { after, eventsOf, lastOf, stepOver } from './event-queries';
import type { TimedEvent } from './walk-log';

/** Off the mark by more than this share is a slip and not the eye's limit. */
const SAMPLE_SHARE = 0.015;
/** Strange water in the sample above this share. */
const STRAY_SHARE = 0.005;

const firm = { provisional: false };

/**
 * Water of another kind in the sample. What was in the measuring ware took the place of sample. What
 * was in the vial comes on top of a measured sample: purified water is harmless there, any other
 * brings alkalinity of its own.
 */
const wareNotRinsed: Detector = ({ kit, events }) => {
	const measured = lastOf(events, 'sample.measured');
	if (!measured) return [];
	const before = events.slice(
		0,
		events.findIndex(({ id }) => id === measured.id)
	);
	const lastRinse = (ware: 'vial' | 'sampler') =>
		eventsOf(before, 'vial.rinsed').findLast(({ event }) => (event.ware ?? 'vial') === ware);
	const inMeasure = lastRinse(kit.sample.measuredIn === 'syringe' ? 'sampler' : 'vial');
	const onTop = kit.sample.measuredIn === 'syringe' ? lastRinse('vial') : undefined;
	const { strayWaterMl: strayMl, strayInMeasureMl, volumeMl } = measured.event;
	if (strayMl !== undefined && strayInMeasureMl !== undefined) {
		const countedMl = onTop?.event.with === 'purified' ? strayInMeasureMl : strayMl;
		const nominalMl = volumeMl ?? kit.sample.volumes[0]?.volumeMl ?? 1;
		return countedMl / nominalMl > STRAY_SHARE
			? [{ ...firm, entryId: measured.id, sizeMl: countedMl }]
			: [];
	}
	// Nobody knows how much: a rinse with other water just before is all that can be said.
	const isOther = (rinse: typeof inMeasure, harmless: string[]) =>
		rinse?.event.with !== undefined && !harmless.includes(rinse.event.with);
	const rinse = isOther(inMeasure, ['sample'])
		? inMeasure
		: isOther(onTop, ['sample', 'purified'])
			? onTop
			: undefined;
	return rinse ? [{ ...firm, entryId: rinse.id, variant: rinse.event.with }] : [];
};

const sampleOff: Detector = ({ kit, events }) => {
	const measured = lastOf(events, 'sample.measured');
	if (measured?.event.volumeMl === undefined) return [];
	const chosen = lastOf(events, 'sample.chosen')?.event.volumeId;
	const volume = kit.sample.volumes.find((each) => each.id === chosen) ?? kit.sample.volumes[0];
	if (!volume) return [];
	const offMl = measured.event.volumeMl - (measured.event.airMl ?? 0) - volume.volumeMl;
	return Math.abs(offMl) / volume.volumeMl > SAMPLE_SHARE
		? [
				{
					...firm,
					entryId: measured.id,
					sizeMl: offMl,
					variant: (measured.event.airMl ?? 0) > 0.02 ? 'air' : offMl > 0 ? 'over' : 'short'
				}
			]
		: [];
};

type Role = Kit['reagents'][number]['role'];

/** Doses of reagents of some roles, counted when their step is over. */
const dosesOff =
	(isMeant: (role: Role | undefined) => boolean): Detector =>
	({ kit, steps, events, tank }) =>
		steps.flatMap((step) => {
			if (step.kind !== 'dose') return [];
			const over = stepOver(events, step.id);
			if (!over) return [];
			const asked = step.unit === 'mL' ? 1 : step.amount;
			const given = eventsOf(events, 'reagent.added')
				.filter(({ event }) => event.reagentId === step.reagentId)
				.map(({ event }) => event.amount);
			// Hands that did not count say nothing about the number.
			// A bench notes all there was; at a tank nothing noted is nothing said, unless it was passed over.
			const isSaid = given.length > 0 || !tank || over.event.type === 'step.skipped';
			const isKnown = isSaid && given.every((n) => n !== undefined);
			const count = given.reduce<number>((sum, n) => sum + (n ?? 0), 0);
			const role = kit.reagents.find((each) => each.id === step.reagentId)?.role;
			const isAsked = count === asked || (given.length === 1 && count === step.amount);
			return isKnown && isMeant(role) && !isAsked
				? [
						{
							...firm,
							entryId: over.id,
							drops: count - asked,
							variant: count === 0 ? 'forgotten' : count > asked ? 'more' : 'less'
						}
					]
				: [];
		});

const indicatorOff = dosesOff((role) => role === 'indicator');
const phReagentOff = dosesOff((role) => role === 'base' || role === 'buffer');

/** Nobody is held to the second. */
const WAITED_SHARE = 0.6;
/** What makes the pH has stood too long when the first drop comes so much later, s: judgement. */
const LONGEST_S = 15 * 60;

/** The end of the next step that has a deed for the vial, passed over without it. */
function passedOver(
	steps: readonly Step[],
	waitId: string,
	events: readonly TimedEvent[]
): TimedEvent | undefined {
	const later = steps.slice(steps.findIndex(({ id }) => id === waitId) + 1);
	const next = later.find(({ kind }) => kind === 'dose' || kind === 'titrate');
	return next && stepOver(events, next.id);
}

/**
 * The wait that a leaflet asks for after a reagent, from the last of it and its mixing to the next deed
 * in the vial, or to where that deed was left out. At a tank things are noted when there is a hand free, so that there only a wait that was
 * passed over is known.
 */
const waitOff: Detector = ({ kit, steps, events, tank }) =>
	steps.flatMap((step) => {
		if (step.kind !== 'wait') return [];
		const over = stepOver(events, step.id);
		if (tank || !over)
			return over?.event.type === 'step.skipped'
				? [{ ...firm, entryId: over.id, variant: 'short' }]
				: [];
		const dose = eventsOf(events, 'reagent.added').findLast(
			({ event }) => event.reagentId === step.reagentId
		);
		if (!dose) return [];
		const later = after(events, dose);
		const secondsTo = (next: { at: number }) => (next.at - dose.at) / 1000;
		const next =
			eventsOf(later, 'reagent.added', 'titrant.fell')[0] ?? passedOver(steps, step.id, events);
		const mixing = kit.reagents.find(({ id }) => id === step.reagentId)?.mixSeconds ?? 0;
		if (next && secondsTo(next) - mixing < WAITED_SHARE * step.seconds)
			return [{ ...firm, entryId: next.id, variant: 'short' }];
		const first = eventsOf(later, 'titrant.fell')[0];
		return first && secondsTo(first) - mixing - step.seconds > LONGEST_S
			? [{ ...firm, entryId: first.id, variant: 'long' }]
			: [];
	});

export const sampleSlips = { wareNotRinsed, sampleOff, indicatorOff, phReagentOff, waitOff };
