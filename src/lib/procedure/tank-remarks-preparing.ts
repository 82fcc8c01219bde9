import type { Step } from '../kits';
import { additionsIn, eventsOf } from './event-queries';
import { stepTimes } from './step-times';
import type { Remark, Remarker, TankSight } from './tank-remark';

type Timed = Extract<Step, { kind: 'mix' | 'wait' }>;
type Dose = Extract<Step, { kind: 'dose' }>;

/** Share of the leaflet's time that must have passed: nobody is held to the second. */
const WAITED_SHARE = { wait: 0.8, mix: 0.5 };

/** A dose that was said to be another than asked: at once when too much, else when it is over. */
const doseRemarks: Remarker = (sight) => {
	const { kit, steps, events, titration, step: here } = sight;
	return steps.flatMap((step): Remark[] => {
		if (step.kind !== 'dose') return [];
		const given = eventsOf(events, 'reagent.added').filter(
			({ event }) => event.reagentId === step.reagentId
		);
		const end = stepTimes(titration).get(step.id)?.ended ?? null;
		if (given.length === 0 && end !== 'skipped') return [];
		if (given.some(({ event }) => event.amount === undefined)) return [];
		const amount = given.reduce((sum, { event }) => sum + (event.amount ?? 0), 0);
		// One dose of so many mL may be noted as one, or as the millilitres.
		const isAsked = amount === step.amount || (step.unit === 'mL' && amount === 1);
		if (isAsked || (end === null && amount < step.amount)) return [];
		// What did not go in at all can be added until the first drop.
		const isInTime = amount === 0 ? isBeforeDrops(sight) : isNear(steps, here, step);
		if (!isInTime) return [];
		const reagent = kit.reagents.find(({ id }) => id === step.reagentId);
		return [offDose(step, reagent?.name ?? step.reagentId, amount, reagent?.role)];
	});
};

/** Nothing that anybody noted says that titrant has gone in. */
function isBeforeDrops({ events, isPast }: TankSight): boolean {
	return (
		!isPast('titrate') &&
		!events.some(({ event }) => event.type.startsWith('colour.')) &&
		additionsIn(events).length === 0
	);
}

function offDose(step: Dose, name: string, amount: number, role: string | undefined): Remark {
	const id = `dose:${step.reagentId}`;
	const unit = step.unit === 'mL' || step.amount === 1 ? step.unit : `${step.unit}s`;
	const asked = `${step.amount} ${unit}`;
	if (amount === 0)
		return {
			id,
			tone: 'warn',
			text: `No ${name} went in; the leaflet asks for ${asked}. Add it before the first drop.`
		};
	if (role === 'indicator')
		return {
			id,
			tone: 'say',
			text: `${amount} of ${name}, not ${asked}. The colour changes in depth, the value hardly.`
		};
	return {
		id,
		tone: 'warn',
		text: `${amount} of ${name}, not ${asked}. A fresh sample with the right dose is surer.`,
		offers: ['freshSample']
	};
}

/** A wait or mix that was passed over or cut short, while it can be made up for. */
const timeRemarks: Remarker = (sight) => {
	if (additionsIn(sight.events).length > 0) return [];
	return sight.steps.flatMap((step): Remark[] => {
		if (step.kind !== 'wait' && step.kind !== 'mix') return [];
		const seconds = secondsGiven(sight, step);
		if (seconds === null || seconds >= WAITED_SHARE[step.kind] * step.seconds) return [];
		return step.kind === 'wait' ? [shortWait(step, seconds)] : shortMix(sight, step, seconds);
	});
};

/** How long it was done, seconds; null while it goes on or when nobody can tell. */
function secondsGiven(sight: TankSight, step: Timed): number | null {
	const { titration, events, at } = sight;
	const time = stepTimes(titration).get(step.id);
	if (!time || time.until === null) return null;
	// Standing goes on by itself until the first drop, whatever was pressed.
	if (step.kind === 'wait')
		return ((sight.isPast('titrate') ? time.until : Math.max(at, time.until)) - time.since) / 1000;
	const swirls = eventsOf(events, 'vial.swirled').filter(
		(swirl) => swirl.at >= time.since && swirl.at <= (time.until ?? at)
	);
	if (time.ended === 'skipped' && swirls.length === 0) return 0;
	if (swirls.some(({ event }) => event.seconds === undefined)) return null;
	const swirled = swirls.reduce((sum, { event }) => sum + (event.seconds ?? 0), 0);
	return Math.max(swirled, time.ended === 'skipped' ? 0 : (time.until - time.since) / 1000);
}

function shortWait(step: Timed, seconds: number): Remark {
	return {
		id: `wait:${step.id}`,
		tone: 'warn',
		text:
			seconds < 1
				? `It did not stand its ${step.seconds} s. Let it, before the first drop.`
				: `It has not stood its ${step.seconds} s yet. Let it, before the first drop.`
	};
}

function shortMix({ steps, step: here }: TankSight, step: Timed, seconds: number): Remark[] {
	return isNear(steps, here, step)
		? [
				{
					id: `mix:${step.id}`,
					tone: 'say',
					text:
						seconds < 1
							? `Not mixed yet: swirl for ${step.seconds} s before you go on.`
							: `Mixed for less than ${step.seconds} s: swirl once more before you go on.`
				}
			]
		: [];
}

/** The step itself and the next are the time for a word on it. */
function isNear(steps: readonly Step[], here: Step | null, step: Step): boolean {
	return here !== null && steps.indexOf(here) - steps.indexOf(step) <= 2;
}

export const preparingRemarks: Remarker = (sight) => [...timeRemarks(sight), ...doseRemarks(sight)];
