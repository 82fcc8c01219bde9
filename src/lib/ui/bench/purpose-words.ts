import type { Scenario } from '$lib/bench';
import type { TitrationRun } from '$lib/procedure';

/** What a titration is for, where it is a check; null for the first one. */
export function purposeWords(scenario: Scenario, titration: TitrationRun): string | null {
	const offer = scenario.checks.find((each) => each.check === titration.purpose);
	switch (titration.purpose) {
		case 'first':
			return null;
		case 'repeatFull':
		case 'repeatQuick':
			return 'The same test again, on the same water.';
		case 'largerSample':
			return 'The same water, and more of it.';
		case 'freshLot':
			return 'The same water, titrant from a fresh bottle.';
		case 'freshSample':
			return 'Water newly taken from the tank.';
		case 'reference':
			return `In place of tank water: ${offer?.check === 'reference' ? offer.label : 'a known solution'}.`;
		case 'secondMethod':
			return 'Another method.';
	}
}
