import { setup, type SnapshotFrom } from 'xstate';
import {
	beginWalk,
	holdsMark,
	isGoingOn,
	isStepDone,
	nextKindIs,
	noteEvent,
	noteStepOver,
	type TimedWalkEvent,
	type WalkContext,
	type WalkInput
} from './walk-helpers';

/** Every step ends in the same two ways. */
const stepOver = {
	'step.done': { guard: 'isThisStep', target: 'next', actions: 'noteStepOver' },
	'step.skipped': { guard: 'isThisStep', target: 'next', actions: 'noteStepOver' }
} as const;

/**
 * The walk: ONE titration, at the practice bench or at a real tank. States are conditions; which of
 * them follow each other is in the kit's steps. Nothing here waits or starts anything: times come in
 * with the events, so that every path can be walked in a test and every log replayed.
 */
export const walkMachine = setup({
	types: {
		input: {} as WalkInput,
		context: {} as WalkContext,
		events: {} as TimedWalkEvent
	},
	guards: {
		nextKindIs: ({ context }, { kind }: { kind: string }) => nextKindIs(context, kind),
		// What the whole walk takes, its ends would take as well.
		isGoingOn: ({ context }) => isGoingOn(context),
		holdsMark: ({ context, event }) => holdsMark(context, event),
		isThisStep: ({ context, event }) => isStepDone(context, event)
	},
	actions: {
		noteEvent: noteEvent,
		noteStepOver: noteStepOver
	}
}).createMachine({
	id: 'walk',
	context: ({ input }) => beginWalk(input),
	initial: 'next',
	on: {
		'walk.abandoned': { guard: 'isGoingOn', target: '.abandoned', actions: 'noteEvent' },
		'lamp.changed': { guard: 'isGoingOn', actions: 'noteEvent' }
	},
	states: {
		next: {
			always: [
				{ guard: { type: 'nextKindIs', params: { kind: 'choose' } }, target: 'choosing' },
				{ guard: { type: 'nextKindIs', params: { kind: 'rinse' } }, target: 'rinsing' },
				{ guard: { type: 'nextKindIs', params: { kind: 'measure' } }, target: 'measuring' },
				{ guard: { type: 'nextKindIs', params: { kind: 'dose' } }, target: 'dosing' },
				{ guard: { type: 'nextKindIs', params: { kind: 'mix' } }, target: 'mixing' },
				{ guard: { type: 'nextKindIs', params: { kind: 'wait' } }, target: 'waiting' },
				{ guard: { type: 'nextKindIs', params: { kind: 'fill' } }, target: 'filling' },
				{ guard: { type: 'nextKindIs', params: { kind: 'titrate' } }, target: 'titrating' },
				{ guard: { type: 'nextKindIs', params: { kind: 'read' } }, target: 'reading' },
				{ target: 'valued' }
			]
		},
		choosing: {
			on: {
				'sample.chosen': { actions: 'noteEvent' },
				...stepOver
			}
		},
		rinsing: {
			on: {
				'vial.rinsed': { actions: 'noteEvent' },
				...stepOver
			}
		},
		measuring: {
			on: {
				'vial.rinsed': { actions: 'noteEvent' },
				'sample.measured': { actions: 'noteEvent' },
				...stepOver
			}
		},
		dosing: {
			on: {
				'reagent.added': { actions: 'noteEvent' },
				'vial.swirled': { actions: 'noteEvent' },
				...stepOver
			}
		},
		mixing: {
			on: {
				'vial.swirled': { actions: 'noteEvent' },
				...stepOver
			}
		},
		waiting: {
			on: {
				'wait.over': { actions: 'noteEvent' },
				...stepOver
			}
		},
		filling: {
			on: {
				'tip.fitted': { actions: 'noteEvent' },
				'tip.wiped': { actions: 'noteEvent' },
				'titrant.drawn': { actions: 'noteEvent' },
				'filling.done': { actions: 'noteEvent' },
				...stepOver
			}
		},
		titrating: {
			initial: 'adding',
			on: {
				'titrant.fell': { target: '.adding', actions: 'noteEvent' },
				'drop.touchedOff': { target: '.adding', actions: 'noteEvent' },
				'titrant.drawn': { target: '.adding', actions: 'noteEvent' },
				'tip.wiped': { actions: 'noteEvent' },
				'tip.fitted': { actions: 'noteEvent' },
				'vial.swirled': { actions: 'noteEvent' },
				'titrant.spent': { actions: 'noteEvent' },
				'step.skipped': { guard: 'isThisStep', target: 'next', actions: 'noteStepOver' }
			},
			states: {
				adding: {
					on: {
						'colour.turned': { target: 'turned', actions: 'noteEvent' },
						'colour.stayed': { target: 'holding', actions: 'noteEvent' }
					}
				},
				turned: {
					on: {
						'colour.faded': { target: 'adding', actions: 'noteEvent' },
						'colour.stayed': { target: 'holding', actions: 'noteEvent' }
					}
				},
				holding: {
					on: {
						'colour.faded': { target: 'adding', actions: 'noteEvent' },
						'step.done': {
							guard: 'isThisStep',
							target: '#walk.next',
							actions: 'noteStepOver'
						}
					}
				}
			}
		},
		reading: {
			initial: 'unread',
			on: {
				'marks.read': { guard: 'holdsMark', target: '.read', actions: 'noteEvent' },
				'step.skipped': { guard: 'isThisStep', target: 'next', actions: 'noteStepOver' }
			},
			states: {
				unread: {},
				read: {
					on: {
						// A value ends the walk; so does saying that the marks are all there will be.
						'value.reported': { target: '#walk.next', actions: 'noteStepOver' },
						'step.done': {
							guard: 'isThisStep',
							target: '#walk.next',
							actions: 'noteStepOver'
						}
					}
				}
			}
		},
		valued: { type: 'final' },
		abandoned: { type: 'final' }
	}
});

export type WalkSnapshot = SnapshotFrom<typeof walkMachine>;
