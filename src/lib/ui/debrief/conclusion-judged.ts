import type { PracticeCheckId } from '$lib/observation';
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
	freshSample: 'fresh tank water',
	salinity: 'the salinity of today',
	alkalinity: 'the alkalinity of today',
	calcium: 'calcium, measured anew',
	magnesium: 'magnesium, measured anew'
} satisfies Record<PracticeCheckId, string>;

const standing = {
	earned: 'What you had collected carried it.',
	notYet: 'It was not yet earned.',
	against: 'What you had collected spoke against it.'
} satisfies Record<Judged['support']['verdict'], string>;

/** What is said of a conclusion: what it was, what would have been right, and whether it was earned. */
export function conclusionJudged(judged: Judged): {
	said: string;
	was: string;
	standing: string;
	why: string;
	more: string | null;
} {
	return {
		said: conclusionWords[judged.given].name,
		was: judged.isRight
			? 'So it was.'
			: `It was ${judged.right.map((each) => conclusionWords[each].was).join(', and ')}.`,
		standing: standing[judged.support.verdict],
		why: judged.support.why,
		more: judged.wouldTellMore
			? `More would have been told by ${checkNames[judged.wouldTellMore]}.`
			: null
	};
}
