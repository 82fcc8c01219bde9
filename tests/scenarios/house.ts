import { readdirSync, readFileSync } from 'node:fs';
import { parseScenario, type Scenario } from '../../src/lib/bench';
import { isBenchCheck, type PracticeCheckId } from '../../src/lib/observation';
import { PlayedRun } from '../ui/played-run';

/** Every scenario file, parsed, with the name of its file. */
export const scenarios: { file: string; scenario: Scenario }[] = readdirSync('scenarios').map(
	(file) => ({ file, scenario: parseScenario(readFileSync(`scenarios/${file}`, 'utf8'), file) })
);
export const drills = scenarios.filter(({ scenario }) => scenario.kind === 'drill');
export const cases = scenarios.filter(({ scenario }) => scenario.kind === 'case');

/** Checks that give their result at once; the others are titrations at the bench. */
const asked: readonly PracticeCheckId[] = ['repeatQuick', 'secondMethod'];

/** A case worked by hands without a mistake, through the checks named; all that are offered if none are. */
export function workedCase(
	scenario: Scenario,
	seed: number,
	checks?: readonly PracticeCheckId[]
): PlayedRun {
	const run = new PlayedRun(scenario, seed);
	if (scenario.inQuestion === 'earlier') run.inquire({ type: 'reading.given' });
	else run.titrate();
	let titration = 1;
	for (const check of checks ?? scenario.checks.map((offer) => offer.check)) {
		if (!isBenchCheck(check) || asked.includes(check)) {
			run.inquire({ type: 'result.asked', check });
			continue;
		}
		run.inquire({ type: 'check.begun', check, titration });
		run.titrate(undefined, titration);
		run.inquire({ type: 'check.done', titration });
		titration++;
	}
	return run;
}
