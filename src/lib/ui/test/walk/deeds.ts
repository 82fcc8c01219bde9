import type { Kit, Step } from '$lib/kits';
import type { WalkEvent } from '$lib/observation';

/** The plain steps: one deed, and on to the next. */
export type PlainStep = Extract<
	Step,
	{ kind: 'choose' | 'rinse' | 'measure' | 'dose' | 'mix' | 'wait' }
>;

const plainKinds: readonly Step['kind'][] = ['choose', 'rinse', 'measure', 'dose', 'mix', 'wait'];
export const isPlain = (step: Step): step is PlainStep => plainKinds.includes(step.kind);

/** What is said with the step's big button, and how it may be passed over. */
export type Deed = {
	/** On the button. */
	main: string;
	/** What happened, in order; the end of the step follows. */
	events: WalkEvent[];
	/** Passes the step over, and says so in the log; null where there must be an answer. */
	skip: string | null;
};

/** What the person has set on the screen of the step, where it has anything to set. */
export type DeedGiven = {
	kit: Kit;
	volumeId: string;
	/** Amount of reagent that went in, in the unit of its dose. */
	amount: number;
	/** Since the step began, seconds. */
	secondsInStep: number;
};

/** Beyond so many times the leaflet's swirl nobody swirled all the while: the time says nothing. */
const SWIRLED_AT_MOST = 4;

/** What the big button of a plain step stands for. */
export function deedOf(step: PlainStep, given: DeedGiven): Deed {
	const { kit } = given;
	const volume = kit.sample.volumes.find(({ id }) => id === given.volumeId);
	switch (step.kind) {
		case 'choose':
			return {
				main: `Take ${volume?.volumeMl ?? ''} mL`,
				events: [{ type: 'sample.chosen', volumeId: given.volumeId }],
				skip: null
			};
		case 'rinse':
			return {
				main: 'Rinsed',
				events: [{ type: 'vial.rinsed', ware: step.ware, with: 'sample' }],
				skip: 'Not done'
			};
		case 'measure':
			return {
				main: step.measuredIn === 'syringe' ? 'It is in the vial' : 'It stands at the line',
				events: [{ type: 'sample.measured', volumeMl: volume?.volumeMl }],
				skip: 'Not done'
			};
		case 'dose':
			return {
				main: 'Added',
				events: [{ type: 'reagent.added', reagentId: step.reagentId, amount: given.amount }],
				skip: 'Not done'
			};
		case 'mix': {
			const isTimed = given.secondsInStep <= SWIRLED_AT_MOST * step.seconds;
			const seconds = isTimed ? { seconds: Math.round(given.secondsInStep) } : {};
			return {
				main: 'Swirled',
				events: [{ type: 'vial.swirled', ...seconds }],
				skip: 'Not done'
			};
		}
		case 'wait':
			return { main: 'Go on', events: [{ type: 'wait.over' }], skip: 'Skip the wait' };
	}
}
