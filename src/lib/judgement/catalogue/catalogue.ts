import type { Analyte } from '../../kits';
import { endCues } from './cues-end';
import { fillingCues } from './cues-filling';
import { referenceCues, secondMethodCues } from './cues-others';
import { readingCues } from './cues-reading';
import { sampleCues } from './cues-sample';
import type { Cue, Fault } from './fault';
import { endFaults } from './faults-end';
import { fillingFaults } from './faults-filling';
import { readingFaults } from './faults-reading';
import { reagentFaults } from './faults-reagent';
import { referenceFaults } from './faults-reference';
import { sampleFaults } from './faults-sample';
import { secondMethodFaults } from './faults-second-method';
import { wareFaults } from './faults-ware';
import { waterCues } from './water-causes';

/**
 * All that is known to go wrong with a test, and the questions that tell of it. The water itself is
 * no fault: a real change is a state of the water (`waterCauses` has the words for it).
 *
 * Priors are for a test that somebody doubts. By them a test by syringe and table has nothing wrong
 * in about 4 of 10 cases, and a fault, many of them too small to matter, in about 6 of 10; this is
 * judgement, and `diagnose` takes others.
 */
export const faults: readonly Fault[] = [
	...fillingFaults,
	...endFaults,
	...readingFaults,
	...sampleFaults,
	...reagentFaults,
	...wareFaults,
	...secondMethodFaults,
	...referenceFaults
];

export const cues: readonly Cue[] = [
	...fillingCues,
	...endCues,
	...readingCues,
	...sampleCues,
	...waterCues,
	...secondMethodCues,
	...referenceCues
];

const byId = new Map(faults.map((fault) => [fault.id, fault]));

/** The fault of an id, or null when the catalogue has none. */
export function faultById(id: string): Fault | null {
	return byId.get(id) ?? null;
}

/** What a catalogue is asked for: the kit in question, and the second methods there are. */
export type MethodKind = {
	analyte: Analyte;
	delivery: 'syringe' | 'dropper' | 'burette';
};

type Applies = Pick<Fault, 'analytes' | 'deliveries'>;
const applies = (each: Partial<Applies>, { analyte, delivery }: MethodKind) =>
	(each.analytes?.includes(analyte) ?? true) && (each.deliveries?.includes(delivery) ?? true);

/** The faults that a test by this method can have, those of references and second methods among them. */
export function faultsFor(method: MethodKind): Fault[] {
	return faults.filter((fault) => applies(fault, method));
}

/** The questions that make sense for a test by this method. */
export function cuesFor(method: MethodKind): Cue[] {
	return cues.filter((cue) => applies(cue, method));
}
