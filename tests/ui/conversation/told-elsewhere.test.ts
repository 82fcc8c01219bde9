import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Evidence } from '../../../src/lib/observation';
import { saidAt } from '../../../src/lib/ui/conversation/forms/draft-store';
import { forms } from '../../../src/lib/ui/conversation/forms/forms';
import { Saying } from '../../../src/lib/ui/conversation/saying.svelte';
import { sentenceOf, tellLater } from '../../../src/lib/ui/conversation/told-elsewhere';
import type { UsedPart } from '../../../src/lib/ui/recipe/used-part';

const made: UsedPart = {
	part: {
		kind: 'reference',
		nominal: 2.85333,
		nominalExpandedUncertainty: 0.02862,
		matrix: 'sodiumChloride'
	},
	unit: 'meq/L'
};
const added: UsedPart = {
	part: { kind: 'addition', added: 3.2, addedExpandedUncertainty: 0.11 },
	unit: 'dKH'
};
const blank: UsedPart = {
	part: { kind: 'blank', matrix: 'purified' },
	unit: 'dKH',
	reading: { value: 0.2, expandedUncertainty: 0.3 }
};

/** What the sentence tells once the kit's reading is written in; the check's own unit is dKH. */
function told(used: UsedPart, more: Record<string, string> = {}): Evidence {
	const { form, blanks } = sentenceOf(used);
	const context = {
		analyte: 'alkalinity' as const,
		unit: 'dKH' as const,
		first: null,
		kit: null,
		evidence: [],
		id: 'x'
	};
	const begun = forms[form].begin?.(context);
	const read = forms[form].read({ ...begun, unit: context.unit, ...blanks, ...more }, context);
	if ('problems' in read) throw new Error(JSON.stringify(read.problems));
	return read.evidence;
}

beforeEach(() => localStorage.clear());
afterEach(() => localStorage.clear());

describe('what was made on another page', () => {
	test('lacks only the reading of the kit, and keeps its unit', () => {
		expect(told(made, { value: '2,7', u: '0,1' })).toMatchObject({
			kind: 'reference',
			nominal: 2.85,
			nominalExpandedUncertainty: 0.03,
			matrix: 'sodiumChloride',
			reading: { value: 2.7, unit: 'meq/L' }
		});
		expect(told(added, { value: '10', u: '0.4' })).toMatchObject({
			kind: 'addition',
			added: 3.2,
			addedExpandedUncertainty: 0.11,
			reading: { unit: 'dKH' }
		});
		// A blank was read when it was made.
		expect(told(blank)).toMatchObject({
			kind: 'blank',
			matrix: 'purified',
			reading: { value: 0.2, expandedUncertainty: 0.3 }
		});
	});

	test('stands open and filled in when the check is opened; other sentences keep their words', () => {
		const before = new Saying('one');
		before.write('repeat', { value: '7.4' });
		tellLater('one', made);
		const saying = new Saying('one');
		expect(saying.openAt('known')).toBe('reference');
		expect(saying.blanksOf('reference')).toMatchObject({ nominal: '2.85', unit: 'meq/L' });
		expect(saying.blanksOf('repeat')).toEqual({ value: '7.4' });
		expect(saidAt('another').open).toBeNull();
	});
});
