import type { Decision } from '$lib/judgement';
import type { LivestockLook } from '$lib/observation';

/** The advice in two or three words. */
export const verdictWords: Record<Decision['verdict'], string> = {
	leave: 'Leave it.',
	check: 'Check first.',
	adjust: 'Adjust, slowly.',
	emergency: 'Act now.'
};

/** How the animals look, as answers to a question. */
export const lookWords: Record<LivestockLook, string> = {
	well: 'As always',
	someTroubled: 'Some are troubled',
	manyTroubled: 'Many are troubled',
	notLooked: 'I have not looked'
};
