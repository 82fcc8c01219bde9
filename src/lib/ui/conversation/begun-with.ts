import type { CheckId } from '$lib/observation';
import type { Blanks } from './forms/form';
import type { FormId } from './forms/forms';

/** What a check says of its sentence before anybody writes. */
const beginnings: Partial<Record<CheckId, { form: FormId; blanks: Blanks }>> = {
	largerSample: { form: 'otherSample', blanks: { ratio: '2' } },
	smallerSample: { form: 'otherSample', blanks: { ratio: '0.5' } },
	moreBase: { form: 'otherWay', blanks: { way: 'moreBase' } },
	thinnedSample: { form: 'otherWay', blanks: { way: 'thinnedSample' } },
	warmSlow: { form: 'otherWay', blanks: { way: 'warmSlow' } },
	takenOffAnew: { form: 'otherWay', blanks: { way: 'takenOffAnew' } },
	weighSampleWare: { form: 'weighing', blanks: { ware: 'sample' } },
	weighTitrantWare: { form: 'weighing', blanks: { ware: 'titrant' } },
	probeTitration: { form: 'secondMethod', blanks: { method: 'probe' } }
};

/** The blanks of a sentence under a check: what was typed before, on what the check implies. */
export function begunWith(checks: readonly CheckId[], form: FormId, typed: Blanks): Blanks {
	const implied = checks.flatMap((check) => {
		const beginning = beginnings[check];
		return beginning?.form === form ? [beginning.blanks] : [];
	});
	return { ...implied[0], ...typed };
}
