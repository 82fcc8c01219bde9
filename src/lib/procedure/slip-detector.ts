import type { Kit, Step } from '../kits';
import type { Slip } from '../observation';
import type { TimedEvent } from './walk-log';

/** All that a detector may look at: what happened, and what the leaflet asks. */
export type Seen = { kit: Kit; steps: readonly Step[]; events: readonly TimedEvent[] };

/** Finds slips of one kind; the events may be complete (the bench) or partial (real hands). */
export type Detector = (seen: Seen) => Omit<Slip, 'kind' | 'nature'>[];
