import { tellingConclusions, type Telling } from './conclusion-weights';
import type { Verdict } from './support-verdicts';

/** What a conclusion says, for 'about 6 in 10 that …'. */
const saying: Record<Telling, string> = {
	stands: 'the tank holds what was read, within its ±',
	technique: 'hands, ware or sample moved the reading',
	reagent: 'the bottle moved it',
	secondMethod: 'the other method is off',
	waterChanged: 'the water has changed'
};

/** A probability as people say it: never none, never all, no finer than tenths. */
export function inTen(probability: number): string {
	const tenths = Math.round(probability * 10);
	if (tenths <= 0) return 'less than 1 in 10';
	if (tenths >= 10) return 'more than 9 in 10';
	return `about ${tenths} in 10`;
}

/** Why it was right, or was not, to say that nothing can be told yet. */
export const whyCantTell = (verdict: Verdict): string =>
	verdict === 'earned'
		? 'With what was known, that is the honest answer.'
		: 'What you had collected would have carried more than that.';

/** Why a verdict is what it is, by how probable the conclusions are. One or two plain sentences. */
export function whyByWeight(
	conclusion: Telling,
	verdict: Verdict,
	weights: Record<Telling, number>
): string {
	const own = `By what you collected it is ${inTen(weights[conclusion])} that ${saying[conclusion]}.`;
	if (verdict === 'earned') return own;
	const rival = tellingConclusions
		.filter((each) => each !== conclusion)
		.reduce((best, each) => (weights[each] > weights[best] ? each : best), conclusion);
	return rival === conclusion
		? `${own} That is not enough yet.`
		: `${own} For ${inTen(weights[rival])}, ${saying[rival]}.`;
}
