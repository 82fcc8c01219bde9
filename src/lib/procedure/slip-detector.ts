import type { Kit, Step } from '../kits';
import type { Circumstances, Slip } from '../observation';
import type { Unvalued, ValuedTitration } from './titration-value';
import type { TimedEvent } from './walk-log';

/**
 * What holds for real hands and not at the bench: the value is made of the marks, from where they
 * stood; drops may be noted after they fell, and what was not noted may have been done.
 */
export type AtTank = { valued: ValuedTitration | Unvalued; light?: Circumstances['light'] };

/** All that a detector may look at: what happened, and what the leaflet asks. */
export type Seen = {
	kit: Kit;
	steps: readonly Step[];
	events: readonly TimedEvent[];
	/** Absent at the bench. */
	tank?: AtTank;
};

/** Finds slips of one kind; the events may be complete (the bench) or partial (real hands). */
export type Detector = (seen: Seen) => Omit<Slip, 'kind' | 'nature'>[];
