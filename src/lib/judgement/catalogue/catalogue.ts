import { cueOfAny, faultOfAny } from './any-titration';
import { chelationCues } from './cues-chelation';
import { chelationThingCues } from './cues-chelation-things';
import { endCues } from './cues-end';
import { fillingCues } from './cues-filling';
import { referenceCues, secondMethodCues } from './cues-others';
import { readingCues } from './cues-reading';
import { sampleCues } from './cues-sample';
import type { Cue, Fault } from './fault';
import { chelationEndFaults } from './faults-chelation-end';
import { chelationNumberFaults } from './faults-chelation-numbers';
import { chelationReagentFaults } from './faults-chelation-reagents';
import { endFaults } from './faults-end';
import { fillingFaults } from './faults-filling';
import { readingFaults } from './faults-reading';
import { reagentFaults } from './faults-reagent';
import { referenceFaults } from './faults-reference';
import { sampleFaults } from './faults-sample';
import { secondMethodFaults } from './faults-second-method';
import { refillFaults } from './faults-refill';
import { wareFaults } from './faults-ware';
import { suits, type MethodKind } from './suits';
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
	...[
		...fillingFaults,
		...endFaults,
		...readingFaults,
		...sampleFaults,
		...reagentFaults,
		...wareFaults,
		...secondMethodFaults,
		...referenceFaults
	].map(faultOfAny),
	...refillFaults,
	...chelationEndFaults,
	...chelationReagentFaults,
	...chelationNumberFaults
];

export const cues: readonly Cue[] = [
	...[
		...fillingCues,
		...endCues,
		...readingCues,
		...sampleCues,
		...waterCues,
		...secondMethodCues,
		...referenceCues
	].map(cueOfAny),
	...chelationCues,
	...chelationThingCues
];

export type { MethodKind };

const byId = new Map(faults.map((fault) => [fault.id, fault]));

/** The fault of an id, or null when the catalogue has none. */
export function faultById(id: string): Fault | null {
	return byId.get(id) ?? null;
}

/** The faults that a test by this method can have, those of references and second methods among them. */
export function faultsFor(method: MethodKind): Fault[] {
	return faults.filter((fault) => suits(fault, method));
}

/** The questions that make sense for a test by this method. */
export function cuesFor(method: MethodKind): Cue[] {
	return cues.filter((cue) => suits(cue, method));
}
