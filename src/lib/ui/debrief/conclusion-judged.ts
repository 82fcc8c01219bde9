import type { CheckId } from '$lib/observation';
import type { Debrief } from '$lib/procedure';
import { conclusionWords } from '../check/conclusion-words';

type Judged = NonNullable<Debrief['conclusion']>;

const checkNames = {
	repeatFull: 'a careful repeat',
	repeatQuick: 'a quick repeat',
	secondMethod: 'a second method',
	reference: 'a known solution',
	largerSample: 'a larger sample',
	freshLot: 'a fresh bottle',
	freshSample: 'fresh tank water'
} satisfies Record<CheckId, string>;

const standing = {
	earned: 'earned by what you had collected',
	notYet: 'not yet earned',
	against: 'against what you had collected'
} satisfies Record<Judged['support']['verdict'], string>;

/** What is said of a conclusion: what it was, what would have been right, and whether it was earned. */
export function conclusionJudged(judged: Judged): {
	said: string;
	wasRight: string;
	standing: string;
	why: string;
	more: string | null;
} {
	const names = judged.right.map((each) => conclusionWords[each].name.toLowerCase());
	return {
		said: conclusionWords[judged.given].name,
		wasRight: judged.isRight
			? 'So it was.'
			: judged.given === 'cantTellYet'
				? `It was: ${names.join(', and ')}.`
				: `It was another thing: ${names.join(', and ')}.`,
		standing: standing[judged.support.verdict],
		why: judged.support.why,
		more: judged.wouldTellMore
			? `What would have told more: ${checkNames[judged.wouldTellMore]}.`
			: null
	};
}
