import type { Scenario } from '$lib/bench';
import type { Kit } from '$lib/kits';
import type { TitrationRun } from '$lib/procedure';

/** What stands in bottles of its own, as it goes in a sentence: 'titrant, base and indicator'. */
function bottlesOf({ reagents }: Kit): string {
	const roles = [...new Set(reagents.map(({ role }) => role))];
	const names = ['titrant', ...roles];
	return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

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
			return offer?.check === 'freshLot' && offer.opens === 'allBottles'
				? `The same water, every bottle opened anew: ${bottlesOf(titration.bench.kit)}.`
				: 'The same water, titrant from a fresh bottle.';
		case 'freshSample':
			return 'Water newly taken from the tank.';
		case 'reference':
			return `In place of tank water: ${offer?.check === 'reference' ? offer.label : 'a known solution'}.`;
		case 'secondMethod':
			return 'Another method.';
	}
}
